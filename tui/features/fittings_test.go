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

func fieldOf(t *testing.T, fields []form.Field, key string) form.Field {
	for _, f := range fields {
		if f.Key == key {
			return f
		}
	}
	require.Fail(t, "no field", key)
	return form.Field{}
}

// A fitting needs no kind. What runs under the mat has one, and a foot below the finished floor; both are taken, and taken back.
func TestAFittingMayHaveAKindAndRunInsideTheFloor(t *testing.T) {
	s := screentest.Judged(desk.State{}, screentest.Van(t))
	h := Record{Fittings, 0, false}
	kind := fieldOf(t, h.Fields(s, nil), "kind")
	assert.Equal(t, "only stands there", kind.Text)
	assert.False(t, kind.Pass, "it is asked of a new one")
	name := s.Job.Fittings[0].Name
	job, _, err := h.Set(s, map[string]string{"kind": "wiring", "top": "-12", "low": "-2"})
	require.NoError(t, err)
	assert.Equal(t, "wiring", job.Fittings[0].Kind)
	assert.Equal(t, name, job.Fittings[0].Name)
	assert.Equal(t, vehicles.Span{From: -12, To: -2, Set: true}, job.Fittings[0].Rise)
	s = screentest.Judged(desk.State{}, job)
	assert.Equal(t, "wiring", fieldOf(t, h.Fields(s, nil), "kind").Text)
	job, _, err = h.Set(s, map[string]string{"kind": "only stands there"})
	require.NoError(t, err)
	assert.Empty(t, job.Fittings[0].Kind)
	assert.Equal(t, name, job.Fittings[0].Name)
}

// A new one takes its name and its form from its kind, as an obstruction does, and waits for nothing else.
func TestANewLoomInsideTheFloor(t *testing.T) {
	s := screentest.Judged(desk.State{}, screentest.Van(t))
	n := len(s.Job.Fittings)
	job, record, err := New(Fittings, s.Job).Set(s, map[string]string{"kind": "coolant pipe"})
	require.NoError(t, err)
	s = screentest.Judged(desk.State{}, job)
	job, _, err = record.Set(s, map[string]string{
		"p0x": "500", "p0y": "100", "p1x": "1500", "p1y": "100", "across": "18", "top": "-20", "low": "0",
	})
	require.NoError(t, err)
	require.Len(t, job.Fittings, n+1)
	got := job.Fittings[n]
	assert.Equal(t, []string{"coolant pipe", "coolant pipe"}, []string{got.Name, got.Kind})
	assert.Equal(t, vehicles.Piped, got.Shape)
	assert.Equal(t, -20., got.Rise.From)
}

// Nothing is made of a kind that nobody has named: while a fitting lacks readings it is shown as what stands on the floor.
func TestAnUnfinishedFittingHasNoKind(t *testing.T) {
	s := screentest.Judged(desk.State{}, screentest.Van(t))
	job, record, err := New(Fittings, s.Job).Set(s, map[string]string{"name": "box", "x0": "500"})
	require.NoError(t, err)
	shown, at := record.(Record).Sketched(job)
	require.GreaterOrEqual(t, at, 0)
	assert.Empty(t, shown.Fittings[at].Kind)
}
