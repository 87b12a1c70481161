package entryscreen

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A letter that goes astray as the form of a thing comes up makes no other thing of it.
func TestAStrayLetterLeavesAThingsKind(t *testing.T) {
	job := screentest.Van(t)
	for row := range job.Obstructions {
		r := started(t, spec(), job, 100, 27)
		for range row {
			r.Type("<down>")
		}
		r.Type("<enter>w")
		require.True(t, r.Screen.Typing())
		assert.Equal(t, job.Obstructions[row].Kind, r.State.Job.Obstructions[row].Kind, job.Obstructions[row].Name)
		r.Type("<esc>")
		r.Tap(8, 1+row)
		r.Tap(8, 1+row)
		r.Type("w<esc>")
		assert.Equal(t, job.Obstructions[row].Kind, r.State.Job.Obstructions[row].Kind, "the same by taps")
	}
}

// What was begun opens at what it lacks.
func TestWhatWasBegunOpensAtWhatItLacks(t *testing.T) {
	r := started(t, spec(), screentest.Van(t), 100, 27)
	r.Type("nc652<enter>+84<esc><enter>-850<enter>850<esc>")
	require.Len(t, r.State.Job.Obstructions, 4)
	assert.Equal(t, "-850", r.State.Job.Obstructions[3].Y[0].Text)
}

// Whoever makes another thing of one hears it, and how it is taken back.
func TestAChangedKindIsSaid(t *testing.T) {
	r := started(t, spec(), screentest.Van(t), 100, 27)
	was := r.State.Job.Obstructions[0]
	r.Type("<enter><up><up><up>")
	require.Empty(t, r.Said)
	r.Type("w")
	is := r.State.Job.Obstructions[0]
	require.NotEqual(t, was.Kind, is.Kind)
	assert.Contains(t, r.Said, "its kind is now "+is.Kind+", and was "+was.Kind+". Ctrl-Z takes it back.")
	r.Undo()
	assert.Equal(t, was.Kind, r.State.Job.Obstructions[0].Kind)
}

// A new thing is not told of its first kind.
func TestAFirstKindIsNoChange(t *testing.T) {
	r := started(t, spec(), vehicles.NewJob("TL-07"), 100, 27)
	r.Type("nw")
	assert.Empty(t, r.Said)
	assert.Equal(t, 1, features.Obstructions.Unfinished(r.State.Job))
}

// The plan follows the list from the start, before any key: what the list is at is picked out and named on it.
func TestThePlanFollowsTheListFromTheStart(t *testing.T) {
	for _, size := range [][2]int{{100, 27}, {60, 17}} {
		r := started(t, spec(), screentest.Van(t), size[0], size[1])
		assert.Equal(t, -1, r.State.Selected, "nobody has picked it out elsewhere")
		before := r.View(size[0], size[1])
		assert.Contains(t, before, r.State.Job.Obstructions[0].Name)
		r.Type("<down><up>")
		require.Zero(t, r.State.Selected)
		assert.Equal(t, before, r.View(size[0], size[1]))
	}
}
