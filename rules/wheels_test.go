package rules

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// In whatever order the wheels stand in the job, the hindmost tyre is that of the rear axle, and the foremost that of the front axle.
func TestTheOutermostTyresCountInAnyOrder(t *testing.T) {
	job := vehicles.Job{Floor: vehicles.Floor{Length: 4000}}
	tyres := []vehicles.Wheel{{At: [2]float64{780, 700}, Across: 660}, {At: [2]float64{820, -700}, Across: 680}, {At: [2]float64{3900, 700}, Across: 640}, {At: [2]float64{3940, -700}, Across: 620}}
	for a := range tyres {
		for b := range tyres {
			for c := range tyres {
				d := 6 - a - b - c
				if a == b || b == c || a == c || d < 0 || d > 3 {
					continue
				}
				job.Wheels = []vehicles.Wheel{tyres[a], tyres[b], tyres[c], tyres[d]}
				rear, front := axles(&job)
				assert.Equal(t, &axle{780, 330}, rear, "%d %d %d %d", a, b, c, d)
				assert.Equal(t, &axle{3940, 310}, front, "%d %d %d %d", a, b, c, d)
			}
		}
	}
}

// What stands right over an axle hangs neither behind it nor between the axles, and outside of them no crest is asked.
func TestWhereARampIsAsked(t *testing.T) {
	rear, front := &axle{800, 340}, &axle{3900, 340}
	for x, want := range map[float64][2]bool{
		799.9: {true, false}, 800: {false, false}, 800.1: {false, true}, 3899.9: {false, true}, 3900: {false, false}, 3900.1: {false, false},
	} {
		at := geometry.Point3{X: x, Z: -200}
		_, departs := departing(450, rear, front, placeAt(at), 13)
		_, breaks := breaking(450, rear, front, placeAt(at), 13)
		assert.Equal(t, want, [2]bool{departs, breaks}, x)
		_, departs = departing(450, nil, front, placeAt(at), 13)
		_, unfronted := breaking(450, rear, nil, placeAt(at), 13)
		_, unreared := breaking(450, nil, front, placeAt(at), 13)
		assert.False(t, departs || unfronted || unreared, x)
	}
}

// How well the intake's mouth is known beside a tyre's track is how well a run is put up there.
func TestTheSigmaOfTheSpray(t *testing.T) {
	result := judged(t, vehicles.Demo())
	j := newJudge(&result.Job, &result.Plan, result.Book)
	seen := 0
	for _, f := range result.Findings {
		if f.Rule != intakeSpray {
			continue
		}
		seen++
		require.InDelta(t, 1, f.N.Norm(), 1e-9)
		assert.InDelta(t, j.runMark(f.At[0]).along(f.N), f.Sigma*f.Sigma, 1e-9)
		assert.Positive(t, f.Sigma)
	}
	assert.Len(t, result.Job.Wheels, seen)
}

// Along a run each place is said, every 5 mm on straight pipe and every 1 mm in bends, and no more often; along the muffler it is the
// muffler's, and no pipe is there.
func TestEachRoundOfARunIsSaid(t *testing.T) {
	plan := judged(t, vehicles.Demo()).Plan
	require.NotNil(t, plan.Exhaust.Muffler)
	for _, run := range []*vehicles.LaidRun{plan.Exhaust, plan.Intake, plan.Fuel} {
		length, begin, end := run.Line.Length(), run.Line.Length(), run.Line.Length()
		var pipe, muffler []geometry.Point3
		eachRound(run, everyPlace, func(at geometry.Point3, radius float64) {
			if radius == run.Radius {
				pipe = append(pipe, at)
			} else {
				muffler = append(muffler, at)
			}
		})
		if m := run.Muffler; m != nil {
			begin, end = m.Begin, m.End
			axis := geometry.Segment3{A: m.Axis[0], B: m.Axis[1]}
			long := m.Axis[1].Sub(m.Axis[0]).Norm()
			for s := 0.0; s <= long; s++ {
				assert.LessOrEqual(t, nearest(muffler, axis.At(s/long)), rampStep/2+1e-6, s)
			}
			assert.InDelta(t, long/rampStep, len(muffler), 2)
			assert.Zero(t, nearest(muffler, axis.A)+nearest(muffler, axis.B))
		}
		most, straight := 0.0, func(s float64) bool {
			for _, leg := range run.Line.Legs {
				if s >= leg.Begin && s <= leg.End {
					return true
				}
			}
			return false
		}
		const fine = 0.25
		for s := 0.0; s <= length; s += fine {
			apart := float64(bendStep)
			if straight(s) {
				apart = rampStep
			}
			switch near := nearest(pipe, run.Line.At(s)); {
			case s <= begin || s >= end:
				most += fine / apart
				assert.LessOrEqual(t, near, apart/2+1e-6, "%v of %v", s, length)
			case s > begin+rampStep && s < end-rampStep:
				assert.Greater(t, near, fine, "%v of %v is the muffler's", s, length)
			}
		}
		assert.InDelta(t, 0, nearest(pipe, run.Line.At(0))+nearest(pipe, run.Line.At(length)), 1e-9)
		assert.LessOrEqual(t, float64(len(pipe)), most+2*float64(len(run.Line.Legs))+4)
	}
}

// nearest is how near the nearest of some places is to another.
func nearest(places []geometry.Point3, p geometry.Point3) float64 {
	least := math.Inf(1)
	for _, q := range places {
		least = min(least, q.Sub(p).Norm())
	}
	return least
}

// The search keeps a run above a ramp piece by piece: no higher than is asked anywhere on a piece, and wherever that is above the ground.
func TestTheWayOverRampsIsNoHigherThanIsAsked(t *testing.T) {
	job := vehicles.Demo()
	job.Rules = map[string]float64{"runs.departure": 25, "runs.breakover": 25}
	result := judged(t, job)
	rear, front := axles(&job)
	for rule, steep := range map[*Rule]ramp{departure: departing, breakover: breaking} {
		c := newCourse(newJudge(&result.Job, &result.Plan, result.Book), vehicles.IntakeRun, nil, demand{searched: coverage})
		asked := func(x float64) float64 { return c.rampAt(steep, rear, front, x, 25) }
		low, high := c.query.Min, c.query.Max
		c.query.Obstacles = nil
		wayOverRamps(steep)(c, rule)
		want := 0
		for x := low.X; x < high.X; x += rampPiece {
			if min(asked(x), asked(x+rampPiece)) > low.Z-c.radius {
				want++
			}
		}
		assert.Len(t, c.query.Obstacles, want, rule.ID)
		assert.NotZero(t, want, rule.ID)
		for _, o := range c.query.Obstacles {
			from, to := o.Prism.Footprint.Bounds()
			top := o.Prism.High + c.radius - c.searched*c.tape.HeightU()
			assert.InDelta(t, min(asked(from.X), asked(to.X)), top, 1e-9, "%s: %v to %v", rule.ID, from.X, to.X)
			assert.InDelta(t, rampPiece, to.X-from.X, 1e-9)
		}
		c.query.Obstacles, c.uncut = nil, true
		wayOverRamps(steep)(c, rule)
		assert.Empty(t, c.query.Obstacles, "where nothing but distances is asked")
	}
}

// everyPlace has each place of a run said.
func everyPlace(rampStretch, float64) bool { return true }

// On random runs, in front of tyres and behind them, some of them in the ground, the ramp that comes nearest is the one of all places, though most of
// them get no look.
func TestTheNearestRampIsThatOfAllPlaces(t *testing.T) {
	const seed = 613
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	rear, front := &axle{600, 340}, &axle{3400, 320}
	looked, all := 0, 0
	for n := range 600 {
		corner := func() geometry.Point3 {
			return geometry.Point3{X: 4000 * r.Float64(), Y: 1000*r.Float64() - 500, Z: -50 - 420*r.Float64()}
		}
		run := &vehicles.LaidRun{Path: []geometry.Point3{corner(), corner(), corner(), corner(), corner()}, Radius: 13}
		run.Line = geometry.Rounded(run.Path, []float64{0, 25, 60}[n%3])
		if leg := run.Line.Legs[2]; n%2 == 0 && leg.End-leg.Begin > 220 {
			run.Muffler = &vehicles.LaidMuffler{Leg: 2, Radius: 34, From: leg.Begin + 20, To: leg.Begin + 200, Begin: leg.Begin + 20, End: leg.Begin + 200}
			run.Muffler.Axis = []geometry.Point3{run.Line.At(leg.Begin + 20), run.Line.At(leg.Begin + 200)}
		}
		for _, steep := range []ramp{departing, breaking} {
			asked := func(over rampStretch, radius float64) (float64, bool) {
				looked++
				return steep(450, rear, front, over, radius)
			}
			near := nearestRamp{asked: asked, ground: 450}
			near.along(run)
			least, there := math.Inf(1), false
			eachRound(run, everyPlace, func(at geometry.Point3, radius float64) {
				all++
				if degrees, ok := steep(450, rear, front, placeAt(at), radius); ok {
					least, there = min(least, degrees), true
				}
			})
			require.Equal(t, there, near.there, n)
			if there {
				require.InDelta(t, least, near.least, 1e-9, n)
				degrees, ok := steep(450, rear, front, placeAt(near.lowest), near.radius)
				require.True(t, ok)
				require.Equal(t, near.least, degrees, n)
			}
		}
	}
	assert.Less(t, looked, all/4)
}
