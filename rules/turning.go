package rules

import (
	"slices"
	"sync/atomic"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/beside"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/vehicles"
)

// heaterAt is what the heater asks of the place of the cut when it is turned to yaw; nothing without a heater.
func (r *Result) heaterAt(yaw float64) []keep {
	if r.Job.Heater == nil {
		return nil
	}
	j := r.turned(yaw)
	return j.keeps(ThePlate, TheBody)
}

// yawStep is how far apart the yaws are that are tried all over the floor, degrees; yawFinest how close the best of them
// is then closed in on.
const (
	yawStep   = 15
	yawFinest = 0.5
)

// yawsTried are the yaws tried all over the floor.
func yawsTried() (yaws []float64) {
	for yaw := 0.; yaw < 360; yaw += yawStep {
		yaws = append(yaws, geometry.WithinHalfTurn(yaw))
	}
	return yaws
}

// turningStep is how far apart the nodes are that the areas of a turning heater are told apart by, mm. Between nodes they
// are looked at as closely as is needed.
const turningStep = 20

// turningTolerance is how far below the greatest margin of an area the place lies that turning further starts from, mm: a tape is read to 1, and
// what room there is lies between two readings, so nobody can tell places apart that differ by less. From a lesser place turning further may never
// come to the roomier one, if that is farther off than around. suggestTolerance is that of the place which is suggested in the end.
const (
	turningTolerance = 2
	suggestTolerance = 0.1
)

// Turning is the room for a heater that may be turned: a place is open when the cut may be there and some yaw of those
// tried, every 15 degrees, suits it.
type Turning struct {
	Room
	result *Result
	cut    Room
	yaws   []float64
}

// RoomForTurning returns the room for the job's heater at whatever yaw.
func RoomForTurning(r *Result) Turning {
	return turningRoom(r, r.heaterAt)
}

// turningRoom is the room for what asks so much at each yaw.
func turningRoom(r *Result, asks func(yaw float64) []keep) Turning {
	t := Turning{result: r, cut: RoomForSaw(r), yaws: yawsTried()}
	t.Room = t.cut
	for _, yaw := range t.yaws {
		var way []field.Constraint
		for _, d := range asks(yaw) {
			way = append(way, d.Constraint)
		}
		t.limits.Ways = append(t.limits.Ways, way)
	}
	t.names = append(slices.Clip(t.names), "heater")
	t.Margins = field.NewMargins(t.limits)
	return t
}

// bestYaw is the yaw tried that suits a place best.
func (t Turning) bestYaw(p geometry.Point) float64 {
	way, _ := t.Margins.Way(p)
	return t.yaws[max(way, 0)] // where nothing is asked of the heater any yaw will do
}

// Best returns the best place and yaw in each separate open area, the best first; made by the given number of goroutines.
// On the way it tells how many of the areas are done, 0 of 0 while they are not yet known: from any of the goroutines, and
// not always in order.
func (t Turning) Best(workers int, tell func(done, of int)) []Suggestion {
	tell(0, 0)
	areas := t.Margins.AreasTo(turningTolerance, turningStep, workers)
	places := make([]Suggestion, len(areas))
	var done atomic.Int64
	share(len(areas), workers, func(i int) {
		places[i] = t.refined(areas[i].Best.At)
		tell(int(done.Add(1)), len(areas))
	})
	sortRoomiest(places)
	return places
}

// share has a number of goroutines do so many things, each of them once.
func share(count, workers int, do func(i int)) {
	var next atomic.Int64
	work := func() {
		for i := int(next.Add(1)) - 1; i < count; i = int(next.Add(1)) - 1 {
			do(i)
		}
	}
	var others beside.Work
	for range workers - 1 {
		others.Go(work)
	}
	work()
	others.Wait()
}

// Near returns the place nearest to p where every margin is at least 0 at some yaw, turned the way that suits it best.
func (t Turning) Near(p geometry.Point) []Suggestion {
	place, ok := t.Margins.Nearest(p)
	if !ok {
		return []Suggestion{}
	}
	return []Suggestion{t.at(place.At, t.bestYaw(place.At))}
}

// at is the suggestion of a place and a yaw.
func (t Turning) at(p geometry.Point, yaw float64) Suggestion {
	room := t.cut.with(t.result.heaterAt(yaw))
	s := room.suggestion(room.Margins.At(p))
	s.Yaw = vehicles.Some(geometry.WithinHalfTurn(yaw))
	return s
}

// around is how far from the best place of the yaws tried a better one is looked for at the yaws between, mm.
const around = 30

// refined turns the heater by less and less to either side of the best yaw at a place, each time moving it to the
// roomiest place around, as long as the cut can go there straight.
func (t Turning) refined(p geometry.Point) Suggestion {
	best := t.roomiest(p, t.bestYaw(p))
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
func (t Turning) roomiest(p geometry.Point, yaw float64) Suggestion {
	reach := geometry.Point{X: around, Y: around}
	room, edge := t.cut.part(p.Sub(reach), p.Add(reach))
	room = room.with(append([]keep{edge}, t.result.heaterAt(yaw)...))
	s := room.suggestion(room.Margins.Roomiest(suggestTolerance))
	s.Yaw = vehicles.Some(geometry.WithinHalfTurn(yaw))
	return s
}

// straight tells whether the cut can be moved straight from p to q.
func (t Turning) straight(p, q geometry.Point) bool {
	return t.Margins.Slide(p, q.Sub(p)).Sub(q).Norm() < suggestTolerance
}
