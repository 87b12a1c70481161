package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The turning heater by its definition: every yaw asked at every place, nothing left out and no outline taken apart. What is
// found quickly is held against it.

// slowTolerance is how far below the greatest margin of an area the place may lie that it turns further from, mm.
const slowTolerance = 2

// slowTurning is the room for a heater that may be turned: a place is open when the cut may be there and some yaw of those
// tried, every 15 degrees, suits it.
type slowTurning struct {
	Room
	result *Result
	cut    Room
	heater *anyYaw
}

// newSlowTurning returns the room for the job's heater at whatever yaw.
func newSlowTurning(r *Result) slowTurning {
	t := slowTurning{result: r, cut: RoomForCut(r), heater: newAnyYaw(r)}
	t.Room = t.cut.with([]keep{{name: "heater", Constraint: marginOf(t.heater.margin)}})
	return t
}

// anyYaw is the margin of a heater at the yaw that suits a place best. The greatest of margins that each change by no
// more than the place moves does so too.
type anyYaw struct {
	yaws []float64
	asks [][]keep // by yaw
}

func newAnyYaw(r *Result) *anyYaw {
	a := &anyYaw{}
	for yaw := 0.; yaw < 360; yaw += yawStep {
		a.yaws = append(a.yaws, PrincipalYaw(yaw))
		a.asks = append(a.asks, heaterSlowly(r, yaw))
	}
	return a
}

// best returns the greatest of the yaws' worst margins at a place, and the yaw.
func (a *anyYaw) best(p geometry.Point) (margin, yaw float64) {
	margin = math.Inf(-1)
	for i, asks := range a.asks {
		least := math.Inf(1)
		for k := range asks {
			if least = min(least, asks[k].Margin(p)); least <= margin {
				break
			}
		}
		if least > margin {
			margin, yaw = least, a.yaws[i]
		}
	}
	return margin, yaw
}

func (a *anyYaw) margin(p geometry.Point) float64 {
	margin, _ := a.best(p)
	return margin
}

// Best returns the best place and yaw in each separate open area, the best first.
func (t slowTurning) Best(workers int) []Suggestion {
	places := []Suggestion{}
	for _, area := range t.Margins.AreasTo(slowTolerance, turningStep, workers) {
		places = append(places, t.refined(area.Best.At))
	}
	sortRoomiest(places)
	return places
}

// refined turns the heater by less and less to either side of the best yaw at a place, each time moving it to the
// roomiest place around, as long as the cut can go there straight.
func (t slowTurning) refined(p geometry.Point) Suggestion {
	_, yaw := t.heater.best(p)
	best := t.roomiest(p, yaw)
	for turn := yawStep / 2.; turn >= yawFinest; turn /= 2 {
		for _, yaw := range [2]float64{best.Yaw.Value - turn, best.Yaw.Value + turn} {
			if next := t.roomiest(best.At, yaw); next.Margin > best.Margin && t.straight(p, next.At) {
				best = next
			}
		}
	}
	return best
}

// roomiest is the roomiest place around p at a yaw.
func (t slowTurning) roomiest(p geometry.Point, yaw float64) Suggestion {
	reach := geometry.Point{X: around, Y: around}
	room := t.cut.OnPart(p.Sub(reach), p.Add(reach)).with(heaterSlowly(t.result, yaw))
	s := room.suggestion(room.Margins.Roomiest(suggestTolerance))
	s.Yaw = vehicles.Some(PrincipalYaw(yaw))
	return s
}

// straight tells whether the cut can be moved straight from p to q.
func (t slowTurning) straight(p, q geometry.Point) bool {
	return t.Margins.Slide(p, q.Sub(p)).Sub(q).Norm() < suggestTolerance
}

// heaterSlowly is what the heater asks of the place of the cut when it is turned to yaw, by what the findings are judged
// by: each outline laid where it would be.
func heaterSlowly(r *Result, yaw float64) (list []keep) {
	heater := *r.Job.Heater
	heater.Yaw = yaw
	job := r.Job.WithHeater(heater)
	asked := func(id string) float64 {
		limit, _ := r.Book.Lookup(id, "")
		return limit.Value.Value
	}
	add := func(id string, gap func(at vehicles.Plan) float64) {
		least, plan := asked(id), r.Plan
		list = append(list, keep{name: id, Constraint: marginOf(func(c geometry.Point) float64 {
			at := plan
			at.Cut.At = c
			return gap(at) - least
		})})
	}
	add("plate.on-floor", func(at vehicles.Plan) float64 { return Plate(job, at).Inside(at.FloorMin, at.FloorMax).Gap })
	for i := range r.Plan.Fittings {
		thing := r.Plan.Fittings[i].Prism
		if r.Job.Fittings[i].Rise.From <= 0 {
			add("plate.fitting", func(at vehicles.Plan) float64 { return geometry.Between(Plate(job, at), thing.Footprint).Gap })
		}
		add("body.space", func(at vehicles.Plan) float64 { return geometry.BoxGap(Body(job, at, true), thing).Gap })
	}
	return list
}
