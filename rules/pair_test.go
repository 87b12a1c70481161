package rules

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Both are clear once both are put in, mouth and outlet a metre apart, and they keep more than the shortest ones do.
func TestAPairIsClearOnceItIsPutIn(t *testing.T) {
	r := moved(t)
	told := 0
	pair := FindPair(context.Background(), r, func(done, of int) {
		told++
		assert.LessOrEqual(t, done, of)
	})
	require.True(t, pair.Found())
	assert.Positive(t, told)
	after, faults := Judge(r.Job.WithRun(vehicles.ExhaustRun, pair.Exhaust.Run).WithRun(vehicles.IntakeRun, pair.Intake.Run), r.Book)
	require.Empty(t, faults)
	for _, f := range after.Findings {
		if f.Subject.Sort == TheExhaust || f.Subject.Sort == TheIntake {
			assert.Equal(t, Clear, f.Verdict, "%s: %s", f.About(), f.Why)
		}
	}
	assert.GreaterOrEqual(t, pair.Margin().Value, 10.0, "the shortest keep 2 or 3 mm")
}

// Where the stub itself is too near to something no pair is found, and the exhaust's miss is told.
func TestWithoutAPairTheMissIsTold(t *testing.T) {
	r, faults := Judge(vehicles.Demo(), Builtin())
	require.Empty(t, faults)
	pair := FindPair(context.Background(), &r, nil)
	assert.False(t, pair.Found())
	assert.NotEmpty(t, pair.Exhaust.Misses)
}
