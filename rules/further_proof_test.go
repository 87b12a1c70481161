package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// A run that breaks no rule, moved a little, is found to where it ends now if it still breaks none: whatever path the job has, but for one in
// so many that lies between what can be sought, and always where it is the job's own.
func TestARunMovedALittleIsFoundToItsEnd(t *testing.T) {
	t.Parallel()
	const seed = 59
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	moved, alone := 0, 0
	for range floorsFor(t, 20, 20) {
		job := lowVan(t)
		job.RunChecks = []string{"", vehicles.InFull}[r.IntN(2)]
		run := *job.Exhaust
		run.Path = nil
		for _, p := range job.Exhaust.Path {
			by := func() float64 { return math.Round(8 * r.NormFloat64()) }
			run.Path = append(run.Path, vehicles.RunPoint{X: p.X + by(), Y: p.Y + by(), Drop: p.Drop + math.Round(2*r.NormFloat64())})
		}
		run.Path[0] = job.Exhaust.Path[0]
		result, faults := Judge(job.WithRun(vehicles.ExhaustRun, &run), Builtin())
		require.Empty(t, faults)
		s := newSeeker(context.Background(), &result, vehicles.ExhaustRun, Target{At: &run.Path[2]}, nil)
		if own, ok := s.asItIs(); !ok {
			require.False(t, own.Found())
			continue
		}
		moved++
		to := Target{At: &run.Path[2], Upright: job.RunChecks == vehicles.InFull}
		found := FindRoute(context.Background(), &result, vehicles.ExhaustRun, to, nil)
		require.True(t, found.Found(), "%v: %v", run.Path, found.Misses)
		bare := result
		without := run
		without.Path = nil
		bare.Job = result.Job.WithRun(vehicles.ExhaustRun, &without)
		if found := FindRoute(context.Background(), &bare, vehicles.ExhaustRun, to, nil); found.Found() {
			alone++
		} else {
			t.Logf("not without its path: %v", run.Path)
		}
	}
	t.Logf("%d moved, %d found whatever path the job has", moved, alone)
	assert.Greater(t, moved, 3)
	assert.GreaterOrEqual(t, alone, moved*9/10)
}
