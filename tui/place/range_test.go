package place

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/screentest"
)

// Arrows bring nothing to where the job file could not say it: a cut stops at the longest length.
func TestArrowsStopAtTheLongestLength(t *testing.T) {
	const edge = survey.Longest
	for _, c := range []struct {
		keys string
		want [2]float64
	}{
		{"right down", [2]float64{edge, edge}}, {"left up", [2]float64{edge - 14, edge - 14}},
	} {
		s := screentest.State(t)
		cut := *s.Job.Cut
		cut.At = [2]float64{edge - 4, edge - 4}
		s.Job = s.Job.WithCut(cut)
		_, after, _ := screentest.After(New(), s, screentest.Keys(c.keys)...)
		assert.Equal(t, c.want, after.Job.Cut.At, c.keys)
	}
}

// The same on the other side of the bumper and of the centreline.
func TestArrowsStopAtTheLongestLengthBehind(t *testing.T) {
	s := screentest.State(t)
	cut := *s.Job.Cut
	cut.At = [2]float64{4 - survey.Longest, 4 - survey.Longest}
	s.Job = s.Job.WithCut(cut)
	_, after, _ := screentest.After(New(), s, screentest.Keys("left up")...)
	assert.Equal(t, [2]float64{-survey.Longest, -survey.Longest}, after.Job.Cut.At)
}
