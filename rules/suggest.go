package rules

import (
	"cmp"
	"encoding/json"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/vehicles"
)

// Suggestion is a place for the centre of the cut: its worst margin over what was asked, mm, uncertainty left out, and
// what that margin is to.
type Suggestion struct {
	At      geometry.Point
	Margin  float64
	Against string
	Yaw     vehicles.Number // of the heater, degrees in (-180, 180]; only where it was asked for
}

// areaStep is how far apart the nodes are that the open areas are told apart by, mm.
const areaStep = 5

// Room is what limits the centre of a cut: its margins all over the floor.
type Room struct {
	Margins *field.Margins
	limits  field.Limits
	names   []string // of the obstacles, then of the constraints
}

// RoomForCut returns what cut.clearance and cut.on-floor leave for the centre of the job's cut: the findings' contract has no
// more for it.
func RoomForCut(r *Result) Room {
	j := newJudge(&r.Job, &r.Plan, r.Book)
	return j.roomFor(j.keeps(TheCut), exactly, 0)
}

// RoomForSaw returns what a saw leaves for the centre of the job's cut: cut.fitting asks too.
func RoomForSaw(r *Result) Room {
	j := newJudge(&r.Job, &r.Plan, r.Book)
	return j.roomFor(j.keeps(TheCut, AFitting), exactly, 0)
}

// exactly asks for no more distance from a thing than is asked.
func exactly(keep) float64 { return 0 }

// roomFor is what the cut leaves with so much more distance from each thing, and from the edge, than is asked.
func (j *judge) roomFor(keeps []keep, more func(keep) float64, moreEdge float64) Room {
	room := j.limited(keeps, more, moreEdge)
	room.Margins = field.NewMargins(room.limits)
	return room
}

// limited is roomFor without its margins.
func (j *judge) limited(keeps []keep, more func(keep) float64, moreEdge float64) Room {
	room := Room{limits: field.Limits{Min: j.plan.FloorMin, Max: j.plan.FloorMax, Obstacles: make([]field.Obstacle, 0, len(keeps))}}
	room.names = make([]string, 0, len(keeps))
	for _, k := range keeps {
		if k.edge {
			room.limits.EdgeNeed = k.need + moreEdge
			continue
		}
		room.limits.Obstacles = append(room.limits.Obstacles, field.Obstacle{Footprint: k.thing.Prism.Footprint, Need: k.need + more(k)})
		room.names = append(room.names, k.name)
	}
	return room
}

// with returns the room that further demands leave.
func (r Room) with(keeps []keep) Room {
	r.limits.Constraints, r.names = slices.Clip(r.limits.Constraints), slices.Clip(r.names)
	for _, k := range keeps {
		r.limits.Constraints = append(r.limits.Constraints, k.Constraint)
		r.names = append(r.names, k.name)
	}
	r.Margins = field.NewMargins(r.limits)
	return r
}

// OnPart returns the room on a part of the floor only, from low to high: the floor's own edge is as far as it was.
func (r Room) OnPart(low, high geometry.Point) Room {
	part, edge := r.part(low, high)
	return part.with([]keep{edge})
}

// part is what limits a place on a part of the floor, its margins still to be made, and what the floor's edge asks there.
func (r Room) part(low, high geometry.Point) (part Room, edge keep) {
	whole, centre := r.limits, geometry.NewRound(geometry.Point{}, 0)
	r.limits.Min = geometry.Point{X: max(low.X, whole.Min.X), Y: max(low.Y, whole.Min.Y)}
	r.limits.Max = geometry.Point{X: min(high.X, whole.Max.X), Y: min(high.Y, whole.Max.Y)}
	r.limits.Max = geometry.Point{X: max(r.limits.Min.X, r.limits.Max.X), Y: max(r.limits.Min.Y, r.limits.Max.Y)}
	r.limits.EdgeNeed, r.Margins = math.Inf(-1), nil
	return r, keep{name: TheFloor.String(), Constraint: field.Contained{
		Body: centre, Min: whole.Min, Max: whole.Max, Need: whole.EdgeNeed,
	}}
}

func (r Room) suggestion(p field.Site) Suggestion {
	against := TheFloor.String()
	if p.Limit != field.Edge {
		against = r.names[p.Limit]
	}
	return Suggestion{At: p.At, Margin: p.Margin, Against: against}
}

// Areas returns the open areas, the best first; made by the given number of goroutines.
func (r Room) Areas(workers int) []field.Area { return r.Margins.Map(areaStep, workers).Areas() }

// Best returns the best place in each separate open area, the best first; made by the given number of goroutines.
func (r Room) Best(workers int) []Suggestion {
	places := []Suggestion{}
	for _, area := range r.Areas(workers) {
		places = append(places, r.suggestion(area.Best))
	}
	return places
}

// Near returns the place nearest to p where every margin is at least 0, if there is one.
func (r Room) Near(p geometry.Point) []Suggestion {
	place, ok := r.Margins.Nearest(p)
	if !ok {
		return []Suggestion{}
	}
	return []Suggestion{r.suggestion(place)}
}

type placeJSON struct {
	At      []float64 `json:"at"`
	Margin  float64   `json:"margin"`
	Against string    `json:"against"`
	Yaw     *float64  `json:"yaw,omitempty"`
}

// SuggestJSON writes places as `suggest --json` prints them.
func SuggestJSON(places []Suggestion) ([]byte, error) {
	out := []placeJSON{}
	for _, p := range places {
		out = append(out, placeJSON{At: point(p.At), Margin: number(p.Margin), Against: p.Against, Yaw: maybe(p.Yaw)})
	}
	return json.Marshal(map[string][]placeJSON{"places": out})
}

// sortRoomiest puts the largest margin first.
func sortRoomiest(places []Suggestion) {
	slices.SortStableFunc(places, func(a, b Suggestion) int { return cmp.Compare(b.Margin, a.Margin) })
}
