package features

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func judged(t *testing.T, job vehicles.Job) desk.State {
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	return desk.State{Job: job, Plan: result.Plan, Result: result}
}

func keysOf(s desk.State, h Record) map[string]string {
	out, notes := map[string]string{}, h.Notes(s)
	for _, f := range h.Fields(s, nil) {
		out[f.Key] = notes[f.Key]
	}
	return out
}

func TestOnlyWhatRunsOnHasAnOverallReading(t *testing.T) {
	s := judged(t, screentest.Van(t))
	rear, pipe := keysOf(s, Record{Obstructions, 0, false}), keysOf(s, Record{Obstructions, 1, false})
	assert.Contains(t, rear, "tx", "652, +84")
	assert.NotContains(t, rear, "ty")
	assert.NotContains(t, pipe, "tx")
	assert.NotContains(t, keysOf(s, Record{Openings, 0, false}), "tx")
	assert.NotContains(t, keysOf(s, Record{Fittings, 0, false}), "tx")
	o := s.Job.Obstructions[0]
	o.Y[1] = o.X[1]
	s.Job.Obstructions = s.Job.Obstructions.With(0, o)
	assert.Contains(t, keysOf(judged(t, s.Job), Record{Obstructions, 0, false}), "ty")
}

// By hand: the crossmember's tape slopes by 150 - 95, so it ends at sqrt(652^2 - 55^2) + 84 = 733.68; an overall reading of
// 737 says sqrt(737^2 - 55^2) = 734.95, one of 749 sqrt(749^2 - 55^2) = 746.98.
func TestTheSumCheck(t *testing.T) {
	s := judged(t, screentest.Van(t))
	rear := Record{Obstructions, 0, false}
	job, _, err := rear.Set(s, map[string]string{"tx": "737"})
	require.NoError(t, err)
	assert.Equal(t, "737", job.Obstructions[0].Total[0].Text)
	near := judged(t, job)
	assert.Contains(t, keysOf(near, rear)["tx"], "comes out 1.3 mm from it")
	assert.Contains(t, keysOf(near, rear)["tx"], "spread over the chain")
	within := survey.Figure(math.Sqrt(6.635) * near.Result.Plan.Closures[0].U) // the 99 % point, as the finding has it
	assert.Contains(t, keysOf(near, rear)["tx"], "(± "+within+" explained)")
	assert.Empty(t, rear.Misses(near))

	job, _, err = rear.Set(s, map[string]string{"tx": "74.9cm"})
	require.NoError(t, err)
	far := judged(t, job)
	assert.Contains(t, keysOf(far, rear)["tx"], "comes out 13.3 mm from it")
	assert.Contains(t, keysOf(far, rear)["tx"], "Doubtful till then")
	assert.Equal(t, "chain misses by 13.3 mm", rear.Misses(far))
	assert.Contains(t, string(job.Format()), `total = { x = "74.9cm" }`)

	_, _, err = rear.Set(far, map[string]string{"x1": "736"})
	assert.ErrorContains(t, err, "total is one reading", "it has nothing to be held against then")
	_, _, err = rear.Set(s, map[string]string{"tx": "+5"})
	assert.ErrorContains(t, err, "total is one reading")
	job, _, err = rear.Set(far, map[string]string{"tx": ""})
	require.NoError(t, err)
	assert.Equal(t, s.Job.Obstructions[0].Total, job.Obstructions[0].Total, "blank: not taken")
}

func TestFieldsByTheFilesNames(t *testing.T) {
	s := judged(t, screentest.Van(t))
	fields := keysOf(s, Record{Obstructions, 0, false})
	for _, key := range []string{"drop", "taped_at", "measured", "total.x"} {
		assert.Contains(t, fields, FieldOf(key), key)
	}
}
