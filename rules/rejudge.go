package rules

import (
	"reflect"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Rejudge is Judge, of a job that was edited: what lies between a run and an obstruction that are both where they were before is
// not measured again. A key mostly moves one thing, and with runs half of judging is measuring from them.
func Rejudge(before *Result, job vehicles.Job, book *Book) (Result, []vehicles.Fault) {
	return judgeAfter(before, job, book)
}

// measured is what was measured between a run and the obstructions.
type measured struct {
	run  *vehicles.LaidRun // nil: nothing was
	gaps []geometry.Surface
	dips []dip
}

// dip is how far what of a run lies below an obstruction's underside is from it.
type dip struct {
	geometry.Separation
	there, known bool
}

// measuring measures between a run and obstructions, unless that is known from before.
type measuring struct {
	*measured
	before       measured
	things, were []vehicles.Placed // the obstructions, and where they were before
	tube         *geometry.Tube    // what the run fills, once somebody has asked
	memory       *geometry.Tube    // for that
}

// measuring is that of a run, which there is.
func (j *judge) measuring(of Sort) *measuring {
	k := runKind(of)
	m := &j.measures[k]
	if m.measured != nil {
		return m
	}
	m.measured, m.memory = j.haste.nothing(k)
	m.run = j.plan.Run(k)
	n := len(j.plan.Obstructions)
	m.gaps, m.dips = emptied(m.gaps, n), emptied(m.dips, n)
	m.things = j.plan.Obstructions
	if b := j.before; b != nil && b.measured[k].run != nil && reflect.DeepEqual(b.measured[k].run, m.run) {
		m.before, m.were = b.measured[k], b.Plan.Obstructions
	}
	return m
}

// emptied is a list of n zero values, in the memory of another where that has room.
func emptied[T any](list []T, n int) []T {
	list = slices.Grow(list[:0], n)[:n]
	clear(list)
	return list
}

// stays tells whether an obstruction is where it was before, as the run is.
func (m *measuring) stays(i int) bool {
	return i < len(m.were) && m.were[i].Prism.Same(&m.things[i].Prism)
}

// fills is what the run fills.
func (m *measuring) fills() *geometry.Tube {
	if m.tube == nil {
		m.tube = filledBy(m.memory.Emptied(), m.run, 0, m.run.Line.Length())
	}
	return m.tube
}

// gap is how far the run is from an obstruction.
func (m *measuring) gap(i int) *geometry.Surface {
	g := &m.gaps[i]
	if g.N != (geometry.Point3{}) {
		return g
	}
	if m.stays(i) && m.before.gaps[i].N != (geometry.Point3{}) { // what was measured has a direction
		*g = m.before.gaps[i]
	} else {
		*g = m.fills().Gap(&m.things[i].Prism)
	}
	return g
}

// dip is how far what of the run lies below an obstruction's underside is from it in plan.
func (m *measuring) dip(i int) *dip {
	d := &m.dips[i]
	if m.stays(i) && m.before.dips[i].known {
		*d = m.before.dips[i]
		return d
	}
	p := &m.things[i].Prism
	d.Separation, d.there = m.fills().GapBelow(p.Low, &p.Footprint)
	d.known = true
	return d
}
