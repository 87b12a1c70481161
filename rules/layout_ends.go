package rules

import (
	"bench.example/undermark/vehicles"
)

// edges are those along which an exhaust is sought from each spot.
func (l *layouting) edges() []Edge {
	if l.fixed {
		return Edges
	}
	return []Edge{AnyEdge}
}

// know finds where an exhaust may end along each edge, as is demanded, of a placed job: that rests on the van alone, whatever the place of the cut.
// They are shared by all searches for an exhaust.
func (l *layouting) know(placed *Result, d demand) {
	for _, edge := range l.edges() {
		if _, known := l.ends[d.endsBy(edge)]; known || l.wanted.Err() != nil {
			continue
		}
		k := newSeeker(l.wanted, placed, vehicles.ExhaustRun, Target{Edge: edge}, nil)
		l.ends[d.endsBy(edge)] = k.endsFor(d)
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
