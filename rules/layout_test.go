package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

func layoutsOf(t testing.TB, r *Result, workers int) Layouts {
	found, err := FindLayouts(t.Context(), r, workers, func(Progress) {})
	require.NoError(t, err)
	return found
}

// assertProposed holds layouts to what is said of them: judged again each is what it claims, no two are alike, the better stands first.
func assertProposed(t *testing.T, of *Result, found Layouts) {
	require.LessOrEqual(t, len(found.Best), mostLayouts)
	for i := range found.Best {
		l := &found.Best[i]
		again, faults := Judge(l.Result.Job, of.Book)
		require.Empty(t, faults)
		assert.Equal(t, again.Verdict, l.Verdict())
		least, misses := math.Inf(1), 0
		for k := range again.Findings {
			f := &again.Findings[k]
			if f.Rule.Unit == MM && f.Margin.Set && (f.Rule.ByKind == AnObstruction || f.Subject.onCut()) {
				least = min(least, f.Margin.Value)
			}
			if f.Verdict != Clear {
				misses++
			}
		}
		assert.InDelta(t, least, l.Least.Or(math.Inf(1)), 1e-9)
		assert.Len(t, l.Misses, misses)
		assert.Equal(t, l.At, again.Plan.Cut.At)
		if of.Job.Cut == nil || l.At != of.Plan.Cut.At { // a cut that stays is where it is
			assert.Equal(t, geometry.Point{X: math.Round(l.At.X), Y: math.Round(l.At.Y)}, l.At, "a tape is read in whole mm")
		}
		assert.InDelta(t, 0, geometry.WithinHalfTurn(l.Yaw-l.Result.Job.Heater.Yaw), 1e-9)
		assert.NotNil(t, l.Result.Job.Exhaust)
		assert.NotNil(t, l.Result.Job.Intake)
		if of.Job.Fuel != nil || FuelLacks(&of.Job) != "" {
			assert.Equal(t, of.Job.Fuel != nil, l.Result.Job.Fuel != nil)
		}
		for k := range found.Best[:i] {
			other := &found.Best[k]
			apart := l.At.Sub(other.At).Norm() >= 300 || l.Area != other.Area
			assert.True(t, apart || l.Edge != other.Edge || other.AsItIs || l.AsItIs, "%v and %v do not differ to the eye", l.At, other.At)
			if (other.broken > 0) == (l.broken > 0) {
				assert.LessOrEqual(t, other.Verdict(), l.Verdict())
			} else {
				assert.Zero(t, other.broken)
			}
		}
	}
}

// The sample's cut is foul where it is, and straight ahead of it there is room: all three proposals keep every rule.
func TestTheSampleHasThreeLayoutsThatBreakNoRule(t *testing.T) {
	r := judged(t, vehicles.Demo())
	require.Equal(t, Foul, r.Verdict)
	found := layoutsOf(t, &r, 2)
	require.Len(t, found.Best, 3)
	assertProposed(t, &r, found)
	for _, l := range found.Best {
		assert.NotEqual(t, Foul, l.Verdict())
		assert.NotEmpty(t, l.Area)
	}
	assert.True(t, slices.ContainsFunc(found.Best, func(l Layout) bool { return l.Away <= 300 }), "one is near where the cut is wanted")
	assert.Equal(t, "A", found.Best[0].Area, "the area of the best is ranked first")
}

func TestLayoutsOfCrowdedFloorsAreWhatTheyClaim(t *testing.T) {
	kept, roomy := 0, 0
	for _, n := range []int{0, 12, 25, 40, 60} {
		r := judged(t, crowded(n, n%2 == 0))
		found := layoutsOf(t, &r, 2)
		require.Len(t, found.Best, 3, n)
		assertProposed(t, &r, found)
		for i := range found.Best {
			if found.Best[i].Verdict() != Foul {
				kept++
				roomy += asNumber(found.Best[i].Least.Or(math.Inf(1)) >= 10)
			} else {
				assert.Equal(t, Foul, found.Best[i].Misses[0].Verdict, "what it breaks is named")
			}
		}
	}
	assert.GreaterOrEqual(t, kept, 12)
	assert.GreaterOrEqual(t, roomy, 10, "where there is room the runs do not graze what they pass")
}

// What a tape is to find is in whole mm where nothing of the floor is, and where the wish is not: the cut, and every corner of every run.
func TestLayoutsLieOnWholeMillimetres(t *testing.T) {
	const seed = 89
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	for n := range 3 {
		job := randomFloor(r, vehicles.ExhaustRun)
		for known := false; n == 0 && !known; { // the line from the tank is proposed
			job, known = withTank(r)
		}
		job.Exhaust, job.Fuel = nil, nil
		job.Cut.At[0] += 0.37
		job.Cut.At[1] -= 0.61
		result := judged(t, job)
		found := layoutsOf(t, &result, 2)
		require.NotEmpty(t, found.Best)
		assertProposed(t, &result, found)
		for i := range found.Best {
			assertWhole(t, &found.Best[i].Result.Job)
		}
	}
}

// assertWhole holds the corners of a job's runs to whole mm, but for the end that is where the stub is.
func assertWhole(t *testing.T, job *vehicles.Job) {
	t.Helper()
	for _, of := range vehicles.RunKinds {
		run := job.Run(of)
		if run == nil {
			continue
		}
		stub, _ := job.Stub(of)
		for _, p := range run.Path {
			if inSpace(p).Sub(stub).Norm() > 0.01 {
				assert.Equal(t, vehicles.RunPoint{X: math.Round(p.X), Y: math.Round(p.Y), Drop: math.Round(p.Drop)}, p, of)
			}
		}
	}
}

// However many work on it, the same comes out.
func TestLayoutsAreTheSameEachTime(t *testing.T) {
	r := judged(t, crowded(40, true))
	first := layoutsOf(t, &r, 1)
	for _, workers := range []int{2, 3} {
		again := layoutsOf(t, &r, workers)
		require.Len(t, again.Best, len(first.Best))
		for i := range first.Best {
			assert.Equal(t, first.Best[i].Result.Job, again.Best[i].Result.Job)
		}
		assert.Equal(t, first.Areas, again.Areas)
	}
}

func TestADrilledCutStaysAndItsRunsAreProposed(t *testing.T) {
	job := crowded(40, true)
	job = job.WithDrilled(&vehicles.Pair{survey.FromNumber(1212, false), survey.FromNumber(238, false)})
	r := judged(t, job)
	found := layoutsOf(t, &r, 2)
	require.NotEmpty(t, found.Best)
	assertProposed(t, &r, found)
	for _, l := range found.Best {
		assert.Equal(t, job.Cut, l.Result.Job.Cut)
		assert.Equal(t, job.Heater, l.Result.Job.Heater)
	}
}

// Whatever stage a search is stopped at, it says so and proposes nothing.
func TestASearchForLayoutsThatIsStoppedSaysSo(t *testing.T) {
	job := boxed(t, 0)
	job.Rules["exhaust.length"] = 10 // no run keeps that
	r := judged(t, job)
	for _, last := range []Stage{AtWays, AtMisses, AtInTheWay} {
		ctx, stop := context.WithCancel(context.Background())
		var reached atomic.Bool
		found, err := FindLayouts(ctx, &r, 1, func(p Progress) {
			assert.LessOrEqual(t, p.At, last, "it goes no further")
			if p.At == last {
				reached.Store(true)
				stop()
			}
		})
		assert.True(t, reached.Load(), last)
		assert.ErrorIs(t, err, context.Canceled)
		assert.Equal(t, Layouts{}, found)
		stop()
	}
}

func TestWithoutAHeaterThereIsNothingToLayOut(t *testing.T) {
	job := vehicles.Demo()
	job.Heater, job.Exhaust, job.Intake, job.Fuel = nil, nil, nil, nil
	r := judged(t, job)
	assert.Equal(t, Layouts{}, layoutsOf(t, &r, 2))
}

// boxed is a heater wanted where a battery box stands in the way: it may stand across the van only, 112.5 mm of body and
// space before its middle, and that may go back to x = 1440. Worked out by hand: the box's rear edge at 1500 has to be at
// 1552.5 and 1 mm more, which in steps of 5 mm is 55 mm forward.
func boxed(t *testing.T, forward float64) vehicles.Job {
	job, err := vehicles.ParseJob([]byte(`
format = 1
[job]
ref = "boxed"
[floor]
from = 0
length = 3000
width = 800
thickness = 20
ground = 400
[[fitting]]
name = "bench"
x = [900, 1300]
y = [-400, 400]
rise = [0, 900]
[[fitting]]
name = "battery box"
x = [1500, 1800]
y = [-300, 300]
rise = [0, 400]
[heater]
class = "2 kW"
[wish]
at = [1500, 0]
within = 60
`), "boxed.toml")
	require.NoError(t, err)
	job.Rules = map[string]float64{"cut.on-floor": 0, "plate.on-floor": 0, "plate.fitting": 0, "body.space": 0}
	box := job.Fittings[1]
	box.X = vehicles.Pair{survey.FromNumber(1500+forward, false), survey.FromNumber(1800+forward, false)}
	job.Fittings = job.Fittings.With(1, box)
	return job
}

// With no room at the wish, what would make room is named with the least move; with that done there is a layout there.
func TestWhatStandsInTheWayMovedAsAdvisedMakesRoom(t *testing.T) {
	r := judged(t, boxed(t, 0))
	found := layoutsOf(t, &r, 2)
	require.NotEmpty(t, found.Shifts)
	first := found.Shifts[0]
	assert.Equal(t, Shift{Fitting: 1, Obstruction: -1, Name: "battery box", By: geometry.Point{X: 55}}, first)
	for _, l := range found.Best {
		assert.True(t, l.Beyond, "what there is lies beyond the wish")
	}
	moved := judged(t, boxed(t, first.By.X))
	after := layoutsOf(t, &moved, 2)
	require.NotEmpty(t, after.Best)
	assert.False(t, after.Best[0].Beyond)
	assert.InDelta(t, 90, math.Abs(after.Best[0].Yaw), 1e-9)
}

func TestTheWishIsTheJobsOrWhereTheCutIs(t *testing.T) {
	result := Result{Job: vehicles.Demo()}
	at, within := WishOf(&result)
	assert.Equal(t, geometry.Point{X: result.Job.Cut.At[0], Y: result.Job.Cut.At[1]}, at)
	assert.Equal(t, 300., within)
	result.Job.Wish = &vehicles.Wish{At: [2]float64{800, -100}, Within: vehicles.Some(120)}
	at, within = WishOf(&result)
	assert.Equal(t, geometry.Point{X: 800, Y: -100}, at)
	assert.Equal(t, 120., within)
}

// A job without a fuel line is proposed one from its tank, laid and judged like the others, where it has one tank to begin at.
func TestLayoutsProposeAFuelLineFromTheTank(t *testing.T) {
	job := vehicles.Demo().WithRun(vehicles.FuelRun, nil)
	r := judged(t, job)
	found := layoutsOf(t, &r, 2)
	require.NotEmpty(t, found.Best)
	assertProposed(t, &r, found)
	for _, l := range found.Best {
		line := l.Result.Job.Fuel
		require.NotNil(t, line)
		assert.Equal(t, "fuel tank", line.Supply.From)
		assert.NotNil(t, line.Pump)
		tank := &l.Result.Plan.Obstructions[fuelTanks(&l.Result.Job)[0]]
		assert.InDelta(t, 0, tank.Prism.GapPoint(l.Result.Plan.Fuel.Path[0]).Gap, math.Sqrt2/2+0.01, "it begins at the tank, on a whole mm")
	}
	second := job.Obstructions[fuelTanks(&job)[0]]
	second.Name = "auxiliary tank"
	job.Obstructions = append(slices.Clone(job.Obstructions), second)
	assert.Equal(t, "2 fuel tanks are entered", FuelLacks(&job))
	two := judged(t, job)
	mouth, _ := job.Stub(vehicles.FuelRun)
	_, known := UsualFuel(&two, mouth)
	assert.False(t, known)
}

// A layout without a fuel line although the van has one tank says what the nearest miss of one breaks, and goes behind those with one. The
// library's long van has places that leave it no way, and one that does.
func TestALayoutWithoutAFuelLineHasItsNearestMiss(t *testing.T) {
	van, ok := vehicles.FromLibrary("long-van")
	require.True(t, ok)
	r := judged(t, van)
	found := layoutsOf(t, &r, 2)
	require.NotNil(t, found.Best[0].Result.Job.Fuel)
	missed := 0
	for i := range found.Best {
		l := &found.Best[i]
		if l.Result.Job.Fuel != nil {
			assert.Zero(t, missed, "behind one without")
			assert.Nil(t, l.FuelMiss)
			continue
		}
		missed++
		require.NotNil(t, l.FuelMiss)
		require.NotNil(t, l.FuelMiss.Run)
		assert.Equal(t, Foul, l.FuelMiss.Verdict)
		assert.Negative(t, l.FuelMiss.Misses[0].Margin.Value)
		data, err := LayoutsJSON(Layouts{Best: found.Best[i : i+1]})
		require.NoError(t, err)
		assert.Contains(t, string(data), `"fuel_miss":{"path":`)
	}
	assert.Positive(t, missed)
}

// A place near the wish goes before one far off with a little more room, and one with much more before it; where nobody has said where
// the heater is wanted room alone counts. By hand: 10 mm of the way count as 1 mm of margin.
func TestANearPlaceGoesBeforeALittleMoreRoom(t *testing.T) {
	at := func(margin, away float64) *Layout {
		return &Layout{Least: vehicles.Some(margin), Away: away, pull: away}
	}
	assert.Negative(t, better(at(2.4, 145), at(10.3, 970)))
	assert.Negative(t, better(at(15, 50), at(20, 200)))
	assert.Positive(t, better(at(2, 50), at(40, 200)), "38 mm more for 150 mm")
	assert.Negative(t, better(at(60, 50), at(500, 60)), "more than much is no better")
	a, b := at(2.4, 145), at(10.3, 970)
	a.pull, b.pull = 0, 0
	assert.Positive(t, better(a, b))
}

// The job's own layout is ranked with what is found where it breaks no rule, once; where it does it is not.
func TestTheJobsOwnLayoutIsOneOfThose(t *testing.T) {
	own := func(found Layouts) (list []Layout) {
		for _, l := range found.Best {
			if l.AsItIs {
				list = append(list, l)
			}
		}
		return list
	}
	for _, checks := range []string{"", vehicles.InFull} {
		job := moved(t).Job
		job.RunChecks = checks
		r := judged(t, job)
		require.NotEqual(t, Foul, r.Verdict)
		found := layoutsOf(t, &r, 2)
		assertProposed(t, &r, found)
		there := own(found)
		require.Len(t, there, 1, checks)
		assert.Equal(t, job, there[0].Result.Job)
		assert.Zero(t, there[0].Away)
	}
	r := judged(t, vehicles.Demo())
	assert.Empty(t, own(layoutsOf(t, &r, 2)), "the sample's cut is foul")
	bare := judged(t, moved(t).Job.WithRun(vehicles.IntakeRun, nil))
	assert.Empty(t, own(layoutsOf(t, &bare, 2)), "it is not whole")
}

// Beside the job's own one that is alike stands only where it is better; nothing else alike is proposed twice.
func TestOnlyTheBetterStandsBesideTheOwn(t *testing.T) {
	at := func(x, margin, yaw float64, own bool) *Layout {
		return &Layout{At: geometry.Point{X: x}, Least: vehicles.Some(margin), Edge: LeftEdge, Yaw: yaw, turned: yaw != 0, AsItIs: own}
	}
	names := func(list ...*Layout) (xs []float64) {
		slices.SortFunc(list, better)
		for _, l := range chosen(list) {
			xs = append(xs, l.At.X)
		}
		return xs
	}
	assert.Equal(t, []float64{100, 500}, names(at(100, 20, 0, true), at(101, 12, 0, false), at(500, 8, 0, false)))
	assert.Equal(t, []float64{101, 100, 500}, names(at(100, 20, 0, true), at(101, 32, 0, false), at(500, 8, 0, false)))
	assert.Equal(t, []float64{101, 500}, names(at(100, 20, 0, false), at(101, 32, 90, false), at(102, 31, 60, false), at(500, 8, 0, false)))
	assert.Equal(t, []float64{900, 500, 100}, names(at(100, 6, 0, true), at(500, 30, 0, false), at(700, 20, 0, false), at(900, 40, 0, false)), "it has a place whatever it is worth")
}

// A heater is not turned for less than is told apart. By hand: of 12 and 18 mm the steps are 2 and 3, less one for the turn 2.
func TestTheJobsHeadingIsPreferredWhereItIsAsGood(t *testing.T) {
	at := func(margin float64, turned bool) *Layout {
		return &Layout{Least: vehicles.Some(margin), turned: turned}
	}
	assert.Negative(t, better(at(12, false), at(18, true)))
	assert.Positive(t, better(at(12, false), at(21, true)))
	for _, n := range []int{12, 60} {
		r := judged(t, crowded(n, true))
		assert.Equal(t, r.Job.Heater.Yaw, layoutsOf(t, &r, 2).Best[0].Yaw, n)
	}
}

// A layout that leads its fuel line a long way round goes behind one with less room, and none of the sample's does. By hand: its ends 500
// apart, a line of 1200 is not yet twice that and 200 more, one of 1201 is.
func TestAFuelLineGoesNoLongWayRound(t *testing.T) {
	line := func(aside float64) *vehicles.LaidRun {
		path := []geometry.Point3{{}, {X: 250, Y: aside}, {X: 500}}
		return &vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, 0)}
	}
	out := math.Sqrt(600*600 - 250*250)
	assert.False(t, detour(line(out)))
	assert.True(t, detour(line(out+1)))
	assert.False(t, detour(nil))
	assert.Negative(t, better(&Layout{Least: vehicles.Some(5)}, &Layout{Least: vehicles.Some(40), Detour: true}))
	r := judged(t, vehicles.Demo())
	for _, l := range layoutsOf(t, &r, 2).Best {
		assert.False(t, l.Detour, "%v", l.Result.Job.Fuel.Path)
	}
}

// Layouts are alike that nobody would tell apart: near each other, on one open area, their exhausts out along one edge.
func TestAlike(t *testing.T) {
	one := Layout{At: geometry.Point{X: 1000, Y: 200}, Edge: LeftEdge}
	for name, c := range map[string]struct {
		other func(*Layout)
		alike bool
	}{
		"the same":         {func(*Layout) {}, true},
		"turned":           {func(l *Layout) { l.Yaw = 90 }, true},
		"nearly so far":    {func(l *Layout) { l.At.X += LayoutsApart - 1 }, true},
		"so far apart":     {func(l *Layout) { l.At.X += LayoutsApart }, false},
		"another edge":     {func(l *Layout) { l.Edge = RightEdge }, false},
		"another area":     {func(l *Layout) { l.area++ }, false},
		"far, out as well": {func(l *Layout) { l.At.Y -= LayoutsApart; l.Edge = RightEdge }, false},
	} {
		t.Run(name, func(t *testing.T) {
			other := one
			c.other(&other)
			assert.Equal(t, c.alike, one.Alike(&other))
			assert.Equal(t, c.alike, other.Alike(&one))
		})
	}
}
