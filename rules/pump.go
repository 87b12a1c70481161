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
		Ask:    "From the tank's bottom, or the line's beginning where that is lower; doubtful while the bottom is not known. " + enterFigure + ".",
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
		s := surfaceBetween(j.whole(TheExhaust).GapPath([]geometry.Point3{at}))
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

// askTank is why what is lifted is doubtful while nobody has said how deep the tank reaches: the line begins anywhere on it.
const askTank = "how deep the tank reaches is not known: enter its heights on Runs (tank)"

// lifted judges how far the pump lifts fuel from the tank's bottom, or from the line's beginning where that is lower. Where the bottom is not known
// that is the least that is lifted: it may be too much, and else nobody knows.
func lifted(j *judge, r *Rule) {
	pump, ok := j.pumpAt()
	if !ok {
		return
	}
	from := j.plan.Fuel.Path[0]
	bottom, tank, known := j.tankBottom()
	if !known || bottom > from.Z {
		tank = nil
	} else {
		from.Z = bottom
	}
	f := j.climb(j.byFuel(r, petrolLift), from, pump, tank)
	switch {
	case known:
		return
	case f == nil:
		f = j.open(j.byFuel(r, petrolLift), the(TheFuel), Thing{})
		f.between(from, pump)
		j.close(f, 0)
		f.Unsaid, f.Margin = true, vehicles.Number{}
	}
	if f.Verdict == Clear {
		f.Verdict, f.Why = Doubtful, askTank
	}
}

// pressed judges how far the pump presses fuel up to the heater.
func pressed(j *judge, r *Rule) {
	if pump, ok := j.pumpAt(); ok {
		path := j.plan.Fuel.Path
		j.climb(j.byFuel(r, petrolHead), pump, path[len(path)-1], nil)
	}
}

// climb is a finding of how far the fuel goes up between two places, the first marked or the bottom of a tank that was measured; nil where it
// flows down by itself.
func (j *judge) climb(limit *Limit, from, to geometry.Point3, tank *vehicles.Placed) *Finding {
	if to.Z <= from.Z {
		return nil
	}
	f := j.open(limit, the(TheFuel), Thing{})
	f.Value, f.N = to.Z-from.Z, geometry.Point3{Z: 1}
	f.between(from, to)
	if tank != nil {
		j.close(f, j.spread(f, putting{mark: j.runMark(to)}, tank, false, from.Plan(), f.N))
		return f
	}
	f.Spread.Height = j.runMark(from)[2] + j.runMark(to)[2]
	j.close(f, 0)
	return f
}

// tankBottom is the height of the bottom of the tank that the fuel comes from, as far as the job says it: of a tank of its own, or of the van's, with
// that, where the line begins at it.
func (j *judge) tankBottom() (z float64, tank *vehicles.Placed, known bool) {
	supply := &j.job.Fuel.Supply
	if own := supply.Tank; own != nil && own.Drop.Set {
		return -own.Drop.To, nil, true
	} else if own != nil && own.Rise.Set {
		return j.job.Floor.Thickness + own.Rise.From, nil, true
	}
	for _, i := range fuelTanks(j.job) {
		if o := &j.job.Obstructions[i]; o.Name == supply.From && o.Drop.Set {
			return j.plan.Obstructions[i].Prism.Low, &j.plan.Obstructions[i], true
		}
	}
	return 0, nil, false
}
