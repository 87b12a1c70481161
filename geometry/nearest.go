package geometry

import "math"

// The distance along a segment to a convex solid is a convex function of the parameter t, and half its square has a
// continuous slope that never falls. The least distance is where that slope changes sign.

// boxAt returns the parameter of g's point nearest to a box; where a stretch of g is equally near, its middle. In the
// box's own frame the slope is linear between the parameters at which g crosses the planes of its six faces, so the
// root is exact.
func (s *solid) boxAt(g *Segment3) float64 {
	a, b := s.box.inner(g.A.Plan()), s.box.inner(g.B.Plan())
	mid := (s.low + s.high) / 2
	w := slabs{
		at:   [3]float64{a.X, a.Y, g.A.Z - mid},
		by:   [3]float64{b.X - a.X, b.Y - a.Y, g.B.Z - g.A.Z},
		half: [3]float64{s.box.Half.X, s.box.Half.Y, (s.high - s.low) / 2},
	}
	if w.slope(0) > 0 {
		return 0
	}
	if w.slope(1) < 0 {
		return 1
	}
	var knots [8]float64
	n := w.knots(&knots)
	first, last := 0.0, 1.0
	for i := n - 1; i >= 0; i-- { // the last knot that still goes down
		if here := w.slope(knots[i]); here < 0 {
			first = w.root(knots[i], here, knots[min(i+1, n-1)])
			break
		}
	}
	for i := range n { // the first one that goes up
		if here := w.slope(knots[i]); here > 0 {
			last = w.root(knots[i], here, knots[max(i-1, 0)])
			break
		}
	}
	return (first + last) / 2
}

// slabs is a segment seen from the middle of a box: at + t by, and the half sides.
type slabs struct{ at, by, half [3]float64 }

// knots fills in 0, 1 and between them, in order, the parameters where the segment crosses a face's plane.
func (w *slabs) knots(knots *[8]float64) (n int) {
	n = 1
	for i, by := range w.by {
		if by == 0 {
			continue
		}
		for _, face := range [2]float64{-w.half[i], w.half[i]} {
			t := (face - w.at[i]) / by
			if t <= 0 || t >= 1 {
				continue
			}
			j := n
			for ; knots[j-1] > t; j-- {
				knots[j] = knots[j-1]
			}
			knots[j] = t
			n++
		}
	}
	knots[n] = 1
	return n + 1
}

// slope is that of half the squared distance at t.
func (w *slabs) slope(t float64) float64 {
	sum := 0.0
	for i, by := range w.by {
		x := w.at[i] + t*by
		sum += (x - clamp(x, -w.half[i], w.half[i])) * by
	}
	return sum
}

// root returns where the slope, linear from here at t to its value at the next knot, reaches 0.
func (w *slabs) root(t, here, next float64) float64 {
	there := w.slope(next)
	if here*there > 0 || here == there { // an end of the segment
		return next
	}
	return t + (next-t)*here/(here-there)
}

// roundAt returns the parameter of g's point nearest to a stadium's or disc's solid.
func (s *solid) roundAt(g *Segment3) float64 {
	from, to := s.between(g)
	if from > to {
		return s.bracket(g, 0, 1)
	}
	if slope, _ := s.slope(g, from); slope > 0 && from > 0 {
		return s.bracket(g, 0, from)
	}
	if slope, _ := s.slope(g, to); slope < 0 && to < 1 {
		return s.bracket(g, to, 1)
	}
	cut := Segment3{g.At(from).Plan().At(0), g.At(to).Plan().At(0)}
	t, _ := closest(cut, Segment3{s.p.At(0), s.q.At(0)})
	return from + t*(to-from)
}

// between returns the parameters from..to over which g runs between the solid's heights, or all of it when it is
// level: the height then adds the same everywhere. from > to when there are none.
func (s *solid) between(g *Segment3) (from, to float64) {
	rise := g.B.Z - g.A.Z
	if rise == 0 {
		return 0, 1
	}
	from, to = (s.low-g.A.Z)/rise, (s.high-g.A.Z)/rise
	if from > to {
		from, to = to, from
	}
	if from > 1 || to < 0 {
		return 1, 0
	}
	return max(from, 0), min(to, 1)
}

// slope is that of half the squared distance at t, and gap the distance there.
func (s *solid) slope(g *Segment3, t float64) (slope, gap float64) {
	x := g.At(t)
	away := x.Sub(s.near(x))
	return away.Dot(g.B.Sub(g.A)), away.Norm()
}

// bracket returns where the slope changes sign between from and to, or the end it points to. False position with the
// Illinois weights (M. Dowell, P. Jarratt, BIT 11, 1971; from memory), and a bisection every third step so that the
// bracket is certain to shrink. Half the squared distance being convex, it falls from here by no more than slope times
// width of the bracket, and the distance by no more than twice that over itself: this ends the search.
func (s *solid) bracket(g *Segment3, from, to float64) float64 {
	low, _ := s.slope(g, from)
	high, _ := s.slope(g, to)
	if low >= 0 {
		return from
	}
	if high <= 0 {
		return to
	}
	for i, side := 0, 0; ; i++ {
		t := from + (to-from)*low/(low-high)
		if i%3 == 2 || t <= from || t >= to {
			t = (from + to) / 2
		}
		here, gap := s.slope(g, t)
		if 2*math.Abs(here)*(to-from) <= fine*gap || t <= from || t >= to {
			return t
		}
		if here < 0 {
			from, low = t, here
			if side < 0 {
				high /= 2
			}
			side = -1
		} else {
			to, high = t, here
			if side > 0 {
				low /= 2
			}
			side = 1
		}
	}
}
