package geometry

import "math"

// BoxGap returns the separation in space of two prisms on rectangles. Apart it is the distance, plan gap and height gap
// combined; where only the plans touch or overlap, the vertical gap; where plans and heights overlap, minus the
// shortest way out in plan, N being the way a gets out. Other footprints give the gaps of Between in the same way.
func BoxGap(a, b Prism) Separation3 {
	plan := Between(a.Footprint, b.Footprint)
	above, below := b.Low-a.High, a.Low-b.High // b above a, b below a
	height, up := above, 1.0
	za, zb := a.High, b.Low
	if below > above {
		height, up = below, -1
		za, zb = a.Low, b.High
	}
	if height < 0 {
		za = (max(a.Low, b.Low) + min(a.High, b.High)) / 2
		zb = za
	}
	s := Separation3{Gap: plan.Gap, A: plan.A.At(za), B: plan.B.At(zb), N: plan.N.At(0)}
	switch {
	case height < 0 || height == 0 && plan.Gap > 0:
		return s
	case plan.Gap <= 0:
		over := common(a.Footprint, b.Footprint, plan.A)
		s.A, s.B = over.At(za), over.At(zb)
		s.Gap, s.N = height, Point3{0, 0, up}
	default:
		s.Gap = math.Hypot(plan.Gap, height)
		s.N = Point3{plan.N.X * plan.Gap, plan.N.Y * plan.Gap, up * height}.Scale(1 / s.Gap)
	}
	return s
}

// common returns a point that two rectangles (of other footprints their Corners) share: the mean of the corners of what
// they have in common, or other when rounding leaves nothing of it.
func common(a, b Footprint, other Point) Point {
	shared, edges := a.Corners(), b.Corners()
	left := shared[:]
	for i, from := range edges {
		left = leftOf(left, from, edges[(i+1)%4])
	}
	if len(left) == 0 {
		return other
	}
	sum := Point{}
	for _, p := range left {
		sum = sum.Add(p)
	}
	return sum.Scale(1 / float64(len(left)))
}

// leftOf returns what of a convex polygon lies left of or on the line from..to.
// Source: I. Sutherland, G. Hodgman, Reentrant polygon clipping, CACM 17 (1974) (from memory).
func leftOf(polygon []Point, from, to Point) (kept []Point) {
	u := to.Sub(from)
	side := func(p Point) float64 { return u.X*(p.Y-from.Y) - u.Y*(p.X-from.X) }
	for i, p := range polygon {
		q := polygon[(i+1)%len(polygon)]
		here, there := side(p), side(q)
		if here >= 0 {
			kept = append(kept, p)
		}
		if here*there < 0 {
			kept = append(kept, p.Add(q.Sub(p).Scale(here/(here-there))))
		}
	}
	return kept
}
