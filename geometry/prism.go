package geometry

import (
	"math"
	"slices"
)

// Prism is what a thing fills in space: its footprint from Low to High in Z, mm. Low may equal High.
type Prism struct {
	Footprint Footprint
	Low, High float64
}

// Same tells whether two prisms fill the same space in the same shape.
func (p *Prism) Same(q *Prism) bool {
	return p.Low == q.Low && p.High == q.High && p.Footprint.Same(&q.Footprint)
}

// Same tells whether two footprints cover the same in the same shape.
func (f *Footprint) Same(g *Footprint) bool {
	return f.Shape == g.Shape && f.Middle == g.Middle && f.Half == g.Half && f.Turn == g.Turn && f.Radius == g.Radius &&
		slices.Equal(f.Path, g.Path)
}

// extent returns the box that holds the prism.
func (p *Prism) extent() extent {
	low, high := p.Footprint.Bounds()
	return extentOf(low.At(p.Low), high.At(p.High))
}

// solid is a convex thing in space: an upright piece of a prism (a box, or the points whose plan is within radius of a
// plan segment), or a bare segment.
type solid struct {
	box       *Footprint // a rectangle, or nil
	line      *Segment3  // a bare segment, or nil
	p, q      Point      // the plan segment otherwise
	radius    float64
	low, high float64
	bounds    extent
}

// count is how many convex pieces p is made of.
func (p *Prism) count() int { return p.Footprint.cores() }

// solid returns the i-th convex piece of p.
func (p *Prism) solid(i int) solid {
	f := &p.Footprint
	s := solid{low: p.Low, high: p.High, radius: f.Radius, p: f.Middle, q: f.Middle, bounds: p.extent()}
	switch f.Shape {
	case Rectangle:
		s.box = f
	case Line:
		s.p, s.q = f.Path[i], f.Path[i+1]
		s.bounds = extentOf(s.p.At(s.low), s.q.At(s.high))
		s.bounds.sides = s.bounds.sides.Add(Point3{2 * s.radius, 2 * s.radius, 0})
	}
	return s
}

// near returns the point of the solid nearest to x: x itself when it is inside.
func (s *solid) near(x Point3) Point3 {
	if s.line != nil {
		return s.line.At(footAt(*s.line, x))
	}
	z := clamp(x.Z, s.low, s.high)
	if s.box != nil {
		q := s.box.inner(x.Plan())
		half := s.box.Half
		if math.Abs(q.X) <= half.X && math.Abs(q.Y) <= half.Y {
			return Point3{x.X, x.Y, z}
		}
		return s.box.outer(Point{clamp(q.X, -half.X, half.X), clamp(q.Y, -half.Y, half.Y)}).At(z)
	}
	foot := footOn(s.p, s.q, x.Plan())
	d := x.Plan().Sub(foot)
	if far2 := d.Dot(d); far2 > s.radius*s.radius {
		return foot.Add(d.Scale(s.radius / math.Sqrt(far2))).At(z)
	}
	return Point3{x.X, x.Y, z}
}

// segment returns the separation of g (the first) from the solid: exact by closed forms against a box.
func (s *solid) segment(g *Segment3) Separation3 {
	var t float64
	switch {
	case s.line != nil:
		return BetweenSegments(*g, *s.line)
	case s.box != nil:
		t = s.boxAt(g)
	default:
		t = s.roundAt(g)
	}
	x := g.At(t)
	return apart(x, s.near(x))
}

// GapPoint returns the separation of the point q (the first) from the prism: 0 and straight down inside.
func (p Prism) GapPoint(q Point3) Separation3 { return p.GapRun([]Point3{q}) }

// GapRun returns the least separation of a path of at least one point (the first) from the prism: 0 and straight down
// when it enters; Gap is +Inf when the path has no point. A leg against a rectangle is a closed form. Against a round or
// a line it is one where the nearest point lies between the prism's heights or the leg is level; above or below that a
// quartic arises, whose root is bracketed and refined until the distance itself is off by at most 1e-10 mm.
func (p Prism) GapRun(path []Point3) Separation3 {
	least := none()
	around := p.extent()
	first, bound := 0, math.Inf(1)
	for i := range legCount(path) { // the leg that may come nearest goes first, so that most others need no look
		leg := legOf(path, i)
		if b := around.apart2(&leg.A, &leg.B); b < bound {
			first, bound = i, b
		}
	}
	for i := range legCount(path) {
		j := i + first
		if j >= legCount(path) {
			j -= legCount(path)
		}
		if leg := legOf(path, j); around.apart2(&leg.A, &leg.B) < least.Gap*least.Gap {
			p.closer(&leg, &least)
		}
	}
	return least
}

// closer replaces least by the separation of s from p where that is nearer.
func (p *Prism) closer(s *Segment3, least *Separation3) {
	for i := range p.count() {
		piece := p.solid(i)
		if piece.bounds.apart2(&s.A, &s.B) >= least.Gap*least.Gap {
			continue
		}
		if g := piece.segment(s); g.Gap < least.Gap {
			*least = g
		}
	}
}
