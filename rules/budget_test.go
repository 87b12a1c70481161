package rules

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

func addsUp(t *testing.T, result Result, name string) {
	t.Helper()
	for _, f := range result.Findings {
		sum := 0.0
		for i, s := range Budget(result, f) {
			assert.Positive(t, s.Variance)
			if i > 0 {
				assert.LessOrEqual(t, s.Variance, Budget(result, f)[i-1].Variance)
			}
			sum += s.Variance
		}
		assert.InDelta(t, f.Sigma*f.Sigma, sum, 1e-9*(1+f.Sigma*f.Sigma), "%s: %s %s", name, f.ID(), f.Against)
	}
}

// The shares add up to sigma squared, which the sample jobs hold against an independent computation.
func TestTheBudgetAddsUp(t *testing.T) {
	for _, name := range caseNames(t) {
		if filepath.Base(name) == "17-swapped-sides.toml" {
			continue // refused
		}
		result, faults := Judge(readCase(t, name), Builtin())
		require.Empty(t, faults)
		addsUp(t, result, filepath.Base(name))
	}
	job := tidy()
	job.Bow = []vehicles.BowPoint{{Y: -800, Offset: -12}, {Y: 0, Offset: 4}, {Y: 800, Offset: -9}}
	job.Datum.HookBelow, job.Datum.SideBelow = vehicles.Some(150), vehicles.Some(130)
	job.Obstructions[0].Total[0] = at(178) // the slope takes 15 mm off the first reading
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	addsUp(t, result, "tidy")
}

func shareOf(shares []Share, cause string) float64 {
	for _, s := range shares {
		if s.Cause == cause {
			return s.Variance
		}
	}
	return 0
}

// By hand, class II of 2014/32/EU annex X: x = 1100 then "+84": the chain is (0.9^2 + 1)/3, the second reading's tape
// (0.3 + 0.2)^2/3 and reading 1/3; the mark at 1310 has tape (0.3 + 0.4)^2/3, hook end (0.9^2 - 0.7^2)/3, reading and mark
// 1/3 each; the frames 2^2/3.
func TestTheBudgetByHand(t *testing.T) {
	job := vehicles.Job{
		Floor: vehicles.Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460},
		Cut:   &vehicles.Cut{At: [2]float64{1310, 240}, Across: 127},
	}
	member := box("rear crossmember", "crossmember", 1100, 0, -850, 850, 0, 95)
	member.X[1] = survey.Reading{Text: "+84", Start: survey.On, Length: 84}
	job.Obstructions = []vehicles.Obstruction{member}
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	shares := Budget(result, one(t, job, "cut.clearance", "rear crossmember"))
	for cause, want := range map[string]float64{
		ofChain: (0.9*0.9 + 1) / 3, ofTape: (0.5*0.5 + 0.7*0.7) / 3, ofReading: 2. / 3, ofMark: 1. / 3,
		ofHook: (0.9*0.9 - 0.7*0.7) / 3, ofFrames: 4. / 3, ofTies: 0, ofTurn: 0, ofSlope: 0, ofHeights: 0,
	} {
		assert.InDelta(t, want, shareOf(shares, cause), 1e-12, cause)
	}
}
