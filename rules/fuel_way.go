package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// What a fuel line keeps that is sought, to the mm; of one that is there fuel.humps asks it in full: from its lowest place it rises both
// ways, to the heater so that bubbles leave, to the tank so that none stands between. common practice, no source

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

// FuelTarget is where a fuel line is sought from: where it begins, or, when that is above the floor, straight below where it passes the
// underside for the last time. What is above stays as it is, with its hole.
func FuelTarget(line *vehicles.Run) Target {
	path := line.Path
	for i := len(path) - 1; i > 0; i-- {
		from, to := path[i-1], path[i]
		if from.Drop >= 0 || to.Drop < 0 {
			continue
		}
		share := from.Drop / (from.Drop - to.Drop)
		hole := vehicles.RunPoint{X: hundredth(from.X + (to.X-from.X)*share), Y: hundredth(from.Y + (to.Y-from.Y)*share)}
		return Target{At: &vehicles.RunPoint{X: hole.X, Y: hole.Y, Drop: UnderHole}, Above: append(path[:i:i], hole)}
	}
	begin := path[0]
	return Target{At: &begin}
}

// UnderHole is how far a line goes straight down from its hole before it turns or anything hangs on it, mm: the grommet and a hand's room.
// common practice, no source
const UnderHole = 20

// stays tells whether a finding is of how near something is to what of a fuel line is above the floor's underside, or to its hole: no other way
// below mends that.
func (f *Finding) stays() bool {
	if f.Against.Sort != AnObstruction && f.Against.Sort != AFitting {
		return false
	}
	return f.Subject.Sort == AFuelHole || f.Subject.Sort == TheFuel && f.Places == 2 && f.At[0].Z > 0
}

// hundredth is a length to 0.01 mm: places are laid no finer.
func hundredth(mm float64) float64 { return math.Round(mm*100) / 100 }

// pumpOn puts a pump on a line where it begins to rise to the heater, as near the tank as that is; one on what stays of the line stays
// there, and nil stays nil.
func (t *trial) pumpOn(pump *vehicles.Pump, corners []geometry.Point3) *vehicles.Pump {
	if pump == nil || t.stays(pump.Leg, pump.Start) {
		return pump
	}
	p := *pump
	p.Leg, p.Start = t.behindLow(corners)
	return &p
}

// filterOn puts a filter halfway between a line's lowest place and where its pump sits, so that the pump is behind it; one on what stays
// of the line stays there, and nil stays nil.
func (t *trial) filterOn(filter *vehicles.Filter, corners []geometry.Point3) *vehicles.Filter {
	if filter == nil || t.stays(filter.Leg, filter.Start) {
		return filter
	}
	leg, start := t.behindLow(corners)
	return &vehicles.Filter{Leg: leg, Start: math.Floor(start / 2)}
}

// stays tells whether what sits on a leg is on what of a line stays as it is, above the floor and down to its underside, and not within
// the floor, where nothing can sit.
func (t *trial) stays(leg int, start float64) bool {
	if leg >= len(t.above) {
		return false
	}
	from, to := inSpace(t.above[leg-1]), inSpace(t.above[leg])
	length := to.Sub(from).Norm()
	return start <= length && !t.judge.inThickness(geometry.Segment3{A: from, B: to}.At(start/length))
}

// behindLow is the place on a line, leg and mm along it, where it begins to rise to the heater.
func (t *trial) behindLow(corners []geometry.Point3) (leg int, start float64) {
	lowest := max(lowestOf(corners), 1)
	rises := corners[lowest].Sub(corners[lowest-1]).Norm()
	return len(t.above) + len(corners) - lowest, math.Floor(min(fromLow, rises/2))
}

// inSpace is where a point of a run is.
func inSpace(p vehicles.RunPoint) geometry.Point3 { return geometry.Point3{X: p.X, Y: p.Y, Z: -p.Drop} }

// fromLow is how far behind the lowest place the pump sits, mm: clear of the corner. common practice, no source
const fromLow = 100
