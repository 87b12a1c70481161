package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// Aim says what a place is worth: its margin, less something for its distance from where it is wanted.
type Aim struct {
	From    geometry.Point
	Within  float64 // no place farther from there is taken, mm; may be +Inf
	Enough  float64 // more margin than that is worth nothing, mm; may be +Inf
	PerAway float64 // taken off for each mm from there, at least 0
}

// worth is what a place is worth at most with a margin and a distance.
func (a *Aim) worth(margin, away float64) float64 { return min(margin, a.Enough) - a.PerAway*away }

// roomy is the aim of most room anywhere.
var roomy = Aim{Within: math.Inf(1), Enough: math.Inf(1)}

// Roomiest returns the place on the floor whose margin is within tolerance (mm, more than 0) of the greatest there is. It
// is negative where nothing is open.
func (m *Margins) Roomiest(tolerance float64) Site {
	place, _ := m.Best(roomy, tolerance)
	return place
}

// Best returns the place on the floor that is worth most, within tolerance (mm, more than 0). Its margin is negative where
// nothing is open; ok is false when the floor is farther off than the aim allows.
func (m *Margins) Best(aim Aim, tolerance float64) (place Site, ok bool) {
	s := newClimb(m, tolerance)
	s.aim = aim
	s.quarter(s, m.start()...)
	if math.IsInf(s.best, -1) {
		return Site{}, false
	}
	return m.At(s.at), true
}

// Holds returns a place on the floor, no farther than within from p, whose margin is more than so much, if there is one; it
// may miss one whose margin is more by less than tolerance (mm, more than 0).
func (m *Margins) Holds(p geometry.Point, within, margin, tolerance float64) (place Site, ok bool) {
	s := newClimb(m, tolerance)
	s.aim, s.best = Aim{From: p, Within: within, Enough: margin + 2*tolerance}, margin
	s.quarter(s, m.start()...)
	return m.At(s.at), s.best > margin
}

// climb looks for the place worth most in some cells, of which each waits by minus the most its places can be worth, until none
// can hold one worth more than the best found by more than the tolerance.
type climb struct {
	search
	aim       Aim
	tolerance float64
	best      float64
	at        geometry.Point
}

func newClimb(m *Margins, tolerance float64) *climb {
	return &climb{search: searchOf(m), aim: roomy, tolerance: tolerance, best: math.Inf(-1)}
}

// offer looks at a place in c, and has c wait when it may hold one worth more.
func (s *climb) offer(c cell) {
	away := c.distance(s.aim.From)
	if away > s.aim.Within {
		return
	}
	top := len(s.stack)
	least, lead, most := s.sift(&c)
	if s.aim.worth(most, away) > s.best+s.tolerance {
		s.try(&c, least)
		most = min(most, s.m.ceiling(&c, lead))
		if worth := s.aim.worth(most, away); worth > s.best+s.tolerance {
			s.waiting.push(-worth, c)
			return
		}
	}
	s.stack = s.stack[:top]
}

// try takes the middle of c, where the least margin is given, if it is the best place so far; where that is too far off, the place of c
// that is nearest.
func (s *climb) try(c *cell, least float64) {
	p := c.middle()
	away := p.Sub(s.aim.From).Norm()
	if away > s.aim.Within {
		p = c.nearest(s.aim.From)
		away, least = p.Sub(s.aim.From).Norm(), -1
	}
	if least < 0 { // not measured, or inside a bent line, where it may be less
		least, _ = s.m.lead(c.near, p)
	}
	if worth := s.aim.worth(least, away); worth > s.best {
		s.best, s.at = worth, p
	}
}

func (s *climb) bound() float64 { return -(s.best + s.tolerance) }

// ceiling returns a margin that c has nowhere more of. The margin of a part is convex, and so is the mean of two, so in a
// cell they are greatest at a corner; and the least margin is at most any of them. The mean of two keeps a search from
// quartering its way along the middle between two parallel sides, where one place is as good as the other.
func (m *Margins) ceiling(c *cell, lead int32) float64 {
	common, ways := m.split(c.near)
	if len(ways) == 0 {
		return m.ceilingOf(common, nil, c, lead)
	}
	most := math.Inf(-1)
	for len(ways) > 0 {
		var way []int32
		way, ways = m.next(ways)
		least, lead := m.least(common, c.middle(), math.Inf(-1))
		if d, k := m.least(way, c.middle(), math.Inf(-1)); d < least {
			lead = k
		}
		most = max(most, m.ceilingOf(common, way, c, lead))
	}
	return most
}

// ceilingOf is the ceiling of what is asked anyhow and of one way, of which lead has about the least margin; +Inf where they
// are too many.
func (m *Margins) ceilingOf(common, way []int32, c *cell, lead int32) float64 {
	if lead < 0 || len(common)+len(way) > few {
		return math.Inf(1)
	}
	first := m.corners(lead, c)
	most := greatest(first)
	for i := range len(common) + len(way) {
		list, at := common, i
		if i >= len(common) {
			list, at = way, i-len(common)
		}
		if list[at] == lead {
			continue
		}
		d := m.corners(list[at], c)
		most = min(most, greatest(d))
		for i := range d {
			d[i] = (d[i] + first[i]) / 2
		}
		most = min(most, greatest(d))
	}
	return most
}

func greatest(d [4]float64) float64 { return max(d[0], d[1], d[2], d[3]) }
