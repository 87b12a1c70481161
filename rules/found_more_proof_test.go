package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// withTank is a random floor with a fuel tank and no run but a fuel line to find, if it can be known where that begins.
func withTank(r *rand.Rand) (job vehicles.Job, ok bool) {
	job = randomFloor(r, vehicles.ExhaustRun).WithRun(vehicles.ExhaustRun, nil)
	x, y := math.Round(200+2400*r.Float64()), math.Round(-700+1000*r.Float64())
	tank := box("the tank", "fuel tank", x, x+400, y, y+350, 20, 220)
	tank.Holds = vehicles.Diesel
	job.Obstructions = append(job.Obstructions, tank)
	result, faults := Judge(job, Builtin())
	if len(faults) > 0 {
		return job, false
	}
	mouth, _ := job.Stub(vehicles.FuelRun)
	line, ok := UsualFuel(&result, mouth)
	return job.WithRun(vehicles.FuelRun, &line), ok
}

// soughtIsClear seeks a run on the n-th floor and, where one is sought out, puts it in, judges it and samples it; found says whether
// it breaks no rule with all that hangs on it.
func soughtIsClear(t *testing.T, n int, result *Result, kind vehicles.RunKind, to Target) (sought, found bool) {
	s := newSeeker(context.Background(), result, kind, to, nil)
	best, kept := s.seek()
	if !kept {
		return false, false
	}
	route := s.told(best)
	judged, faults := Judge(result.Job.WithRun(kind, route.Run), Builtin())
	require.Empty(t, faults, n)
	sampled(t, n, kind, &judged, &route)
	return true, route.Found()
}

// Fuel lines that are found keep what is asked of them at every place, and rise once to the heater.
func TestFoundFuelLinesAreClearBySampling(t *testing.T) {
	t.Parallel()
	const seed = 89
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	found, floors := 0, floorsFor(t, 4, 2)
	for n := range floors {
		job, ok := withTank(r)
		if !ok {
			continue
		}
		result, faults := Judge(job.WithRun(vehicles.FuelRun, nil), Builtin())
		require.Empty(t, faults, n)
		result.Job = job
		if sought, whole := soughtIsClear(t, n, &result, vehicles.FuelRun, FuelTarget(job.Fuel)); sought {
			require.True(t, whole, n)
			found++
		}
	}
	t.Logf("%d lines found on %d floors", found, floors)
	assert.Greater(t, found, floors/4)
}

// In full the same holds with what the driven van asks.
func TestFoundRunsInFullAreClearBySampling(t *testing.T) {
	t.Parallel()
	const seed = 97
	t.Logf("seed %d", seed)
	r, sides := rand.New(rand.NewPCG(seed, seed)), rand.New(rand.NewPCG(seed, 0))
	found, floors := 0, floorsFor(t, 4, 2)
	for n := range floors {
		kind := vehicles.RunKind(r.IntN(2))
		job := withOpenings(sides, randomFloor(r, kind))
		job.RunChecks = vehicles.InFull
		bare := job
		bare.Exhaust, bare.Intake = nil, nil
		result, faults := Judge(bare, Builtin())
		require.Empty(t, faults, n)
		result.Job = job
		if sought, whole := soughtIsClear(t, n, &result, kind, Target{Edge: AnyEdge, Upright: true}); sought {
			require.True(t, whole, "floor %d: what was sought is found, its clips held", n)
			found++
		}
	}
	t.Logf("%d runs found on %d floors", found, floors)
	assert.Greater(t, found, floors/5)
}

// On one floor of those an intake was sought whose last leg had no length: its mouth then looked nowhere, and no rule minded.
func TestNoCornerOfAFoundRunStandsTwice(t *testing.T) {
	const seed, floor = 97, 514
	r := rand.New(rand.NewPCG(seed, seed))
	var job vehicles.Job
	var kind vehicles.RunKind
	for range floor + 1 {
		kind = vehicles.RunKind(r.IntN(2))
		job = randomFloor(r, kind)
	}
	job.RunChecks = vehicles.InFull
	bare := job
	bare.Exhaust, bare.Intake = nil, nil
	result, faults := Judge(bare, Builtin())
	require.Empty(t, faults)
	result.Job = job
	found := FindRoute(context.Background(), &result, kind, Target{Edge: AnyEdge, Upright: true}, nil)
	require.NotNil(t, found.Run)
	mouth, _ := job.Stub(kind)
	last := vehicles.RunPoint{X: mouth.X, Y: mouth.Y, Drop: -mouth.Z}
	for _, p := range found.Run.Path {
		assert.NotEqual(t, last, p)
		last = p
	}
	t.Logf("%s: %v, %v", found.Verdict, found.Run.Path, found.Misses)
}

// Every run of every layout that breaks no rule keeps what is asked, and the intake's mouth its distance from the outlet.
func TestLayoutsAreClearBySampling(t *testing.T) {
	t.Parallel()
	const seed = 101
	t.Logf("seed %d", seed)
	r, sides := rand.New(rand.NewPCG(seed, seed)), rand.New(rand.NewPCG(seed, 0))
	runs, fuelled, floors := 0, 0, floorsFor(t, 100, 2)
	for n := range floors {
		job := randomFloor(r, vehicles.ExhaustRun)
		if line, ok := withTank(r); ok && n%2 == 1 { // the line from it is proposed
			job = line
		}
		job = withOpenings(sides, job).WithRun(vehicles.ExhaustRun, nil).WithRun(vehicles.FuelRun, nil)
		if n%4 > 1 {
			job.RunChecks = vehicles.InFull
		}
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults, n)
		for _, l := range layoutsOf(t, &result, 2).Best {
			if l.broken > 0 {
				continue
			}
			for _, kind := range vehicles.RunKinds {
				if laid := l.Result.Plan.Run(kind); laid != nil {
					runs++
					sampled(t, n, kind, &l.Result, &Route{Run: l.Result.Job.Run(kind), Length: laid.Line.Length()})
				}
			}
			sampledTogether(t, n, &l.Result)
			fuelled += asNumber(l.Result.Job.Fuel != nil)
		}
	}
	t.Logf("%d runs on %d floors, %d fuel lines among them", runs, floors, fuelled)
	assert.Greater(t, runs, 2*floors)
	assert.Greater(t, fuelled, 0)
}
