package features

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// tanked is the sample van with the tank's contents said, and where the tank is in the list.
func tanked(t *testing.T) (s desk.State, at int) {
	s = screentest.State(t)
	for i, o := range s.Job.Obstructions {
		if o.Kind == "fuel tank" {
			o.Holds = vehicles.Diesel
			job := s.Job
			job.Obstructions = job.Obstructions.With(i, o)
			return screentest.Judged(s, job), i
		}
	}
	require.Fail(t, "the sample van has a tank")
	return s, 0
}

func TestWhatATankHolds(t *testing.T) {
	s, at := tanked(t)
	tank := Record{List: Obstructions, Row: at}
	field := fieldNamed(tank.Fields(s, nil), "holds")
	assert.Equal(t, "diesel", field.Text)
	set := func(edits map[string]string) vehicles.Obstruction {
		after, _, err := tank.Set(s, edits)
		require.NoError(t, err)
		return after.Obstructions[at]
	}
	assert.Equal(t, vehicles.Diesel, set(map[string]string{"name": "tank, left"}).Holds, "another edit loses nothing")
	assert.Equal(t, vehicles.Petrol, set(map[string]string{"holds": "petrol"}).Holds)
	assert.Equal(t, "", set(map[string]string{"holds": vehicles.NotKnown}).Holds)
	assert.Equal(t, vehicles.Diesel, set(map[string]string{"kind": "fuel line"}).Holds)
	assert.Equal(t, "", set(map[string]string{"kind": "water tank"}).Holds, "it holds no fuel any more")
}

func TestOnlyWhatHoldsFuelIsAskedForIt(t *testing.T) {
	s := screentest.State(t)
	for _, kind := range vehicles.Kinds {
		fields := New(Obstructions, s.Job).Fields(s, map[string]string{"kind": kind})
		asked := fieldNamed(fields, "holds").Key != ""
		assert.Equal(t, kind == "fuel tank" || kind == "fuel line", asked, kind)
	}
	fields := New(Openings, s.Job).Fields(s, map[string]string{"kind": "fuel filler"})
	assert.Empty(t, fieldNamed(fields, "holds").Key)
}

func fieldNamed(fields []form.Field, key string) form.Field {
	for _, f := range fields {
		if f.Key == key {
			return f
		}
	}
	return form.Field{}
}

// What speaks of an obstruction by its name follows it to another.
func TestARenamedObstructionIsFollowed(t *testing.T) {
	s, at := tanked(t)
	job, name := s.Job, s.Job.Obstructions[at].Name
	run := *job.Exhaust
	run.Shielded.Names = []string{"chassis rail, left", name}
	job.Exhaust = &run
	cut := *job.Cut
	cut.Drilled = &vehicles.Pair{survey.FromNumber(1240, false), survey.FromNumber(230, false)}
	cut.Direct = vehicles.List[vehicles.DirectTape]{{To: name, Gap: survey.FromNumber(500, false)}}
	job.Cut = &cut
	job.Fuel = &vehicles.Run{
		Across: 6, Path: vehicles.List[vehicles.RunPoint]{{X: 1500, Y: -300, Drop: 200}, {X: 1400, Y: 0, Drop: 100}},
		Supply: vehicles.Supply{From: name},
	}
	s = screentest.Judged(s, job)
	require.Empty(t, s.Faults)
	after, _, err := Record{List: Obstructions, Row: at}.Set(s, map[string]string{"name": "main tank"})
	require.NoError(t, err)
	assert.Equal(t, []string{"chassis rail, left", "main tank"}, after.Exhaust.Shielded.Names)
	assert.Equal(t, "main tank", after.Fuel.Supply.From)
	assert.Equal(t, "main tank", after.Cut.Direct[0].To)
	assert.Equal(t, name, job.Exhaust.Shielded.Names[1], "the old job is as it was")
	assert.Equal(t, name, job.Cut.Direct[0].To)
}
