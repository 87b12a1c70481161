package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

// Of petrol each finding of the pump says whose figure is missing, that against the heater's exhaust too; of diesel none does.
func TestOfPetrolItsOwnFigureIsMissing(t *testing.T) {
	why := func(kind string) (said map[string]string) {
		job := vehicles.Demo()
		fuel := *job.Fuel
		fuel.Supply.From, fuel.Supply.Kind = "", kind // its tank holds diesel
		said = map[string]string{}
		for _, f := range judged(t, job.WithRun(vehicles.FuelRun, &fuel)).Findings {
			switch f.ID() {
			case "fuel.suction", "fuel.delivery", "fuel.pump-heat", "fuel.lift", "fuel.head":
				said[f.About()] = f.Why
			}
		}
		return said
	}
	const ownOfPetrol = "needs your heater's figure for petrol; diesel's does not suit it"
	of := why(vehicles.Petrol)
	assert.Contains(t, of, "pump from heat: heater's exhaust")
	assert.Len(t, of, len(why(vehicles.Diesel)))
	for about, said := range of {
		assert.Equal(t, ownOfPetrol, said, about)
	}
	for about, said := range why(vehicles.Diesel) {
		assert.NotEqual(t, ownOfPetrol, said, about)
	}
}
