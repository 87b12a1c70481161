package geometry

import "math"

// A line's footprint is a union of stadiums, one a leg. Its outline is made of pieces of circles about the points of
// the path and of the straight sides beside the legs, so the nearest point of the outline, seen from inside, is one of
//   - the point of a circle straight out from its centre,
//   - the foot on a side,
//   - a meeting point of two of them,
// and of these only those count that lie in no stadium's interior.

// offPath returns the distance from p to a line's path; NaN from what is none.
func (f *Footprint) offPath(p Point) float64 {
	least := math.Inf(1)
	for i := 1; i < len(f.Path); i++ {
		a, b := f.Path[i-1], f.Path[i]
		ux, uy, vx, vy := b.X-a.X, b.Y-a.Y, p.X-a.X, p.Y-a.Y
		if along, whole := ux*vx+uy*vy, ux*ux+uy*uy; along >= whole { // beyond the leg: without a division
			vx, vy = p.X-b.X, p.Y-b.Y
		} else if along > 0 {
			t := along / whole
			vx, vy = vx-t*ux, vy-t*uy
		}
		least = min(least, vx*vx+vy*vy)
	}
	return math.Sqrt(least)
}

// foot returns the point of a line's path nearest to p and the leg it is on.
func (f *Footprint) foot(p Point) (foot Point, leg int) {
	least := math.Inf(1)
	for i := 1; i < len(f.Path); i++ {
		q := footOn(f.Path[i-1], f.Path[i], p)
		if d := q.Sub(p).Dot(q.Sub(p)); d < least {
			least, foot, leg = d, q, i-1
		}
	}
	return foot, leg
}

// footOn returns the point of the segment a b nearest to p.
func footOn(a, b, p Point) Point {
	u := b.Sub(a)
	along := u.Dot(p.Sub(a))
	if along <= 0 {
		return a
	}
	length2 := u.Dot(u)
	if along >= length2 {
		return b
	}
	return a.Add(u.Scale(along / length2))
}

// shortPath is how many points a path has at most whose outline's pieces are all held against each other each time: what more
// points take grows with the square of them.
const shortPath = 16

// LongPath says whether f is a line of so many points that whoever asks for many ways out of it had better keep its Outline.
func (f *Footprint) LongPath() bool { return f.Shape == Line && len(f.Path) > shortPath }

// wayOut returns minus the shortest way from p, inside a line's footprint, to its outline, and where that ends.
func (f *Footprint) wayOut(p Point) (gap float64, nearest Point) {
	if f.LongPath() {
		return NewOutline(f).WayOut(p)
	}
	foot, _ := f.foot(p)
	d := p.Sub(foot).Norm()
	if d > flat { // straight away from the path is the shortest there can be
		if q := p.Add(p.Sub(foot).Scale(f.Radius/d - 1)); f.offPath(q) >= f.Radius-sunk {
			return d - f.Radius, q
		}
	}
	s := exit{line: f, from: p, least: math.Inf(1)}
	s.feet()
	s.meetings()
	if math.IsInf(s.least, 1) { // nothing but rounding could bring it here
		return d - f.Radius, foot.Add(unit(p.Sub(foot), Point{1, 0}).Scale(f.Radius))
	}
	return -s.least, s.best
}

// exit looks for the point of a line's outline nearest to from.
type exit struct {
	line  *Footprint
	from  Point
	least float64
	best  Point
}

// offer takes q when it is nearer than what was found and on the outline.
func (s *exit) offer(q Point) {
	if d := q.Sub(s.from).Norm(); d < s.least && s.line.offPath(q) >= s.line.Radius-sunk {
		s.least, s.best = d, q
	}
}

// side returns the straight piece beside leg i, left of it (k = 0) or right (k = 1); ok is false when the leg has no
// length.
func (s *exit) side(i, k int) (a, b Point, ok bool) {
	a, b = s.line.Path[i], s.line.Path[i+1]
	length := b.Sub(a).Norm()
	if length == 0 {
		return a, b, false
	}
	off := Point{a.Y - b.Y, b.X - a.X}.Scale(float64(1-2*k) * s.line.Radius / length)
	return a.Add(off), b.Add(off), true
}

// feet offers the nearest points of whole circles and sides.
func (s *exit) feet() {
	for _, c := range s.line.Path {
		s.offer(c.Add(unit(s.from.Sub(c), Point{1, 0}).Scale(s.line.Radius)))
	}
	for i := range 2 * (len(s.line.Path) - 1) {
		if a, b, ok := s.side(i/2, i%2); ok {
			s.offer(footOn(a, b, s.from))
		}
	}
}

// meetings offers every point where two circles, two sides or a circle and a side meet.
func (s *exit) meetings() {
	path, sides := s.line.Path, 2*(len(s.line.Path)-1)
	for i, c := range path {
		for _, d := range path[:i] {
			s.circles(c, d)
		}
	}
	for i := range sides {
		a, b, ok := s.side(i/2, i%2)
		if !ok {
			continue
		}
		for _, c := range path {
			s.circleSide(c, a, b)
		}
		for j := range i {
			if c, d, ok := s.side(j/2, j%2); ok {
				s.sides(a, b, c, d)
			}
		}
	}
}

// circles offers the points where the circles about c and d meet.
func (s *exit) circles(c, d Point) {
	half := d.Sub(c).Scale(0.5)
	h := half.Norm()
	rise2 := s.line.Radius*s.line.Radius - h*h
	if h == 0 || rise2 < 0 {
		return
	}
	up := Point{-half.Y, half.X}.Scale(math.Sqrt(rise2) / h)
	s.offer(c.Add(half).Add(up))
	s.offer(c.Add(half).Sub(up))
}

// circleSide offers the points where the side a b meets the circle about c.
func (s *exit) circleSide(c, a, b Point) {
	u := b.Sub(a)
	length := u.Norm()
	u = u.Scale(1 / length)
	along, off := u.Dot(c.Sub(a)), u.X*(c.Y-a.Y)-u.Y*(c.X-a.X)
	chord2 := s.line.Radius*s.line.Radius - off*off
	if chord2 < 0 {
		return
	}
	for _, t := range [2]float64{along - math.Sqrt(chord2), along + math.Sqrt(chord2)} {
		if t >= 0 && t <= length {
			s.offer(a.Add(u.Scale(t)))
		}
	}
}

// sides offers the point where the sides a b and c d cross.
func (s *exit) sides(a, b, c, d Point) {
	u, v, w := b.Sub(a), d.Sub(c), c.Sub(a)
	cross := u.X*v.Y - u.Y*v.X
	t, r := w.X*v.Y-w.Y*v.X, w.X*u.Y-w.Y*u.X
	if cross == 0 {
		return
	}
	if t, r = t/cross, r/cross; t >= 0 && t <= 1 && r >= 0 && r <= 1 {
		s.offer(a.Add(u.Scale(t)))
	}
}
