package rules

import (
	"slices"
	"sync/atomic"

	"bench.example/undermark/vehicles"
)

// mostMissed is how many sketches near misses are sought of.
const mostMissed = 3

// missed works out near misses, of the easiest sketches that differ: another heading at the same place may miss
// by far less, but each takes a good part of a second of one core, ten times that for all.
func (l *layouting) missed(sketches []sketch) {
	list := l.toMiss(sketches)
	var done atomic.Int64
	share(len(list), l.workers, func(i int) {
		if !l.goesOn(AtMisses, int(done.Load()), len(list)) {
			return
		}
		if list[i].laid == nil {
			l.nearest(list[i])
		}
		done.Add(1)
	})
}

// toMiss are those, the easiest first.
func (l *layouting) toMiss(sketches []sketch) (list []*sketch) {
	for i := range sketches {
		near := func(s *sketch) bool { return !l.fixed && s.at.Sub(sketches[i].at).Norm() < spotsApart }
		if len(list) < mostMissed && !slices.ContainsFunc(list, near) {
			list = append(list, &sketches[i])
		}
	}
	return list
}

// nearest lays the nearest miss of each run in turn.
func (l *layouting) nearest(s *sketch) {
	at := *s.placed
	for _, of := range vehicles.RunKinds {
		to := Target{Edge: s.edge}
		switch of {
		case vehicles.IntakeRun:
			to.Edge = AnyEdge
		case vehicles.FuelRun:
			if l.result.Job.Fuel == nil {
				continue
			}
			to = FuelTarget(l.result.Job.Fuel)
		}
		if of != vehicles.ExhaustRun {
			at = putRun(at, of, l.result.Job.Run(of))
		}
		found := FindRoute(l.wanted, &at, of, to, nil)
		if found.Run == nil {
			return
		}
		at = putRun(at, of, found.Run)
	}
	if l.result.Job.Fuel == nil {
		at.Job = at.Job.WithRun(vehicles.FuelRun, nil) // that one only kept room
	}
	l.take(s, at.Job)
}
