package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var tape = Tape{Class: "II", Read: 1, Mark: 1, Height: 2, Turn: 1}

// Source: civilnoteppt.com, slope correction example (30 m with one end 0.70 m low gives 29.99183 m); the further
// digits are the exact root.
func TestReduceSlopeExample(t *testing.T) {
	plan, _, err := tape.ReduceAbove(30000, 700)
	require.NoError(t, err)
	assert.InDelta(t, 29991.83, plan, 0.005)
	assert.InDelta(t, 29991.832221, plan, 1e-6)
}

// Source: the worked sample of the job-file contract: cut centre at 1210, 240; zero 150 below the floor's underside
// and 60 below its surface.
func TestContractSampleMark(t *testing.T) {
	assert.InDelta(t, 1219.3, AboveReading(1210, 150), 0.05)
	assert.InDelta(t, 1211.5, AboveReading(1210, 60), 0.05)
	assert.InDelta(t, 0.970, tape.MarkU(1210, 60), 5e-4)
	assert.InDelta(t, 0.911, math.Sqrt(gauge(tape).MarkVariance(645)), 5e-4)
}

func TestReduceWithoutASlope(t *testing.T) {
	level := math.Sqrt(tape.Variance(652, true))
	for _, c := range []struct {
		what   string
		slope  Slope
		pKnown bool
		loose  bool
	}{
		{"held level", Slope{}, true, false},
		{"held level, height unknown", Slope{}, false, false},
		{"height unknown", Slope{Hook: 150, Set: true}, false, true},
		{"no difference in height", Slope{Hook: 95, Set: true}, true, false},
	} {
		plan, u, loose, err := tape.Reduce(652, c.slope, 95, c.pKnown)
		require.NoError(t, err, c.what)
		assert.Equal(t, 652., plan, c.what)
		assert.InDelta(t, level, u, 1e-12, c.what)
		assert.Equal(t, c.loose, loose, c.what)
	}
}

// By hand from the contract's formula: L 652, h 150, p 95.
func TestReduceFromBelow(t *testing.T) {
	plan, u, loose, err := tape.Reduce(652, Slope{Hook: 150, Set: true}, 95, true)
	require.NoError(t, err)
	s2 := 652.*652 - 55*55
	assert.InDelta(t, math.Sqrt(s2), plan, 1e-9)
	assert.InDelta(t, math.Sqrt(652*652/s2*(0.49+1)/3+55*55/s2*2*4/3), u, 1e-12)
	assert.False(t, loose)
}

func TestReduceRefusesAReadingShorterThanItsRise(t *testing.T) {
	hooked := Slope{Hook: 150, Set: true}
	for _, c := range []struct{ length, p float64 }{{55, 95}, {54, 95}, {54, 205}, {0, 95}} {
		_, _, _, err := tape.Reduce(c.length, hooked, c.p, true)
		assert.ErrorContains(t, err, "55 mm apart in height: measure again", c)
	}
	_, _, err := tape.ReduceAbove(60, 60)
	assert.Error(t, err)
}

func TestReduceAtTheZeroItself(t *testing.T) {
	plan, u, _, err := tape.Reduce(0, Slope{Hook: 95, Set: true}, 95, true)
	require.NoError(t, err)
	assert.Zero(t, plan)
	assert.InDelta(t, math.Sqrt((0.25+1)/3), u, 1e-12) // a + c of class II is 0.5: no metre is begun
	plan, _, err = tape.ReduceAbove(0, 0)
	require.NoError(t, err)
	assert.Zero(t, plan)
}

// Behind the zero a reading has a minus, and so has its place: 300 and 55 give the root of 86975.
func TestAReadingBehindTheZero(t *testing.T) {
	behind, u, _, err := tape.Reduce(-300, Slope{Hook: 150, Set: true}, 95, true)
	require.NoError(t, err)
	assert.InDelta(t, -294.915, behind, 5e-4)
	_, ahead, _, err := tape.Reduce(300, Slope{Hook: 150, Set: true}, 95, true)
	require.NoError(t, err)
	assert.Equal(t, ahead, u, "as uncertain as one ahead of it")
	_, _, _, err = tape.Reduce(-54, Slope{Hook: 150, Set: true}, 95, true)
	assert.ErrorContains(t, err, "55 mm apart in height")
	assert.InDelta(t, -300, AboveReading(behind, 55), 1e-9)
	level, _, _, err := tape.Reduce(-300, Slope{}, 95, true)
	require.NoError(t, err)
	assert.Equal(t, -300., level)
	plan, _, _, err := tape.Reduce(5, Slope{Hook: 1, Set: true}, 0, true)
	require.NoError(t, err)
	assert.InDelta(t, math.Sqrt(24), plan, 1e-12, "a millimetre is a slope")
}

// The derivative, by hanging the zero a little lower and a little higher: 652 mm to what lies 55 mm above the zero.
func TestLeanIsTheSlopeOfReduce(t *testing.T) {
	for _, length := range []float64{652, -652} {
		at := func(hook float64) float64 {
			plan, _, _, err := tape.Reduce(length, Slope{Hook: hook, Set: true}, 95, true)
			require.NoError(t, err)
			return plan
		}
		assert.InDelta(t, (at(150.001)-at(149.999))/0.002, Lean(at(150), 55), 1e-7)
	}
	assert.Zero(t, Lean(652, 0))
	assert.InDelta(t, -55/1e-3, Lean(0, 55), 1e-6, "held there")
}

func TestMarkOverTheZeroIsHugeButFinite(t *testing.T) {
	u := tape.MarkU(0, 60)
	assert.False(t, math.IsInf(u, 0) || math.IsNaN(u))
	assert.Greater(t, u, 1e4)
	assert.InDelta(t, math.Sqrt((0.25+1+1)/3), tape.MarkU(0, 0), 1e-12)
}

// The first-order law of JCGM 100:2008, 5.1.2, with the derivatives taken numerically: a second computation of u.
func TestSlopeUncertaintyByDifferences(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tape := drawTape(t)
		length := rapid.Float64Range(400, 4000).Draw(t, "length")
		h, p := rapid.Float64Range(0, 300).Draw(t, "h"), rapid.Float64Range(0, 300).Draw(t, "p")
		plan := func(l, h, p float64) float64 { return math.Sqrt(l*l - (h-p)*(h-p)) }
		const step = 1e-3
		byL := (plan(length+step, h, p) - plan(length-step, h, p)) / (2 * step)
		byH := (plan(length, h+step, p) - plan(length, h-step, p)) / (2 * step)
		byP := (plan(length, h, p+step) - plan(length, h, p-step)) / (2 * step)
		uL := math.Sqrt(tape.Variance(length, true))
		heights := math.Hypot(byH*tape.HeightU(), byP*tape.HeightU())

		_, u, _, err := tape.Reduce(length, Slope{Hook: h, Set: true}, p, true)
		require.NoError(t, err)
		assert.InEpsilon(t, math.Hypot(byL*uL, heights), u, 1e-6)

		_, above, err := tape.ReduceAbove(length, h-p)
		require.NoError(t, err)
		assert.InEpsilon(t, math.Hypot(byL*uL, byH*tape.HeightU()), above, 1e-6)
	})
}

func TestAboveReadingUndoesReduceAbove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan, hook := rapid.Float64Range(1, 5000).Draw(t, "plan"), rapid.Float64Range(-300, 300).Draw(t, "hook")
		back, _, err := tape.ReduceAbove(AboveReading(plan, hook), hook)
		require.NoError(t, err)
		assert.InDelta(t, plan, back, 1e-8)
	})
}
