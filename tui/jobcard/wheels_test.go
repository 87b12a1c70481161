package jobcard

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// Wheels are entered by their axles; what is said of a tyre is said of all of them.
func TestWheelsAreEnteredByTheirAxles(t *testing.T) {
	job := vehicles.Demo()
	job.Wheels = nil
	s := screentest.Judged(screentest.State(t), job)
	require.Contains(t, s.Result.Unanswered, "where the wheels stand")
	card := cardRecord{wheelCard}
	_, _, err := card.Set(s, map[string]string{"tyre": "690"})
	require.ErrorContains(t, err, "say first where an axle stands")
	_, _, err = card.Set(s, map[string]string{"rear": "4000"})
	require.ErrorContains(t, err, "behind the middle of the floor")

	after, _, err := card.Set(s, map[string]string{"rear": "900", "front": "4500"})
	require.NoError(t, err)
	after, _, err = card.Set(screentest.Judged(s, after), map[string]string{"tyre": "690", "tread": "215", "track": "1560"})
	require.NoError(t, err)
	want := vehicles.List[vehicles.Wheel]{}
	for _, at := range [][2]float64{{900, 780}, {900, -780}, {4500, 780}, {4500, -780}} {
		want = append(want, vehicles.Wheel{At: at, Across: 690, Width: 215})
	}
	assert.Equal(t, want, after.Wheels)
	s = screentest.Judged(s, after)
	assert.NotContains(t, s.Result.Unanswered, "where the wheels stand")
	texts := []string{}
	for _, f := range card.Fields(s, nil) {
		texts = append(texts, f.Text)
	}
	assert.Equal(t, []string{"900", "4500", "690", "215", "1560"}, texts)

	moved, _, err := card.Set(s, map[string]string{"rear": "950", "front": ""})
	require.NoError(t, err)
	assert.Equal(t, [][2]float64{{950, 780}, {950, -780}}, [][2]float64{moved.Wheels[0].At, moved.Wheels[1].At})
	assert.Len(t, moved.Wheels, 2)
	assert.Equal(t, want, s.Job.Wheels, "the old job is as it was")
	again, _, err := card.Set(screentest.Judged(s, moved), map[string]string{"front": "4400"})
	require.NoError(t, err)
	assert.Equal(t, vehicles.Wheel{At: [2]float64{4400, 780}, Across: 690, Width: 215}, again.Wheels[2], "like the others")
}

// A job of another program says nothing of how far its runs are asked: one key has them asked in full, and back.
func TestTheRunsAreHeldToEverythingByOneKey(t *testing.T) {
	job := vehicles.Demo()
	job.RunChecks = ""
	r := screentest.New(t, New(), job, 100, 27)
	require.Contains(t, r.State.Result.Unanswered, rules.RunsInFull)
	r.Type("<enter><down><down><down><down><down>f")
	assert.Equal(t, vehicles.InFull, r.State.Job.RunChecks)
	assert.NotContains(t, r.State.Result.Unanswered, rules.RunsInFull)
	r.Type("o")
	assert.Empty(t, r.State.Job.RunChecks)
}
