//go:build !windows

package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The main job in a real terminal, with no help but the screen: the sample's cut is foul, moves forward until it is
// clear, the kinds still open are looked for, the cautions are read, and the first mark is ticked.
func TestFromTheFoulCutToATickedMark(t *testing.T) {
	t.Parallel()
	const right = "\x1b[C"
	h := readHome(t)
	s := h.start(t, 100, 30)
	s.wait(t, "6 foul")
	s.keys(t, "4")
	s.wait(t, "[4 Place]")
	s.keys(t, "s")
	s.wait(t, "step 50 mm")
	s.keys(t, right, right, right)
	s.wait(t, "5 doubtful: worst intake: reductant tank, not measured on this van")

	s.keys(t, "6")
	s.wait(t, "within 300 mm of the cut, is there any")
	s.keys(t, "n")
	s.wait(t, "still open: 1")
	s.keys(t, "n")
	s.wait(t, "At the cut: 2 doubtful")
	s.keys(t, "m")
	s.wait(t, "Read this before drilling")
	s.readOn(t)
	s.wait(t, "[ ] cut centre")
	s.keys(t, " ")
	s.wait(t, "[x] cut centre")
	s.wait(t, "from the left edge")

	s.keys(t, "\x1a", "\x1a", "\x1a")
	s.wait(t, "6 foul")
	assert.Zero(t, s.quit(t), "all taken back, nothing is unsaved")
	assert.NotContains(t, s.output(), askBackground)
}
