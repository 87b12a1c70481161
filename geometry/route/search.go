package route

import (
	"cmp"
	"context"
	"math"
	"slices"

	"bench.example/undermark/geometry"
)

// search looks for ways: the best label is carried on over all legs that begin where it ends.
type search struct {
	q     *Query
	parts []part
	discs []disc
	known [][]*label // by disc and side: those that none is better than
	queue queue
	ends  []*label  // the ways at a goal, the shortest first
	cos   []float64 // of the angles that the last leg keeps

	wanted int     // how many ways are asked for
	enough float64 // a way that is longer is not asked for
	shut   int     // the part that the leg looked at last could not pass

	looked    label // the one that is looked at
	all       layer // what most says
	allOf     [1]*layer
	low, high float64 // the heights of all goals
	gates     []gate  // memory that bound works in
	string    []gate
}

// label is a way to a disc, up to where it touches it.
type label struct {
	disc    int
	side    side
	leg     tangent // the last
	layers  []*layer
	at      float64 // how far along it ends, mm in plan
	height  float64 // how high it ends when it goes down and up as little as it can
	near    float64 // how far from there the nearest goal is in plan
	least   float64 // a length in space that no way comes under that goes on from here
	slope   float64 // by how much more, at the least, for each mm that it goes farther in plan than straight to the nearest goal
	length  float64 // of a way at its goal
	heights []gate  // and of that, as places along it
	turn    float64
	slack   float64 // by how much the last leg is longer than the bend at its beginning takes
	before  *label
	arc     float64 // by how much the way turns about the disc before, to this leg
}

// step is a leg not yet looked at. It is worked out again when it is: there are many, and few are looked at.
type step struct {
	after *label
	disc  int32
	side  side
}

func newSearch(q *Query) *search {
	s := &search{q: q, parts: partsOf(q), enough: math.Inf(1), low: math.Inf(1), high: math.Inf(-1)}
	s.discs = append(s.discs, disc{at: q.From.Plan(), kind: theStart})
	for i, g := range q.To {
		s.discs = append(s.discs, disc{at: g.At, kind: aGoal, goal: i})
		s.low, s.high = min(s.low, g.Low), max(s.high, g.High)
	}
	for i := range s.parts {
		for _, d := range s.parts[i].discs() {
			if s.inBox(d.at, d.radius) {
				s.discs = append(s.discs, d)
			}
		}
	}
	for _, f := range q.Facing {
		s.cos = append(s.cos, math.Cos(f.Least))
	}
	s.places()
	s.known = make([][]*label, 3*len(s.discs))
	s.queue.reserve(legsEach * len(s.discs))
	return s
}

// legsEach is for how many legs a disc there is room from the beginning: what most searches come to.
const legsEach = 8

// inBox tells whether any of a disc is in the box.
func (s *search) inBox(at geometry.Point, radius float64) bool {
	return at.X+radius >= s.q.Min.X && at.X-radius <= s.q.Max.X && at.Y+radius >= s.q.Min.Y && at.Y-radius <= s.q.Max.Y
}

// How far from its ends a way that has bends may turn, in bend radii, and in how many directions.
var (
	placesAt = [...]float64{1, 2, 3.5}
	around   = 12
)

// places adds where a way may turn to leave its start or to come to its goal as it should.
func (s *search) places() {
	if s.q.Bend <= 0 {
		return
	}
	s.discs = append(s.discs, disc{at: s.q.From.Plan(), kind: belowStart})
	s.placesRound(disc{at: s.q.From.Plan(), kind: leaving}, placesAt[:])
	switch {
	case len(s.q.To) == 1:
		s.placesRound(disc{at: s.q.To[0].At, kind: coming}, placesAt[:])
	case s.q.TurnBefore:
		for i := range s.q.To {
			s.placesRound(disc{at: s.q.To[i].At, kind: coming, goal: i}, placesAt[:1])
		}
	}
}

// placesRound adds places of a kind round an end, so many bend radii from it: before a goal, those from which a leg may lead to it.
func (s *search) placesRound(end disc, far []float64) {
	middle := end.at
	for _, far := range far {
		for k := range around {
			out := geometry.Point{X: 1}.Turn(float64(k) * 360 / float64(around))
			end.at = middle.Add(out.Scale(far * s.q.Bend))
			if end.kind == coming && s.facesWrong(out.Scale(-1)) || !s.inBox(end.at, 0) {
				continue
			}
			if _, open := s.blocks(end.at, end.at, touching); open {
				s.discs = append(s.discs, end)
			}
		}
	}
}

func (s *search) run(ctx context.Context, tell func(int)) {
	top := layer{low: s.q.From.Z, high: s.q.From.Z, highest: s.q.From.Z}
	start := &label{layers: []*layer{&top}, height: s.q.From.Z, leg: tangent{to: s.q.From.Plan()}}
	s.bound(start)
	s.carryOn(start)
	for tried := 0; ; tried++ {
		if tried%256 == 0 {
			if tell != nil {
				tell(tried)
			}
			if ctx.Err() != nil {
				return
			}
		}
		next, least, ok := s.queue.pop()
		if !ok || least > s.enough {
			return
		}
		if next.disc == carried {
			s.carryOn(next.after)
			continue
		}
		l := s.look(next, least)
		switch {
		case l == nil:
		case s.discs[l.disc].kind == aGoal:
			s.arrived(l)
		default: // carried on when nothing else may be shorter
			s.queue.push(step{after: l, disc: carried}, l.least)
			s.queue.end()
		}
	}
}

// carried is said instead of a disc where it is a label's turn to be carried on.
const carried = -1

// arrived keeps a way at a goal, in the order of their lengths: the heights that it needs may make it longer than was known when it was
// looked at, and than others that are not looked at yet.
func (s *search) arrived(l *label) {
	at, _ := slices.BinarySearchFunc(s.ends, l, func(a, b *label) int { return cmp.Or(cmp.Compare(a.length, b.length), -1) })
	s.ends = slices.Insert(s.ends, at, l)
	s.ends = s.ends[:min(s.wanted, len(s.ends))]
	s.enough = s.ends[0].length * muchLonger
	if len(s.ends) == s.wanted {
		s.enough = min(s.enough, s.ends[s.wanted-1].length)
	}
}

// muchLonger is how much longer than the shortest way one may be that is proposed beside it.
const muchLonger = 1.1

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
	least := s.least(l, farther, t.to)
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
