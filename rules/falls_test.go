package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// led is a plain floor's exhaust from its stub straight down, and then through corners told from there: ahead, mm, and down.
func led(t *testing.T, muffler *vehicles.Muffler, drains []float64, way float64, corners ...[2]float64) (judge, *Result) {
	t.Helper()
	r := plainFloor(t, "")
	mouth := r.Plan.Mouth(&r.Job, vehicles.ExhaustRun)
	run := *r.Job.Exhaust
	run.Path, run.Bend, run.Hanging = nil, vehicles.Number{}, vehicles.Hanging{Muffler: muffler, Drains: drains}
	for _, c := range append([][2]float64{{0, 100}}, corners...) {
		run.Path = append(run.Path, vehicles.RunPoint{X: mouth.X + way*c[0], Y: mouth.Y, Drop: c[1]})
	}
	judged, faults := Judge(r.Job.WithRun(vehicles.ExhaustRun, &run), Builtin())
	require.Empty(t, faults)
	return newJudge(&judged.Job, &judged.Plan, judged.Book), &judged
}

// A leg before the muffler falls 20 mm a metre, no hundredth less, whichever way it goes; what falls more is never too much. By hand: over 1000 mm of plan.
func TestAFallIsHeldToAHundredthOfAMillimetre(t *testing.T) {
	for _, way := range []float64{1, -1} {
		for fall, want := range map[float64]Verdict{20: Clear, 20.01: Clear, 21: Clear, 19.99: Foul, 19: Foul, 0: Foul, -20: Foul} {
			_, r := led(t, nil, nil, way, [2]float64{1000, 100 + fall})
			found := 0
			for _, f := range r.Findings {
				if f.Rule == ExhaustFall && f.Against.Index == 1 {
					found++
					assert.InDelta(t, fall, f.Value, 1e-9)
					assert.InDelta(t, fall-20, f.Margin.Value, 1e-9)
					assert.Equal(t, want, f.Verdict, "%g, way %g", fall, way)
				}
			}
			assert.Equal(t, 1, found)
		}
	}
}

// Behind the muffler an exhaust that is sought may be level and rises by no hundredth of a mm: that is a miss.
func TestNothingRisesBehindTheMuffler(t *testing.T) {
	muffler := &vehicles.Muffler{Leg: 2, Start: 100, Length: 180, Across: 68}
	for _, way := range []float64{1, -1} {
		for fall, rises := range map[float64]int{0: 0, 0.5: 0, 20: 0, -0.01: 1, -0.5: 1, -1: 1, -20: 1} {
			j, _ := led(t, muffler, nil, way, [2]float64{400, 110}, [2]float64{1400, 110 + fall})
			j.rises()
			assert.Len(t, j.findings, rises, "%g, way %g", fall, way)
			for _, f := range j.findings {
				assert.Equal(t, Foul, f.Verdict)
				assert.InDelta(t, fall, f.Value, 1e-9)
			}
		}
	}
}

// The search's own bound is what the rules ask: 20 mm a metre of an exhaust, a run that never rises behind a muffler and of an intake, none where one may rise.
func TestTheSearchFallsAsTheRulesAsk(t *testing.T) {
	r := plainFloor(t, "")
	j := newJudge(&r.Job, &r.Plan, r.Book)
	j.job = new(r.Job.WithRun(vehicles.IntakeRun, r.Job.Exhaust))
	fall := func(kind vehicles.RunKind, d demand) float64 { return newCourse(j, kind, nil, d).query.Fall }
	assert.Equal(t, 0.02, fall(vehicles.ExhaustRun, demand{}))
	assert.Equal(t, 0.02, fall(vehicles.ExhaustRun, demand{uncut: true}))
	assert.Zero(t, fall(vehicles.ExhaustRun, demand{flat: true}))
	assert.Zero(t, fall(vehicles.IntakeRun, demand{}))
	assert.Equal(t, math.Inf(-1), fall(vehicles.ExhaustRun, demand{rising: true}))
	assert.Equal(t, math.Inf(-1), fall(vehicles.IntakeRun, demand{rising: true}))
}

// Points within half a mm in drop are one level stretch, and water stands on it where both neighbours are higher by any more. A drain hole within 50 mm of
// either end drains it, none farther off.
func TestWhatIsALowPointToTheMillimetre(t *testing.T) {
	low := func(drains []float64, drops ...float64) []int {
		var corners [][2]float64
		for i, drop := range drops {
			corners = append(corners, [2]float64{400 * float64(i+1), drop})
		}
		_, r := led(t, nil, drains, 1, corners...)
		return undrained(r.Plan.Exhaust, drains)
	}
	assert.Empty(t, low(nil, 110, 110.5, 110), "level all along")
	assert.Equal(t, []int{3}, low(nil, 110, 110.51, 110), "half a mm deeper")
	assert.Equal(t, []int{3}, low(nil, 110, 112, 111.5, 110), "a stretch from there on")
	assert.Equal(t, []int{3}, low(nil, 110, 112, 111.49, 110), "and one point alone")
	assert.Empty(t, low(nil, 110, 112, 112, 112), "it runs out at the end")
	_, r := led(t, nil, nil, 1, [2]float64{400, 112}, [2]float64{800, 112}, [2]float64{1200, 100})
	begin, end := r.Plan.Exhaust.CornerAlong(2), r.Plan.Exhaust.CornerAlong(3)
	for at, want := range map[float64][]int{begin - 50: nil, begin - 50.5: {2}, end + 50: nil, end + 50.5: {2}, (begin + end) / 2: nil} {
		assert.Equal(t, want, low([]float64{at}, 112, 112, 100), "a hole at %g of %g to %g", at, begin, end)
	}
}

// A low point that any of the muffler is on drains through that: over its own leg, and where it begins or ends just at the stretch, not a mm beside it.
func TestTheMufflerDrainsWhatItTouches(t *testing.T) {
	path := []geometry.Point3{{}, {Z: -100}, {X: 400, Z: -112}, {X: 800, Z: -112}, {X: 1200, Z: -100}}
	laid := func(leg int, from, to float64) *vehicles.LaidMuffler {
		a, b := path[leg], path[leg+1]
		way := b.Sub(a).Scale(1 / b.Sub(a).Norm())
		return &vehicles.LaidMuffler{Leg: leg, Axis: []geometry.Point3{a.Add(way.Scale(from)), a.Add(way.Scale(to))}}
	}
	before, behind := path[2].Sub(path[1]).Norm(), path[4].Sub(path[3]).Norm()
	for want, all := range map[bool][]*vehicles.LaidMuffler{
		true:  {laid(2, 100, 280), laid(1, before-180, before), laid(3, 0, 180)},
		false: {laid(1, before-181, before-1), laid(3, 1, 181), laid(1, 0, 180), laid(3, behind-180, behind), nil},
	} {
		for _, m := range all {
			assert.Equal(t, want, touches(m, path, 2, 3), "%+v", m)
		}
	}
}
