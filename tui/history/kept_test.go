package history

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// What is kept of a job is what is made of it anew, after each change, its undoing and its redoing; and the same list as long as nothing changes.
func TestWhatIsKeptOfAJobIsWhatIsMadeAnew(t *testing.T) {
	d := opened(vehicles.Demo())
	holds := func(what string) {
		t.Helper()
		require.NotNil(t, d.State.Kept, what)
		for range 2 {
			require.Equal(t, sizing.Of(&d.State.Result), d.State.Sizes(), what)
			require.Equal(t, work.Of(&d.State.Result), d.State.WorkSteps(), what)
			require.Equal(t, d.State.Result.Book.Limits(), d.State.Limits(), what)
		}
		assert.Same(t, &d.State.Sizes()[0], &d.State.Sizes()[0], what)
		assert.Same(t, &d.State.WorkSteps()[0], &d.State.WorkSteps()[0], what)
	}
	holds("as it began")
	ticked, thicker, timber := d.State.Job, d.State.Job, d.State.Job
	ticked.Done = append(ticked.Done[:len(ticked.Done):len(ticked.Done)], vehicles.Done{Step: vehicles.StepKinds[0].ID, At: "2026-05-01"})
	thicker.Floor.Thickness += 10
	timber.Floor.Deck = "timber"
	stricter := d.State.Job
	stricter.Rules = map[string]float64{"cut.clearance": 77}
	for _, job := range []vehicles.Job{ticked, thicker, timber, stricter} {
		require.True(t, d.Apply(desk.Change{Job: &job, Step: "step"}).Edited)
		holds("changed")
	}
	require.True(t, d.Undo())
	holds("undone")
	require.True(t, d.Redo())
	holds("redone")
}

// A job that a screen has changed and nobody has judged yet has its own records done.
func TestStepsAreOfWhatTheJobRecordsNow(t *testing.T) {
	d := opened(vehicles.Demo())
	assert.Zero(t, ticks(d.State))
	s := d.State
	s.Job.Done = append(s.Job.Done[:len(s.Job.Done):len(s.Job.Done)], vehicles.Done{Step: vehicles.StepKinds[0].ID, At: "2026-05-01"})
	assert.Equal(t, 1, ticks(s))
	assert.Zero(t, ticks(d.State))
}

// ticks are how many steps are done.
func ticks(s desk.State) int { return s.WorkSteps().Count() }
