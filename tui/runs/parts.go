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
	hung  // what hangs on the run, of a kind
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
	index int                   // of points and of what there may be many of, from 0
	kind  *vehicles.HangingKind // of what hangs on the run
}

// placed is a part with its place along the run.
type placed struct {
	part
	along float64 // mm; of what has no place along it, nothing
	to    float64 // where it ends, mm
	there bool    // it is in the job
}

// middle is where along the run it is marked.
func (p placed) middle() float64 { return (p.along + p.to) / 2 }

// hangs tells whether the part hangs on the run in the job.
func (p placed) hangs() bool { return p.sort == hung && p.there }

// lies tells whether the part lies at a place along the run.
func (p placed) lies() bool { return p.sort <= hung && p.there }

// alone tells whether the part is one of a kind of which a run has one.
func (p placed) alone() bool { return p.sort == hung && !p.kind.Many() }

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
	for _, k := range vehicles.HangingOn(m.of) {
		if !k.Many() && !k.Has(run.Hanging) {
			list = append(list, placed{part: part{sort: hung, kind: k}})
		}
	}
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
		list = append(list, placed{part{sort: point, index: i}, along, along, true})
	}
	return list
}

// hung is what hangs on the run.
func (m screen) hung(run *vehicles.Run, laid *vehicles.LaidRun) (list []placed) {
	things := run.Hanging.Things()
	slices.SortStableFunc(things, func(a, b vehicles.Hung) int { return cmp.Compare(min(b.Leg(), 1), min(a.Leg(), 1)) })
	for _, thing := range things {
		p := placed{part: part{hung, thing.Index, thing.Kind}, there: true}
		if laid != nil || thing.Kind.Many() {
			p.along, p.to, _ = thing.Along(laid)
		}
		list = append(list, p)
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
		case p.sort == m.picked.sort && p.kind == m.picked.kind && p.index <= m.picked.index:
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
		if list[i].lies() {
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
	case hung:
		laid := s.Job.Laid(m.of)
		if laid == nil || !p.there {
			return at, false
		}
		return laid.Station(p.middle()), true
	}
	return at, false
}
