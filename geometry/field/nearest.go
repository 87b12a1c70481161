package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// Nearest returns the open place on the floor that is nearest to p, to 0.01 mm of distance; p itself when it is open. Without
// an open place ok is false. An opening in which no circle of 0.001 mm fits may be missed.
func (m *Margins) Nearest(p geometry.Point) (place Site, ok bool) {
	if m.open(p) {
		return m.At(p), true
	}
	s := &approach{lister: lister{m: m}, to: p, far: math.Inf(1)}
	s.wayOut()
	for _, c := range m.start() {
		s.offer(c)
	}
	for !s.cells.empty() && s.cells.least() < s.far-finest {
		c := s.cells.pop()
		for _, q := range c.quarters() {
			s.offer(q)
		}
	}
	return m.At(s.best), !math.IsInf(s.far, 1)
}

// approach looks for the open place nearest to a place that is not: the nearest cell is quartered first, until even that is
// no nearer than the best place found.
type approach struct {
	lister
	to    geometry.Point
	far   float64 // distance of the best place
	best  geometry.Point
	cells queue[cell] // by the distance of their nearest point
}

// wayOut takes the straight way out of what limits the place, which is the nearest when nothing else closes it.
func (s *approach) wayOut() {
	margin, lead := s.m.lead(s.m.all, s.to)
	if lead < 0 {
		return
	}
	q := s.to.Add(s.m.outward(lead, s.to).Scale(skin - margin))
	if s.m.open(q) {
		s.take(q)
	}
}

func (s *approach) take(q geometry.Point) {
	if d := q.Sub(s.to).Norm(); d < s.far {
		s.far, s.best = d, q
	}
}

func (s *approach) offer(c cell) {
	far := c.distance(s.to)
	if far >= s.far-finest {
		return
	}
	top := len(s.stack)
	if least, _, most := s.sift(&c); most >= 0 {
		if least >= 0 && c.middle().Sub(s.to).Norm() < s.far && s.m.open(c.middle()) {
			s.take(s.m.march(c.middle(), s.to))
		}
		if c.radius() > smallest && (least >= 0 || !s.m.closed(&c)) {
			s.cells.push(far, c)
			return
		}
	}
	s.stack = s.stack[:top]
}

// nearest returns the place of c nearest to p.
func (c *cell) nearest(p geometry.Point) geometry.Point {
	return geometry.Point{X: min(max(p.X, c.x-c.halfX), c.x+c.halfX), Y: min(max(p.Y, c.y-c.halfY), c.y+c.halfY)}
}

// distance returns the distance of a place from the nearest point of c.
func (c *cell) distance(p geometry.Point) float64 {
	return math.Hypot(max(0, math.Abs(p.X-c.x)-c.halfX), max(0, math.Abs(p.Y-c.y)-c.halfY))
}
