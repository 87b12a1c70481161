package ontop

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A drop of 0 is a sloping tape: it is asked for only once the fitter has said that the tape slopes.
func TestLevelOrSlopingIsAskedFirst(t *testing.T) {
	r := screentest.New(t, New(), vehicles.NewJob("TL-09"), 100, 27)
	r.Type("<down><enter>")
	view := r.View(100, 27)
	assert.Contains(t, view, "▸ tape is held")
	assert.NotContains(t, view, "  hook's drop")
	assert.Contains(t, view, "not said")
	r.Type("0")
	assert.False(t, r.State.Job.Datum.HookBelow.Set, "0 is no answer to that")
	r.Type("s")
	assert.Contains(t, r.View(100, 27), "▸ hook's drop")
	assert.False(t, r.State.Job.Datum.HookBelow.Set, "till it is known by how much")
	require.Len(t, r.State.Job.Refused(), 1, "and the job says that this is open")
	r.Type("<esc>")
	assert.Contains(t, r.Said, "tape is held of where the tape hooks, sloping")
	r.Type("<enter><down>0")
	assert.Equal(t, vehicles.Some(0), r.State.Job.Datum.HookBelow)
	assert.Empty(t, r.State.Job.Refused())
	r.Type("<up><down><wipe>")
	assert.Equal(t, vehicles.Some(0), r.State.Job.Datum.HookBelow, "a sloping tape needs its drop")
	r.Type("<up>l<up>")
	assert.False(t, r.State.Job.Datum.HookBelow.Set)
	assert.Empty(t, r.State.Job.Refused(), "a level one has none")
}

// The question stays until it is answered, whatever is taped meanwhile, in the file too; a level tape is an answer like any other. It changes no verdict.
func TestLevelOrSlopingStaysAskedUntilItIsAnswered(t *testing.T) {
	const ask = "? level or sloping"
	job := vehicles.NewJob("TL-09")
	job.Obstructions = screentest.Van(t).Obstructions
	job, err := vehicles.ParseJob(job.Format(), "TL-09.toml")
	require.NoError(t, err)
	r := screentest.New(t, New(), job, 100, 27)
	require.Contains(t, r.View(100, 27), ask)
	verdict := r.State.Result.Verdict
	r.Type("<down><enter>")
	assert.Contains(t, r.View(100, 27), "▸ tape is held      not said")
	r.Type("<enter><esc>")
	assert.Contains(t, r.View(100, 27), ask, "going past it is no answer")
	r.Type("<enter>l<down><down>l<esc>")
	assert.NotContains(t, r.View(100, 27), ask)
	assert.Equal(t, map[string]string{"below": vehicles.HeldLevel, "side": vehicles.HeldLevel}, r.State.Job.Held)
	assert.Equal(t, verdict, r.State.Result.Verdict)

	old := vehicles.NewJob("TL-09") // never asked
	old.Held = nil
	assert.Contains(t, screentest.New(t, New(), old, 100, 27).View(100, 27), ask)
	old.Obstructions = job.Obstructions
	assert.NotContains(t, screentest.New(t, New(), old, 100, 27).View(100, 27), ask)
}

// 650 mm of tape from 0 down to 150 is 632.46 in plan.
func TestTheHookSaysWhatItCorrects(t *testing.T) {
	job := vehicles.NewJob("TL-09")
	read := func(x, y float64) vehicles.Pair {
		return vehicles.Pair{{Length: x, Text: survey.Exact(x)}, {Length: y, Text: survey.Exact(y)}}
	}
	job.Obstructions = vehicles.List[vehicles.Obstruction]{{
		Name: "lashing ring", Kind: "other", Drop: vehicles.Span{From: 0, To: 150, Set: true},
		Place: vehicles.Place{Shape: vehicles.Disc, Centre: read(650, 100), Across: vehicles.Some(20)}, Measured: true,
		TapedAt: vehicles.Some(150),
	}}
	r := screentest.New(t, New(), job, 100, 27)
	r.Type("<down><enter>s0")
	assert.Contains(t, r.View(100, 27), "corrects 1 reading, most lashing ring: 17.5")
}
