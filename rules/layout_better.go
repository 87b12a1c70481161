package rules

import (
	"slices"

	"bench.example/undermark/geometry"
)

// headed are sketches laid with the job's heading where those that are going to be proposed have another: a heater is not turned for nothing.
func (l *layouting) headed(sketches []sketch) (list []sketch) {
	if l.fixed {
		return nil
	}
	yaw := geometry.WithinHalfTurn(l.result.Job.Heater.Yaw)
	var room *Room
	for _, b := range chosen(l.ranking(sketches)) {
		if !b.turned || b.broken > 0 {
			continue
		}
		if room == nil {
			whole := l.cut.with(l.result.wholeAt(yaw))
			room = &whole
		}
		if s, ok := l.nearTo(b.At, LayoutsApart/2, *room, yaw); ok {
			list = append(list, sketch{spot: s})
		}
	}
	share(len(list), l.workers, func(i int) {
		s := l.sketch(list[i].spot, AnyEdge)
		if s.headed = true; s.placed != nil && !s.foul {
			for _, d := range []demand{uprightly(demands[0]), uprightly(demands[len(demands)-1])} {
				if s.laid == nil && l.wanted.Err() == nil {
					l.lay(&s, d)
				}
			}
		}
		list[i] = s
	})
	return list
}

// wider are how much more than is asked the runs of the best layouts are tried with, mm, the most that can be had first.
var wider = []float64{30, 10}

// widen lays those that are going to be proposed anew with more room about their runs, where they can have it: the shortest runs graze what
// they pass.
func (l *layouting) widen(sketches []sketch) {
	best := chosen(l.ranking(sketches))
	share(len(sketches), l.workers, func(i int) {
		s := &sketches[i]
		if s.laid == nil || s.laid.broken > 0 || !s.headed && !slices.ContainsFunc(best, func(b Layout) bool { return better(s.laid, &b) == 0 }) {
			return
		}
		for _, s.spare = range wider {
			was := s.laid
			if l.lay(s, s.rough.demand); s.laid != was || l.wanted.Err() != nil {
				return
			}
		}
	})
}
