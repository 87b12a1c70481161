package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// bendableFloors is how many random floors are looked at.
func bendableFloors() int {
	if testing.Short() {
		return 100
	}
	return 400
}

// On random floors a run of any kind that is found leaves its stub straight down where one that does keeps every rule, and it has no corner
// that could be left out and turns by less than a bender does: none that lies on a straight line at all.
func TestFoundRunsCanBeBentAndLeaveTheirStubsStraightDown(t *testing.T) {
	t.Parallel()
	const seed = 79
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	var found [len(vehicles.RunKinds)]int
	slight, sloping := 0, 0
	for n := range bendableFloors() {
		s := seekerOn(t, r, vehicles.RunKind(n%len(vehicles.RunKinds)))
		if s == nil {
			continue
		}
		best, kept := s.seek()
		if !kept {
			continue
		}
		found[s.kind]++
		if aside(best.corners) > 0 {
			sloping++
			straightDown := demands[0]
			straightDown.upright = true
			require.False(t, s.among(straightDown).keeps(), "floor %d", n)
		}
		for i := 1; i < len(best.corners)-1; i++ {
			turn := turnAt(best.corners[i-1], best.corners[i], best.corners[i+1])
			if turn >= leastTurn {
				continue
			}
			slight++
			without := slices.Delete(slices.Clone(best.corners), i, i+1)
			require.Positive(t, s.trial(0, best.lower).worth(without, 0, math.Inf(1)).Short, "floor %d, %s: corner %d of %v, %.3f degrees, is needed", n, s.kind, i, best.corners, turn)
		}
	}
	t.Logf("%d runs by kind, %d corners that turn by little, %d from stubs that slope", found, slight, sloping)
	all := found[0] + found[1] + found[2]
	for kind, some := range found {
		assert.Greater(t, some, bendableFloors()/8, vehicles.RunKind(kind))
	}
	assert.Less(t, slight, all/50)
	assert.Less(t, sloping, all/3, "many of these stubs have something below them")
}

// seekerOn is a search for a run of a kind on a random floor; nil where nobody knows where it begins.
func seekerOn(t *testing.T, r *rand.Rand, kind vehicles.RunKind) *seeker {
	if kind != vehicles.FuelRun {
		return newSeeker(context.Background(), floorToSeek(t, randomFloor(r, kind)), kind, Target{Edge: AnyEdge, Upright: true}, nil)
	}
	job, ok := withTank(r)
	if !ok {
		return nil
	}
	to := FuelTarget(job.Fuel)
	to.Upright = true
	return newSeeker(context.Background(), floorToSeek(t, job), kind, to, nil)
}

// floorToSeek is a floor judged without its runs, which are then to be found.
func floorToSeek(t *testing.T, job vehicles.Job) *Result {
	bare := job
	bare.Exhaust, bare.Intake, bare.Fuel = nil, nil, nil
	result, faults := Judge(bare, Builtin())
	require.Empty(t, faults)
	result.Job = job
	return &result
}

// What no hand can make counts, each by itself: by hand, a corner of atan(20 / 400) = 2.9 degrees, 40 mm of leg between two bends of
// 90 degrees that take 60 each, and legs of 60 to 65 mm beside one.
func TestWhatNobodyCanBendCounts(t *testing.T) {
	of := func(corners ...geometry.Point3) float64 {
		line := geometry.Rounded(corners, 60)
		return awkward(&line)
	}
	a := geometry.Point3{}
	assert.Zero(t, of(a, geometry.Point3{X: 400}))
	assert.Zero(t, of(a, geometry.Point3{X: 400}, geometry.Point3{X: 800}), "straight on")
	assert.Zero(t, of(a, geometry.Point3{X: 400}, geometry.Point3{X: 800, Y: 40}), "5.7 degrees")
	assert.InDelta(t, 100, of(a, geometry.Point3{X: 400}, geometry.Point3{X: 800, Y: 20}), 1e-9)
	b, c := geometry.Point3{X: 400}, geometry.Point3{X: 400, Y: 160}
	assert.InDelta(t, 100*(2-40.0/50), of(a, b, c, geometry.Point3{X: 0, Y: 160}), 1e-6)
	assert.Zero(t, of(a, b, geometry.Point3{X: 400, Y: 170}, geometry.Point3{X: 0, Y: 170}), "50 mm between bends")
	assert.InDelta(t, 100, of(a, geometry.Point3{X: 60}, geometry.Point3{X: 60, Y: 400}), 1e-6, "nothing to spare between the stub and the first bend")
	assert.InDelta(t, 40, of(a, geometry.Point3{X: 63}, geometry.Point3{X: 63, Y: 400}), 1e-6, "3 of 5 mm")
	assert.InDelta(t, 100, of(a, geometry.Point3{X: 400}, geometry.Point3{X: 400, Y: 60}), 1e-6, "nor between the last bend and the mouth")
	assert.Zero(t, of(a, geometry.Point3{X: 65}, geometry.Point3{X: 65, Y: 65}), "5 mm each")
}

// Three layouts of the sample van: none is warned of.
func TestTheRunsOfLayoutsLeaveTheirStubsStraightDown(t *testing.T) {
	r := judged(t, vehicles.Demo())
	for _, l := range layoutsOf(t, &r, 2).Best {
		for _, of := range vehicles.RunKinds {
			path := slices.Clone(l.Result.Plan.Run(of).Path)
			if of == vehicles.FuelRun {
				slices.Reverse(path)
			}
			assert.Zero(t, aside(path), "%s: %v", of, path)
		}
	}
}

// The sample's layouts had bends of 5, 7 and 9 degrees for a few mm more to spare: they have none so slight, and keep no less than a step below
// what is sought at the most.
func TestTheRunsOfLayoutsHaveNoSlightBends(t *testing.T) {
	r := judged(t, vehicles.Demo())
	for _, l := range layoutsOf(t, &r, 2).Best {
		assert.GreaterOrEqual(t, l.Least.Or(math.Inf(1)), widest-marginGrade)
		for _, of := range vehicles.RunKinds {
			path := l.Result.Plan.Run(of).Path
			for i := 1; i < len(path)-1; i++ {
				assert.GreaterOrEqual(t, turnAt(path[i-1], path[i], path[i+1]), slightTurn, "%s: corner %d of %v", of, i, path)
			}
		}
	}
}

// Two corners of a few mm beside each other, which the search leaves where it turns round something, are one in what is found: nobody makes two bends
// within a thumb's breadth, and neither is needed for anything that is asked.
func TestCornersOfAFoundFuelLineAreJoined(t *testing.T) {
	for _, at := range [][2]float64{{1425, 225}, {1470, 240}} {
		job := vehicles.Demo()
		cut := *job.Cut
		cut.At = at
		job = job.WithCut(cut).WithRun(vehicles.FuelRun, nil)
		r, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		pair := FindPair(t.Context(), &r, nil)
		require.True(t, pair.Exhaust.Found() && pair.Intake.Found())
		mouth, _ := job.Stub(vehicles.FuelRun)
		line, known := UsualFuel(&r, mouth)
		require.True(t, known)
		found := FindFuelBeside(t.Context(), &r, pair, &line, nil)
		require.True(t, found.Found())
		path := found.Run.Path
		for i := 2; i < len(path)-1; i++ {
			assert.GreaterOrEqual(t, inSpace(path[i]).Sub(inSpace(path[i-1])).Norm(), 20., "%v: %v", at, path)
		}
	}
}

// One corner for two, by hand: from along x by two bends of 22.5 degrees to a line at 45 degrees, which crosses the first leg
// 111.7 along it; a mm farther out; and between them. Where the run hardly turns, or turns back, the legs meet nowhere near.
func TestOnePlaceForTwoCorners(t *testing.T) {
	at := func(x, y float64) geometry.Point3 { return geometry.Point3{X: x, Y: y, Z: -100} }
	assert.Equal(t, []geometry.Point3{at(112, 0), at(112, -1), at(110, 4)}, onePlace([]geometry.Point3{at(0, 0), at(100, 0), at(120, 8.284), at(200, 88.284)}))
	assert.Equal(t, []geometry.Point3{at(110, 0)}, onePlace([]geometry.Point3{at(0, 0), at(100, 0), at(120, 0), at(200, 1)}))
	assert.Equal(t, []geometry.Point3{at(100, 10)}, onePlace([]geometry.Point3{at(0, 0), at(100, 0), at(100, 20), at(0, 20)}))
}
