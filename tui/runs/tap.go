package runs

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// dimensions is how many of the worst findings have their distance drawn on the plan.
const dimensions = 3

// shown is what the plan shows beside the job.
func (m screen) shown(s desk.State) plan.Options {
	return plan.Options{Focus: s.Focus, Worst: dimensions}
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
	if !m.Typing() {
		if top, change, mine := m.worst(s).Mouse(msg, m.top, s, m.beside(s)); mine {
			m.top = top
			return m, change
		}
	}
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
	return m, m.tapped(s, at)
}

// revealed shows the finding that the state picks out in the middle of the plan, with the point in hand that is nearest to it.
func (m screen) revealed(s desk.State) (screen, desk.Change) {
	f := s.Focus
	if f == nil {
		return m, desk.Change{}
	}
	m.prompt, m.shielding = moving.Prompt{}, false
	for of := range laid {
		if sort := sorts[of]; f.Subject.Sort == sort || f.Against.Sort == sort && !m.concerns(f) {
			m = m.turnTo(of)
		}
	}
	if run := m.run(s); run != nil && f.Places > 0 {
		least := math.Inf(1)
		for i, p := range run.Path {
			if away := inSpace(p).Sub(f.At[0]).Norm(); away < least {
				m.point, least = i, away
			}
		}
	}
	return m, moving.LookAt(*f, s, m.w, m.h)
}

// tapped puts the point in hand where the plan was tapped, and says what moved and how to take that back: a tap may not have
// been meant.
func (m screen) tapped(s desk.State, at geometry.Point) desk.Change {
	p := m.run(s).Path[m.point]
	way := words.Way(geometry.Point{X: at.X - p.X, Y: at.Y - p.Y}, s.Settings)
	change := m.setPoint(s, vehicles.RunPoint{X: at.X, Y: at.Y, Drop: p.Drop}, "")
	if change.Job == nil || way == "" {
		return change
	}
	text := fmt.Sprintf("%s point %d moved %s. ", m.of, m.point+1, way)
	if change.Say != "" { // and where that which hangs on it went
		text = change.Say + ". "
	}
	change.Say = text + desk.KeyUndo.Help().Key + " takes it back."
	return change
}
