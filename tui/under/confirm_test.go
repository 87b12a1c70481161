package under

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestConfirmingIsOneKeyOrOneReading(t *testing.T) {
	job, _ := vehicles.FromLibrary("short-van")
	r := screentest.New(t, New(), job, 100, 27)
	assert.Equal(t, "m confirm it", r.Screen.Keys(r.State)[1].Help().Key+" "+r.Screen.Keys(r.State)[1].Help().Desc, "the smallest foot says so")
	r.Type("m")
	assert.True(t, r.State.Job.Obstructions[0].Measured)
	assert.NotEqual(t, "m", r.Screen.Keys(r.State)[1].Help().Key, "what is confirmed has other uses for the room")
	r.Type("<down><enter><up><up><up>") // the form of the next: its kind, name and what it is shaped like
	assert.False(t, r.State.Job.Obstructions[1].Measured, "looking at it confirms nothing")
	r.Type("<down><down><down><wipe>")
	assert.False(t, r.State.Job.Obstructions[1].Measured, "nor does an empty field")
	r.Type("225")
	assert.True(t, r.State.Job.Obstructions[1].Measured, "a reading does")
	r.Undo()
	assert.False(t, r.State.Job.Obstructions[1].Measured)
	r.Type("<esc><end>m")
	assert.False(t, r.State.Job.Openings[len(job.Openings)-1].Unconfirmed, "an opening too")
}

func TestAnOverallReadingOutlivesAnEdit(t *testing.T) {
	job := screentest.Van(t)
	o := job.Obstructions[0]
	o.Total[0] = o.X[0]
	job.Obstructions = job.Obstructions.With(0, o)
	r := screentest.New(t, New(), job, 100, 27)
	r.Type("<enter><up><up><wipe>crossmember at the rear")
	assert.Equal(t, "crossmember at the rear", r.State.Job.Obstructions[0].Name)
	assert.Equal(t, o.Total, r.State.Job.Obstructions[0].Total)
}
