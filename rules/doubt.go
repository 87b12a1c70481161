package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Doubt is the room for the cut with the uncertainty counted in: where a place is not surely closed, and where it is
// surely open.
type Doubt struct{ Possible, Sure Room }

// DoubtOfCut returns the room for the saw with about the guard of the findings there: 1.645 of the largest standard
// uncertainty of each thing in whatever direction, of a mark in the middle of the floor, and of the frames. What a finding
// holds back for another reason, such as a thing not measured on this van, does not show in it. Nor does it change when
// the cut moves. Of a job that was edited the margins are those of the doubt before where that changed nothing all over the floor, and
// Same says so at once.
func DoubtOfCut(before Doubt, r *Result) Doubt {
	j := newJudge(&r.Job, &r.Plan, r.Book)
	mark := j.markAnywhere()
	guard := func(k keep) float64 { return coverage * math.Sqrt(mark+j.ofThing(k.thing, k.above)) }
	less := func(k keep) float64 { return -guard(k) }
	edge := coverage * math.Sqrt(mark+max(j.between(survey.X, vehicles.Taped{}), j.between(survey.Y, vehicles.Taped{})))
	keeps := j.keeps(TheCut, AFitting)
	return Doubt{
		Possible: before.Possible.again(j.limited(keeps, less, -edge)),
		Sure:     before.Sure.again(j.limited(keeps, guard, edge)),
	}
}

// again is a room whose margins are yet to be made: they are this one's where they are of the same.
func (r Room) again(q Room) Room {
	if r.Same(q) {
		q.Margins = r.Margins
	} else {
		q.Margins = field.NewMargins(q.limits)
	}
	return q
}

// Same tells whether two doubts are the same all over the floor.
func (d Doubt) Same(e Doubt) bool { return d.Possible.Same(e.Possible) && d.Sure.Same(e.Sure) }

// Same tells whether two rooms are of the same things.
func (r Room) Same(q Room) bool {
	return r.Margins != nil && (r.Margins == q.Margins || r.limits.Same(q.limits))
}

// middle is that of the floor.
func (j *judge) middle() geometry.Point { return j.plan.FloorMin.Add(j.plan.FloorMax).Scale(0.5) }

// markAnywhere is the variance of a mark in the middle of the floor, put from above, in the direction in which it is larger,
// mm^2.
func (j *judge) markAnywhere() float64 {
	up := j.plan.Fit.Up(j.middle())
	return max(j.gauge.MarkVariance(j.job.AboveBumper(up)), j.gauge.MarkVariance(j.job.AboveLeft()))
}

// between is the variance along an axis, mm^2, of what was taped below and of what lies between that and the frame above, in
// the middle of the floor.
func (j *judge) between(axis survey.Axis, taped vehicles.Taped) float64 {
	if !j.plan.Fit.Tied() {
		return taped.U*taped.U + j.job.Frames()*j.job.Frames()/3
	}
	n, edge := geometry.Point{X: 1}, survey.Zeros{survey.BumperBelow: taped.Tilt}
	if axis == survey.Y {
		n, edge = geometry.Point{Y: 1}, survey.Zeros{survey.SideBelow: taped.Tilt}
	}
	return taped.Own(j.tape.HeightU()) + j.plan.Fit.Carried(n, j.middle(), edge, 1)
}

// ofThing is the largest variance of any point of a thing's outline along either axis, and of what lies between it and the
// frame above, mm^2: nothing for one that was measured there.
func (j *judge) ofThing(thing *vehicles.Placed, above bool) float64 {
	turn := thing.UTurn * thing.Prism.Footprint.Half.Norm()
	if above {
		return max(thing.X.U*thing.X.U, thing.Y.U*thing.Y.U) + turn*turn
	}
	return max(j.between(survey.X, thing.X), j.between(survey.Y, thing.Y)) + turn*turn
}
