package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/vehicles"
)

// vicinity is what the heater's surroundings ask of its place near its wish. What is shifted again and again is one thing;
// the others stay, and those too far away to matter near the wish are left out for good.
type vicinity struct {
	result *Result
	wish   geometry.Point
	within float64
	asks   [][]nearby // by yaw
}

// nearby is a keep, and whether it can matter near the wish while its thing stays.
type nearby struct {
	keep
	matters bool
}

func newVicinity(r *Result) *vicinity {
	v := &vicinity{result: r}
	v.wish, v.within = WishOf(r)
	for _, yaw := range yawsTried() {
		var list []nearby
		for _, d := range r.wholeAt(yaw) {
			list = append(list, nearby{d, d.Margin(v.wish)-v.within <= shiftMargin+fitsWithin})
		}
		v.asks = append(v.asks, list)
	}
	return v
}

// fits tells whether there is a place for the whole heater no farther from its wish than that allows, with shiftMargin to spare, once things
// are shifted.
func (v *vicinity) fits(shifts []Shift) bool {
	after, by := v.result, map[*vehicles.Placed]geometry.Point{}
	for _, s := range shifts {
		by[s.thing(&v.result.Plan)] = s.By
		after = s.shifted(after)
	}
	limits := RoomForSaw(after).limits
	for _, asks := range v.asks {
		var way []field.Constraint
		for _, d := range asks {
			if shift, moved := by[d.thing]; moved {
				way = append(way, d.moved(shift))
			} else if d.matters {
				way = append(way, d.Constraint)
			}
		}
		limits.Ways = append(limits.Ways, way)
	}
	_, ok := field.NewMargins(limits).Holds(v.wish, v.within, shiftMargin, fitsWithin)
	return ok
}
