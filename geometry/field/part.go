package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// kind says what a part is.
type kind uint8

const (
	fixed   kind = iota // a rectangle about (x, y), turned, with everything within a radius of it: rounds and legs too
	side                // a side of the floor: (x, y) is on it, (cos, sin) points inwards
	carried             // a piece that something carried with the place keeps away from: the hull says it
	other               // a constraint that says no more than its margin
)

// part is a piece of what limits a place. Every margin but a constraint's is convex in the place: between two places it
// is never above the line between their margins.
type part struct {
	x, y, cos, sin float64
	halfX, halfY   float64
	off            float64 // what is taken off the distance: radius and need
	reach          float64 // what it is about lies within this of (x, y); +Inf of what has no place
	hull           *hull
	asks           Constraint
	owner          int32 // what it belongs to, as in Site.Limit
	way            int16 // which of the ways to meet Limits.Ways it belongs to; of what is asked anyhow 0
	kind           kind
	bent           bool // a leg of a line of several: inside the line the legs do not know the way out
}

// appendParts appends the pieces of an obstacle.
func appendParts(parts []part, o Obstacle, owner int32) []part {
	list := cores(o.Footprint)
	for _, c := range list {
		parts = append(parts, part{
			x: c.middle.X, y: c.middle.Y, cos: c.cos, sin: c.sin, halfX: c.half.X, halfY: c.half.Y,
			off: c.radius + o.Need, reach: c.half.Norm(), owner: owner, bent: len(list) > 1,
		})
	}
	return parts
}

// appendAsked appends the parts of a constraint.
func appendAsked(parts []part, asked Constraint, owner int32, way int16) []part {
	from := len(parts)
	switch c := asked.(type) {
	case Carried:
		parts = c.appendParts(parts)
	case Contained:
		low, high := c.Body.Bounds()
		parts = appendSides(parts, c.Min.Sub(low), c.Max.Sub(high), c.Need)
	default:
		parts = append(parts, vague(asked))
	}
	for i := range parts[from:] {
		parts[from+i].owner, parts[from+i].way = owner, way
	}
	return parts
}

// vague is the part of a constraint of which only the margin is known.
func vague(asked Constraint) part { return part{kind: other, asks: asked, reach: math.Inf(1)} }

// appendSides appends the four sides of a floor.
func appendSides(parts []part, low, high geometry.Point, need float64) []part {
	for _, s := range []part{{x: low.X, cos: 1}, {x: high.X, cos: -1}, {y: low.Y, sin: 1}, {y: high.Y, sin: -1}} {
		s.kind, s.owner, s.off, s.reach = side, Edge, need, math.Inf(1)
		parts = append(parts, s)
	}
	return parts
}

// closes says whether the margin can be below 0 anywhere.
func (s *part) closes() bool {
	return s.kind != carried || s.hull.lift < 0 || s.hull.lift < s.hull.need
}

// beyond says whether a margin is surely no less than least.
func (s *part) beyond(x, y, least float64) bool {
	dx, dy, far := x-s.x, y-s.y, least+s.off+s.reach
	return far > 0 && dx*dx+dy*dy >= far*far
}

// inner carries a place into the part's own frame.
func (s *part) inner(x, y float64) (u, v float64) {
	dx, dy := x-s.x, y-s.y
	return dx*s.cos + dy*s.sin, dy*s.cos - dx*s.sin
}

// at returns the margin of a part.
// Source: signed distance to a rectangle by its own axes, as in Footprint.GapOnly.
func (s *part) at(x, y float64) float64 {
	if s.kind > side {
		return s.asked(x, y)
	}
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

// asked is the margin of a part of a constraint.
func (s *part) asked(x, y float64) float64 {
	if s.kind == carried {
		return s.hull.margin(x, y)
	}
	return s.asks.Margin(geometry.Point{X: x, Y: y})
}

// exact returns the margin of part k at a place, inside a bent line that of the whole line. That of a leg alone, as part.at
// has it, is never below that of the line and equals it outside the line.
func (m *Margins) exact(k int32, x, y float64) float64 {
	d := m.parts[k].at(x, y)
	if m.inside(k, d) {
		return m.whole(m.parts[k].owner, geometry.Point{X: x, Y: y})
	}
	return d
}

// whole returns the margin of an obstacle, a bent line, at a place inside it.
func (m *Margins) whole(owner int32, p geometry.Point) float64 {
	o := &m.limits.Obstacles[owner]
	if m.outlines[owner] == nil {
		return o.Footprint.GapOnly(p) - o.Need
	}
	gap, _ := m.outlines[owner].WayOut(p)
	return gap - o.Need
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
