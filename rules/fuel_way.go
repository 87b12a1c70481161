package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// What a fuel line keeps that is sought and that no rule of the book asks: from its lowest place it rises both ways, to the heater so that
// bubbles leave, to the tank so that none stands between. common practice, no source

// humps is how far a line through corners, from the heater's stub to its other end, goes up before its lowest corner and down behind it,
// mm in all.
func humps(corners []geometry.Point3) (sum float64) {
	lowest := lowestOf(corners)
	for i := 1; i < len(corners); i++ {
		up := corners[i].Z - corners[i-1].Z
		if i > lowest {
			up = -up
		}
		sum += max(0, up)
	}
	return sum
}

// lowestOf is the lowest corner, of several the one farthest from the heater.
func lowestOf(corners []geometry.Point3) (lowest int) {
	for i := range corners {
		if corners[i].Z <= corners[lowest].Z {
			lowest = i
		}
	}
	return lowest
}

// pumpOn puts a pump on a line where it begins to rise to the heater, as near the tank as that is; nil stays nil.
func pumpOn(pump *vehicles.Pump, corners []geometry.Point3) *vehicles.Pump {
	if pump == nil {
		return nil
	}
	p := *pump
	lowest := max(lowestOf(corners), 1)
	leg := corners[lowest].Sub(corners[lowest-1]).Norm()
	p.Leg, p.Start = len(corners)-lowest, math.Floor(min(fromLow, leg/2))
	return &p
}

// fromLow is how far behind the lowest place the pump sits, mm: clear of the corner. common practice, no source
const fromLow = 100
