package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Shift is how far a thing that stands in the way would have to be moved for the heater to fit near the wish.
type Shift struct {
	Fitting     int // of the job, from 0; -1 when it is none
	Obstruction int // of the job, from 0; -1 when it is none
	Name        string
	By          geometry.Point // along x or along y, whole steps of shiftStep
}

// A shift is a whole number of steps of shiftStep mm, and so large that there is shiftMargin mm to spare; more than farthestShift
// is not advised.
const (
	shiftStep     = 5
	shiftMargin   = 1
	farthestShift = 640
	fitsWithin    = 0.01 // how much of a greater margin may be missed, mm
	outOfTheWay   = 1e6
)

// shiftsOf returns the least shift of each thing that makes room by itself, the least of all first.
func (s *seeking) shiftsOf(r *Result) (shifts []Shift) {
	v, movable := newVicinity(r), movableOf(r)
	if v.fits(nil) || !v.fits(movable) { // there is room already, or none whatever is moved
		return nil
	}
	for i, thing := range movable {
		if !s.goesOn(AtInTheWay, i, len(movable)) {
			return nil
		}
		if shift, ok := v.least(thing); ok {
			shifts = append(shifts, shift)
		}
	}
	slices.SortStableFunc(shifts, func(p, q Shift) int { return cmp.Compare(p.By.Norm(), q.By.Norm()) })
	return shifts
}

// movableOf are the things that may be moved, out of the way.
func movableOf(r *Result) (list []Shift) {
	away := geometry.Point{X: outOfTheWay}
	for i := range r.Plan.Fittings {
		if f := &r.Job.Fittings[i]; f.Kind == "" || f.Is(vehicles.Movable) {
			list = append(list, Shift{Fitting: i, Obstruction: -1, Name: f.Name, By: away})
		}
	}
	for i := range r.Plan.Obstructions {
		if o := &r.Job.Obstructions[i]; o.Is(vehicles.Movable) {
			list = append(list, Shift{Fitting: -1, Obstruction: i, Name: o.Name, By: away})
		}
	}
	return list
}

// least returns the least shift of a thing, which is out of the way, after which the heater fits, if there is one.
func (v *vicinity) least(s Shift) (Shift, bool) {
	if !v.fits([]Shift{s}) {
		return s, false
	}
	for far := float64(shiftStep); far <= farthestShift; far *= 2 {
		best := math.Inf(1)
		for _, way := range [4]geometry.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
			if d := v.leastAlong(s, way, far/2, min(far, best)); d < best {
				best, s.By = d, way.Scale(d)
			}
		}
		if !math.IsInf(best, 1) {
			return s, true
		}
	}
	return s, false
}

// leastAlong is the least shift one way, more than little and at most far mm, after which the heater fits; +Inf when that
// doesn't do.
func (v *vicinity) leastAlong(s Shift, way geometry.Point, little, far float64) float64 {
	does := func(d float64) bool {
		s.By = way.Scale(d)
		return s.staysOn(s.shifted(v.result)) && v.fits([]Shift{s})
	}
	if !does(far) {
		return math.Inf(1)
	}
	for far-little > shiftStep {
		if middle := math.Floor((little+far)/2/shiftStep) * shiftStep; middle <= little {
			break
		} else if does(middle) {
			far = middle
		} else {
			little = middle
		}
	}
	return math.Ceil(far/shiftStep) * shiftStep
}

// staysOn tells whether what was shifted is still on the floor.
func (s Shift) staysOn(after *Result) bool {
	return s.thing(&after.Plan).Prism.Footprint.Inside(after.Plan.FloorMin, after.Plan.FloorMax).Gap >= 0
}

func (s Shift) thing(plan *vehicles.Plan) *vehicles.Placed {
	if s.Fitting >= 0 {
		return &plan.Fittings[s.Fitting]
	}
	return &plan.Obstructions[s.Obstruction]
}

// shifted is the result with the thing moved in its plan.
func (s Shift) shifted(r *Result) *Result {
	after := *r
	after.Plan.Fittings, after.Plan.Obstructions = slices.Clone(r.Plan.Fittings), slices.Clone(r.Plan.Obstructions)
	thing := s.thing(&after.Plan)
	thing.Prism.Footprint = thing.Prism.Footprint.Moved(0, s.By)
	return &after
}

// wholeAt is what the whole heater asks of the place of the cut at a yaw: plate, body and stubs.
func (r *Result) wholeAt(yaw float64) []keep { return append(r.heaterAt(yaw), r.stubsAt(yaw)...) }

// stubsAt is what the stubs of exhaust and intake ask of the place of the cut at a yaw.
func (r *Result) stubsAt(yaw float64) []keep {
	j := r.turned(yaw)
	return j.keeps(AStub)
}
