package survey

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// The variance that readings are reduced with is, to the last digit, the sum of the terms that a budget draws.
func TestTheVarianceIsTheSumOfItsTerms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := func(name string) float64 { return rapid.Float64Range(0, 20000).Draw(t, name) }
		g := Tape{Class: rapid.SampledFrom([]Class{"I", "II", "III"}).Draw(t, "class"), Read: 1, Mark: 1, Height: rapid.Float64Range(0, 20).Draw(t, "height")}.Gauge()
		length, plan, rise, heights := size("length"), size("plan"), size("rise"), rapid.IntRange(1, 2).Draw(t, "heights")
		hook := rapid.Bool().Draw(t, "hook")
		assert.Equal(t, g.terms(length, hook).Sum(), g.variance(length, hook))
		assert.Equal(t, g.readingTerms(length, plan, rise, heights).Sum(), g.readingVariance(length, plan, rise, heights))
	})
}
