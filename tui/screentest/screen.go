// Package screentest drives screens in tests: it gives them a job on the desk, keys and taps, and compares what they paint with
// golden files.
package screentest

import (
	_ "embed"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

//go:embed job.toml
var job []byte

// State is the trial job, judged by the built-in book, on the desk.
func State(t require.TestingT) desk.State {
	j, err := vehicles.ParseJob(job, "job.toml")
	require.NoError(t, err)
	return Judged(desk.State{Selected: -1}, j)
}

// Sizes are the bodies that screens are compared at.
var Sizes = []struct {
	Name string
	W, H int
}{{"60x17", 60, 17}, {"100x27", 100, 27}, {"160x47", 160, 47}}

// Area is a part of a picture.
type Area struct{ X, Y, W, H int }

// Golden compares what a screen paints at each size with testdata/NAME-SIZE.txt, colours stripped and row ends marked,
// and holds that every size is filled exactly. The plan's area, which is compared where it is painted, is left blank.
// UPDATE_GOLDEN writes the files.
func Golden(t *testing.T, name string, screen desk.Screen, s desk.State, plan func(w, h int) Area) {
	t.Helper()
	for _, size := range Sizes {
		sized, _, _ := screen.Update(tea.WindowSizeMsg{Width: size.W, Height: size.H}, s)
		got := blanked(Filled(t, sized, s, size.W, size.H), plan(size.W, size.H))
		golden(t, name+"-"+size.Name, got)
	}
}

// golden compares a picture with testdata/NAME.txt.
func golden(t testing.TB, name, picture string) {
	t.Helper()
	got := strings.ReplaceAll(picture, "\n", "|\n") + "|\n"
	file := filepath.Join("testdata", name+".txt")
	if os.Getenv("UPDATE_GOLDEN") != "" {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, file)
}

// NoPlan is for screens without a plan.
func NoPlan(int, int) Area { return Area{} }

func blanked(view string, a Area) string {
	rows := strings.Split(view, "\n")
	for y := a.Y; y < a.Y+a.H; y++ {
		rows[y] = ansi.Cut(rows[y], 0, a.X) + strings.Repeat(" ", a.W) + ansi.Cut(rows[y], a.X+a.W, ansi.StringWidth(rows[y]))
	}
	return strings.Join(rows, "\n")
}

// Filled paints a screen without colours and holds that it fills w columns and h rows exactly.
func Filled(t require.TestingT, screen desk.Screen, s desk.State, w, h int) string {
	view := ansi.Strip(screen.View(s, w, h))
	rows := strings.Split(view, "\n")
	require.Len(t, rows, h)
	for _, row := range rows {
		require.Equal(t, w, ansi.StringWidth(row), "%q", row)
	}
	return view
}

// Wander presses keys drawn from names and resizes the body, and holds that the screen always fills it exactly, without
// a result too, and that the job it started from stays as it was. It returns the screen and the state at the end.
func Wander(t *rapid.T, screen desk.Screen, names ...string) (desk.Screen, desk.State) {
	start := State(t)
	before := string(start.Job.Format())
	s := start
	s.Settings.Units = rapid.SampledFrom([]desk.Units{desk.Millimetres, desk.Inches}).Draw(t, "units")
	s.Settings.Colour = desk.Colour(rapid.IntRange(0, int(desk.TrueColour)).Draw(t, "colour"))
	for range rapid.IntRange(1, 25).Draw(t, "presses") {
		w, h := rapid.IntRange(60, 170).Draw(t, "w"), rapid.IntRange(17, 50).Draw(t, "h")
		msgs := append([]tea.Msg{tea.WindowSizeMsg{Width: w, Height: h}}, Keys(rapid.SampledFrom(names).Draw(t, "keys"))...)
		screen, s, _ = After(screen, s, msgs...)
		if rapid.IntRange(0, 9).Draw(t, "undo all") == 0 { // what was there may be gone at any moment
			s = Judged(s, vehicles.Job{Ref: start.Job.Ref, Floor: start.Job.Floor})
			Filled(t, screen, s, w, h)
			screen, s, _ = After(screen, s, Keys(rapid.SampledFrom(names).Draw(t, "keys then"))...)
			s = Judged(s, start.Job)
		}
		Filled(t, screen, s, w, h)
	}
	require.Equal(t, before, string(start.Job.Format()))
	return screen, s
}
