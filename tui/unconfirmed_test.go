package tui

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

func TestTheHeadingCountsWhatIsUnconfirmedNearTheWork(t *testing.T) {
	job, ok := vehicles.FromLibrary("short-van")
	require.True(t, ok)
	say := func(j vehicles.Job) string {
		result, faults := rules.Judge(j, rules.Builtin())
		require.Empty(t, faults)
		return heading(desk.State{Job: j, Result: result})
	}
	assert.Contains(t, say(job), fmt.Sprintf("the cut has no place yet, %d not confirmed", len(job.Obstructions)))
	job = job.WithCut(vehicles.Cut{At: [2]float64{1350, 550}, Across: 127})
	assert.Regexp(t, `\d+ near by not confirmed, the floor is a guess: worst`, say(job))
	for i, o := range job.Obstructions {
		o.Measured = true
		job.Obstructions = job.Obstructions.With(i, o)
	}
	assert.NotContains(t, say(job), "not confirmed")
}
