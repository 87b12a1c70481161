package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/vehicles"
)

// keep is something to keep away from: its margin when the cut's centre is at a place, uncertainty left out. It falls by
// no more than a millimetre for each that the centre moves.
type keep struct {
	name string
	field.Constraint
	thing *vehicles.Placed // of the plan; nil for the floor

	// What the cut keeps away from it does by a plain distance of its centre: the field works with those faster.
	edge  bool // from the floor's edges
	above bool // from what was measured from above
	need  float64
}

// marginOf is a constraint by its margin.
type marginOf func(centre geometry.Point) float64

// Margin is that of the function.
func (m marginOf) Margin(centre geometry.Point) float64 { return m(centre) }

// moved is what is asked when the thing is somewhere else.
func (k keep) moved(by geometry.Point) field.Constraint {
	c := k.Constraint.(field.Carried)
	c.Against = c.Against.Moved(0, by)
	return c
}

// level is the lift of what is at one height with what it keeps away from.
const level = -1

// carried keeps an outline, as it lies when the cut is at the datum, away from a thing.
func carried(name string, thing *vehicles.Placed, outline geometry.Footprint, need, lift float64) keep {
	return keep{name: name, thing: thing, Constraint: field.Carried{Body: outline, Against: thing.Prism.Footprint, Need: need, Lift: lift}}
}

// keeper is what a rule asks of the place of the cut: of the cut itself, of the plate or body that go with it, or of the
// stubs. The zero one asks nothing.
type keeper struct {
	of   Sort // TheCut, ThePlate, TheBody, AStub, or AFitting: what lies inside the floor asks it of the cut
	asks func(*judge, *Rule) []keep
}

// keeps are what the rules ask of the place of the cut, of the heater turned as the job has it, or of its stubs.
func (j *judge) keeps(of ...Sort) (list []keep) {
	for _, sort := range of {
		for _, r := range allRules {
			if r.keep.of == sort {
				list = append(list, r.keep.asks(j, r)...)
			}
		}
	}
	return list
}

// turned is the judging of the job with its heater turned to yaw.
func (r *Result) turned(yaw float64) judge {
	heater := *r.Job.Heater
	heater.Yaw = yaw
	job := r.Job.WithHeater(heater)
	return newJudge(&job, &r.Plan, r.Book)
}

// least is the distance a limit asks for. One without a value asks for none, only that nothing is hit.
func (l *Limit) least() float64 {
	if !l.Value.Set {
		return 0
	}
	return l.Value.Value
}

// atDatum is an outline that is laid where the cut is now, when the cut is at the datum.
func (j *judge) atDatum(outline geometry.Footprint) geometry.Footprint {
	return outline.Moved(0, j.plan.Cut.At.Scale(-1))
}

// keepOnFloor keeps an outline, laid where the cut is now, on the floor.
func (j *judge) keepOnFloor(r *Rule, outline geometry.Footprint) []keep {
	return []keep{{name: TheFloor.String(), Constraint: field.Contained{
		Body: j.atDatum(outline), Min: j.plan.FloorMin, Max: j.plan.FloorMax, Need: j.book.of(r).least(),
	}}}
}

// keepStub keeps a stub of the heater, from the floor's underside down to its mouth, clear of what is under the floor as
// the run that begins there has to be.
func (j *judge) keepStub(limit func(i int) *Limit, stub [2]float64, across float64) (list []keep) {
	low := -j.job.Heater.StubDrop
	axis := geometry.NewRound(geometry.Point{X: stub[0], Y: stub[1]}.Turn(j.job.Heater.Yaw), 0)
	for i := range j.plan.Obstructions {
		thing, o := &j.plan.Obstructions[i], &j.job.Obstructions[i]
		if j.is(i, vehicles.InSheetMetal) {
			continue
		}
		lift := max(thing.Prism.Low, low-thing.Prism.High, 0)
		list = append(list, carried(o.Name, thing, axis, across/2+limit(i).least(), lift))
	}
	return list
}
