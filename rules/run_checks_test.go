package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

func TestEachRunSortGivesItsOwnRun(t *testing.T) {
	job := tidy()
	for kind, drain := range []float64{100, 200, 300} {
		job = job.WithRun(vehicles.RunKind(kind), &vehicles.Run{Hanging: vehicles.Hanging{Drains: []float64{drain}}})
	}
	plan := vehicles.Plan{Exhaust: &vehicles.LaidRun{}, Intake: &vehicles.LaidRun{}, Fuel: &vehicles.LaidRun{}}
	j := judge{job: &job, plan: &plan}
	for of, want := range map[Sort]struct {
		laid *vehicles.LaidRun
		run  *vehicles.Run
	}{
		TheExhaust: {plan.Exhaust, job.Exhaust}, TheIntake: {plan.Intake, job.Intake}, TheFuel: {plan.Fuel, job.Fuel},
	} {
		assert.Same(t, want.laid, j.run(of), of.String())
		assert.Same(t, &want.run.Hanging, j.hanging(of), of.String())
	}
	assert.Panics(t, func() { j.run(TheMuffler) }, "the muffler is no run")
	assert.Panics(t, func() { j.hanging(TheCut) })
}
