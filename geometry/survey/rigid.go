package survey

import (
	"math"

	"bench.example/undermark/geometry"
)

// motion is a rotation by theta degrees and a shift, after a mirror of Y if there is one.
type motion struct {
	theta  float64
	shift  geometry.Point
	mirror bool
}

func (m motion) apply(p geometry.Point) geometry.Point { return m.facing(p).Turn(m.theta).Add(m.shift) }

func (m motion) facing(p geometry.Point) geometry.Point {
	if m.mirror {
		p.Y = -p.Y
	}
	return p
}

// rms is the root of the mean squared distance by which the motion misses the ties, mm.
func (m motion) rms(ties []Tie) float64 {
	sum := 0.0
	for _, t := range ties {
		off := t.Above.Sub(m.apply(t.Below))
		sum += off.Dot(off)
	}
	return math.Sqrt(sum / float64(len(ties)))
}

// rigid returns the least-squares rigid motion of all the ties, the centroid of their places below and the sum of
// the squared distances from it.
//
// About the centroids the squares add up to a constant less 2 (c cos theta + s sin theta), c being the sum of the
// scalar products of the arms below and above and s that of their vector products: least at theta = atan2(s, c).
func rigid(ties []Tie, mirror bool) (m motion, below geometry.Point, sumR2 float64) {
	m.mirror = mirror
	var above geometry.Point
	share := 1 / float64(len(ties))
	for _, t := range ties {
		below = below.Add(t.Below.Scale(share))
		above = above.Add(t.Above.Scale(share))
	}
	var c, s float64
	for _, t := range ties {
		arm, to := t.Below.Sub(below), t.Above.Sub(above)
		sumR2 += arm.Dot(arm)
		arm = m.facing(arm)
		c += arm.Dot(to)
		s += arm.X*to.Y - arm.Y*to.X
	}
	m.theta = math.Atan2(s, c) * 180 / math.Pi
	m.shift = above.Sub(m.facing(below).Turn(m.theta))
	return m, below, sumR2
}

// MirroredRMS returns the RMS, mm, of the best motion with a mirror in it of the ties in use, 0 for none: far less
// than the fit's own when left and right were swapped on one side.
func MirroredRMS(ties []Tie) float64 {
	used := inUse(ties)
	if len(used) == 0 {
		return 0
	}
	m, _, _ := rigid(used, true)
	return m.rms(used)
}
