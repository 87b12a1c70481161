package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A fitting of a library van or another one is on this van only once somebody has looked.
func TestNothingIsClearOfAFittingNobodyConfirmed(t *testing.T) {
	job := tidy()
	for _, id := range []string{"plate.fitting", "body.space"} {
		assert.Equal(t, Clear, one(t, job, id, "battery box").Verdict, id)
	}
	box := job.Fittings[0]
	box.Unconfirmed = true
	job.Fittings = job.Fittings.With(0, box)
	for _, id := range []string{"plate.fitting", "body.space"} {
		f := one(t, job, id, "battery box")
		assert.Equal(t, Doubtful, f.Verdict, id)
		assert.Equal(t, "not measured on this van", f.Why, id)
		assert.True(t, f.Unconfirmed, "confirming is all that is left")
	}
	result := judged(t, job)
	advice := Next(result, Builtin())
	assert.Equal(t, "measure: battery box, confirm it on this van: ends 2 doubts", advice[0].Text)
	assert.Equal(t, Clear, judged(t, advice[0].taken(job)).Verdict)

	on := box
	on.Rise.From = 0
	job.Fittings = job.Fittings.With(0, on)
	job.Cut.At = [2]float64{2100, 500}
	foul := one(t, job, "plate.fitting", "battery box")
	assert.Equal(t, Foul, foul.Verdict, "that it hits is no matter of confirming")
	assert.False(t, foul.Unconfirmed)
}
