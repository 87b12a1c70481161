package rules

import "bench.example/undermark/vehicles"

// The rules of the fuel line and its pump.
var fuelRules = []*Rule{
	fuelKeeps,
	PumpTiltLeast,
	PumpTiltMost,
	FuelSuction,
	FuelDelivery,
	petrolSuction,
	petrolDeliver,
	pumpHeat,
	petrolHeat,
	FuelLift,
	petrolLift,
	FuelHead,
	petrolHead,
	pumpReach,
	filterReach,
	fuelHumps,
}

// PumpTiltLeast and PumpTiltMost are what the pump is tilted between.
var PumpTiltLeast = &Rule{
	ID: "fuel.pump-tilt.least", Findings: "fuel.pump-tilt", Unit: Degree, Sense: Least, Weight: Damages,
	Word:   "pump tilt, least",
	Title:  "Pump tilted up at its outlet, at least",
	Ask:    "Air bubbles must leave through the outlet: see the pump's instructions.",
	Advice: tiltPump,
	short:  degreesTooFew,
	check:  pumpTilt,
}

var PumpTiltMost = &Rule{
	ID: "fuel.pump-tilt.most", Findings: "fuel.pump-tilt", Unit: Degree, Sense: Most, Weight: Damages,
	Word:   "pump tilt, most",
	Title:  "Pump tilted up at its outlet, at most",
	Ask:    "See the pump's instructions.",
	Advice: tiltPump,
	short:  degreesTooMany,
	check:  pumpTilt,
}

// FuelSuction and FuelDelivery are of the line on either side of the pump.
var FuelSuction = &Rule{
	ID: "fuel.suction", Unit: MM, Sense: Most, Weight: Damages,
	Word:   suctionWord,
	Title:  suctionTitle,
	Ask:    enterFigure + " for this fuel and bore.",
	Advice: nearerTank,
	short:  tooMuch,
	check:  fuelSuction,
}

var fuelKeeps = &Rule{
	ID: "fuel.clearance", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction,
	Word:   "fuel line",
	Title:  "Fuel line clear of what is under the floor",
	Ask:    "The line must not be rubbed through, cut or heated.",
	Advice: "lay the fuel line elsewhere.",
	short:  tooClose,
	check:  fuelClearance,
	way:    func(c *course, r *Rule) { c.clearOf(c.ofFuel(r)) },
}

var FuelDelivery = &Rule{
	ID: "fuel.delivery", Unit: MM, Sense: Most, Weight: Damages,
	Word:   deliveryWord,
	Title:  deliveryTitle,
	Ask:    enterFigure + " for this fuel and bore.",
	Advice: nearerHeater,
	short:  tooMuch,
	check:  fuelDelivery,
}

const (
	nearerTank   = "move the pump nearer the tank."
	nearerHeater = "move the pump nearer the heater."
)

func fuelClearance(j *judge, r *Rule) {
	if line := j.plan.Fuel; line != nil {
		j.clearances(TheFuel, j.ofFuel(r))
	}
}

// ofFuel are the limits of the fuel line by obstruction.
func (j *judge) ofFuel(r *Rule) func(i int) *Limit {
	limit := j.byKindOf(r)
	return func(i int) *Limit {
		if j.job.Obstructions[i].Name == j.job.Fuel.Supply.From {
			return nil // it begins there
		}
		return limit(i)
	}
}

// pumped tells whether there is a fuel line with a pump on it.
func (j *judge) pumped() bool { return j.plan.Fuel != nil && j.plan.Fuel.Pump.Set }

func pumpTilt(j *judge, r *Rule) {
	if j.pumped() {
		j.plain(r, the(TheFuel), Thing{}, j.job.Fuel.Pump.Tilt)
	}
}

func fuelSuction(j *judge, r *Rule) {
	if j.pumped() {
		j.ofLine(j.byFuel(r, petrolSuction), j.plan.Fuel.Pump.Value)
	}
}

func fuelDelivery(j *judge, r *Rule) {
	if line := j.plan.Fuel; j.pumped() {
		j.ofLine(j.byFuel(r, petrolDeliver), line.Line.Length()-line.Pump.Value)
	}
}

// ofLine is a finding of the fuel line into which nothing measured enters.
func (j *judge) ofLine(limit *Limit, value float64) {
	f := j.open(limit, the(TheFuel), Thing{})
	f.Value = value
	j.close(f, 0)
}

// fuelled is the kind of a job's obstruction, by index, with diesel behind it for a tank that surely holds that.
func fuelled(job *vehicles.Job, i int) string {
	o := &job.Obstructions[i]
	if o.Is(vehicles.VanTank) && !mayHoldPetrol(job, i) {
		return o.Kind + ofDiesel
	}
	return o.Kind
}

// mayHoldPetrol tells whether a job's obstruction, by index, is a fuel tank that does not surely hold diesel.
func mayHoldPetrol(job *vehicles.Job, i int) bool {
	o := &job.Obstructions[i]
	holds := o.Holds
	if f := job.Fuel; holds == "" && f != nil && f.Supply.From == o.Name {
		holds = f.Supply.Kind
	}
	return o.Is(vehicles.VanTank) && holds != vehicles.Diesel
}
