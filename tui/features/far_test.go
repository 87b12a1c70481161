package features

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// The van's brake pipe ends at 2400: that is where a nearer line is offered, and nowhere else.
func TestANearerDatumIsOfferedOnceWithALongTape(t *testing.T) {
	job := screentest.Van(t)
	pipe := notesOf(job, 1)
	assert.NotContains(t, pipe["p1x"], "nearer")
	assert.Contains(t, pipe["p2x"], "Over 2 m: a nearer line is better, any straight edge across the van seen from both sides")
	far := vehicles.Obstruction{Name: "tank", Kind: "fuel tank", Measured: true, Place: vehicles.Place{
		X: vehicles.Pair{survey.FromNumber(2500, true), survey.FromNumber(2600, true)}, Y: vehicles.Pair{survey.FromNumber(0, true), survey.FromNumber(100, true)},
	}}
	job.Obstructions = job.Obstructions.Insert(3, far)
	assert.NotContains(t, notesOf(job, 3)["x0"], "nearer", "it was offered with the pipe")
	job.Obstructions = job.Obstructions.Without(1)
	tank := notesOf(job, 2)
	assert.Contains(t, tank["x0"], "nearer")
	assert.NotContains(t, tank["x1"], "nearer", "once")
	job.Datum.Name = "door step"
	assert.NotContains(t, notesOf(job, 2)["x0"], "nearer", "there is one already")
}

func TestWhatLiesBehindTheDatumIsSaidSo(t *testing.T) {
	document, err := vehicles.Load("../../testdata/cases/32-datum-is-a-step.toml")
	assert.NoError(t, err)
	// sqrt(948^2 - (95 - 40)^2) = 946.4
	assert.Contains(t, notesOf(document.Job, 0)["x0"], "= 946.4 mm behind step of the… ± ")
	assert.Contains(t, notesOf(document.Job, 2)["x0"], "mm from step of the… ± ")
	s := screentest.Judged(desk.State{}, document.Job)
	heads := map[string]string{}
	for _, f := range (Record{Obstructions, 0, false}).Fields(s, nil) {
		heads[f.Key] = f.Heading
	}
	assert.Equal(t, "From the step of the… (behind: minus)", heads["x0"])
	tie := (Record{Ties, 0, false}).Fields(s, nil)
	assert.Equal(t, "From the step of the… (behind: minus), across", tie[1].Heading)
}
