package runs

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// Arrows bring nothing to where the job file could not say it: a point of a run stops at the longest length.
func TestArrowsStopAtTheLongestLength(t *testing.T) {
	const edge = survey.Longest
	for _, c := range []struct {
		keys string
		want [2]float64
	}{
		{"right down", [2]float64{edge, edge}}, {"left up", [2]float64{edge - 14, edge - 14}},
	} {
		s := screentest.State(t)
		run := *s.Job.Exhaust
		run.Path = run.Path.With(1, vehicles.RunPoint{X: edge - 4, Y: edge - 4, Drop: edge - 4})
		s.Job = s.Job.WithRun(vehicles.ExhaustRun, &run)
		_, after, _ := screentest.After(New(), s, screentest.Keys("n "+c.keys)...)
		point := after.Job.Exhaust.Path[1]
		assert.Equal(t, c.want, [2]float64{point.X, point.Y}, c.keys)
		_, after, _ = screentest.After(New(), s, screentest.Keys("n d")...)
		assert.Equal(t, float64(edge), after.Job.Exhaust.Path[1].Drop)
	}
}

// A first point starts under its stub, the next ones go on from the last two: not beyond either.
func TestAddedPointsStopAtTheLongestLength(t *testing.T) {
	s := screentest.State(t)
	cut, run, heater := *s.Job.Cut, *s.Job.Exhaust, *s.Job.Heater
	cut.At = [2]float64{survey.Longest, survey.Longest}
	heater.StubDrop = survey.Longest
	run.Path, run.Muffler, run.Clips = nil, nil, nil
	s = screentest.Judged(s, s.Job.WithCut(cut).WithHeater(heater).WithRun(vehicles.ExhaustRun, &run))
	_, after, _ := screentest.After(New(), s, screentest.Keys("a a a")...)
	assert.Len(t, after.Job.Exhaust.Path, 3)
	_, err := vehicles.ParseJob(after.Job.Format(), "edge.toml")
	assert.NoError(t, err, "%v", after.Job.Exhaust.Path)
}
