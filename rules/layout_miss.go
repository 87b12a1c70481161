package rules

import (
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// mostMissed is how many sketches near misses are sought of.
const mostMissed = 3

// missed works out near misses, of the easiest sketches that differ: another heading at the same place may miss
// by far less, but each takes about a second of one core, half a minute for all.
func (l *layouting) missed(sketches []sketch) {
	var done []geometry.Point
	for i := range sketches {
		s := &sketches[i]
		if len(done) == mostMissed || !l.goesOn(AtMisses, len(done), mostMissed) {
			return
		}
		if slices.ContainsFunc(done, func(at geometry.Point) bool { return !l.fixed && s.at.Sub(at).Norm() < spotsApart }) {
			continue
		}
		done = append(done, s.at)
		if s.laid == nil {
			l.nearest(s)
		}
	}
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
