package ontop

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
)

// The line's name is the last field of the card: the one before it in a ring.
func TestTheDatumLineIsNamed(t *testing.T) {
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<down><enter>" + strings.Repeat("<down>", 12))
	assert.Contains(t, r.View(100, 27), "▸ x starts at")
	assert.Contains(t, r.View(100, 27), "No reading changes with the name", "what is there was taped from another line")
	r.Type("150")
	assert.Empty(t, r.State.Job.Datum.Name)
	assert.Contains(t, r.View(100, 27), "that is a reading: a name is wanted")
	r.Type("<wipe>door step<esc>")
	assert.Equal(t, "door step", r.State.Job.Datum.Name)
	view := r.View(100, 27)
	assert.Contains(t, view, "Does the door step bow?")
	r.Type("<up><enter>")
	view = r.View(100, 27)
	assert.Contains(t, view, "from door step")
	assert.Contains(t, view, "From the door step, where the tape has its zero")
	assert.NotContains(t, view, "bumper")
}
