package route

import (
	"math"

	"bench.example/undermark/geometry"
)

// sides are those on which a way may have a disc.
func (d *disc) sides() []side {
	if d.kind == aCorner {
		return bothSides
	}
	return noSide
}

var bothSides, noSide = []side{onLeft, onRight}, []side{either}

// carryOn puts the legs in the queue that may follow a label.
func (s *search) carryOn(l *label) {
	from := &s.discs[l.disc]
	for i := range s.discs {
		to := &s.discs[i]
		if i == l.disc || !follows(from, to) {
			continue
		}
		if to.kind == belowStart {
			s.drop(l, i)
			continue
		}
		for _, sd := range to.sides() {
			along, length, ok := heading(from, l.side, to, sd)
			if !ok || l.turnsBack(along) {
				continue
			}
			if t, ok := (tangent{along: along, length: length}).laid(from, l.side, to, sd); ok {
				s.offer(l, i, sd, t)
			}
		}
	}
	s.queue.end()
}

// follows tells whether a leg may lead from one kind of disc to another.
func follows(from, to *disc) bool {
	switch {
	case to.kind == theStart, (to.kind == leaving || to.kind == belowStart) && from.kind != theStart:
		return false
	}
	return from.kind != coming || to.kind == aGoal && to.goal == from.goal
}

// drop begins a way straight down.
func (s *search) drop(l *label, to int) {
	s.queue.push(step{l, int32(to), either}, l.least)
}

// offer puts a leg in the queue unless it can't follow.
func (s *search) offer(l *label, to int, sd side, t tangent) {
	arc, ok := s.arcTo(l, t.along)
	if !ok || s.q.MostTurn > 0 && l.turn+arc > s.q.MostTurn || arc > mostAtOnce {
		return
	}
	if s.discs[to].kind == aGoal && s.facesWrong(t.along) {
		return
	}
	d := &s.discs[l.disc]
	if l.before != nil && (d.radius < s.q.Bend || l.slack < 0) && l.slack+(d.radius-s.q.Bend)*math.Tan(arc/2) < -touching {
		return
	}
	if (d.kind == leaving || d.kind == coming) && arc < leastTurn {
		return // straight on is a leg of its own
	}
	farther := d.radius*arc + t.length
	least := s.least(l, farther, t.to, to)
	if least > s.enough || s.q.MostLength > 0 && least > s.q.MostLength || s.tooLow(l, farther, t.to) {
		return
	}
	s.queue.push(step{l, int32(to), sd}, least)
}

// mostAtOnce is the greatest turn of one corner: a bend that turns straight back has no corner.
const mostAtOnce = 170 * math.Pi / 180

// turnsBack tells whether a way surely can't go on in a direction: it would turn away from the disc that it bends round. Found by a
// product, as most directions are such.
func (l *label) turnsBack(along geometry.Point) bool {
	a := l.leg.along
	return float64(l.side)*(a.X*along.Y-a.Y*along.X) < -surelyBack
}

// arcTo is by how much a way turns where a label ends to go on in a direction.
func (s *search) arcTo(l *label, along geometry.Point) (float64, bool) {
	switch {
	case l.before == nil:
		return 0, true
	case l.leg.along == (geometry.Point{}): // from straight down
		return math.Pi / 2, true
	}
	return turned(l.leg.along, along, l.side)
}

// facesWrong tells whether a last leg that is level would point where it must not.
func (s *search) facesWrong(along geometry.Point) bool {
	for i, f := range s.q.Facing {
		if along.Dot(f.From.Plan()) > s.cos[i]+touching {
			return true
		}
	}
	return false
}

// leastTurn is how much a way turns at the least where it turns at all.
const leastTurn = 2 * math.Pi / 180
