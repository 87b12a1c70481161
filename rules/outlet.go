package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
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
		ends:   true,
	},
	{
		ID: "exhaust.drain-gas", Unit: MM, Sense: Least, Weight: Kills,
		Word:   "muffler, drains",
		Title:  "Muffler and drain holes of the exhaust away from openings",
		Ask:    "Gas comes out of every drain hole and of a muffler's seams too, not only of the outlet.",
		Advice: "move the muffler, or the drain hole, farther from the opening: its gas kills.",
		short:  tooClose,
		check:  drainsAway,
	},
	outletInsideRule,
	outletOutsideRule,
	{
		ID: "exhaust.facing", Unit: Degree, Sense: Least, Weight: Kills,
		Word:   "outlet, from straight ahead",
		Title:  "Exhaust outlet not pointing forward",
		Ask:    "Driving wind that blows into it drives the gas back, and puts the flame out.",
		Advice: "turn the outlet down, sideways or to the rear.",
		short:  tooFarForward,
		check:  facing(TheExhaust, geometry.Point3{X: 1}),
		way:    notFacing(geometry.Point3{X: 1}),
	},
	{
		ID: "exhaust.up", Unit: Degree, Sense: Least, Weight: Kills,
		Word:   "outlet, from straight up",
		Title:  "Exhaust outlet not pointing up",
		Ask:    "Gas that is blown up along the van finds every gap, and rain and snow fall in.",
		Advice: "turn the outlet level or down.",
		short:  tooFarUp,
		check:  facing(TheExhaust, geometry.Point3{Z: 1}),
	},
	exhaustFuel,
	exhaustBlast,
	exhaustUpwind,
	exhaustFiller,
}

var outletInsideRule = &Rule{
	ID: "exhaust.edge", Unit: MM, Sense: Most, Weight: Kills,
	Word:   "outlet inside the outline",
	Title:  "How far inside the van's outline the exhaust ends",
	Ask:    "Gas that comes out under the floor pools there and finds every gap.",
	Advice: "carry the outlet out to the van's edge: gas must not gather under the floor.",
	short:  shortfall{words: "ends %s mm too far under the van"},
	check:  outletAtEdge,
	ends:   true,
}

var outletOutsideRule = &Rule{
	ID: "exhaust.outside", Unit: MM, Sense: Most, Weight: Damages,
	Word:   "outlet outside the outline",
	Title:  "How far outside the van's outline the exhaust ends",
	Ask:    "A pipe that sticks out burns legs and is torn off.",
	Advice: "cut the outlet back to the van's edge.",
	short:  shortfall{words: "sticks out %s mm too far"},
	check:  outletOutside,
	ends:   true,
}

var exhaustFuel = &Rule{
	ID: "exhaust.fuel", Unit: MM, Sense: Least, Weight: Kills,
	Word:   "exhaust",
	Title:  "Exhaust away from the heater's fuel line",
	Ask:    "A leak must never drip on a hot pipe. " + stubsApart + "; keep more elsewhere.",
	Advice: "move the exhaust and the fuel line apart.",
	short:  tooClose,
	check:  exhaustFromFuel,
	way:    wayPastFuel,
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

// drainsAway judges the nearest of the muffler and the exhaust's drain holes against every opening.
func drainsAway(j *judge, r *Rule) {
	laid := j.plan.Exhaust
	if laid == nil || laid.Muffler == nil && len(j.job.Exhaust.Drains) == 0 {
		return
	}
	limit := j.book.of(r)
	for i := range j.plan.Openings {
		thing, nearest := &j.plan.Openings[i].Placed, surface{value: math.Inf(1)}
		if m := laid.Muffler; m != nil {
			nearest.nearer(thing.Prism.GapRun(m.Axis), m.Radius)
		}
		for _, along := range j.job.Exhaust.Drains {
			nearest.nearer(thing.Prism.GapPoint(laid.Line.At(along)), 0)
		}
		j.measured(j.open(limit, the(TheExhaust), j.opening(i)), nearest, thing)
	}
}

// outletInside is how far inside the van's outline the exhaust ends, with its place and the nearest one on the outline; negative
// outside, past a corner by the way to that.
func (j *judge) outletInside() (value float64, outlet, edge, n geometry.Point3) {
	outlet = j.plan.Exhaust.Path[len(j.plan.Exhaust.Path)-1]
	left, right := j.job.OutlineLeft(), j.job.OutlineRight()
	value, n = left-outlet.Y, geometry.Point3{Y: 1}
	edge = geometry.Point3{X: outlet.X, Y: left, Z: outlet.Z}
	if side := outlet.Y + right; side < value {
		value, edge.Y = side, -right
	}
	rear, there := j.job.OutlineRear()
	switch behind := rear - outlet.X; {
	case there && behind > 0 && value < 0:
		edge.X = rear
		out := outlet.Sub(edge)
		value = -out.Norm()
		n = out.Scale(1 / value)
	case there && -behind < value:
		value, n = -behind, geometry.Point3{X: 1}
		edge = geometry.Point3{X: rear, Y: outlet.Y, Z: outlet.Z}
	}
	return value, outlet, edge, n
}

// outletAtEdge judges how far inside the van's outline the exhaust ends, outletOutside how far outside.
func outletAtEdge(j *judge, r *Rule)  { j.outletTo(r, 1) }
func outletOutside(j *judge, r *Rule) { j.outletTo(r, -1) }

func (j *judge) outletTo(r *Rule, sign float64) {
	if j.plan.Exhaust == nil {
		return
	}
	value, outlet, edge, n := j.outletInside()
	f := j.open(j.book.of(r), the(TheExhaust), Thing{})
	f.Value, f.N = sign*value, n
	f.Spread.Mark = j.runMark(outlet).along(n)
	f.flat(outlet.Plan(), edge.Plan())
	j.close(f, 0)
}

// exhaustFromFuel judges what the exhaust fills against the heater's own fuel line: twice, as at the heater both are as near as
// their stubs.
func exhaustFromFuel(j *judge, r *Rule) {
	line, pipe := j.plan.Fuel, j.plan.Exhaust
	if line == nil || pipe == nil {
		return
	}
	behind, begin := pipe.Line.Length(), line.Line.Length()-AtStub
	nearPipe, farPipe := j.stretch(pipe, 0, min(AtStub, behind)), j.stretch(pipe, AtStub, behind)
	nearLine, farLine := j.stretch(line, max(0, begin), line.Line.Length()), j.stretch(line, 0, begin)
	away := closer(farPipe, j.whole(TheFuel), closer(nearPipe, farLine, nil))
	if away != nil {
		j.put(j.open(j.book.of(r), the(TheExhaust), the(TheFuel)), *away)
	}
	j.stubs(r, closer(nearPipe, nearLine, nil))
}

// wayPastFuel keeps the one that is sought of exhaust and fuel line away from the other.
func wayPastFuel(c *course, r *Rule) {
	if line := c.plan.Fuel; c.kind == vehicles.ExhaustRun && line != nil {
		c.apartFrom(line, 0, line.Line.Length(), c.book.of(r))
	}
	if pipe := c.plan.Exhaust; c.kind == vehicles.FuelRun && pipe != nil {
		c.apartFrom(pipe, 0, pipe.Line.Length(), c.book.of(r))
	}
}

// closer is the distance between two tubes where that is the nearer one; nil while nothing is to be near.
func closer(p, q *geometry.Tube, than *surface) *surface {
	s, _ := p.GapTube(q)
	if math.IsInf(s.Distance, 1) || than != nil && than.value <= s.Distance {
		return than
	}
	between := surfaceBetween(s)
	return &between
}

// stubs judges exhaust and fuel line where both are at the heater: no nearer than it puts them itself.
func (j *judge) stubs(r *Rule, s *surface) {
	line, pipe := j.plan.Fuel, j.plan.Exhaust
	f := j.open(j.book.of(r), the(TheExhaust), the(TheFuelStub))
	mouths := [2]geometry.Point3{pipe.Path[0], line.Path[len(line.Path)-1]}
	if put := mouths[0].Sub(mouths[1]).Norm() - pipe.Radius - line.Radius; f.Required.Set {
		f.Required.Value = min(f.Required.Value, put)
	}
	if s.A.Sub(mouths[0]).Norm() > inside || s.B.Sub(mouths[1]).Norm() > inside {
		j.put(f, *s)
		return
	}
	f.Value = s.value
	f.between(s.A, s.B)
	j.close(f, 0)
}
