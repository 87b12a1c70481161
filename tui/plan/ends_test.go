package plan

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// sample is a sample job on the desk.
func sample(t testing.TB, file string) desk.State {
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(data, file)
	if err != nil {
		return desk.State{} // one that is refused
	}
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults, file)
	return desk.State{Job: job, Plan: result.Plan, Result: result, Selected: -1, Settings: desk.Settings{Colour: desk.TrueColour}}
}

// Wherever exhaust and intake of a heater are in the picture, it says where they end, or with an arrow where they leave it: in every sample job,
// with all that a screen shows beside it.
func TestWhereGasComesOutIsAlwaysNamed(t *testing.T) {
	files, err := filepath.Glob("../../testdata/cases/*.toml")
	require.NoError(t, err)
	runs := 0
	for _, file := range files {
		s := sample(t, file)
		signs := []geometry.Point3{}
		for _, run := range []*vehicles.LaidRun{s.Plan.Exhaust, s.Plan.Intake} {
			if run != nil {
				signs = append(signs, run.Path...)
			}
		}
		for _, c := range []struct {
			run         *vehicles.LaidRun
			end, beyond string
		}{{s.Plan.Exhaust, "exhaust outlet", "(exhaust,? outlet|heater's exhaust) "}, {s.Plan.Intake, "air comes in", "air in "}} {
			if c.run == nil {
				continue
			}
			runs++
			for _, size := range [][2]int{{60, 17}, {57, 15}, {57, 27}, {100, 27}} {
				for _, whole := range []bool{true, false} {
					o := Options{Shown: drawing.Worst(s.Result.Findings, func(*rules.Finding) bool { return true }, 3), Signs: signs}
					pane := New().Sized(size[0], size[1])
					s.Camera = desk.Camera{Whole: true}
					if !whole && s.Job.Cut != nil {
						s.Camera = pane.atCut(s)
					}
					picture := ansi.Strip(pane.View(s, size[0], size[1], o))
					_, _, ends := pane.Cell(c.run.Path[len(c.run.Path)-1], s, o)
					_, _, begins := pane.Cell(c.run.Path[0], s, o)
					switch {
					case ends:
						assert.Contains(t, picture, c.end, "%s %v\n%s", file, size, picture)
					case begins:
						assert.Regexp(t, c.beyond+`(\d+ mm out of view )?[►▼◄▲]`, picture, "%s %v\n%s", file, size, picture)
					}
				}
			}
		}
	}
	assert.Greater(t, runs, 10)
}

// A pane of a few rows opens on the cut at about 20 mm a column, where it has its own size, with what is in its way named; the whole floor is a key away.
func TestASmallPaneOpensOnTheCut(t *testing.T) {
	s := demo(t)
	s.Settings.Colour = desk.NoColour
	o := Options{Shown: drawing.Worst(s.Result.Findings, func(f *rules.Finding) bool { return f.WithCut() }, 3), Room: true}
	p := New().Sized(60, 8)
	lay := p.lay(s, o)
	wide, _ := lay.CellSize()
	assert.InDelta(t, 20, wide, 3)
	picture := ansi.Strip(p.View(s, 60, 8, o))
	for _, name := range []string{"brake pipe across", "middle crossmember", "heater's exhaust ▼"} {
		assert.Contains(t, picture, name)
	}
	rows := strings.Split(picture, "\n")
	assert.Regexp(t, `^◄ ?bumper \d+ +rails ▲ ?\d+ ▼ ?\d+ +► ?fuel tank \d+ mm out of view *$`, rows[len(rows)-1], "in one row, with how far, in which unit")
	assert.NotRegexp(t, "(bumper|rail|tank).*[▲▼◄►]", strings.Join(rows[1:len(rows)-2], "\n"), "and nowhere else")
	assert.NotRegexp(t, "[╌╎]", picture, "what stands on the floor does not hide what is in the way")
	pipe := 0
	for _, row := range rows {
		if strings.Contains(row, "▌") {
			pipe++
		}
	}
	assert.GreaterOrEqual(t, pipe, 2, "beside the ring, on both sides\n%s", picture)
	p, _ = press(t, p, typed("f"), &s)
	whole := p.lay(s, o)
	far, _ := whole.CellSize()
	assert.Greater(t, far, 60.0)
}
