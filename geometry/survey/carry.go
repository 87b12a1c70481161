package survey

import (
	"math"

	"bench.example/undermark/geometry"
)

// Zeros are by how much a place, along one direction, goes with the height of each zero that tapes are hooked to, mm a mm. One
// zero's height is one error for all that is taped from it.
type Zeros [4]float64

// The zeros, in the order of Zeros: below and above, that of x and that of the side edges. In the order of a Tie's
// coordinates each goes with the one coordinate taped from it.
const (
	BumperBelow = iota
	SideBelow
	BumperAbove
	SideAbove
)

// carry is what carrying a place through ties costs. A tie counts with the weight w = n/N + l (-r_y, r_x), l = (n_y d_x - n_x d_y)
// / sum r^2, d the place and r the tie's below, both from the centroid: all is a square in (n_x, n_y, l), and worked out once.
type carry struct {
	square [3][3]float64 // of the ties' own variances, the heights of their zeros left out
	zeros  [len(Zeros{})][3]float64
	height float64 // variance of any height, mm^2
}

func newCarry(used []Tie, f *Fit, heightU float64) carry {
	c := carry{height: heightU * heightU}
	sin, cos := math.Sincos(f.Theta * math.Pi / 180)
	share := 1 / float64(len(used))
	for _, t := range used {
		r := t.Below.Sub(f.Centroid)
		x, y := [3]float64{share, 0, -r.Y}, [3]float64{0, share, r.X}
		var upX, upY [3]float64 // above, axes are turned
		for i := range x {
			upX[i], upY[i] = cos*x[i]-sin*y[i], sin*x[i]+cos*y[i]
		}
		for k, w := range [...]*[3]float64{&x, &y, &upX, &upY} {
			c.add(k, w, t.U[k]*t.U[k]-t.Tilt[k]*t.Tilt[k]*c.height, t.Tilt[k])
		}
	}
	return c
}

// add adds a coordinate with its weight, its own variance and how it goes with its zero.
func (c *carry) add(k int, w *[3]float64, own, tilt float64) {
	sign := 1.0
	if k == BumperBelow || k == SideBelow {
		sign = -1
	}
	own = math.Max(0, own) // rounding, and chains closed by an overall reading
	for i := range w {
		c.zeros[k][i] += sign * tilt * w[i]
		for l := range w {
			c.square[i][l] += own * w[i] * w[l]
		}
	}
}

// Carried returns the variance, mm^2, that the ties add to a distance along the plan direction n (its length counts) between
// what they carry at the place d of the frame below and an edge of the other frame. edge says how that edge, along n, goes
// with each zero's height, by which it and the ties may err alike; sign is 1 where the ties carry what is put in place, -1
// where they carry the edge. It is 0 when not Tied: then the datum's frames error stands in, and that is the caller's.
//
// Source: the first-order law, JCGM 100:2008, 5.1.2 and 5.2.2 (errors in common), on the least-squares motion.
func (f *Fit) Carried(n, d geometry.Point, edge Zeros, sign float64) float64 {
	if !f.Tied() || f.SumR2 == 0 {
		return 0
	}
	arm := d.Sub(f.Centroid)
	g := [3]float64{n.X, n.Y, (n.Y*arm.X - n.X*arm.Y) / f.SumR2}
	variance := 0.0
	for i := range g {
		for k := range g {
			variance += g[i] * g[k] * f.carry.square[i][k]
		}
	}
	for z := range edge {
		w := &f.carry.zeros[z]
		both := edge[z] + sign*(g[0]*w[0]+g[1]*w[1]+g[2]*w[2])
		variance += f.carry.height * both * both
	}
	return math.Max(0, variance)
}

// U returns the standard uncertainty that the ties add along the unit plan direction n at the place d of the frame below
// against an edge that goes with no zero, mm; 0 when not Tied.
func (f Fit) U(n, d geometry.Point) float64 { return math.Sqrt(f.Carried(n, d, Zeros{}, 1)) }
