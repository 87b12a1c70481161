package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/route"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// The sample's cut is where it must not be, its exhaust's stub beside a brake pipe: that is said of every end, with a miss all the same.
func TestAFoulStubIsSaid(t *testing.T) {
	r, faults := Judge(vehicles.Demo(), Builtin())
	require.Empty(t, faults)
	for _, find := range []func() Route{
		func() Route {
			return FindRoute(context.Background(), &r, vehicles.ExhaustRun, Target{Edge: LeftEdge, Upright: true}, nil)
		},
		func() Route { return FindNear(context.Background(), &r, vehicles.ExhaustRun, nil) },
	} {
		found := find()
		assert.Equal(t, "brake pipe across", found.Stub)
		assert.False(t, found.Found())
		require.NotNil(t, found.Run)
		require.NotEmpty(t, found.Misses)
	}
	r, faults = Judge(movedCut(vehicles.Demo(), 1405, 195), Builtin())
	require.Empty(t, faults)
	assert.Empty(t, newSeeker(context.Background(), &r, vehicles.ExhaustRun, Target{Edge: RightEdge}, nil).blocked())
}

// Exhaust and intake together are not sought from a stub that is blocked: what is too near to it is said with a miss, and no search is made.
func TestNoPairIsSoughtFromAFoulStub(t *testing.T) {
	r, faults := Judge(vehicles.Demo(), Builtin())
	require.Empty(t, faults)
	searches := 0
	p := FindPair(context.Background(), &r, func(int, int) { searches++ })
	assert.Equal(t, "brake pipe across", p.Exhaust.Stub)
	assert.False(t, p.Exhaust.Found())
	require.NotEmpty(t, p.Exhaust.Misses)
	assert.Zero(t, searches)
}

// Where the intake's stub alone is blocked its exhaust is found, once for each edge, and no intake is sought beside any of them.
func TestNoIntakeIsSoughtFromAFoulStub(t *testing.T) {
	job := movedCut(vehicles.Demo(), 1405, 195)
	mouth, _ := job.Stub(vehicles.IntakeRun)
	at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	box := job.Obstructions[0]
	box.Name, box.Kind, box.Drop, box.Measured = "bracket", "crossmember", vehicles.Span{From: -mouth.Z - 4, To: -mouth.Z + 4, Set: true}, true
	box.Place = vehicles.Place{X: vehicles.Pair{at(mouth.X + 15), at(mouth.X + 19)}, Y: vehicles.Pair{at(mouth.Y - 4), at(mouth.Y + 4)}}
	job.Obstructions = append(slices.Clone(job.Obstructions), box)
	r, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	require.Empty(t, newSeeker(context.Background(), &r, vehicles.ExhaustRun, Target{Edge: AnyEdge}, nil).blocked())
	searches := 0
	p := FindPair(context.Background(), &r, func(int, int) { searches++ })
	assert.True(t, p.Exhaust.Found())
	assert.Equal(t, "bracket", p.Intake.Stub)
	assert.False(t, p.Intake.Found())
	require.NotEmpty(t, p.Intake.Misses)
	assert.LessOrEqual(t, searches, len(Edges)*len(demands))
}

func movedCut(job vehicles.Job, x, y float64) vehicles.Job {
	cut := *job.Cut
	cut.At = [2]float64{x, y}
	return job.WithCut(cut)
}

// Where a stub is said to be blocked no search finds a run from there, on random floors with runs asked in full and not.
func TestNoRunIsFoundFromABlockedStub(t *testing.T) {
	const seed = 107
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	blocked, floors := 0, floorsFor(t, 4, 2)
	for n := range floors {
		kind := vehicles.RunKind(r.IntN(2))
		job := randomFloor(r, kind)
		if n%2 == 1 {
			job.RunChecks = vehicles.InFull
		}
		bare := job
		bare.Exhaust, bare.Intake = nil, nil
		result, faults := Judge(bare, Builtin())
		require.Empty(t, faults, n)
		result.Job = job
		s := newSeeker(context.Background(), &result, kind, Target{Edge: AnyEdge}, nil)
		if s.blocked() == "" {
			continue
		}
		blocked++
		_, kept := s.seek()
		require.False(t, kept, "floor %d: %s", n, s.blocked())
	}
	t.Logf("%d of %d stubs blocked", blocked, floors)
	assert.Positive(t, blocked)
}

// From a foul cut a fitter asks where the exhaust could go all the same: the answer is waited for.
func BenchmarkARouteFromAFoulStub(b *testing.B) {
	r, _ := Judge(vehicles.Demo(), Builtin())
	for b.Loop() {
		FindRoute(context.Background(), &r, vehicles.ExhaustRun, Target{Edge: RightEdge, Upright: true}, nil)
	}
}

// The nearest miss of a fuel line once had four of its points twice: none of it could be judged or straightened then.
func TestAMissHasNoPointTwice(t *testing.T) {
	job := movedCut(vehicles.Demo(), 1614.69, -432.9)
	line := *job.Fuel
	line.Path, line.Hanging = []vehicles.RunPoint{{X: 2244.66, Y: -35.25, Drop: 98.46}}, vehicles.Hanging{}
	job = job.WithRun(vehicles.ExhaustRun, nil).WithRun(vehicles.IntakeRun, nil).WithRun(vehicles.FuelRun, &line)
	r, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	miss := FindRoute(context.Background(), &r, vehicles.FuelRun, FuelTarget(&line), nil)
	require.False(t, miss.Found())
	path := miss.Run.Path
	for i := 1; i < len(path); i++ {
		assert.GreaterOrEqual(t, inSpace(path[i]).Sub(inSpace(path[i-1])).Norm(), route.OneCorner, path)
	}
	assert.False(t, math.IsInf(miss.short, 1))
}

// Of a line that begins above the floor the stub is as near to things as that of any other: what its way from the hole passes is no fault of the stub.
func TestTheStubOfALineFromAboveIsJudgedAlone(t *testing.T) {
	r := moved(t)
	line := *r.Job.Fuel
	line.Hanging, line.Supply.From = vehicles.Hanging{}, ""
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 150, Drop: -300}, {X: 1700, Y: 150, Drop: -300}, {X: 1700, Y: 150, Drop: 100}, {X: 1460, Y: 250, Drop: 80}}
	at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	for _, c := range []struct {
		name    string
		from    float64 // how far before the stub the rib begins, mm
		blocked string
	}{
		{"half way to the hole", 120, ""},
		{"at the stub", 3, "rib"},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := r.Job.WithRun(vehicles.FuelRun, &line)
			mouth, _ := job.Stub(vehicles.FuelRun)
			box := job.Obstructions[0]
			box.Name, box.Kind, box.Drop, box.Measured = "rib", "floor rib", vehicles.Span{From: 0, To: 60, Set: true}, true
			box.Place = vehicles.Place{X: vehicles.Pair{at(mouth.X + c.from), at(mouth.X + c.from + 20)}, Y: vehicles.Pair{at(mouth.Y - 200), at(mouth.Y + 200)}}
			job.Obstructions = append(slices.Clone(job.Obstructions), box)
			judged, faults := Judge(job, Builtin())
			require.Empty(t, faults)
			s := newSeeker(t.Context(), &judged, vehicles.FuelRun, FuelTarget(&line), nil)
			assert.Equal(t, c.blocked, s.blocked())
		})
	}
}

// So it is for fuel lines, half of them from a tank in the van: theirs begin above the floor, and go through it.
func TestNoFuelLineIsFoundToABlockedStub(t *testing.T) {
	const seed = 108
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	blocked, fromAbove, floors := 0, 0, floorsFor(t, 2, 4)
	for n := range floors {
		job, ok := withTank(r)
		if !ok {
			continue
		}
		if above := n%2 == 1; above {
			line := *job.Fuel
			x, y := math.Round(200+2400*r.Float64()), math.Round(-700+1400*r.Float64())
			line.Hanging, line.Supply.From = vehicles.Hanging{}, ""
			line.Path = append([]vehicles.RunPoint{{X: x + 100, Y: y, Drop: -200}, {X: x, Y: y, Drop: -200}, {X: x, Y: y, Drop: 60}}, line.Path[len(line.Path)-1])
			job = job.WithRun(vehicles.FuelRun, &line)
		}
		result, faults := Judge(job.WithRun(vehicles.FuelRun, nil), Builtin())
		require.Empty(t, faults, n)
		result.Job = job
		s := newSeeker(context.Background(), &result, vehicles.FuelRun, FuelTarget(job.Fuel), nil)
		if s.blocked() == "" {
			continue
		}
		blocked++
		if n%2 == 1 {
			fromAbove++
		}
		_, kept := s.seek()
		require.False(t, kept, "floor %d: %s", n, s.blocked())
	}
	t.Logf("%d of %d stubs blocked, %d of lines from above", blocked, floors, fromAbove)
	assert.Positive(t, fromAbove)
	assert.Greater(t, blocked, fromAbove)
}
