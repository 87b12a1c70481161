package features

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// Of what moves it is asked how far; another edit keeps that, and what moves no more loses it.
func TestHowFarAThingMoves(t *testing.T) {
	job := screentest.Van(t)
	o := job.Obstructions[0]
	o.Kind, o.Travel = "axle", vehicles.Some(80)
	job.Obstructions = job.Obstructions.With(0, o)
	s := screentest.Judged(screentest.State(t), job)
	axle := Record{List: Obstructions}
	assert.Equal(t, "80", fieldNamed(axle.Fields(s, nil), "travel").Text)
	set := func(key, text string) vehicles.Obstruction {
		after, _, err := axle.Set(s, map[string]string{key: text})
		require.NoError(t, err)
		return after.Obstructions[0]
	}
	assert.Equal(t, vehicles.Some(80), set("name", "rear axle").Travel, "another edit loses nothing")
	assert.Equal(t, vehicles.Some(65), set("travel", "6.5cm").Travel)
	assert.Equal(t, vehicles.Some(0), set("travel", "0").Travel)
	assert.Equal(t, vehicles.Number{}, set("travel", "").Travel)
	assert.Equal(t, vehicles.Number{}, set("kind", "crossmember").Travel, "it moves no more")
	_, _, err := axle.Set(s, map[string]string{"travel": "-5"})
	require.Error(t, err)

	for _, kind := range vehicles.Kinds {
		asked := fieldNamed(New(Obstructions, s.Job).Fields(s, map[string]string{"kind": kind}), "travel").Key != ""
		moves := kind == "suspension" || kind == "driveshaft" || kind == "tyre" || kind == "axle"
		assert.Equal(t, moves, asked, kind)
	}
}

// What counts while nobody has said it is told in the lengths that the screens speak.
func TestTheUsualTravelIsToldInTheJobsLengths(t *testing.T) {
	s := screentest.State(t)
	for _, c := range []struct {
		units survey.Units
		told  string
	}{{desk.Millimetres, "keep clear of 100 mm while"}, {desk.Inches, `keep clear of 3 15/16" while`}} {
		s.Settings.Units = c.units
		field := fieldNamed(New(Obstructions, s.Job).Fields(s, map[string]string{"kind": "axle"}), "travel")
		assert.Contains(t, field.Note, c.told)
	}
}
