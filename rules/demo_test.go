package rules

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// A new user must find the sample's cut foul and get it clear by moving it forward a hand's width.
func TestTheDemoStartsFoulAndCanBeMadeClear(t *testing.T) {
	job := vehicles.Demo()
	kinds := map[string]bool{}
	for _, o := range job.Obstructions {
		kinds[o.Kind] = true
	}
	assert.GreaterOrEqual(t, len(job.Obstructions), 16)
	assert.GreaterOrEqual(t, len(kinds), 8)

	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	assert.Equal(t, Foul, result.Verdict)
	assert.Empty(t, overlapsOf(result.Plan), "nothing in it was measured wrong")

	cut := *job.Cut
	cut.At[0] += 150
	job.Cut = &cut
	moved, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	for _, f := range moved.Findings {
		if f.Verdict != Clear {
			assert.Equal(t, "reductant tank", f.Against.Name, "%s %s", f.ID(), f.Why)
			assert.Equal(t, "not measured on this van", f.Why)
		}
	}

	at := slices.IndexFunc(job.Obstructions, func(o vehicles.Obstruction) bool { return o.Name == "reductant tank" })
	tank := job.Obstructions[at]
	tank.Measured = true
	job.Obstructions = job.Obstructions.With(at, tank)
	confirmed, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	assert.Equal(t, Clear, confirmed.Verdict)
}
