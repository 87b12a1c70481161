package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
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

// smallFloor has a cut in its middle and a few things, on which all runs through a lattice can be tried.
func smallFloor(r *rand.Rand) vehicles.Job {
	heater, _ := vehicles.HeaterClass("2 kW")
	heater.Yaw = float64(r.IntN(4) * 90)
	job := vehicles.Job{
		Ref: "TL-07", Floor: vehicles.Floor{From: 0, Length: 1200, Width: 1000, Thickness: 31, Ground: 460},
		Heater: &heater, Cut: &vehicles.Cut{At: [2]float64{600, 0}, Across: 127},
	}
	for range 4 {
		x, y, top := math.Round(1100*r.Float64()), math.Round(-500+900*r.Float64()), math.Round(100*r.Float64())
		job.Obstructions = append(job.Obstructions, box(string(rune('a'+len(job.Obstructions))), "crossmember", x, x+120, y, y+80, top, top+120))
	}
	run := vehicles.UsualRun(vehicles.ExhaustRun)
	return job.WithRun(vehicles.ExhaustRun, &run)
}

// What a fitter is told is no longer than the best of all runs of up to two corners between stub and end that lie on a lattice, each judged
// by the rules; and where there is one of those, a run is found.
func TestNoRunOfALatticeIsShorterThanTheOneFound(t *testing.T) {
	t.Parallel()
	const seed = 103
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	compared, floors := 0, floorsFor(t, 40, 4)
	for n := range floors {
		job := smallFloor(r)
		result, faults := Judge(job.WithRun(vehicles.ExhaustRun, nil), Builtin())
		require.Empty(t, faults, n)
		result.Job = job
		end := vehicles.RunPoint{X: float64(200 + r.IntN(8)*100), Y: 475, Drop: 260}
		found := FindRoute(context.Background(), &result, vehicles.ExhaustRun, Target{At: &end}, nil)
		best, any := bestOfLattice(&result, end)
		if !any {
			continue
		}
		require.True(t, found.Found(), "floor %d: the lattice has a run", n)
		if found.Verdict == Clear {
			compared++
			assert.LessOrEqual(t, found.Length, best+1, "floor %d", n)
		}
	}
	t.Logf("%d of %d floors compared", compared, floors)
	assert.Greater(t, compared, floors/4)
}

// bestOfLattice is the length of the shortest clear run of up to two corners on a lattice of 150 mm and 70 mm of height.
func bestOfLattice(r *Result, end vehicles.RunPoint) (best float64, any bool) {
	s := newSeeker(context.Background(), r, vehicles.ExhaustRun, Target{At: &end}, nil)
	t := s.trial(coverage, 0)
	c := newCourse(s.judge, vehicles.ExhaustRun, nil, demands[0])
	mouth := s.judge.plan.Mouth(s.judge.job, vehicles.ExhaustRun)
	var nodes []geometry.Point3
	for x := 75.0; x < 1200; x += 150 {
		for y := -450.0; y <= 450; y += 150 {
			for _, z := range []float64{-100, -170, -240} {
				nodes = append(nodes, geometry.Point3{X: x, Y: y, Z: z})
			}
		}
	}
	best = math.Inf(1)
	try := func(corners ...geometry.Point3) {
		all := append(append([]geometry.Point3{mouth}, corners...), inSpace(end))
		length := 0.0
		for i := 1; i < len(all); i++ {
			length += all[i].Sub(all[i-1]).Norm()
		}
		if length*0.8 > best { // bends take no more than that off
			return
		}
		if w := t.worth(all, c.beyond(all), 0); w.Short == 0 {
			best, any = min(best, t.plan.Exhaust.Line.Length()), true
		}
	}
	try()
	for i, a := range nodes {
		try(a)
		for _, b := range nodes[i+1:] {
			if a.Z >= b.Z {
				try(a, b)
			}
			if b.Z >= a.Z {
				try(b, a)
			}
		}
	}
	return best, any
}
