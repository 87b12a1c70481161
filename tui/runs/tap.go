package runs

import (
	"math"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/vehicles"
)

// dimensions is how many of the worst findings have their distance drawn on the plan.
const dimensions = 3

// shown is what the plan shows beside the job.
func (m screen) shown(s desk.State) plan.Options {
	return plan.Options{Focus: s.Focus, Shown: drawing.Worst(s.Result.Findings, m.concerns, dimensions)}
}

// picture is the plan, with the number of the point that is moved on its place.
func (m screen) picture(s desk.State, w, h int) string {
	view := m.pane.View(s, w, h, m.shown(s))
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return view
	}
	col, row, seen := m.pane.Sized(w, h).Cell(inSpace(run.Path[m.point]), s, m.shown(s))
	rows := strings.Split(view, "\n")
	if !seen || row >= len(rows) {
		return view
	}
	number := strconv.Itoa(m.point + 1)
	rows[row] = ansi.Cut(rows[row], 0, col) + s.Settings.Styles().Here.Render(number) + ansi.Cut(rows[row], col+len(number), w)
	return strings.Join(rows, "\n")
}

// followed has the view follow the point that is moved when that leaves the picture.
func (m screen) followed(change desk.Change, s desk.State) desk.Change {
	if change.Job != nil {
		s.Job = *change.Job
	}
	run := m.run(s)
	if run == nil || len(run.Path) == 0 || m.w == 0 {
		return change
	}
	return moving.Followed(change, inSpace(run.Path[m.index(s)]), m.pane.Sized(moving.Sizes(m.w, m.h)), s, m.shown(s))
}

// mouse answers the wheel and taps. A tap on the plan leaves a field, or puts what is moved where it was.
func (m screen) mouse(msg tea.MouseMsg, s desk.State) (screen, desk.Change) {
	pane, change, at := m.pane.Update(msg, s, m.shown(s))
	m.pane = pane
	switch {
	case at == nil:
		return m, change
	case m.Typing():
		m.prompt, m.shielding = moving.Prompt{}, false
		return m, desk.Change{}
	}
	return m.tapRun(s, geometry.Point{X: math.Round(at.X), Y: math.Round(at.Y)})
}

// tapRun picks the point of the run that was tapped, or puts the picked one where nothing was.
func (m screen) tapRun(s desk.State, at geometry.Point) (screen, desk.Change) {
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return m, desk.Change{Say: "No " + m.of.String() + " yet: " + keyAdd.Help().Key + " adds its first point."}
	}
	for i, p := range run.Path {
		if at.Sub(geometry.Point{X: p.X, Y: p.Y}).Norm() <= moving.PickWithin(s) {
			m.point = i
			return m, desk.Change{}
		}
	}
	p := run.Path[m.point]
	return m, m.setPoint(s, vehicles.RunPoint{X: at.X, Y: at.Y, Drop: p.Drop}, "")
}
