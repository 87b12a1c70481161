package jobcard

import (
	"fmt"
	"slices"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// fuelSlots are what is said of the fuel line beside its way: they are there while the job has a fuel line.
var fuelSlots = form.Slots{
	{
		Field: form.Field{
			Key: "burns", Label: "heater burns", Note: "a tank that is known to hold diesel may be nearer to the exhaust",
			Choices: []form.Choice{{Letter: 'p', Name: vehicles.Petrol}, {Letter: 'd', Name: vehicles.Diesel}, {Letter: 'n', Name: vehicles.NotKnown}},
		},
		Get: func(s desk.State) string { return orNotKnown(s.Job.Fuel.Supply.Kind) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if text != vehicles.NotKnown && !slices.Contains(vehicles.FuelKinds, text) {
				return j, fmt.Errorf("%q is no fuel: petrol, diesel, or %s", form.Quoted(text), vehicles.NotKnown)
			}
			return withSupply(j, func(supply *vehicles.Supply) { supply.Kind = known(text) }), nil
		},
	},
	{
		Field: form.Field{Key: "from", Label: "taken from", Note: "the fuel line may touch what it begins at"},
		Get:   func(s desk.State) string { return orNotKnown(s.Job.Fuel.Supply.From) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if text != vehicles.NotKnown && !slices.Contains(j.FuelSources(), text) {
				return j, fmt.Errorf("%q is no fuel tank or fuel line of the job: enter it in Underneath first", form.Quoted(text))
			}
			return withSupply(j, func(supply *vehicles.Supply) { supply.From = known(text) }), nil
		},
		Say: func(f *form.Field, s desk.State) {
			f.Choices = nil
			for i, name := range s.Job.FuelSources() {
				f.Choices = append(f.Choices, form.Choice{Letter: 'a' + rune(i%('n'-'a')), Name: name})
			}
			f.Choices = append(f.Choices, form.Choice{Letter: 'n', Name: vehicles.NotKnown})
		},
	},
}

// withSupply changes what is said of the fuel line, where there is one.
func withSupply(j vehicles.Job, change func(*vehicles.Supply)) vehicles.Job {
	if j.Fuel == nil {
		return j
	}
	run := *j.Fuel
	change(&run.Supply)
	return j.WithRun(vehicles.FuelRun, &run)
}

func orNotKnown(text string) string {
	if text == "" {
		return vehicles.NotKnown
	}
	return text
}

func known(text string) string {
	if text == vehicles.NotKnown {
		return ""
	}
	return text
}
