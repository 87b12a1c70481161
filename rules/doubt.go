package rules

import (
	"math"
	"reflect"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Doubt is the room for the cut with the uncertainty counted in: where a place is not surely closed, and where it is
// surely open.
type Doubt struct{ Possible, Sure Room }

// DoubtOfCut returns the room for the job's cut with about the guard of the findings there: 1.645 of the largest standard
// uncertainty of each thing in whatever direction, of a mark in the middle of the floor, and of the frames. What a finding
// holds back for another reason, such as a thing not measured on this van, does not show in it. Nor does it change when
// the cut moves.
func DoubtOfCut(r *Result) Doubt {
	j := newJudge(&r.Job, &r.Plan, r.Book)
	mark := j.markAnywhere()
	guard := func(thing *vehicles.Placed) float64 { return coverage * math.Sqrt(mark+ofThing(thing)) }
	less := func(thing *vehicles.Placed) float64 { return -guard(thing) }
	edge := coverage * math.Sqrt(mark)
	return Doubt{Possible: j.roomForCut(less, -edge), Sure: j.roomForCut(guard, edge)}
}

// Same tells whether two doubts are the same all over the floor.
func (d Doubt) Same(e Doubt) bool {
	return reflect.DeepEqual(d.Possible.limits, e.Possible.limits) && reflect.DeepEqual(d.Sure.limits, e.Sure.limits)
}

// Same tells whether two rooms are of the same things.
func (r Room) Same(q Room) bool { return reflect.DeepEqual(r.limits, q.limits) }

// markAnywhere is the variance of a mark in the middle of the floor, put from above, in the direction in which it is larger,
// and of the frames there, mm^2.
func (j *judge) markAnywhere() float64 {
	middle := j.plan.FloorMin.Add(j.plan.FloorMax).Scale(0.5)
	up := j.plan.Fit.Up(middle)
	mark := max(j.gauge.MarkVariance(j.job.AboveBumper(up)), j.gauge.MarkVariance(j.job.AboveLeft()))
	frames := j.job.Frames() * j.job.Frames() / 3
	if j.plan.Fit.Tied() {
		along, across := j.plan.Fit.U(geometry.Point{X: 1}, middle), j.plan.Fit.U(geometry.Point{Y: 1}, middle)
		frames = max(along, across) * max(along, across)
	}
	return mark + frames
}

// ofThing is the largest variance of any point of a thing's outline in any direction, mm^2.
func ofThing(thing *vehicles.Placed) float64 {
	u, turn := max(thing.X.U, thing.Y.U), thing.UTurn*thing.Prism.Footprint.Half.Norm()
	return u*u + turn*turn
}
