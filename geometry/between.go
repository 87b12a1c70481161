package geometry

import "math"

// core is a convex piece of a footprint: the points within radius of a point, a segment or a rectangle.
type core struct {
	points [4]Point // anticlockwise
	n      int      // 1, 2 or 4 of them
	radius float64
}

// cores is how many convex pieces f is made of.
func (f *Footprint) cores() int {
	if f.Shape == Line {
		return len(f.Path) - 1
	}
	return 1
}

// core returns the i-th convex piece of f.
func (f *Footprint) core(i int) core {
	switch f.Shape {
	case Round:
		return core{points: [4]Point{f.Middle}, n: 1, radius: f.Radius}
	case Line:
		return core{points: [4]Point{f.Path[i], f.Path[i+1]}, n: 2, radius: f.Radius}
	}
	return core{points: f.Corners(), n: 4}
}

// Between returns the plan separation of a (the first) from b (the second).
//
// Apart it is exact for all shapes. Overlapping, two rectangles give the shortest way out by separating axes, and a
// round gives that of GapCircle; a line is taken leg by leg and the deepest pair of pieces speaks, each exact by
// itself, so that a bent line may need a longer way out than this says, never a shorter one.
// Source: separating axes and the Minkowski difference, C. Ericson, Real-Time Collision Detection (2005), ch. 5 and 9
// (from memory).
func Between(a, b Footprint) Separation {
	if a.Shape == Round {
		return b.GapCircle(a.Middle, a.Radius)
	}
	if b.Shape == Round {
		return a.GapCircle(b.Middle, b.Radius).flipped()
	}
	least := Separation{Gap: math.Inf(1)}
	for i := range a.cores() {
		p := a.core(i)
		for j := range b.cores() {
			q := b.core(j)
			if s := p.separation(&q); s.Gap < least.Gap {
				least = s
			}
		}
	}
	return least
}

// Apart returns how far two footprints are apart in plan, mm, and 0 where they touch or overlap: what Between says, without where,
// for inner loops.
func Apart(a, b *Footprint) float64 {
	if a.upright() && b.upright() {
		off := a.Middle.Sub(b.Middle)
		return Point{max(math.Abs(off.X)-a.box.X-b.box.X, 0), max(math.Abs(off.Y)-a.box.Y-b.box.Y, 0)}.Norm()
	}
	return max(Between(*a, *b).Gap, 0)
}

// upright tells whether f is its own box.
func (f *Footprint) upright() bool { return f.Shape == Rectangle && f.sin*f.cos == 0 }

// Inside returns how far f (the first) lies inside the floor min..max: the least plan distance from f to one of the
// floor's four edges, negative by how far f sticks out beyond that edge. A is on f, B straight across from it on the
// edge's line, N from A towards B. Of a rectangle or a line the worst corner or path point speaks.
func (f Footprint) Inside(min, max Point) Separation {
	least := Separation{Gap: math.Inf(1)}
	for i := range f.cores() {
		c := f.core(i)
		for _, p := range c.points[:c.n] {
			for _, edge := range [4]struct {
				inside float64
				out    Point
			}{
				{p.X - min.X, Point{X: -1}}, {max.X - p.X, Point{X: 1}},
				{p.Y - min.Y, Point{Y: -1}}, {max.Y - p.Y, Point{Y: 1}},
			} {
				if gap := edge.inside - c.radius; gap < least.Gap {
					least = Separation{
						Gap: gap, A: p.Add(edge.out.Scale(c.radius)), B: p.Add(edge.out.Scale(edge.inside)), N: edge.out,
					}
				}
			}
		}
	}
	if least.Gap < 0 {
		least.N = least.N.Scale(-1)
	}
	return least
}

// separation of two pieces. n is the direction from p to q in which they are farthest apart or overlap least.
func (p *core) separation(q *core) Separation {
	gap, n, ok := p.widest(q)
	var a, b Point
	if ok && gap <= 0 {
		a, b = p.touching(q, n)
	} else {
		gap, a, b = p.nearest(q)
		n = unit(b.Sub(a), n)
	}
	s := Separation{Gap: gap - p.radius - q.radius, A: a.Add(n.Scale(p.radius)), B: b.Sub(n.Scale(q.radius)), N: n}
	if s.Gap <= 0 {
		s.N = n.Scale(-1)
	}
	return s
}

// widest returns, over the normals and directions of both pieces' edges, the one n along which q begins farthest
// beyond p's end, and by how much; ok is false when neither piece has an edge with a direction.
func (p *core) widest(q *core) (gap float64, n Point, ok bool) {
	gap, n = math.Inf(-1), Point{1, 0}
	for _, c := range [2]*core{p, q} {
		for i := range min(c.n-1, 2) { // a rectangle's other two edges are parallel to the first two
			edge := unit(c.points[i+1].Sub(c.points[i]), Point{})
			if edge == (Point{}) {
				continue
			}
			for _, axis := range [4]Point{{edge.Y, -edge.X}, {-edge.Y, edge.X}, edge, edge.Scale(-1)} {
				_, end := p.extent(axis)
				begin, _ := q.extent(axis)
				if begin-end > gap {
					gap, n, ok = begin-end, axis, true
				}
			}
		}
	}
	return gap, n, ok
}

// extent returns the least and the greatest of a piece's points along the unit vector n.
func (p *core) extent(n Point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, v := range p.points[:p.n] {
		d := v.Dot(n)
		low, high = min(low, d), max(high, d)
	}
	return low, high
}

// rim returns the extent across n of those points that are farthest along n.
func (p *core) rim(n Point) (low, high float64) {
	_, far := p.extent(n)
	across := Point{-n.Y, n.X}
	low, high = math.Inf(1), math.Inf(-1)
	for _, v := range p.points[:p.n] {
		if v.Dot(n) >= far-abreast {
			low, high = min(low, v.Dot(across)), max(high, v.Dot(across))
		}
	}
	return low, high
}

// touching returns the points a shortest way out along -n is taken between: p's farthest along n and q's farthest
// against it, in the middle of where both reach.
func (p *core) touching(q *core, n Point) (a, b Point) {
	_, end := p.extent(n)
	begin, _ := q.extent(n)
	low, high := p.rim(n)
	back, front := q.rim(n.Scale(-1)) // across is reversed there
	across := Point{-n.Y, n.X}
	t := (max(low, -front) + min(high, -back)) / 2
	return n.Scale(end).Add(across.Scale(t)), n.Scale(begin).Add(across.Scale(t))
}

// nearest returns the distance of two pieces' cores that do not overlap, and where: always at a corner of one.
func (p *core) nearest(q *core) (gap float64, a, b Point) {
	gap = math.Inf(1)
	for _, v := range p.points[:p.n] {
		if foot := q.foot(v); foot.Sub(v).Norm() < gap {
			gap, a, b = foot.Sub(v).Norm(), v, foot
		}
	}
	for _, v := range q.points[:q.n] {
		if foot := p.foot(v); foot.Sub(v).Norm() < gap {
			gap, a, b = foot.Sub(v).Norm(), foot, v
		}
	}
	return gap, a, b
}

// foot returns the point of a piece's edges nearest to v.
func (p *core) foot(v Point) Point {
	best := p.points[0]
	for i := range p.n {
		q := footOn(p.points[i], p.points[(i+1)%p.n], v)
		if q.Sub(v).Norm() < best.Sub(v).Norm() {
			best = q
		}
	}
	return best
}
