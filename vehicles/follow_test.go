package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What lies under its stub goes where the stub goes, all three runs, and nothing else of them moves.
func TestRunsGoAlongWithTheirStubs(t *testing.T) {
	job := laid()
	stub, there := job.Stub(ExhaustRun)
	assert.True(t, there)
	fuel, _ := job.Stub(FuelRun)
	job.Exhaust.Path = job.Exhaust.Path.With(0, RunPoint{stub.X + 0.6, stub.Y, 145}) // under it as far as a tape tells
	job.Fuel = &Run{Across: 5, Path: List[RunPoint]{{2000, 400, 60}, {1500, 300, 80}, {fuel.X, fuel.Y, -fuel.Z}}}
	moved := job
	cut := *job.Cut
	cut.At[0] += 30
	moved = moved.WithCut(cut)
	next, all := moved.Following(job)
	runs := map[RunKind]bool{}
	for _, f := range all {
		runs[f.Run] = true
	}
	assert.True(t, runs[ExhaustRun] && runs[FuelRun], "%v", all)
	assert.Equal(t, RunPoint{hundredth(stub.X + 30), hundredth(stub.Y), 145}, next.Exhaust.Path[0])
	assert.Equal(t, job.Exhaust.Path[1:], next.Exhaust.Path[1:])
	assert.Equal(t, RunPoint{hundredth(fuel.X + 30), hundredth(fuel.Y), hundredth(-fuel.Z)}, next.Fuel.Path[2])
	assert.Equal(t, job.Fuel.Path[:2], next.Fuel.Path[:2])
	assert.Equal(t, stub.X+0.6, job.Exhaust.Path[0].X, "the job before is as it was")

	heater := *job.Heater
	heater.StubDrop += 20
	lower, _ := job.WithHeater(heater).Following(job)
	assert.Equal(t, hundredth(-fuel.Z+20), lower.Fuel.Path[2].Drop, "the line ends at its stub, as deep as that is")
	assert.Equal(t, 145., lower.Exhaust.Path[0].Drop, "the leg below a stub keeps its lower end")
}

func TestARunThatWentAnotherWayFromItsStubStays(t *testing.T) {
	job := laid()
	stub, _ := job.Stub(ExhaustRun)
	job.Exhaust.Path = job.Exhaust.Path.With(0, RunPoint{stub.X + 5, stub.Y, 145})
	cut := *job.Cut
	cut.At[1] -= 12
	next, all := job.WithCut(cut).Following(job)
	for _, f := range all {
		assert.NotEqual(t, ExhaustRun, f.Run)
	}
	assert.Equal(t, job.Exhaust.Path, next.Exhaust.Path)
	bare := job
	bare.Heater = nil
	next, all = bare.Following(job)
	assert.Empty(t, all, "no stub, nothing to follow")
	assert.Equal(t, job.Exhaust.Path, next.Exhaust.Path)
}
