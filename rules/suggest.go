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

// DefaultAcross is the cut that places are sought for while a job has none: 127 mm (5 in). common practice, no source.
const DefaultAcross = 127

// areaStep is how far apart the nodes are that the open areas are told apart by, mm.
const areaStep = 5

// Room is what limits the centre of a cut: its margins all over the floor.
type Room struct {
	Margins *field.Margins
	limits  field.Limits
	names   []string // of the obstacles, then of the constraints
}

// RoomForCut returns what cut.clearance and cut.on-floor leave for the centre of the job's cut. Rules without a value ask
// for no distance, only that nothing is hit.
func RoomForCut(r *Result) Room {
	b := bench{job: &r.Job, plan: &r.Plan, book: r.Book, tape: r.Job.SurveyTape()}
	return b.roomForCut(func(*vehicles.Placed) float64 { return 0 }, 0)
}

// roomForCut is what the cut leaves with so much more distance from each thing, and from the edge, than is asked.
func (b *bench) roomForCut(more func(*vehicles.Placed) float64, moreEdge float64) Room {
	radius := DefaultAcross / 2.
	if b.job.Cut != nil {
		radius = b.job.Cut.Across / 2
	}
	asked := func(rule *Rule) float64 {
		if rule == nil || !rule.Value.Set {
			return 0
		}
		return rule.Value.Value
	}
	room := Room{limits: field.Limits{
		Min: b.plan.FloorMin, Max: b.plan.FloorMax, EdgeNeed: radius + asked(b.book.find("cut.on-floor", "")) + moreEdge,
	}}
	rules, reach := b.book.ofKinds("cut.clearance"), b.reach()
	for i := range b.plan.Obstructions {
		thing, o := &b.plan.Obstructions[i], &b.job.Obstructions[i]
		if reached(thing, reach) {
			room.limits.Obstacles = append(room.limits.Obstacles, field.Obstacle{
				Footprint: thing.Prism.Footprint, Need: radius + asked(rules.of(o.Kind)) + more(thing),
			})
			room.names = append(room.names, o.Name)
		}
	}
	room.Margins = field.NewMargins(room.limits)
	return room
}

// with returns the room that further demands leave.
func (r Room) with(keeps []keep) Room {
	r.limits.Constraints, r.names = slices.Clip(r.limits.Constraints), slices.Clip(r.names)
	for _, k := range keeps {
		r.limits.Constraints = append(r.limits.Constraints, k)
		r.names = append(r.names, k.name)
	}
	r.Margins = field.NewMargins(r.limits)
	return r
}

// Within returns the room on a part of the floor only, from low to high: the floor's own edge is as far as it was.
func (r Room) Within(low, high geometry.Point) Room {
	part, edge := r.part(low, high)
	return part.asking([]demand{edge})
}

// part is what limits a place on a part of the floor, its margins still to be made, and what the floor's edge asks there.
func (r Room) part(low, high geometry.Point) (part Room, edge demand) {
	whole, centre := r.limits, geometry.NewRound(geometry.Point{}, 0)
	r.limits.Min = geometry.Point{X: max(low.X, whole.Min.X), Y: max(low.Y, whole.Min.Y)}
	r.limits.Max = geometry.Point{X: min(high.X, whole.Max.X), Y: min(high.Y, whole.Max.Y)}
	r.limits.Max = geometry.Point{X: max(r.limits.Min.X, r.limits.Max.X), Y: max(r.limits.Min.Y, r.limits.Max.Y)}
	r.limits.EdgeNeed, r.Margins = math.Inf(-1), nil
	return r, demand{name: "floor", Constraint: field.Contained{
		Body: centre, Min: whole.Min, Max: whole.Max, Need: whole.EdgeNeed,
	}}
}

func (r Room) suggestion(p field.Place) Suggestion {
	against := "floor"
	if p.Limit != field.Edge {
		against = r.names[p.Limit]
	}
	return Suggestion{At: p.At, Margin: p.Margin, Against: against}
}

// Best returns the best place in each separate open area, the best first; made by the given number of goroutines.
func (r Room) Best(workers int) []Suggestion {
	places := []Suggestion{}
	for _, area := range r.Margins.Map(areaStep, workers).Areas() {
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
