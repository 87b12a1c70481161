package rules

import (
	"cmp"
	"container/heap"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Assistance is what is said about placing the heater near its wish: the options, the best first; without any, what could
// make room by being moved alone, the least move first, and the nearest place that holds anyhow.
type Assistance struct {
	Options []Option
	Shifts  []Shift
	Beyond  *Option
}

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
	outOfTheWay   = 1e6
)

// Assist returns options for placing the heater of a judged job near its wish, and what is in the way when there are
// none. It takes from a few milliseconds to a second or two. Without a heater there is nothing to say.
func Assist(r *Result) Assistance {
	var a Assistance
	if r.Job.Heater == nil {
		return a
	}
	if a.Options = optionsOf(r); len(a.Options) > 0 {
		return a
	}
	for i := range r.Plan.Fittings {
		a.add(r, Shift{Fitting: i, Obstruction: -1, Name: r.Job.Fittings[i].Name})
	}
	for i := range r.Plan.Obstructions {
		if o := &r.Job.Obstructions[i]; vehicles.KindOf(o.Kind).Movable {
			a.add(r, Shift{Fitting: -1, Obstruction: i, Name: o.Name})
		}
	}
	slices.SortStableFunc(a.Shifts, func(p, q Shift) int { return cmp.Compare(p.By.Norm(), q.By.Norm()) })
	a.Beyond = beyond(r)
	return a
}

// add adds the least shift of a thing after which the heater fits, if there is one.
func (a *Assistance) add(r *Result, s Shift) {
	s.By = geometry.Point{X: outOfTheWay}
	if !fits(s.shifted(r)) {
		return
	}
	for far := float64(shiftStep); far <= farthestShift; far *= 2 {
		best := math.Inf(1)
		for _, way := range [4]geometry.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
			if d := s.least(r, way, far/2, min(far, best)); d < best {
				best, s.By = d, way.Scale(d)
			}
		}
		if !math.IsInf(best, 1) {
			a.Shifts = append(a.Shifts, s)
			return
		}
	}
}

// least is the least shift one way, more than little and at most far mm, after which the heater fits; +Inf when that doesn't do.
func (s Shift) least(r *Result, way geometry.Point, little, far float64) float64 {
	does := func(d float64) bool {
		s.By = way.Scale(d)
		after := s.shifted(r)
		return s.staysOn(after) && fits(after)
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

// wholeHeater is the room for cut, plate, body and stubs at the yaw that suits a place best.
func wholeHeater(r *Result) Turning {
	t := Turning{result: r, cut: RoomForCut(r), heater: newAnyYaw(r)}
	for i, yaw := range t.heater.yaws {
		t.heater.asks[i] = append(t.heater.asks[i], r.stubsAt(yaw)...)
	}
	t.Room = t.cut.with([]keep{{name: "heater", margin: t.heater.margin}})
	return t
}

// fits tells whether there is a place for the whole heater within reach of its wish, with shiftMargin to spare. Squares are
// parted into four as in bestMove, until one holds it or none can.
func fits(r *Result) bool {
	const finest = 0.5 // mm: half the side of the smallest square looked into
	wish, within := WishOf(r)
	room := wholeHeater(r).Margins
	margin := func(p geometry.Point) float64 {
		on := min(p.X-r.Plan.FloorMin.X, r.Plan.FloorMax.X-p.X, p.Y-r.Plan.FloorMin.Y, r.Plan.FloorMax.Y-p.Y)
		if rest := min(on, within-p.Sub(wish).Norm()); rest < 0 {
			return rest
		}
		return room.At(p).Margin
	}
	open := &squares{{middle: wish, half: within, most: math.Inf(1)}}
	for open.Len() > 0 {
		s := heap.Pop(open).(square)
		here := margin(s.middle)
		if here >= shiftMargin {
			return true
		}
		if s.half < finest {
			continue
		}
		for _, q := range s.quarters() {
			if q.most = here + s.half*math.Sqrt2; q.most >= shiftMargin {
				heap.Push(open, q)
			}
		}
	}
	return false
}

// beyond is the place nearest to the wish that holds the whole heater, wherever it is; nil without one.
func beyond(r *Result) *Option {
	wish, _ := WishOf(r)
	t := wholeHeater(r)
	place, ok := t.Margins.Nearest(wish)
	if !ok {
		return nil
	}
	_, yaw := t.heater.best(place.At)
	p := placing{Option: Option{Suggestion: t.at(place.At, yaw), Away: place.At.Sub(wish).Norm()}}
	o := p.judged(r)
	return &o
}
