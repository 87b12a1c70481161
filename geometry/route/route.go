// Package route finds a run through space round prisms: a centreline from a place to one of several, that keeps its distance
// from each, falls as it is asked to, and has corners that can be rounded.
//
// Lengths are mm, angles radians, Z is up. Find looks in plan first: what it may touch there are discs, the corners of what is in
// the way grown by the distance asked for, and a shortest way is made of their common tangents. Each way carries the heights it may
// have, so that what can be passed above or below is. Straighten then works on the corners in space. Nothing here knows what a run is
// of, and nothing holds state; the same question has the same answer.
package route

import (
	"context"
	"math"
	"slices"

	"bench.example/undermark/geometry"
)

// Obstacle is what a run keeps away from, by the distance of its centreline: half of what it measures across and what is asked
// beside that. One with a Need of 0 or less is in nobody's way.
type Obstacle struct {
	Prism geometry.Prism
	Need  float64
}

// Goal is where a run may end: a place in plan, and between which heights; nowhere when Low is above High.
type Goal struct {
	At        geometry.Point
	Low, High float64
	Open      bool // nothing says from where it is come to, as an edge does
}

// Facing is a direction that the last leg of a run may not point in, nor near to it.
type Facing struct {
	From  geometry.Point3 // a unit vector
	Least float64         // the angle between the two
}

// Query is what is asked of a run.
type Query struct {
	From      geometry.Point3
	To        []Goal
	Min, Max  geometry.Point3 // the box that the centreline stays in; the top holds from the first corner on
	Obstacles []Obstacle

	Fall       float64 // how much it falls at least, mm per mm of plan; minus infinity: it may rise
	Bend       float64 // the radius its corners are rounded with
	MostTurn   float64 // of all its corners together in plan; 0: no limit
	MostLength float64 // 0: no limit
	Facing     []Facing

	// TurnBefore lets a way turn just before any of several goals, as it may before a single one. Where it comes to all of them in a
	// direction that its last leg may not have, nothing else leads there.
	TurnBefore bool
}

// Way is a way that Find proposes: corners, the first and the last included, and about how long it is.
type Way struct {
	Corners []geometry.Point3
	Length  float64
}

// free tells whether a run may rise.
func (q *Query) free() bool { return math.IsInf(q.Fall, -1) }

// Find returns up to most ways, the shortest first, none looked for that is much longer than that; none where there is none, or what was found once ctx is done. In plan
// they keep every distance, in height too but within a bend: whoever lays one rounds it and looks. They fall as asked along what is rounded; corners stand outside of that,
// so that a leg may fall by some percent less. tell, if any, is told now and
// then how many ways were tried.
func Find(ctx context.Context, q *Query, most int, tell func(tried int)) []Way {
	own := *q
	own.To = slices.DeleteFunc(slices.Clone(q.To), func(g Goal) bool { return g.Low > g.High })
	s := newSearch(&own)
	s.wanted = most
	s.run(ctx, tell)
	ways := make([]Way, 0, len(s.ends))
	for _, end := range s.ends {
		if w, ok := s.way(end); ok {
			ways = append(ways, w)
		}
	}
	return ways
}
