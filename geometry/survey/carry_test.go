package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// drawReadings gives ties uncertainties and ways with their zeros of their own.
func drawReadings(t *rapid.T, ties []Tie, heightU float64) {
	for i := range ties {
		for k := range ties[i].U {
			tilt := rapid.Float64Range(-0.6, 0.6).Draw(t, "tilt")
			own := rapid.Float64Range(0.3, 2).Draw(t, "own")
			ties[i].Tilt[k], ties[i].U[k] = tilt, math.Hypot(own, tilt*heightU)
		}
	}
}

// slopesOf are by how much the distance along n from what the ties carry at d to a place of the other frame grows with each
// coordinate of each tie, worked out by moving it. sign is as for Carried.
func slopesOf(ties []Tie, fit *Fit, n, d geometry.Point, sign float64) [][4]float64 {
	const step = 1e-3
	up := fit.Up(d)
	gap := func(moved []Tie) float64 { // a mark stays where it is above; below it comes out elsewhere
		m, _, _ := rigid(moved, false)
		return -sign * up.Sub(m.shift).Turn(-m.theta).Dot(n)
	}
	slopes := make([][4]float64, len(ties))
	for i := range ties {
		for k := range 4 {
			moved := append([]Tie(nil), ties...)
			at := []*float64{&moved[i].Below.X, &moved[i].Below.Y, &moved[i].Above.X, &moved[i].Above.Y}[k]
			was := *at
			*at = was + step
			high := gap(moved)
			*at = was - step
			slopes[i][k] = (high - gap(moved)) / (2 * step)
		}
	}
	return slopes
}

// The first-order law (JCGM 100:2008, 5.1.2 and 5.2.2) by moving every coordinate of every tie, and every zero with all that
// is taped from it, the edge among it.
func TestCarriedIsTheFirstOrderLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const heightU = 1.1547
		ties := drawTies(t, 2, 0)
		drawReadings(t, ties, heightU)
		if _, _, spread := rigid(ties, false); spread < 1e4 {
			t.Skip("no baseline")
		}
		fit, err := FitTies(ties, heightU)
		require.NoError(t, err)
		d := geometry.Point{X: rapid.Float64Range(0, 4000).Draw(t, "dx"), Y: rapid.Float64Range(-900, 900).Draw(t, "dy")}
		n := geometry.Point{X: rapid.Float64Range(0.1, 1).Draw(t, "length")}.Turn(rapid.Float64Range(-180, 180).Draw(t, "n"))
		sign := rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign")
		var edge Zeros
		for z := range edge {
			edge[z] = rapid.Float64Range(-0.6, 0.6).Draw(t, "edge")
		}
		sum, zeros := 0.0, edge
		for i, slopes := range slopesOf(ties, &fit, n, d, sign) {
			for k, slope := range slopes {
				own := ties[i].U[k]*ties[i].U[k] - ties[i].Tilt[k]*ties[i].Tilt[k]*heightU*heightU
				sum += slope * slope * own
				zeros[k] += slope * ties[i].Tilt[k]
			}
		}
		for _, c := range zeros {
			sum += heightU * heightU * c * c
		}
		assert.InEpsilon(t, sum, fit.Carried(n, d, edge, sign), 1e-5)
	})
}

// Of ties whose coordinates are all as good as each other, level, along any direction: u_t^2 (1/N + (ny dx - nx dy)^2 / sum r^2).
// Source: the covariance of a least-squares rigid motion, JCGM 102:2011, 6.2.
func TestCarriedThroughTiesAllAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ties := drawTies(t, 2, 30)
		for i := range ties {
			ties[i].U = alike(1.7)
		}
		fit := fitted(t, ties)
		d := geometry.Point{X: rapid.Float64Range(0, 4000).Draw(t, "dx"), Y: rapid.Float64Range(-900, 900).Draw(t, "dy")}
		n := geometry.Point{X: 1}.Turn(rapid.Float64Range(-180, 180).Draw(t, "n"))
		arm := d.Sub(fit.Centroid)
		lever := n.Y*arm.X - n.X*arm.Y
		assert.InEpsilon(t, 1.7*(1/float64(fit.N)+lever*lever/fit.SumR2), fit.Carried(n, d, Zeros{}, 1), 1e-9)
		assert.InEpsilon(t, math.Sqrt(fit.Carried(n, d, Zeros{}, 1)), fit.U(n, d), 1e-12)
	})
}

// Two ties and an edge all taped square to the bumper from one zero 110 mm lower: its height moves them alike, and falls out.
// By hand, s = 2000: each leans by -110/2000, the mean of the ties is the cut's.
func TestAZeroThatAllShareFallsOut(t *testing.T) {
	lean := Lean(2000, 110)
	assert.InDelta(t, -0.055, lean, 1e-12)
	ties := paired([]geometry.Point{{X: 2000, Y: 500}, {X: 2000, Y: -500}}, []geometry.Point{{X: 2000, Y: 500}, {X: 2000, Y: -500}}, 1)
	for i := range ties {
		ties[i].U, ties[i].Tilt = [4]float64{0.1, 0.1, 0.1, 0.1}, [4]float64{lean, 0, 0, 0}
	}
	fit, err := FitTies(ties, 1)
	require.NoError(t, err)
	ahead, cut := geometry.Point{X: 1}, geometry.Point{X: 1000}
	own := (4*0.01 - 2*lean*lean) / 4
	assert.InDelta(t, own, fit.Carried(ahead, cut, Zeros{BumperBelow: lean}, 1), 1e-12)
	assert.InDelta(t, own+lean*lean, fit.Carried(ahead, cut, Zeros{}, 1), 1e-12, "an edge taped from nowhere near moves alone")
	assert.InDelta(t, own+4*lean*lean, fit.Carried(ahead, cut, Zeros{BumperBelow: lean}, -1), 1e-12)
}
