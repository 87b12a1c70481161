package route

import (
	"cmp"
	"context"
	"math"
	"slices"
)

// search looks for ways: the best label is carried on over all legs that begin where it ends.
type search struct {
	q       *Query
	parts   []part
	discs   []disc
	known   [][]*label // by disc and side: those that none is better than
	nearest [][]int32  // by disc: the goals that may be the nearest from somewhere on it
	queue   queue
	ends    []*label  // the ways at a goal, the shortest first
	cos     []float64 // of the angles that the last leg keeps

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
	s.known, s.nearest = make([][]*label, 3*len(s.discs)), make([][]int32, len(s.discs))
	s.queue.reserve(legsEach * len(s.discs))
	return s
}

// legsEach is for how many legs a disc there is room from the beginning: what most searches come to.
const legsEach = 8

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
