package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// Source: Heron's 13-14-15 triangle (Metrica), altitude 12 at 5 from the corner between 13 and 14. The left pin is
// that corner, the base of 14 runs to the right pin.
func TestFromPinsHeronsTriangle(t *testing.T) {
	p, err := FromPins(13, 15, 0, 7, 0)
	require.NoError(t, err)
	assert.InDelta(t, 12, p.X, 1e-12)
	assert.InDelta(t, 7-5, p.Y, 1e-12)
	left, right := Pins(p, 0, 7, 0)
	assert.InDelta(t, 13, left, 1e-12)
	assert.InDelta(t, 15, right, 1e-12)
	p, err = FromPins(1300, 1500, 80, 700, 0)
	require.NoError(t, err)
	assert.InDelta(t, 1280, p.X, 1e-9)
	assert.InDelta(t, 200, p.Y, 1e-9)
}

// Source: the worked sample of the job-file contract.
func TestPinsContractSample(t *testing.T) {
	left, right := Pins(geometry.Point{X: 1210, Y: 240}, 0, 700, 60)
	assert.InDelta(t, 1295.9, left, 0.05)
	assert.InDelta(t, 1533.4, right, 0.05)
}

// The same triangle by the range-range formulas of navigation texts (from memory), recomputed twice: variances along
// the base and across it, half axes, angle of the major axis from the base.
func TestFromPinsCovarianceHeronsTriangle(t *testing.T) {
	e, err := FromPinsCovariance(13, 15, 0, 7, 0, 1, 1, 0)
	require.NoError(t, err)
	assert.InDelta(t, 2.0102041, e.YY, 1e-7)
	assert.InDelta(t, 0.6843112, e.XX, 1e-7)
	assert.InDelta(t, -0.1683673, e.XY, 1e-7) // the base runs to the right, against y
	assert.InDelta(t, 1.4252193, e.Major, 1e-7)
	assert.InDelta(t, 0.8144110, e.Minor, 1e-7)
	assert.InDelta(t, 180-(90-7.1250), e.Angle, 1e-4)
	assert.InDelta(t, 1.6414979, math.Hypot(e.Major, e.Minor), 1e-7)

	e, err = FromPinsCovariance(13, 15, 0, 7, 0, 0.5, 1, 0)
	require.NoError(t, err)
	assert.InDelta(t, 1.3635204, e.YY, 1e-7)
	assert.InDelta(t, 0.3205517, e.XX, 1e-7)
	assert.InDelta(t, 0.3166454, e.XY, 1e-7)
	assert.InDelta(t, 1.2050421, e.Major, 1e-7)
	assert.InDelta(t, 0.4816074, e.Minor, 1e-7)
}

func TestFromPinsRefusesWhatFixesNoPlace(t *testing.T) {
	for _, c := range []struct{ left, right, pins, hook float64 }{
		{500, 800, 700, 0}, {100, 3000, 700, 0}, {700, 700, 700, 60}, {math.NaN(), 800, 700, 0}, {-5, 800, 700, 0},
		{900, 900, 0, 0}, {900, 900, math.NaN(), 0}, {math.Inf(1), 900, 700, 0},
	} {
		p, err := FromPins(c.left, c.right, 0, c.pins, c.hook)
		assert.Error(t, err, c)
		assert.Zero(t, p)
	}
	_, err := FromPins(500, 800, 0, 700, 0)
	assert.ErrorIs(t, err, ErrNoMeeting)
	_, err = FromPinsCovariance(700, 700, 0, 700, 0, 1, 1, 1)
	assert.ErrorIs(t, err, ErrOnLine)
}

type fix struct{ x, y, shift, pins, hook float64 }

func drawFix(t *rapid.T) fix {
	return fix{
		x:     rapid.Float64Range(200, 4000).Draw(t, "x"),
		y:     rapid.Float64Range(-1000, 1000).Draw(t, "y"),
		shift: rapid.Float64Range(-100, 100).Draw(t, "shift"),
		pins:  rapid.Float64Range(200, 900).Draw(t, "pins"),
		hook:  rapid.Float64Range(0, 120).Draw(t, "hook"),
	}
}

func TestFromPinsUndoesPins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFix(t)
		left, right := Pins(geometry.Point{X: f.shift + f.x, Y: f.y}, f.shift, f.pins, f.hook)
		p, err := FromPins(left, right, f.shift, f.pins, f.hook)
		require.NoError(t, err)
		assert.InDelta(t, f.shift+f.x, p.X, 1e-7)
		assert.InDelta(t, f.y, p.Y, 1e-7)
	})
}

// JCGM 100:2008, 5.1.2, with the derivatives taken numerically, the hook's among them.
func TestFromPinsCovarianceByDifferences(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFix(t)
		left, right := Pins(geometry.Point{X: f.shift + f.x, Y: f.y}, f.shift, f.pins, f.hook)
		const step = 1e-3
		by := func(dl, dr, dh, u float64) geometry.Point {
			to, err := FromPins(left+dl, right+dr, f.shift, f.pins, f.hook+dh)
			require.NoError(t, err)
			from, err := FromPins(left-dl, right-dr, f.shift, f.pins, f.hook-dh)
			require.NoError(t, err)
			return to.Sub(from).Scale(u / (2 * step))
		}
		l, r, h := by(step, 0, 0, 0.8), by(0, step, 0, 1.1), by(0, 0, step, 1.5)
		e, err := FromPinsCovariance(left, right, f.shift, f.pins, f.hook, 0.8, 1.1, 1.5)
		require.NoError(t, err)
		scale := e.XX + e.YY
		assert.InDelta(t, l.X*l.X+r.X*r.X+h.X*h.X, e.XX, 1e-5*scale)
		assert.InDelta(t, l.X*l.Y+r.X*r.Y+h.X*h.Y, e.XY, 1e-5*scale)
		assert.InDelta(t, l.Y*l.Y+r.Y*r.Y+h.Y*h.Y, e.YY, 1e-5*scale)
		assert.InEpsilon(t, e.XX+e.YY, e.Major*e.Major+e.Minor*e.Minor, 1e-9)
		assert.InDelta(t, e.XX*e.YY-e.XY*e.XY, math.Pow(e.Major*e.Minor, 2), 1e-9*scale*scale)
	})
}
