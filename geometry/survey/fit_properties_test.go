package survey

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

func drawTies(t *rapid.T, least int, noise float64) []Tie {
	place := rapid.Custom(func(t *rapid.T) geometry.Point {
		return geometry.Point{X: rapid.Float64Range(100, 4000).Draw(t, "x"), Y: rapid.Float64Range(-900, 900).Draw(t, "y")}
	})
	below := rapid.SliceOfN(place, least, 8).Draw(t, "below")
	theta := rapid.Float64Range(-180, 180).Draw(t, "theta")
	shift := place.Draw(t, "shift")
	above := make([]geometry.Point, len(below))
	for i, p := range below {
		off := geometry.Point{
			X: rapid.Float64Range(-noise, noise).Draw(t, "dx"),
			Y: rapid.Float64Range(-noise, noise).Draw(t, "dy"),
		}
		above[i] = p.Turn(theta).Add(shift).Add(off)
	}
	ties := paired(below, above, 1)
	for i := range ties {
		ties[i].U = alike(rapid.Float64Range(0.5, 4).Draw(t, "variance"))
	}
	return ties
}

// fitted fits drawn ties, leaving out draws that lie too close together to say anything.
func fitted(t *rapid.T, ties []Tie) Fit {
	if _, _, spread := rigid(ties, false); spread < 1e4 {
		t.Skip("no baseline")
	}
	fit, err := FitTies(ties, 0)
	if err != nil && !errors.Is(err, ErrSwapped) {
		t.Fatal(err)
	}
	return fit
}

func TestFitRecoversAMotion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ties := drawTies(t, 2, 0)
		fit := fitted(t, ties)
		assert.InDelta(t, 0, fit.RMS, 1e-7)
		for _, tie := range ties {
			assert.InDelta(t, 0, fit.Up(tie.Below).Sub(tie.Above).Norm(), 1e-7)
		}
	})
}

func TestDownUndoesUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fit := fitted(t, drawTies(t, 2, 30))
		p := geometry.Point{X: rapid.Float64Range(-2e4, 2e4).Draw(t, "px"), Y: rapid.Float64Range(-2e4, 2e4).Draw(t, "py")}
		assert.InDelta(t, 0, fit.Down(fit.Up(p)).Sub(p).Norm(), 1e-9)
		assert.InDelta(t, 0, fit.Up(fit.Down(p)).Sub(p).Norm(), 1e-9)
	})
}

// The conditions of a least-squares rigid motion: residuals add up to nothing and have no moment about the centroid.
func TestFitHoldsItsNormalEquations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ties := drawTies(t, 2, 30)
		fit := fitted(t, ties)
		var sum geometry.Point
		var moment, squares float64
		for i, tie := range ties {
			r := geometry.Point{X: fit.Residuals[i].DX, Y: fit.Residuals[i].DY}
			arm := tie.Below.Sub(fit.Centroid).Turn(fit.Theta)
			sum = sum.Add(r)
			moment += arm.X*r.Y - arm.Y*r.X
			squares += r.Dot(r)
		}
		assert.InDelta(t, 0, sum.Norm(), 1e-8)
		assert.InDelta(t, 0, moment, 1e-4) // mm^2, of arms of metres
		assert.InDelta(t, math.Sqrt(squares/float64(fit.N)), fit.RMS, 1e-9)
		assert.InEpsilon(t, 1+squares/fit.UT2, 1+fit.Statistic, 1e-9)
	})
}

// No step away from the fit, in rotation or shift, fits better.
func TestFitIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ties := drawTies(t, 2, 30)
		fit := fitted(t, ties)
		for _, size := range []float64{1e-3, 0.1, 10, 90} {
			for _, step := range [][3]float64{{1}, {-1}, {0, 1}, {0, -1}, {0, 0, 1}, {0, 0, -1}, {1, 1, 1}, {-1, 1, -1}} {
				about := fit.Up(fit.Centroid).Add(geometry.Point{X: step[1] * size, Y: step[2] * size})
				m := motion{theta: fit.Theta + step[0]*size}
				m.shift = about.Sub(fit.Centroid.Turn(m.theta))
				assert.GreaterOrEqual(t, m.rms(ties), fit.RMS-1e-9)
			}
		}
	})
}

// conformal solves the linear four-parameter fit X = a x - b y + c, Y = b x + a y + d by the normal equations about
// the centroids; the rigid fit must have its rotation. A computation by another way, with a scale in it.
func conformal(ties []Tie) (a, b float64) {
	n := float64(len(ties))
	var x, y, u, v, xx, xu, xv float64
	for _, t := range ties {
		x, y, u, v = x+t.Below.X/n, y+t.Below.Y/n, u+t.Above.X/n, v+t.Above.Y/n
	}
	for _, t := range ties {
		dx, dy, du, dv := t.Below.X-x, t.Below.Y-y, t.Above.X-u, t.Above.Y-v
		xx += dx*dx + dy*dy
		xu += dx*du + dy*dv
		xv += dx*dv - dy*du
	}
	return xu / xx, xv / xx
}

func TestFitTurnsAsTheConformalFitDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ties := drawTies(t, 2, 30)
		fit := fitted(t, ties)
		a, b := conformal(ties)
		if math.Hypot(a, b) < 0.1 {
			t.Skip("no rotation to speak of")
		}
		turn := math.Remainder(math.Atan2(b, a)*180/math.Pi-fit.Theta, 360)
		assert.InDelta(t, 0, turn, 1e-8)
	})
}
