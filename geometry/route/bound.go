package route

import (
	"math"

	"bench.example/undermark/geometry"
)

// bound works out a length that no way comes under which goes on from a label: that of a string through its layers and straight on to the
// nearest goal, at any height that one has. Where a way goes farther in plan the end of its string moves out, and the string grows by no
// less than its last piece slopes: it is the shortest, and its length bends up as its end moves.
func (s *search) bound(n *label) {
	n.near, n.slope = s.near(n.leg.to, n.disc), 1
	least := math.Inf(1)
	for _, l := range n.layers {
		s.gates = append(l.gates(s.gates[:0]), gate{n.at, l.low, l.highest})
		s.string = pull(s.string[:0], s.gates, s.q.From.Z, gate{n.at + n.near, s.low, s.high}, math.Inf(-1))
		last := s.string[len(s.string)-2:]
		if long := length(last); long > 0 {
			n.slope = min(n.slope, (last[1].at-last[0].at)/long)
		}
		least = min(least, length(s.string))
	}
	n.least = max(n.least, least)
}

// least is a length that no way comes under which goes so many mm farther in plan than a label does, to a place on a disc.
func (s *search) least(l *label, farther float64, at geometry.Point, disc int) float64 {
	more := max(farther+s.near(at, disc)-l.near, 0)
	return l.least + more*l.slope
}

// near is how far the nearest goal is from a place in plan, on a disc: of the hundreds along an edge few can be.
func (s *search) near(at geometry.Point, disc int) float64 {
	if s.nearest[disc] == nil {
		s.nearest[disc] = s.closeTo(&s.discs[disc])
	}
	least := math.Inf(1)
	for _, i := range s.nearest[disc] {
		off := s.q.To[i].At.Sub(at)
		least = min(least, off.Dot(off))
	}
	return math.Sqrt(least)
}

// closeTo are the goals that may be the nearest from somewhere on a disc: no farther from its middle than the one that is nearest to that, and
// all the way across.
func (s *search) closeTo(d *disc) (list []int32) {
	if d.kind == aGoal {
		return []int32{int32(d.goal)}
	}
	least := math.Inf(1)
	for i := range s.q.To {
		least = min(least, s.q.To[i].At.Sub(d.at).Norm())
	}
	for i := range s.q.To {
		if s.q.To[i].At.Sub(d.at).Norm() <= least+2*d.radius+touching {
			list = append(list, int32(i))
		}
	}
	return list
}

// rise works out how high a label ends when its way goes down and up as little as it can.
func (s *search) rise(n *label) {
	before, best := n.before.height, math.Inf(1)
	for _, l := range n.layers {
		at := min(max(before, l.low), l.highest)
		if off := math.Abs(at - before); off < best {
			best, n.height = off, at
		}
	}
}

// tooLow tells whether a way that goes so many mm farther in plan than a label does, to a place, has fallen too far for any goal.
func (s *search) tooLow(l *label, farther float64, at geometry.Point) bool {
	if s.q.free() {
		return false
	}
	highest := s.highest(l, farther)
	for i := range s.q.To {
		if g := &s.q.To[i]; highest-s.q.Fall*g.At.Sub(at).Norm() >= g.Low-touching {
			return false
		}
	}
	return true
}
