package place

import (
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A hole that is sawn is moved by nothing on Place: no arrow, no key, no tap, no typed place, and no key lets it.
func TestASawnHoleIsMovedByNothing(t *testing.T) {
	job := screentest.State(t).Job.WithDone(vehicles.Done{Step: vehicles.Sawn, At: "2026-11-27T10:15:00"})
	pilot := *screentest.State(t).Job.Cut
	drilled := drilledAt(t, "1221", "L651").Job.WithDone(vehicles.Done{Step: vehicles.Sawn, At: "2026-11-27T10:15:00"})
	for name, job := range map[string]vehicles.Job{"sawn": job, "measured and sawn": drilled} {
		for _, keys := range []string{"right", "r right", "n", "j", "t 1300 enter L500 enter", "y left", "w", "e a"} {
			_, after, _ := screentest.After(New(), screentest.Judged(screentest.State(t), job), screentest.Keys(keys)...)
			assert.Equal(t, pilot.At, after.Job.Cut.At, "%s: %s", name, keys)
		}
		d := screentest.New(t, New(), job, 100, 27)
		d.Type("<right>")
		assert.Equal(t, isSawn, d.Said, name)
		d.Said = ""
		if d.Type("r"); job.Cut.Drilled != nil {
			assert.Equal(t, isSawn, d.Said, name)
		}
		for y := 4; y < 20; y += 5 {
			for x := 8; x < 50; x += 9 {
				d.Send(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
			}
		}
		assert.Equal(t, pilot.At, d.State.Job.Cut.At, name)
		for _, b := range d.Screen.Keys(d.State) {
			for _, mover := range []key.Binding{moving.KeyMove, keyRelease, keyBest} {
				assert.NotEqual(t, mover.Help(), b.Help(), name)
			}
		}
	}
	free := job.WithDone(vehicles.Done{Step: vehicles.Sawn})
	_, after, changes := screentest.After(New(), screentest.Judged(screentest.State(t), free), screentest.Keys("right")...)
	require.NotEqual(t, pilot.At, after.Job.Cut.At, "taken back on Work")
	assert.False(t, strings.Contains(changes[0].Say, "sawn"))
}

// A pilot that is ticked on Work and not measured holds the cut as one that is measured does: a key lets it be moved, a typed place is meant.
func TestATickedPilotHoldsTheCut(t *testing.T) {
	const at = "2026-11-27T10:15:00"
	free := screentest.State(t).Job
	job := free.WithDone(vehicles.Done{Step: vehicles.PilotDrilled, At: at})
	for _, keys := range []string{"<right>", "n", "j"} {
		d := screentest.New(t, New(), job, 100, 27)
		d.Type(keys)
		assert.Equal(t, free.Cut.At, d.State.Job.Cut.At, keys)
		assert.Contains(t, d.Said, "The pilot", keys)
	}
	d := screentest.New(t, New(), job, 100, 27)
	for y := 4; y < 20; y += 5 {
		d.Send(tea.MouseMsg{X: 20, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
	}
	require.Equal(t, free.Cut.At, d.State.Job.Cut.At, "by no tap")
	d.Type("<right>")
	assert.Equal(t, "The pilot is drilled, as Work has it: the cut stays with it. m measures it, r lets it be moved, t types a place.", d.Said)
	assert.Contains(t, d.View(100, 27), "Pilot drilled: the cut stays")
	d.Type("r<right>")
	moved := d.State.Job.Cut.At
	assert.NotEqual(t, free.Cut.At, moved, "a key has said so")
	assert.Contains(t, d.Said, rules.NearTheHole.Why())
	d.Type("r<right>")
	assert.Equal(t, moved, d.State.Job.Cut.At, "and holds it again")
	d.Type("t1300<enter>L652<enter>")
	assert.NotEqual(t, moved, d.State.Job.Cut.At, "a place that is typed is meant")
	for job, stays := range map[*vehicles.Job]bool{&job: true, &free: false} {
		state := screentest.Judged(d.State, *job)
		assert.Equal(t, stays, state.Result.CutStays(), "whole layouts leave it, too")
	}
	open := screentest.New(t, New(), free, 100, 27)
	open.Type("<right>")
	assert.NotEqual(t, free.Cut.At, open.State.Job.Cut.At)
}
