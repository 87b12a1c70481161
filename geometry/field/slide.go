package field

import "bench.example/undermark/geometry"

// turns is at how many walls in turn a slide is turned aside.
const turns = 8

// Slide returns where an open place p comes to when it is moved by step and stays open: at what closes the way it goes on
// along it, as along a wall, with what is left of the step in that direction. What is not open, off the floor too, stays where
// it is. Closed strips narrower than 0.05 mm may be crossed.
func (m *Margins) Slide(p, step geometry.Point) geometry.Point {
	if !m.open(p) {
		return p
	}
	left := step
	for range turns {
		q := m.march(p, p.Add(left))
		left = left.Sub(q.Sub(p))
		p = q
		if left.Norm() < finest {
			break
		}
		var wall geometry.Point
		if p, wall = m.touch(p, left); wall == (geometry.Point{}) {
			break
		}
		left = left.Sub(wall.Scale(left.Dot(wall)))
		if left.Dot(step) <= 0 {
			break
		}
	}
	return p
}

// touch returns the direction out of what is in the way from p towards left, and p kept a skin off it; no direction when
// nothing is.
func (m *Margins) touch(p, left geometry.Point) (off, wall geometry.Point) {
	ahead := p.Add(left.Scale(4 * skin / left.Norm()))
	margin, lead := m.lead(m.all, ahead)
	if lead < 0 {
		return p, geometry.Point{}
	}
	wall = m.outward(lead, ahead)
	if wall.Dot(left) >= 0 {
		return p, geometry.Point{}
	}
	if q := p.Add(wall.Scale(max(0, 4*skin-margin))); m.open(q) {
		p = q
	}
	return p, wall
}

// march returns the last open place on the straight way from an open place to another before the first closed stretch of
// 0.05 mm or more, within a tenth of the skin.
func (m *Margins) march(from, to geometry.Point) geometry.Point {
	length := to.Sub(from).Norm()
	at := func(s float64) geometry.Point {
		if s >= length {
			return to
		}
		return from.Add(to.Sub(from).Scale(s / length))
	}
	good, margin := 0.0, m.room(from)
	for good < length {
		s := min(length, good+max(margin, shortest))
		if room := m.room(at(s)); room >= 0 {
			good, margin = s, room
			continue
		}
		for bad := s; bad-good > skin/10; {
			if middle := (good + bad) / 2; m.open(at(middle)) {
				good = middle
			} else {
				bad = middle
			}
		}
		break
	}
	return at(good)
}
