package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// working is the program with its own screens on a job file.
func working(t testing.TB, file string) *Root {
	r, err := New(Options{Path: file, Book: rules.Builtin(), Screens: Screens()})
	require.NoError(t, err)
	r.fade = 0
	return r
}

func jobOfCases(t testing.TB, name string) string {
	text, err := os.ReadFile(filepath.Join("..", "testdata", "cases", name))
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, text, 0o644))
	return path
}

func TestTheScreensAreInTheOrderOfTheWork(t *testing.T) {
	var titles []string
	for _, s := range Screens() {
		titles = append(titles, s.Title())
	}
	assert.Equal(t, []string{"Underneath", "On top", "Match", "Place", "Runs", "Marks", "Checks", "Job", "Work", "Sizing"}, titles)
}

// However many turns a job's yaw has, it reads as what points the same way within a half turn.
func TestAYawReadsTheSameOnEveryScreen(t *testing.T) {
	path := filepath.Join(t.TempDir(), "job.toml")
	views := func(yaw float64) (views []string) {
		job := vehicles.Demo()
		heater := *job.Heater
		heater.Yaw, heater.Given = yaw, heater.Given|vehicles.HasYaw
		require.NoError(t, os.WriteFile(path, job.WithHeater(heater).Format(), 0o644))
		r := working(t, path)
		r.w, r.h = 160, 100
		for r.at = range r.screens {
			_, body, _ := strings.Cut(ansi.Strip(r.View()), "\n") // the head has the file's path
			views = append(views, body)
		}
		return views
	}
	for yaw, same := range map[float64]float64{-270: 90, 450: 90, 345: -15, -180: 180, 540: 180, -360: 0} {
		want := views(same)
		for i, view := range views(yaw) {
			assert.Equal(t, want[i], view, "%v on screen %d", yaw, i+1)
		}
	}
}

// The root takes these letters and digits outside fields: a screen would never see them.
func TestNoScreenUsesTheRootsKeys(t *testing.T) {
	taken := map[string]bool{}
	for _, b := range desk.Everywhere() {
		for _, k := range b.Keys() {
			taken[k] = true
		}
	}
	r := working(t, jobOfCases(t, "24-everything.toml"))
	for _, s := range r.screens {
		require.False(t, s.Typing(), s.Title())
		for _, b := range s.Keys(r.desk.State) {
			for _, k := range b.Keys() {
				assert.False(t, taken[k], "%s: %q is the root's", s.Title(), k)
				_, known := keyNamed(k)
				assert.True(t, known, "%s: nothing is sent for a tap on %q", s.Title(), k)
			}
			assert.NotEmpty(t, b.Help().Key, s.Title())
			assert.NotEmpty(t, b.Help().Desc, s.Title())
		}
	}
}

func TestEveryScreenFillsItsBodyExactly(t *testing.T) {
	for _, name := range []string{"01-wide-floor.toml", "13-two-ties.toml", "24-everything.toml"} {
		r := working(t, jobOfCases(t, name))
		for _, size := range [][2]int{{60, 20}, {61, 21}, {80, 24}, {100, 30}, {160, 50}, {240, 70}} {
			r.w, r.h = size[0], size[1]
			for i, s := range r.screens {
				r.at = i
				rows := strings.Split(ansi.Strip(r.View()), "\n")
				assert.Len(t, rows, r.h, "%s %s %v", name, s.Title(), size)
				for y, row := range rows {
					assert.LessOrEqual(t, ansi.StringWidth(row), r.w, "%s %s %v row %d", name, s.Title(), size, y)
				}
			}
		}
	}
}

// A tap on the words for the arrows can't say which of them: nothing moves.
func TestATapOnTheArrowsMovesNothing(t *testing.T) {
	r := working(t, jobOfCases(t, "01-wide-floor.toml"))
	b := &bench{Root: r, t: t}
	b.send(tea.WindowSizeMsg{Width: 160, Height: 50})
	before := string(b.desk.State.Job.Format())
	tapped := 0
	for i, s := range r.screens {
		r.at = i
		for _, k := range s.Keys(r.desk.State) {
			if strings.Contains(strings.ToLower(k.Help().Key), "arrows") && strings.Contains(b.rows()[49], k.Help().Desc) {
				camera := b.desk.State.Camera
				b.tapOn(k.Help().Key + " " + k.Help().Desc)
				assert.Equal(t, before, string(b.desk.State.Job.Format()), "%s: %s", s.Title(), k.Help().Desc)
				assert.Equal(t, camera, b.desk.State.Camera, "%s: %s", s.Title(), k.Help().Desc)
				tapped++
			}
		}
	}
	assert.NotZero(t, tapped, "the foot of Place has them")
}
