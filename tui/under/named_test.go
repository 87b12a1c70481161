package under

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// taped is a van with a tape from its pilot hole to the first obstruction, which is shielded and where the fuel line begins.
func taped(t *testing.T) *screentest.Driver {
	job := screentest.Van(t)
	job = job.WithDrilled(&vehicles.Pair{survey.FromNumber(1219, true), survey.FromNumber(240, true)})
	cut := *job.Cut
	cut.Direct = vehicles.List[vehicles.DirectTape]{{To: "rear crossmember", Gap: survey.FromNumber(476, true)}}
	job = job.WithCut(cut).
		WithRun(vehicles.ExhaustRun, &vehicles.Run{
			Across: 26, Path: vehicles.List[vehicles.RunPoint]{{X: 1245, Y: 265, Drop: 110}},
			Shielded: vehicles.Shields{Names: []string{"rear crossmember"}},
		}).
		WithRun(vehicles.FuelRun, &vehicles.Run{
			Across: 5, Path: vehicles.List[vehicles.RunPoint]{{X: 700, Y: 0, Drop: 40}, {X: 1210, Y: 205, Drop: 45}},
			Supply: vehicles.Supply{From: "rear crossmember"},
		})
	d := screentest.New(t, New(), job, 100, 27)
	require.Empty(t, d.State.Faults)
	return d
}

// A name is taken letter by letter; after each of them the job can be judged.
func TestAnObstructionIsRenamedWithAllThatNamesIt(t *testing.T) {
	d := taped(t)
	d.Type("<enter><up><up>member<enter>")
	job := d.State.Job
	require.Equal(t, "member", job.Obstructions[0].Name, d.Said)
	assert.Equal(t, "member", job.Cut.Direct[0].To)
	assert.Equal(t, []string{"member"}, job.Exhaust.Shielded.Names)
	assert.Equal(t, "member", job.Fuel.Supply.From)
	assert.Empty(t, d.State.Faults)
}

func TestDeletingAnObstructionTakesWhatNamesItAndSaysSo(t *testing.T) {
	d := taped(t)
	before := d.State.Job
	d.Type("x")
	job := d.State.Job
	require.NotEqual(t, "rear crossmember", job.Obstructions[0].Name, d.Said)
	assert.Equal(t, "deleted rear crossmember, and with it the tape to it from the pilot hole, its shield and that the fuel line begins at it: "+
		"Ctrl-Z brings all of it back", d.Said)
	assert.Empty(t, job.Cut.Direct)
	assert.Empty(t, job.Exhaust.Shielded.Names)
	assert.Empty(t, job.Fuel.Supply.From)
	d.Undo()
	assert.Equal(t, before, d.State.Job)
}
