package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// keep is something to keep away from: its margin when the cut's centre is at a place, uncertainty left out. It falls by
// no more than a millimetre for each that the centre moves.
type keep struct {
	name   string
	margin func(centre geometry.Point) float64
	floor  func(centre geometry.Point) float64 // what margin is at least, where that is known with less work; or nil

	// A keep that is a plain distance of the centre says so: the field works with those faster than with a margin.
	thing *vehicles.Placed // the centre keeps away from it by need; nil: no such distance
	edge  bool             // the centre keeps away from the floor's edges by need
	need  float64
}

// above tells without much work whether the margin is surely no less.
func (k *keep) above(least float64, centre geometry.Point) bool {
	return k.floor != nil && k.floor(centre) >= least
}

// Margin lets a keep be one of the constraints on a place.
func (k keep) Margin(centre geometry.Point) float64 { return k.margin(centre) }

// keeper is what a rule asks of the place of the cut: of the cut itself, of the plate or body that go with it, or of the
// stubs. The zero one asks nothing.
type keeper struct {
	of   Sort // TheCut, ThePlate, TheBody or AStub
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

// keepOnFloor keeps an outline, laid where the cut is now, on the floor.
func (j *judge) keepOnFloor(r *Rule, outline geometry.Footprint) []keep {
	least, now := j.book.of(r).least(), j.plan.Cut.At
	return []keep{{name: TheFloor.String(), margin: func(c geometry.Point) float64 {
		return outline.Moved(0, c.Sub(now)).Inside(j.plan.FloorMin, j.plan.FloorMax).Gap - least
	}}}
}

// clearOf returns what the margin of a carried outline to a thing is at least: that of the circle about the centre which
// holds the outline.
func clearOf(thing *vehicles.Placed, outline geometry.Footprint, centre geometry.Point, need float64) func(geometry.Point) float64 {
	reach := 0.0
	for _, corner := range outline.Corners() {
		reach = max(reach, corner.Sub(centre).Norm())
	}
	return func(c geometry.Point) float64 { return thing.Prism.Footprint.GapOnly(c) - reach - need }
}

// keepStub keeps a stub of the heater, from the floor's underside down to its mouth, clear of what is under the floor as
// the run that begins there has to be.
func (j *judge) keepStub(r *Rule, stub [2]float64, across float64) (list []keep) {
	limits, off := j.book.ofKinds(r), geometry.Point{X: stub[0], Y: stub[1]}.Turn(j.job.Heater.Yaw)
	low := -j.job.Heater.StubDrop
	for i := range j.plan.Obstructions {
		thing, o := &j.plan.Obstructions[i], &j.job.Obstructions[i]
		need := across/2 + limits.of(o.Kind).least()
		list = append(list, keep{name: o.Name, margin: func(c geometry.Point) float64 {
			at := c.Add(off)
			return max(thing.Prism.GapSegment(geometry.Segment3{A: at.At(0), B: at.At(low)}).Gap, 0) - need
		}, floor: func(c geometry.Point) float64 {
			return thing.Prism.Footprint.GapOnly(c.Add(off)) - need
		}})
	}
	return list
}
