package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/survey"
)

// named is a job in which a tank and a rail are named by tapes, shields and the fuel line.
func named() Job {
	job := NewJob("TL-41")
	job.Obstructions = List[Obstruction]{{Name: "tank"}, {Name: "rail"}}
	gap := survey.FromNumber(500, true)
	return job.
		WithCut(Cut{Across: 127, Direct: List[DirectTape]{{"tank", gap}, {"rail", gap}, {"tank", gap}}}).
		WithRun(ExhaustRun, &Run{Shielded: Shields{Names: []string{"rail", "tank"}}}).
		WithRun(FuelRun, &Run{Supply: Supply{From: "tank"}})
}

func directTo(job Job) (to []string) {
	for _, d := range job.Cut.Direct {
		to = append(to, d.To)
	}
	return to
}

func TestANewNameIsSaidWhereverTheOldOneWas(t *testing.T) {
	old := named()
	job := old.Renaming("tank", "fuel tank")
	assert.Equal(t, []string{"fuel tank", "rail", "fuel tank"}, directTo(job))
	assert.Equal(t, []string{"rail", "fuel tank"}, job.Exhaust.Shielded.Names)
	assert.Equal(t, "fuel tank", job.Fuel.Supply.From)
	assert.Equal(t, named(), old, "the old job stays")
	assert.Equal(t, old, old.Renaming("spare wheel", "wheel"), "nobody says it")
}

func TestWhatIsForgottenIsSaidNowhere(t *testing.T) {
	old := named()
	job := old.Forgetting("tank")
	assert.Equal(t, []string{"rail"}, directTo(job))
	assert.Equal(t, []string{"rail"}, job.Exhaust.Shielded.Names)
	assert.Empty(t, job.Fuel.Supply.From)
	assert.Empty(t, job.Naming("tank"))
	assert.Equal(t, named(), old, "the old job stays")
	assert.Nil(t, job.Forgetting("rail").Cut.Direct, "as in a file that has none")
	assert.Equal(t, NewJob("TL-41"), NewJob("TL-41").Forgetting("tank"), "no cut, no runs")
}

func TestWhatSaysAName(t *testing.T) {
	job := named()
	assert.Equal(t, []string{"the tape to it from the pilot hole", "its shield", "that the fuel line begins at it"}, job.Naming("tank"))
	assert.Empty(t, job.Naming("spare wheel"))
}

// Fuel is taken from a thing that there is and that holds what the heater burns; of what nobody has said it holds nothing is known to be wrong.
func TestFuelIsTakenFromWhatHoldsIt(t *testing.T) {
	for _, c := range []struct{ from, holds, burns, said string }{
		{"tank", "petrol", "diesel", `"tank", which holds petrol, and the heater burns diesel`},
		{"tank", "diesel", "diesel", ""},
		{"tank", "", "diesel", ""},
		{"tank", "petrol", "", ""},
		{"tnak", "petrol", "diesel", `"tnak", and no obstruction has that name: did you mean "tank"?`},
	} {
		job := Demo()
		job.Obstructions[0].Name, job.Obstructions[0].Holds = "tank", c.holds
		fuel := *job.Fuel
		fuel.Supply.From, fuel.Supply.Kind = c.from, c.burns
		job.Fuel = &fuel
		_, faults := Reduce(job)
		if c.said == "" {
			assert.Empty(t, faults, "%+v", c)
			continue
		}
		if assert.Len(t, faults, 1, "%+v", c) {
			assert.Equal(t, "fuel.from", faults[0].Key)
			assert.Contains(t, faults[0].Text, c.said)
		}
	}
}
