package rules

import (
	"math"

	"bench.example/undermark/geometry"
)

// The rules of where the exhaust's gas comes out, and of what its heat must not reach.
var outletRules = []*Rule{
	{
		ID: "exhaust.outlet", Unit: MM, Sense: Least, Weight: Kills, ByKind: AnOpening,
		Word:   "outlet",
		Title:  "Exhaust outlet away from openings",
		Ask:    "Exhaust gas kills. It must have no way in.",
		Advice: "end the exhaust farther from the opening: its gas kills.",
		short:  tooClose,
		check:  outletAway,
	},
	{
		ID: "exhaust.edge", Unit: MM, Sense: Most, Weight: Kills,
		Word:   "outlet inside the outline",
		Title:  "How far inside the van's outline the exhaust ends",
		Ask:    "Gas that comes out under the floor pools there and finds every gap.",
		Advice: "carry the outlet out to the van's edge: gas must not gather under the floor.",
		short:  "ends %s mm too far under the van",
		check:  outletAtEdge,
	},
	{
		ID: "exhaust.fuel", Unit: MM, Sense: Least, Weight: Kills,
		Word:   "exhaust",
		Title:  "Exhaust away from the heater's fuel line",
		Ask:    "A leak must never drip on a hot pipe. At the heater the stubs set how far apart they are; keep more elsewhere.",
		Advice: "move the exhaust and the fuel line apart.",
		short:  tooClose,
		check:  exhaustFromFuel,
	},
}

// outletAway judges the outlet against every opening.
func outletAway(j *judge, r *Rule) {
	if j.plan.Exhaust == nil {
		return
	}
	limits, path := j.book.ofKinds(r), j.plan.Exhaust.Path
	for i := range j.plan.Openings {
		thing := &j.plan.Openings[i].Placed
		f := j.open(limits.of(j.job.Openings[i].Kind), the(TheExhaust), j.opening(i))
		j.measured(f, surfaceOf(thing.Prism.GapPoint(path[len(path)-1]), 0), thing)
	}
}

// outletAtEdge judges how far inside the van's outline the exhaust ends: the bumper line and the floor's sides.
func outletAtEdge(j *judge, r *Rule) {
	if j.plan.Exhaust == nil {
		return
	}
	outlet := j.plan.Exhaust.Path[len(j.plan.Exhaust.Path)-1]
	half := j.job.Floor.Width / 2
	value, to, n := outlet.X, geometry.Point3{X: 0, Y: outlet.Y, Z: outlet.Z}, geometry.Point3{X: 1}
	if side := half - math.Abs(outlet.Y); side < value {
		value, n = side, geometry.Point3{Y: 1}
		to = geometry.Point3{X: outlet.X, Y: math.Copysign(half, outlet.Y), Z: outlet.Z}
	}
	f := j.open(j.book.of(r), the(TheExhaust), Thing{})
	f.Value, f.N = value, n
	f.Spread.Mark = j.runMark(outlet).along(n)
	f.flat(outlet.Plan(), to.Plan())
	j.close(f, 0)
}

// exhaustFromFuel judges what the exhaust fills against the heater's own fuel line.
func exhaustFromFuel(j *judge, r *Rule) {
	line := j.plan.Fuel
	if line == nil || j.plan.Exhaust == nil {
		return
	}
	s := j.exhaustTube().GapPath(line.Path)
	between := surfaceOf(s.Separation3, s.Radius)
	between.value -= line.Radius
	j.put(j.open(j.book.of(r), the(TheExhaust), the(TheFuel)), between)
}
