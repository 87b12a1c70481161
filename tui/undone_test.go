package tui

import (
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// An undo that takes away what a field is of takes the field with it, before another key: the foot says what keys do, and the next one does that.
func TestAFieldGoesWithWhatItIsOf(t *testing.T) {
	b := sampled(t)
	b.press("5", "X", "a", "t")
	require.Contains(t, b.View(), "leaves the field")
	b.press("ctrl+z")
	assert.NotContains(t, b.View(), "leaves the field")
	require.Nil(t, b.desk.State.Job.Exhaust)
	b.press("4")
	assert.Contains(t, ansi.Strip(b.View()), "[Place]")
}
