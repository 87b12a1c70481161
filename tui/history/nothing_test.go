package history

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// What is typed and rubbed out again is no step: undo would take back nothing.
func TestAnEditThatComesToNothingIsNoStep(t *testing.T) {
	d := opened(vehicles.Demo())
	put := func(note, step string) {
		job := noted(d.State.Job, note)
		require.Empty(t, d.Apply(desk.Change{Job: &job, Step: step}).Refused)
	}
	first := d.State.Job.Notes
	put(first, "note")
	assert.Empty(t, d.Steps(), "the same again")
	put("x", "note")
	assert.True(t, d.State.Dirty)
	put(first, "note")
	assert.Empty(t, d.Steps(), "rubbed out")
	assert.False(t, d.State.Dirty, "it is what the file holds")
	put("y", "note")
	put("z", "note")
	assert.Equal(t, []string{"note"}, d.Steps())
	require.True(t, d.Undo())
	assert.Equal(t, first, d.State.Job.Notes)
}

// Undo goes no farther than it says, also behind a step that came to nothing under the same name.
func TestAStepThatCameToNothingEndsTheOneBefore(t *testing.T) {
	d := opened(vehicles.Demo())
	for _, note := range []string{"a", "ab"} {
		job := noted(d.State.Job, note)
		d.Apply(desk.Change{Job: &job, Step: "note"})
		d.Seal()
	}
	for _, note := range []string{"abc", "ab", "abd"} {
		job := noted(d.State.Job, note)
		d.Apply(desk.Change{Job: &job, Step: "note"})
	}
	for _, note := range []string{"ab", "a"} {
		require.True(t, d.Undo())
		assert.Equal(t, note, d.State.Job.Notes)
	}
}

// An edit may have a name of its own, which undo and redo say.
func TestAnEditIsCalledByItsName(t *testing.T) {
	d := opened(vehicles.Demo())
	first, second := noted(d.State.Job, "a"), noted(d.State.Job, "b")
	d.Apply(desk.Change{Job: &first, Called: "layout 2"})
	d.Apply(desk.Change{Job: &second})
	for _, way := range []struct {
		step   func() bool
		called string
	}{{d.Undo, ""}, {d.Undo, "layout 2"}, {d.Redo, "layout 2"}, {d.Redo, ""}} {
		require.True(t, way.step())
		assert.Equal(t, way.called, d.Moved())
	}
}

// Undo reaches MostSteps back at the least, and no more than a quarter beyond: memory stays flat however long the day is.
func TestUndoReachesBackSoFarAndNoFurther(t *testing.T) {
	job := vehicles.NewJob("TL-07")
	v := begin(job, true)
	edits := 2*MostSteps + 17
	for i := range edits {
		v.add(version{job: noted(job, fmt.Sprint(i))})
		require.LessOrEqual(t, len(v.past), MostSteps*5/4)
	}
	back := 0
	for v.undo() {
		back++
		if want := fmt.Sprint(edits - 1 - back); want != v.now.job.Notes {
			require.Fail(t, "the newest steps are those that are kept", "%s, not %s", want, v.now.job.Notes)
		}
	}
	assert.GreaterOrEqual(t, back, MostSteps)
}
