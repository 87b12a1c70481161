package rules

import (
	"slices"

	"bench.example/undermark/vehicles"
)

// fuelled sees to the layouts that are going to be proposed without a fuel line although it is known where one begins: it is sought beside
// their other runs as carefully as by itself, and what comes nearest is kept to be named where none can be laid.
func (l *layouting) fuelled(ranked []*Layout) {
	best := chosen(ranked)
	share(len(ranked), l.workers, func(i int) {
		a := ranked[i]
		if !a.AsItIs && a.Result.Job.Fuel == nil && l.wanted.Err() == nil && slices.ContainsFunc(best, func(b Layout) bool { return better(a, &b) == 0 }) {
			l.withFuel(a)
		}
	})
	slices.SortFunc(ranked, better)
}

// withFuel lays a layout's fuel line from its tank, or keeps the nearest miss.
func (l *layouting) withFuel(a *Layout) {
	mouth, _ := a.Result.Job.Stub(vehicles.FuelRun)
	line, known := UsualFuel(&a.Result, mouth)
	if !known {
		return
	}
	with := putRun(a.Result, vehicles.FuelRun, &line)
	found := FindRoute(l.wanted, &with, vehicles.FuelRun, FuelTarget(&line), nil)
	if !found.Found() {
		a.FuelMiss = &found
		return
	}
	after, faults := Judge(a.Result.Job.WithRun(vehicles.FuelRun, found.Run), l.result.Book)
	if len(faults) > 0 {
		return
	}
	if laid := l.layout(&after, a.Yaw, a.Away); better(laid, a) < 0 {
		*a = *laid
	}
}
