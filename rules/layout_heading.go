package rules

import (
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
