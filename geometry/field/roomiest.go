package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// Roomiest returns the place on the floor whose margin is within tolerance (mm, more than 0) of the greatest there is. It
// is negative where nothing is open.
func (m *Margins) Roomiest(tolerance float64) Place {
	s := newClimb(m, tolerance)
	for _, c := range m.start() {
		s.offer(c)
	}
	s.run()
	return m.At(s.at)
}

// climb looks for the greatest margin in some cells: the most promising cell is quartered first, until none can hold a
// margin above the best found by more than the tolerance.
type climb struct {
	lister
	tolerance float64
	best      float64
	at        geometry.Point
	cells     queue[cell] // by minus the most their margins can be
}

func newClimb(m *Margins, tolerance float64) *climb {
	return &climb{lister: lister{m: m}, tolerance: tolerance, best: math.Inf(-1)}
}

// offer measures the middle of c, whose list may hold more than matters, and puts it in line when it is worth a look.
func (s *climb) offer(c cell) {
	top := len(s.stack)
	least, lead, most := s.sift(&c)
	if most > s.best+s.tolerance {
		if least < 0 { // inside a bent line it may be less
			least, _ = s.m.lead(c.near, c.middle())
		}
		if least > s.best {
			s.best, s.at = least, c.middle()
		}
		if len(c.near) <= few {
			most = min(most, s.m.ceiling(&c, lead))
		}
		if most > s.best+s.tolerance {
			s.cells.push(-most, c)
			return
		}
	}
	s.stack = s.stack[:top]
}

func (s *climb) run() {
	for !s.cells.empty() && -s.cells.least() > s.best+s.tolerance {
		c := s.cells.pop()
		for _, q := range c.quarters() {
			s.offer(q)
		}
	}
}

// ceiling returns a margin that c has nowhere more of. The margin of a part is convex, and so is the mean of two, so in a
// cell they are greatest at a corner; and the least margin is at most any of them. The mean of two keeps a search from
// quartering its way along the middle between two parallel sides, where one place is as good as the other.
func (m *Margins) ceiling(c *cell, lead int32) float64 {
	if lead < 0 {
		return math.Inf(1)
	}
	first := m.corners(lead, c)
	most := greatest(first)
	for _, k := range c.near {
		if k == lead {
			continue
		}
		d := m.corners(k, c)
		most = min(most, greatest(d))
		for i := range d {
			d[i] = (d[i] + first[i]) / 2
		}
		most = min(most, greatest(d))
	}
	return most
}

func greatest(d [4]float64) float64 { return max(d[0], d[1], d[2], d[3]) }
