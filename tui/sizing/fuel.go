package sizing

import (
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// The fields of the fuel: those of the tank begin one where the line begins.

// withFuel is a fuel line of the job's own with a tank, to be changed.
func withFuel(j *vehicles.Job) (*vehicles.Run, *vehicles.Tank) {
	run := *j.Fuel
	var tank vehicles.Tank
	switch {
	case run.Supply.Tank != nil:
		tank = *run.Supply.Tank
	case len(run.Path) > 0:
		tank.At = [2]float64{run.Path[0].X, run.Path[0].Y}
	}
	run.Supply.Tank = &tank
	return &run, &tank
}

// ofTank is a slot that is of the tank, ofLine one that is of the line: at is where what it is of stands.
func ofTank(slot form.Slot) form.Slot {
	return onOwn(slot, func(j *vehicles.Job) {
		run, _ := withFuel(j)
		j.Fuel = run
	})
}

func ofLine(slot form.Slot) form.Slot {
	return onOwn(slot, func(j *vehicles.Job) {
		run := *j.Fuel
		if run.Pump != nil {
			pump := *run.Pump
			run.Pump = &pump
		}
		j.Fuel = &run
	})
}

// onOwn has a slot change what the job does not share with the one before.
func onOwn(slot form.Slot, own func(j *vehicles.Job)) form.Slot {
	put := slot.Set
	slot.Set = func(j vehicles.Job, text string) (vehicles.Job, error) {
		own(&j)
		return put(j, text)
	}
	return slot
}

// tankAt is the job's tank, an empty one where it has none: nothing is written to that.
func tankAt(j *vehicles.Job) *vehicles.Tank {
	if t := j.Fuel.Supply.Tank; t != nil {
		return t
	}
	return &vehicles.Tank{}
}

var (
	ends = []form.Choice{{Letter: 'o', Name: vehicles.TankOutside}, {Letter: 'i', Name: vehicles.TankInside}}

	onTank = figures(func(j *vehicles.Job) []vehicles.Figure { return tankAt(j).Figures() })
	onLine = figures(func(j *vehicles.Job) []vehicles.Figure { return j.Fuel.Supply.Figures() })
	onPump = figures(func(j *vehicles.Job) []vehicles.Figure { return j.Fuel.Pump.Figures() })
)

// fuelSlots are what the fuel is reckoned from, in a job with a fuel line.
var fuelSlots = form.Slots{
	ofTank(onTank.slot("litres", "tank holds", "l", "", notSaid)),
	ofTank(choice(form.Field{Key: "filler", Label: "filler ends", Note: "of a tank in the van: never with the people", Choices: ends},
		func(j *vehicles.Job) *string { return &tankAt(j).Filler })),
	ofTank(choice(form.Field{Key: "breather", Label: "breather ends", Choices: ends}, func(j *vehicles.Job) *string { return &tankAt(j).Breather })),
	ofLine(onLine.slot("bore", "line, inside", "mm", "", notSaid)),
}

// pumpSlots are those of a line with a pump.
var pumpSlots = form.Slots{
	ofLine(onPump.slot("ml_per_1000", "pump, 1000 strokes", "ml", "stands on the pump", notSaid)),
	ofLine(onPump.slot("hz", "strokes a second", "", "while it primes: see its instructions", notSaid)),
}

// fuelCard are the fields of the fuel: none without a line.
func fuelCard(s desk.State) form.Slots {
	switch fuel := s.Job.Fuel; {
	case fuel == nil:
		return nil
	case fuel.Pump == nil:
		return fuelSlots
	}
	return append(fuelSlots[:len(fuelSlots):len(fuelSlots)], pumpSlots...)
}

// fuelAt is at which field the form is opened for each result.
var fuelAt = map[sizing.ID]string{
	sizing.Filler: "filler", sizing.Breather: "breather", sizing.Endurance: "litres", sizing.EnduranceLeast: "litres", sizing.LineHolds: "bore", sizing.Priming: "ml_per_1000", sizing.PrimingTakes: "hz",
}
