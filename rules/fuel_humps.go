package rules

import (
	"slices"

	"bench.example/undermark/geometry"
)

// fuelHumps holds a line that was laid by hand to what one that is sought keeps. A job says whether it asks it.
var fuelHumps = &Rule{
	ID: "fuel.humps", Unit: MM, Sense: Most, Weight: Damages,
	Word:   "fuel line humps",
	Title:  "Fuel line without a high point before the heater",
	Ask:    "Bubbles gather in a high point: from its lowest place the line rises to the heater, and to where it begins.",
	Advice: "let the line fall from where it begins to its lowest place, and rise from there to the heater, in Runs.",
	short:  tooMuch,
	check:  withoutHumps,
}

// withoutHumps judges what of the line is below the floor: a line that is sucked out of a tank in the van goes over its edge.
func withoutHumps(j *judge, r *Rule) {
	line := j.plan.Fuel
	if line == nil || !j.inFull() {
		return
	}
	corners := belowFloorOf(line.Path)
	if len(corners) < 2 {
		return
	}
	slices.Reverse(corners)
	f := j.open(j.book.of(r), the(TheFuel), Thing{})
	if f.Value = humps(corners); f.Value > 0 {
		f.at(hump(corners))
	}
	j.close(f, 0)
}

// belowFloorOf are the last corners of a path that are no higher than the underside of the floor.
func belowFloorOf(path []geometry.Point3) []geometry.Point3 {
	from := len(path)
	for from > 0 && path[from-1].Z <= 0 {
		from--
	}
	return slices.Clone(path[from:])
}

// hump is the high point of a line through corners, from the heater's stub to its other end, that is nearest to the heater.
func hump(corners []geometry.Point3) geometry.Point3 {
	lowest := lowestOf(corners)
	for i := 1; i < len(corners); i++ {
		switch up := corners[i].Z - corners[i-1].Z; {
		case i <= lowest && up > 0:
			return highestOf(corners[i:lowest])
		case i > lowest && up < 0:
			return corners[i-1]
		}
	}
	return corners[lowest]
}

// highestOf is the highest of corners, of several the first.
func highestOf(corners []geometry.Point3) geometry.Point3 {
	best := corners[0]
	for _, c := range corners {
		if c.Z > best.Z {
			best = c
		}
	}
	return best
}
