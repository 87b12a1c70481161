package rules

import "bench.example/undermark/vehicles"

// The words of the rules that ask another value of petrol.
const (
	suctionWord  = "tank to pump"
	deliveryWord = "pump to heater"
	pumpHeatWord = "pump from heat"
	liftWord     = "fuel lifted to the pump"
	headWord     = "fuel pressed up to the heater"

	suctionTitle  = "Fuel line from the tank to the pump"
	deliveryTitle = "Fuel line from the pump to the heater"
	pumpHeatTitle = "Pump away from what is hot"
	ofPetrolToo   = ", petrol" // behind the title of the rule for any fuel
)

// Petrol goes by values of its own in a job that asks its runs for everything: it boils sooner than diesel, so what suits that is
// too lax for it. The checks of the rules for any fuel ask for these.
var (
	petrolSuction = ofPetrol("fuel.suction", Most, suctionWord, suctionTitle+ofPetrolToo, nearerTank)
	petrolDeliver = ofPetrol("fuel.delivery", Most, deliveryWord, deliveryTitle+ofPetrolToo, nearerHeater)
	petrolHeat    = ofPetrol("fuel.pump-heat", Least, pumpHeatWord, pumpHeatTitle+ofPetrolToo, coolPump)
	petrolLift    = ofPetrol("fuel.lift", Most, liftWord, "Height that the pump lifts petrol from the tank", lowerPump)
	petrolHead    = ofPetrol("fuel.head", Most, headWord, "Height that the pump presses petrol up to the heater", raisePump)
)

func ofPetrol(findings string, sense Sense, word, title, advice string) *Rule {
	short := tooMuch
	if sense == Least {
		short = tooClose
	}
	return &Rule{
		ID: findings + "." + vehicles.Petrol, Findings: findings, Unit: MM, Sense: sense, Weight: Damages,
		Word: word, Title: title, Ask: "Petrol boils sooner than diesel. Enter the figure that your heater's instructions give for petrol.",
		Advice: advice, short: short, unset: NeedsFigure + " for petrol; diesel's does not suit it",
	}
}

// byFuel is what is asked of the fuel line: of petrol by its own rule.
func (j *judge) byFuel(r, petrol *Rule) *Limit {
	if j.inFull() && j.job.Fuel.Supply.Kind == vehicles.Petrol {
		return j.book.of(petrol)
	}
	return j.book.of(r)
}
