package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// RoomForHeater returns what is left for the centre of the cut when the heater, turned to yaw, has to stand there too:
// the room for the cut, and plate.on-floor, plate.fitting and body.space. Without a heater it is that of the cut.
func RoomForHeater(r *Result, yaw float64) Room {
	return RoomForCut(r).with(r.heaterAt(yaw))
}

// heaterAt is what the heater asks of the place of the cut when it is turned to yaw; nothing without a heater.
func (r *Result) heaterAt(yaw float64) []keep {
	if r.Job.Heater == nil {
		return nil
	}
	heater := *r.Job.Heater
	heater.Yaw = yaw
	job := r.Job.WithHeater(heater)
	b := bench{job: &job, plan: &r.Plan, book: r.Book, tape: job.SurveyTape()}
	return b.keepHeater()
}

// yawStep is how far apart the yaws are that are tried all over the floor, degrees; yawFinest how close the best of them
// is then closed in on.
const (
	yawStep   = 15
	yawFinest = 0.5
)

// turningStep is how far apart the nodes are that the areas of a turning heater are told apart by, mm. Between nodes they
// are looked at as closely as is needed.
const turningStep = 20

// turningTolerance is how far below the greatest margin of an area the place lies that turning further starts from, mm;
// suggestTolerance that of the place which is suggested in the end.
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
	heater *anyYaw
}

// RoomForTurning returns the room for the job's heater at whatever yaw.
func RoomForTurning(r *Result) Turning {
	t := Turning{result: r, cut: RoomForCut(r), heater: newAnyYaw(r)}
	t.Room = t.cut.with([]keep{{name: "heater", margin: t.heater.margin}})
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
		a.yaws = append(a.yaws, upright(yaw))
		a.asks = append(a.asks, r.heaterAt(yaw))
	}
	return a
}

// best returns the greatest of the yaws' worst margins at a place, and the yaw.
func (a *anyYaw) best(p geometry.Point) (margin, yaw float64) {
	margin = math.Inf(-1)
	for i, asks := range a.asks {
		least := math.Inf(1)
		for k := range asks {
			if asks[k].above(least, p) {
				continue
			}
			if least = min(least, asks[k].margin(p)); least <= margin {
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

// upright is the same yaw from -180 (left out) to 180.
func upright(yaw float64) float64 {
	yaw = math.Mod(yaw, 360)
	switch {
	case yaw > 180:
		return yaw - 360
	case yaw <= -180:
		return yaw + 360
	}
	return yaw
}

// Best returns the best place and yaw in each separate open area, the best first.
func (t Turning) Best(workers int) []Suggestion {
	places := []Suggestion{}
	for _, area := range t.Margins.AreasWithin(turningTolerance, turningStep, workers) {
		places = append(places, t.refined(area.Best.At))
	}
	sortRoomiest(places)
	return places
}

// Near returns the place nearest to p where every margin is at least 0 at some yaw, turned the way that suits it best.
func (t Turning) Near(p geometry.Point) []Suggestion {
	place, ok := t.Margins.Nearest(p)
	if !ok {
		return []Suggestion{}
	}
	_, yaw := t.heater.best(place.At)
	return []Suggestion{t.at(place.At, yaw)}
}

// at is the suggestion of a place and a yaw.
func (t Turning) at(p geometry.Point, yaw float64) Suggestion {
	room := t.cut.with(t.result.heaterAt(yaw))
	s := room.suggestion(room.Margins.At(p))
	s.Yaw = vehicles.Some(upright(yaw))
	return s
}

// around is how far from the best place of the yaws tried a better one is looked for at the yaws between, mm.
const around = 30

// refined turns the heater by less and less to either side of the best yaw at a place, each time moving it to the
// roomiest place around, as long as the cut can go there straight.
func (t Turning) refined(p geometry.Point) Suggestion {
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
func (t Turning) roomiest(p geometry.Point, yaw float64) Suggestion {
	reach := geometry.Point{X: around, Y: around}
	room := t.cut.Within(p.Sub(reach), p.Add(reach)).with(t.result.heaterAt(yaw))
	s := room.suggestion(room.Margins.Roomiest(suggestTolerance))
	s.Yaw = vehicles.Some(upright(yaw))
	return s
}

// straight tells whether the cut can be moved straight from p to q.
func (t Turning) straight(p, q geometry.Point) bool {
	return t.Margins.Slide(p, q.Sub(p)).Sub(q).Norm() < suggestTolerance
}
