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
	s := &approach{search: searchOf(m), to: p, far: math.Inf(1)}
	s.wayOut()
	s.quarter(s, m.start()...)
	return m.At(s.best), !math.IsInf(s.far, 1)
}

// approach looks for the open place nearest to a place that is not: a cell waits by the distance of its nearest point, until
// even the nearest cell is no nearer than the best place found.
type approach struct {
	search
	to   geometry.Point
	far  float64 // distance of the best place
	best geometry.Point
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

func (s *approach) bound() float64 { return s.far - finest }

func (s *approach) offer(c cell) {
	far := c.distance(s.to)
	if far >= s.bound() {
		return
	}
	top := len(s.stack)
	if least, _, most := s.sift(&c); most >= 0 {
		if least >= 0 && c.middle().Sub(s.to).Norm() < s.far && s.m.open(c.middle()) {
			s.take(s.m.march(c.middle(), s.to))
		}
		if c.radius() > smallest && (least >= 0 || !s.m.closed(&c)) {
			s.waiting.push(far, c)
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
