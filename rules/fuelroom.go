package rules

import (
	"context"

	"bench.example/undermark/vehicles"
)

// stubLeg is how far down a fuel line that is still to be laid is taken to leave its stub, mm: as far as it counts as being there.
const stubLeg = AtStub

// WithRoomForFuel is the result for whoever seeks an exhaust or an intake while the job has no fuel line: with one that goes straight down
// from its stub, so that a run found now leaves it room. Where the job has one, or no stub for it, it is the result itself.
func WithRoomForFuel(r Result) Result {
	mouth, there := r.Job.Stub(vehicles.FuelRun)
	if r.Job.Fuel != nil || !there {
		return r
	}
	line := vehicles.UsualRun(vehicles.FuelRun)
	for _, down := range []float64{stubLeg, 0} {
		line.Path = append(line.Path, vehicles.RunPoint{X: mouth.X, Y: mouth.Y, Drop: down - mouth.Z})
	}
	job := r.Job.WithRun(vehicles.FuelRun, &line)
	plan, ok := r.Plan.WithRun(&job, vehicles.FuelRun)
	if !ok {
		return r
	}
	r.Job, r.Plan = job, plan
	return r
}

// fuelSpares are how much more than is asked a fuel line beside a pair is sought to keep, mm, the most first: the shortest grazes what it passes.
var fuelSpares = []float64{40, 20, 10}

// FindFuelBeside seeks a fuel line, from where it begins, beside a pair that was found for a job, with more room than is asked where that can
// be had. As FindRoute, else.
func FindFuelBeside(ctx context.Context, r *Result, pair Pair, line *vehicles.Run, tell Tell) Route {
	with := putRun(putRun(*r, vehicles.ExhaustRun, pair.Exhaust.Run), vehicles.IntakeRun, pair.Intake.Run)
	to := FuelTarget(line)
	to.Upright = true
	with = putRun(with, vehicles.FuelRun, line)
	for _, to.Spare = range fuelSpares {
		s := newSeeker(ctx, &with, vehicles.FuelRun, to, tell)
		s.strict = true
		if best := s.try(0); best.keeps() {
			return s.told(best)
		}
	}
	to.Spare = 0
	return FindRoute(ctx, &with, vehicles.FuelRun, to, tell)
}
