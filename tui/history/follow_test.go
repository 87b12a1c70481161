package history

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// A heading typed letter by letter anywhere takes the runs along, from where they were: back at the heading that it had the job is the one
// that it was, and one undo takes it back.
func TestRunsFollowTheHeaterWhoeverEditsIt(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	job, _ = job.WithCut(cut).Following(job)
	for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} { // straight down from its stub, whatever the sample has
		run := *job.Run(of)
		mouth, _ := job.Stub(of)
		job, _, _ = job.WithPath(of, run.Path.With(0, vehicles.RunPoint{X: mouth.X, Y: mouth.Y, Drop: run.Path[0].Drop}))
	}
	d := opened(job)
	fuel := job.Fuel.Path
	turned := func(yaw float64) {
		next := d.State.Job
		heater := *next.Heater
		heater.Yaw = yaw
		next = next.WithHeater(heater)
		require.Empty(t, d.Apply(desk.Change{Job: &next, Step: "heater.yaw"}).Refused)
	}
	was := job.Heater.Yaw
	for _, yaw := range []float64{9, 90, 97} {
		turned(yaw)
		for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
			mouth, _ := d.State.Job.Stub(of)
			path := d.State.Job.Run(of).Path
			assert.InDelta(t, mouth.X, path[0].X, 0.01, "%v %s", yaw, of)
			assert.InDelta(t, mouth.Y, path[0].Y, 0.01, "%v %s", yaw, of)
			assert.Equal(t, job.Run(of).Path[1:], path[1:], "%v %s", yaw, of)
		}
	}
	last := len(fuel) - 1
	mouth, _ := d.State.Job.Stub(vehicles.FuelRun)
	assert.Equal(t, fuel[:last], d.State.Job.Fuel.Path[:last])
	assert.InDelta(t, mouth.X, d.State.Job.Fuel.Path[last].X, 0.01)
	assert.Len(t, d.Steps(), 1)
	turned(was)
	assert.Equal(t, job, d.State.Job)
	turned(30)
	require.True(t, d.Undo())
	assert.Equal(t, job, d.State.Job)
}

// A change of the heater that comes with runs of its own, as a whole layout, has its runs as they are.
func TestRunsThatComeWithAHeaterStay(t *testing.T) {
	d := opened(vehicles.Demo())
	next := d.State.Job
	heater := *next.Heater
	heater.Yaw += 40
	run := *next.Exhaust
	next = next.WithHeater(heater).WithRun(vehicles.ExhaustRun, &run)
	d.Apply(desk.Change{Job: &next})
	assert.Same(t, &run, d.State.Job.Exhaust)
}

// A hole that is read beside its mark moves the stubs and no run: people are told that they slope.
func TestNoRunFollowsAHoleThatIsRead(t *testing.T) {
	d := opened(vehicles.Demo())
	was := d.State.Job
	next := was.WithDrilled(&vehicles.Pair{survey.FromNumber(1230, false), survey.FromNumber(240, false)})
	require.Empty(t, d.Apply(desk.Change{Job: &next}).Refused)
	before, _ := was.Stub(vehicles.ExhaustRun)
	after, _ := d.State.Job.Stub(vehicles.ExhaustRun)
	require.NotEqual(t, before, after)
	assert.Same(t, was.Exhaust, d.State.Job.Exhaust)
	assert.Same(t, was.Intake, d.State.Job.Intake)
	assert.Same(t, was.Fuel, d.State.Job.Fuel)
}
