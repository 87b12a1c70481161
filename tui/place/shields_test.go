package place

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestHeatShieldsAreSaidOnPlace(t *testing.T) {
	s := screentest.State(t)
	require.Zero(t, s.Job.Exhaust.Shielded)
	required := func(name string) float64 {
		for _, f := range s.Result.Findings {
			if f.ID() == rules.ExhaustClearance && f.Against.Name == name {
				return f.Required.Value
			}
		}
		require.Fail(t, name)
		return 0
	}
	bare := required("brake pipe, left")
	p, s, _ := screentest.After(New(), s, screentest.Keys("tab h")...)
	for _, size := range screentest.Sizes {
		view := screentest.Filled(t, p, s, size.W, size.H)
		assert.Contains(t, view, "heat shield stand before it?")
		assert.Contains(t, view, "chassis rail, left", "the nearest")
	}
	p, s, _ = screentest.After(p, s, screentest.Keys("down down space")...)
	require.Equal(t, []string{"brake pipe, left"}, s.Job.Exhaust.Shielded.Names)
	assert.Contains(t, screentest.Filled(t, p, s, 100, 27), "80.3 mm, YES")
	assert.Less(t, required("brake pipe, left"), bare)
	_, s, _ = screentest.After(p, s, screentest.Keys("space")...)
	assert.Zero(t, s.Job.Exhaust.Shielded, "the key says the other thing")

	run := *s.Job.Exhaust
	run.Shielded = vehicles.Shields{All: true}
	s = screentest.Judged(s, s.Job.WithRun(vehicles.ExhaustRun, &run))
	_, after, _ := screentest.After(p, s, screentest.Keys("space")...)
	assert.Len(t, after.Job.Exhaust.Shielded.Names, len(s.Job.Obstructions)-1)
	assert.False(t, after.Job.Exhaust.Shielded.For("brake pipe, left"))
	assert.True(t, s.Job.Exhaust.Shielded.All, "the old job is as it was")

	back, _, _ := screentest.After(p, s, screentest.Keys("esc")...)
	assert.False(t, back.Typing())
	intake, _, changes := screentest.After(New(), s, screentest.Keys("tab tab h")...)
	assert.False(t, intake.Typing(), "the intake has none")
	assert.Nil(t, changes[2].Job)
}
