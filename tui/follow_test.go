package tui

import (
	"math"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// Exhaust, intake and fuel line laid by hand in the smallest window, and the cut moved and the heater turned afterwards, by keys and by a
// tap on the plan: each run's end at the heater is under its stub all the while, the rest of it stays, nothing slopes from its stub, and one
// undo takes a move back with the runs.
func TestRunsLaidByHandFollowTheCut(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	job = job.WithCut(cut)
	for _, of := range vehicles.RunKinds {
		job = job.WithRun(of, nil)
	}
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, job.Format(), 0o600))
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	b.keys("5 a d d d d d d d y m space c tab a d a t 2 4 8 0 enter 1 5 0 enter enter a t 2 4 2 0 enter 3 0 0 enter 1 3 6 enter c tab a s d d a d m c")
	for _, of := range vehicles.RunKinds {
		require.NotNil(t, b.desk.State.Job.Run(of), of)
	}
	underStubs(t, b, "laid")

	for _, move := range []string{"left", "up", "s up", ",", ".  .", "t 1 4 2 5 enter 2 1 0 enter"} {
		before := b.desk.State.Job
		b.keys("4 " + move)
		now := b.desk.State.Job
		require.NotEqual(t, before.Format(), now.Format(), move)
		follows(t, before, now, move)
		underStubs(t, b, move)
		assert.Contains(t, strings.Join(strings.Fields(ansi.Strip(b.View())), " "), "Gone along: exhaust", move)
		said := desk.Wrap(b.say, 60)
		assert.LessOrEqual(t, len(said), 2, "%s: the plan is what is looked at: %q", move, said)
	}

	before := b.desk.State.Job
	b.tap(24, 4)
	require.NotEqual(t, before.Cut.At, b.desk.State.Job.Cut.At)
	follows(t, before, b.desk.State.Job, "a tap")
	underStubs(t, b, "a tap")
	b.keys("ctrl+z")
	assert.Equal(t, string(before.Format()), string(b.desk.State.Job.Format()), "one undo takes back cut and runs")
}

// underStubs holds that every run begins under its stub.
func underStubs(t *testing.T, b *bench, when string) {
	t.Helper()
	s := b.desk.State
	assert.Empty(t, moving.Leaning(s), when)
	for _, of := range vehicles.RunKinds {
		path := s.Job.Run(of).Path
		mouth, there := s.Job.Stub(of)
		require.True(t, there)
		end := path[0]
		if of == vehicles.FuelRun {
			end = path[len(path)-1]
		}
		assert.LessOrEqual(t, math.Hypot(end.X-mouth.X, end.Y-mouth.Y), 0.01, "%s: %s", when, of)
	}
}

// follows holds that only the end at the heater of each run was moved.
func follows(t *testing.T, before, now vehicles.Job, how string) {
	t.Helper()
	for _, of := range vehicles.RunKinds {
		was, is := before.Run(of).Path, now.Run(of).Path
		require.Len(t, is, len(was), "%s: %s", how, of)
		first, last := 1, len(was)
		if of == vehicles.FuelRun {
			first, last = 0, len(was)-1
		}
		assert.Equal(t, was[first:last], is[first:last], "%s: %s", how, of)
	}
}
