package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of the pump's place: away from heat, and no more fuel lifted than it can. A job says whether it asks them.
var (
	pumpHeat = &Rule{
		ID: "fuel.pump-heat", Unit: MM, Sense: Least, Weight: Damages,
		Word:   pumpHeatWord,
		Title:  pumpHeatTitle,
		Ask:    "Warm fuel forms bubbles, and the pump then delivers too little.",
		Advice: coolPump,
		short:  tooClose,
		check:  pumpFromHeat,
	}
	FuelLift = &Rule{
		ID: "fuel.lift", Unit: MM, Sense: Most, Weight: Damages,
		Word:   liftWord,
		Title:  "Height that the pump lifts fuel from the tank",
		Ask:    "From the tank's bottom, or the line's beginning where that is lower. " + enterFigure + ".",
		Advice: lowerPump,
		short:  tooMuch,
		check:  lifted,
	}
	FuelHead = &Rule{
		ID: "fuel.head", Unit: MM, Sense: Most, Weight: Damages,
		Word:   headWord,
		Title:  "Height that the pump presses fuel up to the heater",
		Ask:    enterFigure + ".",
		Advice: raisePump,
		short:  tooMuch,
		check:  pressed,
	}
)

const (
	coolPump  = "move the pump away from the pipe, to a cool place."
	lowerPump = "put the pump lower, nearer to the tank's level."
	raisePump = "put the pump higher, nearer to the heater's level."
)

// pumpAt is where the pump sits; ok is false without one, or in a job that does not ask its runs for everything.
func (j *judge) pumpAt() (at geometry.Point3, ok bool) {
	if !j.pumped() || !j.inFull() {
		return at, false
	}
	return j.plan.Fuel.Line.At(j.plan.Fuel.Pump.Value), true
}

// pumpFromHeat judges the pump against the heater's exhaust, and against what of the van is hot.
func pumpFromHeat(j *judge, r *Rule) {
	at, ok := j.pumpAt()
	if !ok {
		return
	}
	limit := j.byFuel(r, petrolHeat)
	if j.plan.Exhaust != nil {
		s := surfaceBetween(tubeOf(j.plan.Exhaust).GapPath([]geometry.Point3{at}))
		s.A, s.B, s.N = s.B, s.A, s.N.Scale(-1)
		f := j.open(limit, the(TheFuel), the(TheExhaust))
		j.put(f, s)
	}
	for i := range j.plan.Obstructions {
		if j.only == TheExhaust || !j.is(i, vehicles.GivesHeat) {
			continue
		}
		thing := &j.plan.Obstructions[i]
		f := j.open(limit, the(TheFuel), j.obstruction(i))
		j.measured(f, surfaceOf(thing.Prism.GapPoint(at), 0), thing)
	}
}

// lifted judges how far the pump lifts fuel, pressed how far it presses it up to the heater.
func lifted(j *judge, r *Rule) {
	pump, ok := j.pumpAt()
	if !ok {
		return
	}
	from := j.plan.Fuel.Path[0]
	from.Z = min(from.Z, j.tankBottom(from.Z))
	j.climb(j.byFuel(r, petrolLift), from, pump)
}

func pressed(j *judge, r *Rule) {
	if pump, ok := j.pumpAt(); ok {
		path := j.plan.Fuel.Path
		j.climb(j.byFuel(r, petrolHead), pump, path[len(path)-1])
	}
}

// climb is a finding of how far the fuel goes up between two places; where it flows down by itself there is none.
func (j *judge) climb(limit *Limit, from, to geometry.Point3) {
	if to.Z <= from.Z {
		return
	}
	f := j.open(limit, the(TheFuel), Thing{})
	f.Value, f.N = to.Z-from.Z, geometry.Point3{Z: 1}
	f.Spread.Height = j.runMark(from)[2] + j.runMark(to)[2]
	f.between(from, to)
	j.close(f, 0)
}

// tankBottom is the height of the bottom of the tank that the fuel comes from, as far as the job says it, else so much.
func (j *judge) tankBottom(other float64) float64 {
	tank := j.job.Fuel.Supply.Tank
	switch {
	case tank == nil:
		return other
	case tank.Drop.Set:
		return -tank.Drop.To
	case tank.Rise.Set:
		return j.job.Floor.Thickness + tank.Rise.From
	}
	return other
}
