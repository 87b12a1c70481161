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
