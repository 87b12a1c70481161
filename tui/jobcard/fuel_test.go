package jobcard

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// fuelled is the sample van with a fuel line, and its card.
func fuelled(t *testing.T) (desk.State, form.Record) {
	s := screentest.State(t)
	require.NotContains(t, records(s), form.Record(cardRecord{fuelCard}), "without a line there is nothing to say of it")
	job := s.Job.WithRun(vehicles.FuelRun, &vehicles.Run{
		Across: 6, Path: vehicles.List[vehicles.RunPoint]{{X: 1500, Y: -300, Drop: 200}, {X: 1400, Y: 0, Drop: 100}},
	})
	s = screentest.Judged(s, job)
	require.Empty(t, s.Faults)
	require.Contains(t, records(s), form.Record(cardRecord{fuelCard}))
	return s, cardRecord{fuelCard}
}

func TestWhereTheFuelIsTakenFrom(t *testing.T) {
	s, card := fuelled(t)
	fields := card.Fields(s, nil)
	assert.Equal(t, "not known", fields[1].Text)
	assert.Equal(t, []form.Choice{{Letter: 'a', Name: "fuel tank"}, {Letter: 'n', Name: "not known"}}, fields[1].Choices)
	after, _, err := card.Set(s, map[string]string{"from": "fuel tank", "burns": "diesel"})
	require.NoError(t, err)
	assert.Equal(t, vehicles.Supply{Kind: vehicles.Diesel, From: "fuel tank"}, after.Fuel.Supply)
	assert.Zero(t, s.Job.Fuel.Supply, "the old job is as it was")
	s = screentest.Judged(s, after)
	for _, f := range s.Result.Findings {
		assert.False(t, f.ID() == "fuel.clearance" && f.Against.Name == "fuel tank", "it begins there")
	}
	after, _, err = card.Set(s, map[string]string{"from": "not known"})
	require.NoError(t, err)
	assert.Empty(t, after.Fuel.Supply.From)
	_, _, err = card.Set(s, map[string]string{"from": "brake pipe, left"})
	require.ErrorContains(t, err, "no fuel tank or fuel line")
}

// A tank that holds another fuel than the heater burns is not taken without a word.
func TestATankOfAnotherFuelIsNotTaken(t *testing.T) {
	s, card := fuelled(t)
	at, there := s.Job.ObstructionNamed("fuel tank")
	require.True(t, there)
	o := s.Job.Obstructions[at]
	o.Holds = vehicles.Petrol
	job := s.Job
	job.Obstructions = job.Obstructions.With(at, o)
	s = screentest.Judged(s, job)
	_, _, err := card.Set(s, map[string]string{"from": "fuel tank", "burns": "diesel"})
	require.ErrorContains(t, err, "holds petrol, and the heater burns diesel")
}

// What kills at the fuel line is said where the fuel is entered, in the words of the cautions.
func TestTheFuelsCautionsStandBesideItsCard(t *testing.T) {
	said := rules.FuelCautions()
	require.Len(t, said, 2)
	text := cardBeside(fuelCard, desk.State{})
	for _, c := range said {
		assert.Contains(t, text, c.Say)
	}
	assert.NotContains(t, cardBeside(tapeCard, desk.State{}), said[0].Say)
}
