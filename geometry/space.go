package geometry

import "math"

// Segment3 is a straight piece in space; its ends may coincide.
type Segment3 struct{ A, B Point3 }

// At returns the point at parameter t, 0 at A and 1 at B, both exactly.
func (s Segment3) At(t float64) Point3 {
	if t == 1 {
		return s.B
	}
	return s.A.Add(s.B.Sub(s.A).Scale(t))
}

// Separation3 is the distance of two things in space and where it is taken.
type Separation3 struct {
	Gap  float64 // mm
	A, B Point3  // the points it is taken between, on the first and on the second thing
	N    Point3  // unit direction from A towards B; straight down where the gap is 0
}

// down is the direction given where two things touch or a centreline is inside a prism.
var down = Point3{0, 0, -1}

// none is the separation from nothing.
func none() Separation3 { return Separation3{Gap: math.Inf(1), N: down} }

// apart returns the separation of the points a and b.
func apart(a, b Point3) Separation3 {
	d := b.Sub(a)
	gap := d.Norm()
	if gap == 0 {
		return Separation3{A: a, B: b, N: down}
	}
	return Separation3{Gap: gap, A: a, B: b, N: d.Scale(1 / gap)}
}

// BetweenSegments returns the separation of two segments in space.
func BetweenSegments(a, b Segment3) Separation3 {
	s, t := closest(a, b)
	return apart(a.At(s), b.At(t))
}

// closest returns the parameters of the nearest points of two segments. The squared distance is a convex quadratic on
// the unit square of parameters: its least value is where both derivatives vanish or on one of the four borders, and
// there at the foot of an end point. Of parallel segments any of the nearest pairs is returned.
func closest(a, b Segment3) (s, t float64) {
	u, v, w := a.B.Sub(a.A), b.B.Sub(b.A), b.A.Sub(a.A)
	best := math.Inf(1)
	offer := func(p, q float64) {
		if d := b.At(q).Sub(a.At(p)); d.Dot(d) < best {
			best, s, t = d.Dot(d), p, q
		}
	}
	n := cross(u, v)
	if nn := n.Dot(n); nn > 0 {
		p, q := cross(w, v).Dot(n)/nn, cross(w, u).Dot(n)/nn
		if p >= 0 && p <= 1 && q >= 0 && q <= 1 {
			offer(p, footAt(b, a.At(p)))
			if nn > parallel*u.Dot(u)*v.Dot(v) { // else rounding may lie, so try the borders too
				return s, t
			}
		}
	}
	offer(0, footAt(b, a.A))
	offer(1, footAt(b, a.B))
	offer(footAt(a, b.A), 0)
	offer(footAt(a, b.B), 1)
	return s, t
}

// footAt returns the parameter of the point of s nearest to p.
func footAt(s Segment3, p Point3) float64 {
	u := s.B.Sub(s.A)
	along, length2 := u.Dot(p.Sub(s.A)), u.Dot(u)
	switch {
	case along <= 0:
		return 0
	case along >= length2:
		return 1
	}
	return along / length2
}

func cross(a, b Point3) Point3 {
	return Point3{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// legCount is how many legs a path has; a single point is one leg without length.
func legCount(path []Point3) int {
	if len(path) == 1 {
		return 1
	}
	return max(0, len(path)-1)
}

// legOf returns the i-th leg of a path.
func legOf(path []Point3, i int) Segment3 { return Segment3{path[i], path[min(i+1, len(path)-1)]} }

// BetweenPaths returns the least separation of two paths; Gap is +Inf when one has no point.
func BetweenPaths(a, b []Point3) Separation3 {
	least := none()
	for i := range legCount(a) {
		for j := range legCount(b) {
			if s := BetweenSegments(legOf(a, i), legOf(b, j)); s.Gap < least.Gap {
				least = s
			}
		}
	}
	return least
}

// Angle returns the angle between two vectors, radians. The arctangent keeps its digits at 0 and 180 degrees, where
// the arccosine loses half of them.
func Angle(a, b Point3) float64 { return math.Atan2(cross(a, b).Norm(), a.Dot(b)) }
