package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// kind says what a part is.
type kind uint8

const (
	piece kind = iota // a rectangle about (x, y), turned, with everything within a radius of it: rounds and legs too
	side              // a side of the floor: (x, y) is on it, (cos, sin) points inwards
	other             // a constraint; the owner says which
)

// part is a piece of what limits a place. The margin of a piece and of a side is convex in the place: between two
// places it is never above the line between their margins.
type part struct {
	x, y, cos, sin float64
	halfX, halfY   float64
	off            float64 // what is taken off the distance: radius and need
	reach          float64 // a piece lies within this of (x, y)
	owner          int32   // what it belongs to, as in Place.Limit
	kind           kind
	bent           bool // a leg of a line of several: inside the line the legs do not know the way out
}

// appendParts appends the pieces of an obstacle.
func appendParts(parts []part, o Obstacle, owner int32) []part {
	f := o.Footprint
	switch f.Shape {
	case geometry.Round:
		return append(parts, part{x: f.Middle.X, y: f.Middle.Y, cos: 1, off: f.Radius + o.Need, owner: owner})
	case geometry.Line:
		for i := 1; i < len(f.Path); i++ {
			parts = append(parts, leg(f.Path[i-1], f.Path[i], f.Radius+o.Need, owner, len(f.Path) > 2))
		}
		return parts
	}
	sin, cos := geometry.SinCos(f.Turn)
	return append(parts, part{
		x: f.Middle.X, y: f.Middle.Y, cos: cos, sin: sin,
		halfX: f.Half.X, halfY: f.Half.Y, off: o.Need, reach: f.Half.Norm(), owner: owner,
	})
}

// leg returns the part of the segment a b.
func leg(a, b geometry.Point, off float64, owner int32, bent bool) part {
	middle, d := a.Add(b).Scale(0.5), b.Sub(a)
	s := part{x: middle.X, y: middle.Y, cos: 1, off: off, owner: owner, bent: bent}
	if length := d.Norm(); length > 0 {
		s.cos, s.sin, s.halfX, s.reach = d.X/length, d.Y/length, length/2, length/2
	}
	return s
}

// appendSides appends the four sides of the floor.
func appendSides(parts []part, l Limits) []part {
	for _, s := range []part{
		{x: l.Min.X, cos: 1}, {x: l.Max.X, cos: -1}, {y: l.Min.Y, sin: 1}, {y: l.Max.Y, sin: -1},
	} {
		s.kind, s.owner, s.off = side, Edge, l.EdgeNeed
		parts = append(parts, s)
	}
	return parts
}

// beyond says whether a piece is surely no nearer than least.
func (s *part) beyond(x, y, least float64) bool {
	if s.kind != piece {
		return false
	}
	dx, dy, far := x-s.x, y-s.y, least+s.off+s.reach
	return far > 0 && dx*dx+dy*dy >= far*far
}

// inner carries a place into the part's own frame.
func (s *part) inner(x, y float64) (u, v float64) {
	dx, dy := x-s.x, y-s.y
	return dx*s.cos + dy*s.sin, dy*s.cos - dx*s.sin
}

// at returns the margin of a piece or a side.
// Source: signed distance to a rectangle by its own axes, as in Footprint.GapOnly.
func (s *part) at(x, y float64) float64 {
	u, v := s.inner(x, y)
	if s.kind == side {
		return u - s.off
	}
	u, v = math.Abs(u)-s.halfX, math.Abs(v)-s.halfY
	if u > 0 && v > 0 {
		return math.Sqrt(u*u+v*v) - s.off
	}
	if u > v {
		return u - s.off
	}
	return v - s.off
}

// margin returns the margin of part k at a place; of a bent line's leg that of the leg alone, which is never below that
// of the line and equals it outside the line.
func (m *Margins) margin(k int32, x, y float64) float64 {
	s := &m.parts[k]
	if s.kind == other {
		return m.limits.Constraints[int(s.owner)-len(m.limits.Obstacles)].Margin(geometry.Point{X: x, Y: y})
	}
	return s.at(x, y)
}

// exact returns the margin of part k at a place, inside a bent line that of the whole line.
func (m *Margins) exact(k int32, x, y float64) float64 {
	d := m.margin(k, x, y)
	if m.inside(k, d) {
		o := &m.limits.Obstacles[m.parts[k].owner]
		return o.Footprint.GapOnly(geometry.Point{X: x, Y: y}) - o.Need
	}
	return d
}

// inside says whether a margin of part k is one of a place inside a bent line.
func (m *Margins) inside(k int32, margin float64) bool {
	s := &m.parts[k]
	return s.bent && margin < -m.limits.Obstacles[s.owner].Need
}

// outward returns the unit direction in which the margin of part k grows fastest at p.
func (m *Margins) outward(k int32, p geometry.Point) geometry.Point {
	g := geometry.Point{
		X: m.exact(k, p.X+probe, p.Y) - m.exact(k, p.X-probe, p.Y),
		Y: m.exact(k, p.X, p.Y+probe) - m.exact(k, p.X, p.Y-probe),
	}
	if n := g.Norm(); n > 0 {
		return g.Scale(1 / n)
	}
	return geometry.Point{X: 1}
}
