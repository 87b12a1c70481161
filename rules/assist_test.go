package rules

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Every option holds when it is judged, lies as near as is asked and is unlike the others; and no place of a grid as near, at any
// of the yaws, is worth more than the best.
func TestOptionsHoldAndNothingOfAGridIsWorthMore(t *testing.T) {
	demo, faults := Judge(vehicles.Demo(), Builtin())
	require.Empty(t, faults)
	with := 0
	for _, result := range append(searchedCases(t), demo) {
		wish, within := WishOf(&result)
		options := assistedOf(t, &result).Options
		for i, o := range options {
			with++
			assert.GreaterOrEqual(t, worstPlaced(t, result.Job, o.At, o.Yaw.Value), o.Margin-1e-6)
			assert.GreaterOrEqual(t, o.Margin, 0.)
			assert.LessOrEqual(t, o.Away, within)
			assert.InDelta(t, o.At.Sub(wish).Norm(), o.Away, 1e-9)
			assert.NotEqual(t, Foul, o.Verdict)
			for _, other := range options[:i] {
				assert.False(t, placing{Option: o}.alike(other))
			}
		}
		const grid = 60
		whole := wholeHeater(&result).Margins
		for dx := -within; dx <= within; dx += grid {
			for dy := -within; dy <= within; dy += grid {
				p := wish.Add(geometry.Point{X: dx, Y: dy})
				margin := whole.At(p).Margin
				if onFloor := geometry.NewRectangle(result.Plan.FloorMin, result.Plan.FloorMax, 0).Contains(p); !onFloor || margin < 0 || p.Sub(wish).Norm() > within {
					continue
				}
				require.NotEmpty(t, options, "%s: %v would hold", result.Job.Ref, p)
				best := min(options[0].Margin, enoughMargin) - perAway*options[0].Away
				worth := min(min(margin, enoughMargin)-perAway*p.Sub(wish).Norm(), (within-p.Sub(wish).Norm())*(1+perAway))
				if worth >= 0 { // what is worth less than nothing gives way to the roomiest place
					assert.LessOrEqual(t, worth, best+worthWithin*(1+perAway), "%s at %v", result.Job.Ref, p)
				}
			}
		}
	}
	assert.Greater(t, with, 10)
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

// On a floor with nothing on it one yaw is worth as much as another: three of them are given, just so far apart as options are.
func TestABareFloorHasThreeOptionsApart(t *testing.T) {
	job := boxed(t, 0)
	job.Fittings, job.Floor.Width, job.Wish.Within = nil, 2000, vehicles.Some(0.5)
	options := assisted(t, job).Options
	require.Len(t, options, 3)
	for i, o := range options {
		assert.InDelta(t, 0, o.Away, 0.5)
		for _, other := range options[:i] {
			assert.GreaterOrEqual(t, math.Abs(geometry.WithinHalfTurn(o.Yaw.Value-other.Yaw.Value)), 60.)
		}
	}
	assert.InDelta(t, 60, math.Abs(geometry.WithinHalfTurn(options[0].Yaw.Value-options[1].Yaw.Value)), 1e-9)
}

func assisted(t *testing.T, job vehicles.Job) Assistance {
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	return assistedOf(t, &result)
}

func assistedOf(t testing.TB, r *Result) Assistance {
	a, err := Assist(t.Context(), r, func(Stage, int, int) {})
	require.NoError(t, err)
	return a
}

// The advice is taken, and the job judged again: then there is an option, which holds; with a step less there is none.
func TestWhatStandsInTheWayMovedAsAdvisedMakesRoom(t *testing.T) {
	a := assisted(t, boxed(t, 0))
	require.Empty(t, a.Options)
	require.NotEmpty(t, a.Shifts)
	first := a.Shifts[0]
	assert.Equal(t, Shift{Fitting: 1, Obstruction: -1, Name: "battery box", By: geometry.Point{X: 55}}, first)

	moved := boxed(t, first.By.X)
	after := assisted(t, moved)
	require.NotEmpty(t, after.Options)
	for _, o := range after.Options {
		judged, faults := Judge(o.Taken(moved), Builtin())
		require.Empty(t, faults)
		for _, f := range judged.Findings {
			assert.NotEqual(t, Foul, f.Verdict, "%s against %s", f.ID(), f.Against)
		}
		assert.InDelta(t, 90, math.Abs(o.Yaw.Value), 1e-9)
	}
	assert.Empty(t, assisted(t, boxed(t, first.By.X-shiftStep)).Options, "a step less does not do")
	require.NotNil(t, a.Beyond)
	assert.Greater(t, a.Beyond.Away, 60.)
}

func TestWithoutAHeaterThereIsNothingToPlace(t *testing.T) {
	job := vehicles.Demo()
	job.Heater = nil
	job.Exhaust, job.Intake, job.Fuel = nil, nil, nil
	assert.Equal(t, Assistance{}, assisted(t, job))
}

func TestAWishOutOfReachOfTheFloorHasNoOptions(t *testing.T) {
	job := vehicles.Demo()
	job.Wish = &vehicles.Wish{At: [2]float64{-5000, 0}, Within: vehicles.Some(100)}
	job.Obstructions, job.Fittings, job.Exhaust, job.Intake, job.Fuel = nil, nil, nil, nil, nil
	a := assisted(t, job)
	assert.Empty(t, a.Options)
	assert.Empty(t, a.Shifts)
	require.NotNil(t, a.Beyond)
}

func TestASearchThatIsStoppedSaysSo(t *testing.T) {
	result, faults := Judge(boxed(t, 0), Builtin())
	require.Empty(t, faults)
	for _, last := range []Stage{AtYaws, AtInTheWay, AtBeyond} {
		ctx, stop := context.WithCancel(context.Background())
		a, err := Assist(ctx, &result, func(at Stage, done, of int) {
			assert.LessOrEqual(t, at, last, "it goes no further")
			assert.Less(t, done, of)
			if at == last {
				stop()
			}
		})
		assert.ErrorIs(t, err, context.Canceled)
		assert.Equal(t, Assistance{}, a)
	}
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

// The list comes a moment after its key: half a second is soon enough, two are not.
func BenchmarkAssist(b *testing.B) {
	result, faults := Judge(vehicles.Demo(), Builtin())
	require.Empty(b, faults)
	for b.Loop() {
		assistedOf(b, &result)
	}
}
