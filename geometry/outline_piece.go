package geometry

import (
	"math"
	"slices"
	"sync/atomic"
)

// piece is the circle about a point of the path, or the straight side beside a leg, a to b; at is along it, mm, or round it,
// radians from -pi to pi.
type piece struct {
	round bool
	a, b  Point // of a circle a alone
	long  float64
	shown atomic.Pointer[[]interval] // nil until it was asked for
}

// interval is a part of a piece.
type interval struct{ from, to float64 }

// bound is how near to p the whole piece comes.
func (s *piece) bound(p Point, radius float64) float64 {
	if s.round {
		return math.Abs(p.Sub(s.a).Norm() - radius)
	}
	return p.Sub(footOn(s.a, s.b, p)).Norm()
}

// point is where the piece is at so far along or round it.
func (s *piece) point(at, radius float64) Point {
	if s.round {
		return Point{s.a.X + radius*math.Cos(at), s.a.Y + radius*math.Sin(at)}
	}
	return s.a.Add(s.b.Sub(s.a).Scale(at / s.long))
}

// nearest returns the point of a interval that is nearest to p.
func (s *piece) nearest(p Point, of interval, radius float64) Point {
	v := p.Sub(s.a)
	if !s.round {
		along := v.Dot(s.b.Sub(s.a)) / s.long
		return s.point(clamp(along, of.from, of.to), radius)
	}
	if n := v.Norm(); n > flat {
		if at := math.Atan2(v.Y, v.X); at >= of.from && at <= of.to {
			return s.a.Add(v.Scale(radius / n))
		}
	}
	a, b := s.point(of.from, radius), s.point(of.to, radius)
	if b.Sub(p).Norm() < a.Sub(p).Norm() {
		return b
	}
	return a
}

// less returns what is left of some intervals without those in the stadium about the leg c d.
func (s *piece) less(left []interval, c, d Point, radius float64) []interval {
	if s.round {
		return s.roundLess(left, c, d, radius)
	}
	low, high := math.Min(c.X, d.X)-radius, math.Max(c.X, d.X)+radius
	if math.Max(s.a.X, s.b.X) < low || math.Min(s.a.X, s.b.X) > high {
		return left
	}
	low, high = math.Min(c.Y, d.Y)-radius, math.Max(c.Y, d.Y)+radius
	if math.Max(s.a.Y, s.b.Y) < low || math.Min(s.a.Y, s.b.Y) > high {
		return left
	}
	in := interval{math.Inf(1), math.Inf(-1)}
	for _, of := range [3]interval{s.inCircle(c, radius), s.inCircle(d, radius), s.inBand(c, d, radius)} {
		if of.from < of.to { // a stadium has no hollow: what lies between is in it, too
			in = interval{math.Min(in.from, of.from), math.Max(in.to, of.to)}
		}
	}
	return without(left, in)
}

// inCircle returns the interval of a side's whole line that is nearer to c than radius; in an empty one from is above to: it is where
// the line comes no deeper than sunk, as that beside the leg itself.
func (s *piece) inCircle(c Point, radius float64) interval {
	u, v := s.b.Sub(s.a).Scale(1/s.long), c.Sub(s.a)
	off := u.X*v.Y - u.Y*v.X
	if math.Abs(off) >= radius-sunk {
		return interval{1, 0}
	}
	along, half := u.Dot(v), math.Sqrt(radius*radius-off*off)
	return interval{along - half, along + half}
}

// inBand returns the interval of a side's whole line that is beside the leg c d, nearer to it than radius.
func (s *piece) inBand(c, d Point, radius float64) interval {
	leg := d.Sub(c)
	long := leg.Norm()
	if long == 0 {
		return interval{1, 0}
	}
	leg = leg.Scale(1 / long)
	u, v := s.b.Sub(s.a).Scale(1/s.long), s.a.Sub(c)
	in := interval{math.Inf(-1), math.Inf(1)}
	in = in.between(leg.Dot(v), leg.Dot(u), 0, long)
	off, grows := leg.X*v.Y-leg.Y*v.X, leg.X*u.Y-leg.Y*u.X
	if deep := in.between(off, grows, sunk-radius, radius-sunk); deep.from >= deep.to {
		return deep
	}
	return in.between(off, grows, -radius, radius)
}

// between returns the part of a interval where start + at*grows is between low and high.
func (of interval) between(start, grows, low, high float64) interval {
	if grows == 0 {
		if start <= low || start >= high {
			return interval{1, 0}
		}
		return of
	}
	a, b := (low-start)/grows, (high-start)/grows
	return interval{math.Max(of.from, math.Min(a, b)), math.Min(of.to, math.Max(a, b))}
}

// roundLess is less of a circle: where it meets the stadium's two circles and sides parts it, and each part is in it or not.
func (s *piece) roundLess(left []interval, c, d Point, radius float64) []interval {
	if s.a.Sub(footOn(c, d, s.a)).Norm() >= 2*radius {
		return left
	}
	cuts := append(make([]float64, 0, 10), -math.Pi, math.Pi)
	for _, e := range [2]Point{c, d} { // two circles of one radius
		if v := e.Sub(s.a); v != (Point{}) && v.Norm() < 2*radius {
			cuts = appendAngles(cuts, math.Atan2(v.Y, v.X), math.Acos(v.Norm()/(2*radius)))
		}
	}
	if leg := d.Sub(c); leg != (Point{}) {
		n := Point{-leg.Y, leg.X}.Scale(1 / leg.Norm())
		for _, side := range [2]float64{radius, -radius} {
			if cos := (side - n.Dot(s.a.Sub(c))) / radius; math.Abs(cos) < 1+sunk { // beside its own leg it is 1, and still parts it
				cuts = appendAngles(cuts, math.Atan2(n.Y, n.X), math.Acos(clamp(cos, -1, 1)))
			}
		}
	}
	slices.Sort(cuts)
	for i := 1; i < len(cuts); i++ {
		q := s.point((cuts[i-1]+cuts[i])/2, radius)
		if q.Sub(footOn(c, d, q)).Norm() < radius-sunk {
			left = without(left, interval{cuts[i-1], cuts[i]})
		}
	}
	return left
}

// appendAngles appends the angles that lie half to either side of middle, from -pi to pi.
func appendAngles(cuts []float64, middle, half float64) []float64 {
	for _, at := range [2]float64{middle - half, middle + half} {
		cuts = append(cuts, math.Remainder(at, 2*math.Pi))
	}
	return cuts
}

// without returns the intervals, which lie in order, without what of them lies in cut; it may change them.
func without(left []interval, cut interval) []interval {
	if cut.from >= cut.to {
		return left
	}
	first, _ := slices.BinarySearchFunc(left, cut.from, func(s interval, at float64) int {
		if s.to < at {
			return -1
		}
		return 1
	})
	last := first
	var rest [2]interval
	n := 0
	for ; last < len(left) && left[last].from <= cut.to; last++ {
		if left[last].from < cut.from { // no single point stays: that at pi is the one at -pi, which no cut goes past
			rest[n] = interval{left[last].from, cut.from}
			n++
		}
		if left[last].to > cut.to {
			rest[n] = interval{cut.to, left[last].to}
			n++
		}
	}
	return slices.Replace(left, first, last, rest[:n]...)
}
