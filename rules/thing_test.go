package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every finding of a job with something of everything, looked up in the job by its reference.
func TestAFindingPointsAtItsThing(t *testing.T) {
	job := tidy()
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	seen := map[Sort]int{}
	for _, f := range result.Findings {
		assert.NotEqual(t, Nothing, f.Subject.Sort, f.ID())
		i := f.Against.Index
		switch f.Against.Sort {
		case AnObstruction:
			assert.Equal(t, job.Obstructions[i].Name, f.Against.Name)
		case AnOpening:
			assert.Equal(t, job.Openings[i].Name, f.Against.Name)
		case AFitting:
			assert.Equal(t, job.Fittings[i].Name, f.Against.Name)
		default:
			assert.Empty(t, f.Against.Name, "only what was measured has a name of its own")
		}
		seen[f.Against.Sort]++
	}
	assert.Equal(t, map[Sort]int{
		AnObstruction: 4*len(job.Obstructions) + 1, AnOpening: len(job.Openings), AFitting: 2, ALeg: 2, TheMuffler: 1,
		TheFloor: 5, TheGround: 2, TheExhaust: 1, TheFuel: 1, Nothing: 18,
	}, seen, "three runs and the cut, and one overall reading")
}

// What is called as a part of the heater is still what it is.
func TestANameIsNoReference(t *testing.T) {
	job := tidy()
	job.Obstructions[0].Name = "exhaust"
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	named, runs := 0, 0
	for _, f := range result.Findings {
		if f.Against.Is(AnObstruction, 0) {
			named++
			assert.Equal(t, "exhaust", f.Against.String())
			assert.False(t, f.Against.run())
		}
		if f.Against.Sort == TheExhaust {
			runs++
			assert.True(t, f.Against.run())
		}
	}
	assert.Equal(t, []int{5, 1}, []int{named, runs})
}

func TestWhatThingsAreCalled(t *testing.T) {
	for want, thing := range map[string]Thing{
		"": {}, "leg 3": {Sort: ALeg, Index: 2}, "floor": the(TheFloor), "brake pipe": {AnObstruction, 4, "brake pipe"},
		"side door": {AnOpening, 0, "side door"}, "shelf": {AFitting, 0, "shelf"},
	} {
		assert.Equal(t, want, thing.String())
	}
	words := map[string]bool{}
	for s := range AFitting + 1 {
		assert.False(t, words[s.String()], "%q twice", s)
		words[s.String()] = true
	}
	assert.True(t, the(ThePlate).marked())
	assert.False(t, the(TheExhaust).marked())
}
