package tui

import (
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// van is the program as a fitter starts it on a file with an empty job, in the smallest window there is.
func van(t *testing.T) (*bench, Options) {
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o644))
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	return b, o
}

// keys presses names parted by blanks; what is no key's name is typed.
func (b *bench) keys(names string) *bench { return b.press(strings.Fields(names)...) }

// A whole van, from an empty job to its exhaust, by keys alone in the smallest window, and saved: the file is what a fitter
// would have written by hand.
func TestAVanFromNothingIsTheFileOneWouldWrite(t *testing.T) {
	b, o := van(t)
	for _, step := range screentest.VanByHand {
		b.keys(step)
		require.Nil(t, b.overlay(), step)
		require.False(t, b.screens[b.at].Typing(), step)
		require.Empty(t, b.desk.State.Faults, step)
		require.Empty(t, b.desk.State.Job.Refused(), step)
	}
	b.keys("ctrl+s")
	require.False(t, b.desk.State.Dirty)
	saved, err := os.ReadFile(o.Path)
	require.NoError(t, err)
	want, err := vehicles.ParseJob(screentest.Hand, "hand.toml")
	require.NoError(t, err)
	got, err := vehicles.ParseJob(saved, o.Path)
	require.NoError(t, err)
	got.LookedAt, got.RunLooks, got.OpeningLooks = nil, nil, nil // where one looked: no hand writes that
	assert.Equal(t, map[string]string{"side": vehicles.NotSaid}, got.Held, "no side tape was used, and nobody was asked to say more of it")
	got.Held = nil
	assert.Equal(t, string(want.Format()), string(got.Format()))

	result, faults := rules.Judge(want, rules.Builtin())
	require.Empty(t, faults)
	assert.Equal(t, result.Findings, b.desk.State.Result.Findings, "and is judged as that is")
}

// Undo goes back over the whole of it to the file it began with, and redo forward to the job that was made, both to the byte;
// every step between is a job that a file can hold.
func TestAWholeVanIsUndoneAndRedone(t *testing.T) {
	b, o := van(t)
	begun, err := os.ReadFile(o.Path)
	require.NoError(t, err)
	for _, step := range screentest.VanByHand {
		b.keys(step)
	}
	made := string(b.desk.State.Job.Format())
	steps := len(b.desk.Steps())
	require.Greater(t, steps, 40)
	for range steps {
		b.press("ctrl+z")
		again, err := vehicles.ParseJob(b.desk.State.Job.Format(), "step.toml")
		require.NoError(t, err)
		require.Equal(t, string(b.desk.State.Job.Format()), string(again.Format()))
	}
	assert.Equal(t, string(begun), string(b.desk.State.Job.Format()))
	assert.False(t, b.desk.State.Dirty)
	for range steps {
		b.press("ctrl+y")
	}
	assert.Equal(t, made, string(b.desk.State.Job.Format()))
}

// Whoever goes away in the middle of a form finds, in the file, all that was typed, and goes on where it says something is needed.
func TestAVanIsGoneOnWithAnotherDay(t *testing.T) {
	b, o := van(t)
	b.keys(`1 n c 652 enter +84 enter -850`).keys("ctrl+s")
	require.False(t, b.desk.State.Dirty)
	require.Empty(t, b.desk.State.Job.Obstructions, "not whole yet")

	o.StateDir = t.TempDir()
	require.NoError(t, os.WriteFile(o.StateDir+"/cautions-read", []byte(cautionsVersion), 0o644))
	next := started(t, o)
	next.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	require.True(t, next.shows("needs other side"), strings.Join(next.rows(), "\n"))
	next.keys(`enter 850 enter enter 95 up 0 esc`)
	require.Len(t, next.desk.State.Job.Obstructions, 1)
	one := next.desk.State.Job.Obstructions[0]
	assert.Equal(t, vehicles.Span{From: 0, To: 95, Set: true}, one.Drop)
	assert.Equal(t, [4]string{"652", "+84", "-850", "850"}, [4]string{one.X[0].Text, one.X[1].Text, one.Y[0].Text, one.Y[1].Text})
}

// A van that is read with a tape of inches is the same van: the file keeps what the tape said, the places are those of the
// millimetres.
func TestAVanInInchesIsWhereItsMillimetresAre(t *testing.T) {
	inches, _ := van(t)
	inches.press("u", "1", "n", "c", "25in", "enter", "+3 3/8in", "enter", "l4in", "enter", "r0.5in", "enter", "0", "enter", `3 3/4"`, "esc")
	mm, _ := van(t)
	mm.keys(`1 n c 635 enter +85.725 enter l101.6 enter r12.7 enter 0 enter 95.25 esc`)
	require.Len(t, inches.desk.State.Job.Obstructions, 1, inches.say)
	require.Len(t, mm.desk.State.Job.Obstructions, 1, mm.say)
	assert.Equal(t, "+3 3/8in", inches.desk.State.Job.Obstructions[0].X[1].Text, "as the tape said it")
	a, c := inches.desk.State.Plan.Obstructions[0].Prism, mm.desk.State.Plan.Obstructions[0].Prism
	assert.InDelta(t, c.Footprint.Middle.X, a.Footprint.Middle.X, 1e-9)
	assert.InDelta(t, c.Footprint.Middle.Y, a.Footprint.Middle.Y, 1e-9)
	assert.InDelta(t, c.Footprint.Half.X, a.Footprint.Half.X, 1e-9)
	assert.InDelta(t, c.Footprint.Half.Y, a.Footprint.Half.Y, 1e-9)
	assert.Equal(t, mm.desk.State.Job.Obstructions[0].Drop, inches.desk.State.Job.Obstructions[0].Drop)
}
