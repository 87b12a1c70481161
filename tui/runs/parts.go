package runs

import (
	"cmp"
	"slices"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// sort is what a part of a run is.
type sort uint8

const (
	point sort = iota // the zero value: what the screen begins with
	stub
	muffler
	clip
	drain
	filter
	pump
	clips // what is said of clips as such: there are none, or nobody has said
	pipe
	shields
	burns
	from
	tank
)

// part is what a row of the list is of.
type part struct {
	sort  sort
	index int // of points, clips and drains, from 0
}

// placed is a part with its place along the run.
type placed struct {
	part
	along float64 // mm; of what has no place along it, nothing
	there bool    // it is in the job
}

// parts are what the run at hand has, in order along it, then what is said of it as a whole; what it may have and lacks stands there
// too, so that it is seen how to have it.
func (m screen) parts(s desk.State) []placed {
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return nil
	}
	laid := s.Job.Laid(m.of)
	list := m.points(run, laid)
	list = append(list, m.hung(run, laid)...)
	slices.SortStableFunc(list, func(a, b placed) int { return cmp.Compare(a.along, b.along) })
	whole := func(of sort, may, there bool) {
		if may {
			list = append(list, placed{part: part{sort: of}, there: there})
		}
	}
	fuel, exhaust := m.of == vehicles.FuelRun, m.of == vehicles.ExhaustRun
	whole(muffler, exhaust && run.Muffler == nil, false)
	whole(filter, fuel && run.Filter == nil, false)
	whole(pump, fuel && run.Pump == nil, false)
	whole(clips, len(run.Clips) == 0, run.Clips != nil)
	whole(pipe, true, true)
	whole(shields, exhaust, true)
	whole(burns, fuel, true)
	whole(from, fuel, true)
	whole(tank, fuel, run.Supply.Tank != nil)
	return list
}

// points are the stub and the points of the path; the stub of a fuel line is its last point.
func (m screen) points(run *vehicles.Run, laid *vehicles.LaidRun) (list []placed) {
	first := 0
	if m.of != vehicles.FuelRun {
		first = 1
		list = append(list, placed{part: part{sort: stub}, there: true})
	}
	for i := range run.Path {
		along := float64(i) // in their order while nobody knows where the run starts
		if laid != nil {
			along = laid.CornerAlong(i + first)
		}
		list = append(list, placed{part{point, i}, along, true})
	}
	return list
}

// hung is what hangs on the run.
func (m screen) hung(run *vehicles.Run, laid *vehicles.LaidRun) (list []placed) {
	onLeg := func(of sort, leg int, start float64) {
		along := 0.
		if laid != nil && leg <= laid.Legs() {
			along = laid.Where(leg, start)
		}
		list = append(list, placed{part{sort: of}, along, true})
	}
	if h := run.Muffler; h != nil {
		onLeg(muffler, h.Leg, h.Start)
	}
	if h := run.Filter; h != nil {
		onLeg(filter, h.Leg, h.Start)
	}
	if h := run.Pump; h != nil {
		onLeg(pump, h.Leg, h.Start)
	}
	for i, along := range run.Clips {
		list = append(list, placed{part{clip, i}, along, true})
	}
	for i, along := range run.Drains {
		list = append(list, placed{part{drain, i}, along, true})
	}
	return list
}

// row is where the part that is picked stands in the list: where it is gone, a neighbour of the same sort, or else the first point.
func (m screen) row(list []placed) int {
	first, same := 0, -1
	for i, p := range list {
		switch {
		case p.part == m.picked:
			return i
		case p.sort == m.picked.sort && p.index <= m.picked.index:
			same = i
		case p.part == part{}:
			first = i
		}
	}
	if same >= 0 {
		return same
	}
	return first
}

// here is the part that is picked; ok is false while the job has no such run.
func (m screen) here(s desk.State) (p placed, ok bool) {
	list := m.parts(s)
	if len(list) == 0 {
		return p, false
	}
	return list[m.row(list)], true
}

// picking picks the part so many rows on.
func (m screen) picking(s desk.State, by int) screen {
	if list := m.parts(s); len(list) > 0 {
		m.picked = list[max(0, min(m.row(list)+by, len(list)-1))].part
	}
	return m
}

// pickPoint picks the next point along the run, or the one before for -1.
func (m screen) pickPoint(s desk.State, way int) screen {
	list := m.parts(s)
	for i := m.row(list) + way; i >= 0 && i < len(list); i += way {
		if list[i].sort == point {
			m.picked = list[i].part
			break
		}
	}
	return m
}

// pickAlong picks the next part along the run, or the one before for -1, passing what has no place there.
func (m screen) pickAlong(s desk.State, way int) screen {
	list := m.parts(s)
	for i := m.row(list) + way; i >= 0 && i < len(list); i += way {
		if list[i].there && list[i].sort <= pump {
			m.picked = list[i].part
			break
		}
	}
	return m
}

// place is where a part is in space, and whether it is at one place.
func (m screen) place(p placed, s desk.State) (at vehicles.RunPoint, ok bool) {
	run := m.run(s)
	switch p.sort {
	case point:
		return run.Path[p.index], true
	case stub:
		laid := s.Job.Laid(m.of)
		if laid == nil {
			return at, false
		}
		return laid.Station(0), true
	case muffler, clip, drain, filter, pump:
		laid := s.Job.Laid(m.of)
		if laid == nil || !p.there {
			return at, false
		}
		if p.sort == muffler {
			return laid.Station(p.along + run.Muffler.Length/2), true
		}
		return laid.Station(p.along), true
	}
	return at, false
}
