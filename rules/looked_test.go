package rules

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// unlooked is the tidy job with one door entered, and nothing looked for round the runs or for openings.
func unlooked() vehicles.Job {
	job := tidy()
	job.Obstructions = job.Obstructions[:2]
	job.Openings = vehicles.List[vehicles.Opening]{job.Openings[0]}
	return job
}

func TestOneDoorDoesNotSilenceTheOtherOpenings(t *testing.T) {
	job := unlooked()
	result := judged(t, job)
	want := slices.DeleteFunc(slices.Clone(vehicles.OpeningKinds), func(kind string) bool { return kind == job.Openings[0].Kind || kind == "other" })
	assert.Equal(t, want, result.OpeningsNotLookedFor)
	looked := job.WithLookedAt(vehicles.AtOutlet, &result.Plan, "roof vent", true)
	after := judged(t, looked)
	assert.NotContains(t, after.OpeningsNotLookedFor, "roof vent")
	assert.Equal(t, result.NotLookedFor, after.NotLookedFor, "other programs compare these")
	assert.Equal(t, result.Unchecked, after.Unchecked)
	assert.Equal(t, result.Verdict, after.Verdict)

	bare := job.WithRun(vehicles.ExhaustRun, nil)
	assert.Empty(t, judged(t, bare).OpeningsNotLookedFor, "without an exhaust no gas comes out")
}

func TestTheRunsAreLookedRound(t *testing.T) {
	job := unlooked()
	result := judged(t, job)
	require.Equal(t, result.NotLookedFor, result.NotLookedAtRuns, "nothing but what was entered")
	for _, kind := range result.NotLookedFor {
		job = job.WithLooked(kind, true)
	}
	result = judged(t, job)
	assert.Empty(t, result.Open())
	assert.False(t, result.AllLooked(), "round the cut is not round the runs")
	kind := result.NotLookedAtRuns[0]
	job = job.WithLookedAt(vehicles.AtRuns, &result.Plan, kind, true)
	assert.NotContains(t, judged(t, job).NotLookedAtRuns, kind)

	moved := *job.Exhaust
	moved.Path = append(vehicles.List[vehicles.RunPoint]{}, moved.Path...)
	moved.Path[len(moved.Path)-1].Drop += 60
	assert.Contains(t, judged(t, job.WithRun(vehicles.ExhaustRun, &moved)).NotLookedAtRuns, kind, "60 mm lower")

	bare := job.WithRun(vehicles.ExhaustRun, nil).WithRun(vehicles.IntakeRun, nil).WithRun(vehicles.FuelRun, nil)
	assert.Empty(t, judged(t, bare).NotLookedAtRuns)
}

func TestWhatIsNotLookedForAtTheRunsHasItsOwnFields(t *testing.T) {
	data, err := json.Marshal(judged(t, unlooked()))
	require.NoError(t, err)
	var read struct {
		AtRuns   []string `json:"not_looked_for_at_runs"`
		Openings []string `json:"openings_not_looked_for"`
	}
	require.NoError(t, json.Unmarshal(data, &read))
	assert.Contains(t, read.AtRuns, "gas pipe")
	assert.Contains(t, read.Openings, "tank breather")
	assert.NotContains(t, read.Openings, "other", "nobody can look for what has no name")

	data, err = json.Marshal(judged(t, vehicles.NewJob("TL-09")))
	require.NoError(t, err)
	assert.NotContains(t, string(data), "not_looked_for_at_runs")
	assert.NotContains(t, string(data), "openings_not_looked_for")
}
