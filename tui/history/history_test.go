package history

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

func opened(job vehicles.Job) *Desk {
	d := &Desk{State: desk.State{Book: rules.Builtin(), Selected: -1}}
	d.Begin(job, true)
	return d
}

// noted is a job with another note.
func noted(job vehicles.Job, note string) vehicles.Job {
	job.Notes = note
	return job
}

// backwards is a job with an obstruction whose far edge comes first.
func backwards(job vehicles.Job) vehicles.Job {
	at := func(mm float64) survey.Reading { return survey.FromNumber(mm, false) }
	job.Obstructions = job.Obstructions.Insert(0, vehicles.Obstruction{Name: "rib", Kind: "floor rib", Place: vehicles.Place{
		X: vehicles.Pair{at(500), at(400)}, Y: vehicles.Pair{at(-100), at(100)},
	}})
	return job
}

func TestAContradictionIsNotTakenUnlessItWasThere(t *testing.T) {
	d := opened(vehicles.Demo())
	before := d.State
	wrong := backwards(before.Job)
	done := d.Apply(desk.Change{Job: &wrong, Tick: "no mark"})
	assert.Contains(t, done.Refused, "nearest to the bumper first")
	assert.False(t, done.Edited)
	assert.Equal(t, before.Job, d.State.Job)
	assert.Empty(t, d.Steps())
	d.Put(wrong) // as a file may have it
	still := noted(wrong, "still")
	assert.Equal(t, Done{Edited: true}, d.Apply(desk.Change{Job: &still, Step: "note"}))
	assert.Equal(t, []string{"", "note"}, d.Steps())
}

// The plan is of the job as it is, the result of the last job that had one.
func TestOfAFaultyJobThereIsAPlanAndNoResult(t *testing.T) {
	d := opened(vehicles.Demo())
	before := d.State
	d.Put(backwards(before.Job))
	require.NotEmpty(t, d.State.Faults)
	assert.Len(t, d.State.Plan.Obstructions, len(before.Plan.Obstructions)+1)
	assert.Equal(t, before.Result, d.State.Result)
	assert.Equal(t, before.Marks, d.State.Marks)
	require.True(t, d.Undo())
	assert.Empty(t, d.State.Faults)
	assert.Equal(t, before.Plan, d.State.Plan)
}

func TestAMarkThatMovesIsNotMadeTillItIsBack(t *testing.T) {
	d := opened(vehicles.Demo())
	name := d.State.Marks.Marks[0].Name
	d.Apply(desk.Change{Tick: name})
	assert.True(t, d.State.Ticked[name])
	cut := *d.State.Job.Cut
	cut.At[0] += 5
	moved := d.State.Job.WithCut(cut)
	d.Apply(desk.Change{Job: &moved})
	assert.False(t, d.State.Ticked[name])
	d.Undo()
	assert.True(t, d.State.Ticked[name])
	d.Apply(desk.Change{Tick: name})
	assert.False(t, d.State.Ticked[name])
}

// However it was edited, undone, done again and saved, the desk is where a plain list of jobs would be.
func TestStepsAreAPlainListOfJobs(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d := opened(vehicles.NewJob("TL-07"))
		jobs, at, runsOn, saved := []vehicles.Job{d.State.Job}, 0, "", d.State.Job.Notes
		for i := range rapid.IntRange(1, 30).Draw(rt, "moves") {
			switch rapid.IntRange(0, 6).Draw(rt, "move") {
			case 0:
				require.Equal(rt, at > 0, d.Undo())
				if at > 0 {
					at, runsOn = at-1, ""
				}
			case 1:
				require.Equal(rt, at < len(jobs)-1, d.Redo())
				if at < len(jobs)-1 {
					at, runsOn = at+1, ""
				}
			case 2:
				d.Seal()
				runsOn = ""
			case 3:
				d.Saved(d.Number())
				saved = d.State.Job.Notes
			default:
				job := noted(d.State.Job, fmt.Sprint(i))
				step := rapid.SampledFrom([]string{"", "a", "b"}).Draw(rt, "step")
				require.True(rt, d.Apply(desk.Change{Job: &job, Step: step}).Edited)
				if step == "" || step != runsOn {
					at++
				}
				jobs, runsOn = append(jobs[:at:at], job), step
			}
			require.Equal(rt, jobs[at].Notes, d.State.Job.Notes)
			require.Len(rt, d.Steps(), at)
			latest, any := d.Latest()
			require.Equal(rt, at > 0, any)
			if any {
				require.Equal(rt, d.Steps()[at-1], latest)
			}
			require.Equal(rt, d.State.Job.Notes != saved, d.State.Dirty)
		}
	})
}
