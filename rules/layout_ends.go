package rules

import (
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// ends are where a run may end along an edge, and whether that keeps what is asked of an end.
type ends struct {
	goals []route.Goal
	keep  bool
}

// endsAsked is of which ends: along an edge, as is demanded.
type endsAsked struct {
	edge   Edge
	demand demand
}

// edges are those along which an exhaust is sought from each spot.
func (l *layouting) edges() []Edge {
	if l.fixed {
		return Edges
	}
	return []Edge{AnyEdge}
}

// know finds where an exhaust may end along each edge, as is demanded, of a placed job: that rests on the van alone, whatever the place of the cut.
func (l *layouting) know(placed *Result, d demand) {
	for _, edge := range l.edges() {
		if _, known := l.ends[endsAsked{edge, d}]; known || l.wanted.Err() != nil {
			continue
		}
		k := newSeeker(l.wanted, placed, vehicles.ExhaustRun, Target{Edge: edge}, nil)
		goals, keep := k.goals(d)
		l.ends[endsAsked{edge, d}] = ends{goals, keep}
	}
}

// knowFor finds it of the first of some spots where the job can be placed, for sketches.
func (l *layouting) knowFor(spots []spot) {
	for i := range spots {
		if placed, ok := l.placed(&spots[i]); ok {
			l.know(&placed, uprightly(demands[0]))
			return
		}
	}
}

// endsOf are the ends of a search, those of an exhaust that are known.
func (l *layouting) endsOf(s *seeker, d demand) ends {
	if found, known := l.ends[endsAsked{s.to.Edge, d}]; known && s.kind == vehicles.ExhaustRun {
		return found
	}
	goals, keep := s.goals(d)
	return ends{goals, keep}
}
