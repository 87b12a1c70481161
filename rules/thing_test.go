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
	swages := 0
	for _, o := range job.Obstructions {
		if o.Kind == "swage" {
			swages++
		}
	}
	assert.Positive(t, swages)
	assert.GreaterOrEqual(t, seen[AnObstruction], 4*(len(job.Obstructions)-swages)+swages, "the cut and three runs against each, the plate against swages")
	for _, sort := range []Sort{Nothing, AnOpening, AFitting, ALeg, TheMuffler, TheFloor, TheGround, TheExhaust, TheFuel} {
		assert.Positive(t, seen[sort], sort)
	}
}

// What is called as a part of the heater is still what it is.
func TestANameIsNoReference(t *testing.T) {
	job := tidy()
	job.Obstructions[0].Name = "exhaust"
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	named, runs := map[Sort]bool{}, 0
	for _, f := range result.Findings {
		if f.Against.Is(AnObstruction, 0) {
			named[f.Subject.Sort] = true
			assert.Equal(t, "exhaust", f.Against.String())
			assert.False(t, f.Against.run())
		}
		if f.Against.Sort == TheExhaust {
			runs++
			assert.True(t, f.Against.run())
		}
	}
	assert.Equal(t, map[Sort]bool{TheCut: true, TheExhaust: true, TheIntake: true, TheFuel: true, TheSurvey: true}, named)
	assert.Positive(t, runs)
}

func TestWhatThingsAreCalled(t *testing.T) {
	for want, thing := range map[string]Thing{
		"": {}, "leg 3": {Sort: ALeg, Index: 2}, "floor": the(TheFloor), "brake pipe": {AnObstruction, 4, "brake pipe"},
		"bolt 1": {Sort: ABolt}, "fuel hole 2": {Sort: AFuelHole, Index: 1},
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
