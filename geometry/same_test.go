package geometry

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPrismsAreTheSameWhenNothingOfThemDiffers(t *testing.T) {
	box := func(x1, turn, low, high float64) *Prism {
		return &Prism{NewRectangle(Point{0, 0}, Point{x1, 50}, turn), low, high}
	}
	line := func(x, radius float64) *Prism {
		return &Prism{NewLine([]Point{{0, 0}, {x, 0}, {100, 50}}, radius), -90, -20}
	}
	assert.True(t, box(100, 30, -90, -20).Same(box(100, 30, -90, -20)))
	assert.True(t, line(40, 5).Same(line(40, 5)))
	for what, other := range map[string]*Prism{
		"longer": box(101, 30, -90, -20), "turned": box(100, 31, -90, -20), "lower": box(100, 30, -91, -20), "higher": box(100, 30, -90, -19),
		"a line": line(40, 5), "round": {NewRound(Point{50, 25}, 30), -90, -20},
	} {
		assert.False(t, box(100, 30, -90, -20).Same(other), what)
	}
	assert.False(t, line(40, 5).Same(line(41, 5)), "another way in the same box")
	assert.False(t, line(40, 5).Same(line(40, 6)), "thicker")
}
