package features

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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
	field := fieldOf(tank.Fields(s, nil), "holds")
	assert.Equal(t, "diesel", field.Text)
	set := func(edits map[string]string) vehicles.Obstruction {
		after, _, err := tank.Set(s, edits)
		require.NoError(t, err)
		return after.Obstructions[at]
	}
	assert.Equal(t, vehicles.Diesel, set(map[string]string{"name": "tank, left"}).Holds, "another edit loses nothing")
	assert.Equal(t, vehicles.Petrol, set(map[string]string{"holds": "petrol"}).Holds)
	assert.Equal(t, "", set(map[string]string{"holds": notKnown}).Holds)
	assert.Equal(t, vehicles.Diesel, set(map[string]string{"kind": "fuel line"}).Holds)
	assert.Equal(t, "", set(map[string]string{"kind": "water tank"}).Holds, "it holds no fuel any more")
}

func TestOnlyWhatHoldsFuelIsAskedForIt(t *testing.T) {
	s := screentest.State(t)
	for _, kind := range vehicles.Kinds {
		fields := New(Obstructions, s.Job).Fields(s, map[string]string{"kind": kind})
		asked := fieldOf(fields, "holds").Key != ""
		assert.Equal(t, kind == "fuel tank" || kind == "fuel line", asked, kind)
	}
	fields := New(Openings, s.Job).Fields(s, map[string]string{"kind": "fuel filler"})
	assert.Empty(t, fieldOf(fields, "holds").Key)
}

func fieldOf(fields []form.Field, key string) form.Field {
	for _, f := range fields {
		if f.Key == key {
			return f
		}
	}
	return form.Field{}
}
