package place

import (
	"math"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/vehicles"
)

// dimensions is how many of the worst findings have their distance drawn on the plan.
const dimensions = 3

// shown is what the plan shows beside the job.
func (m screen) shown(s desk.State) plan.Options {
	return plan.Options{
		Focus: s.Focus, Worst: dimensions, MayMove: true, Wishes: append(bestPlaces(s), m.wished()...), Room: m.moving == hole && !m.unshaded,
	}
}

// picture is the plan, with the number of the run's point that is moved on its place.
func (m screen) picture(s desk.State, w, h int) string {
	view := m.pane.View(s, w, h, m.shown(s))
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return view
	}
	col, row, seen := m.cell(run.Path[m.point], s, w, h)
	rows := strings.Split(view, "\n")
	if !seen || row >= len(rows) {
		return view
	}
	number := strconv.Itoa(m.point + 1)
	rows[row] = ansi.Cut(rows[row], 0, col) + s.Settings.Styles().Here.Render(number) + ansi.Cut(rows[row], col+len(number), w)
	return strings.Join(rows, "\n")
}

// cell is where a point is in a plan of w columns and h rows, and whether it is seen there.
func (m screen) cell(p vehicles.RunPoint, s desk.State, w, h int) (col, row int, seen bool) {
	return m.pane.Sized(w, h).Cell(inSpace(p), s, m.shown(s))
}

// followed has the view follow what is moved when that leaves the picture.
func (m screen) followed(change desk.Change, s desk.State) desk.Change {
	if change.Job != nil {
		s.Job = *change.Job
	}
	at, there := m.moved(s)
	w, h := sizes(m.w, m.h)
	if !there || change.Camera != nil || s.Camera.Scale == 0 || m.w == 0 {
		return change
	}
	if _, _, seen := m.cell(at, s, w, h); !seen {
		camera := s.Camera
		camera.Middle = camera.View.Projection().Point(inSpace(at))
		change.Camera = &camera
	}
	return change
}

// moved is the place of what the arrows move.
func (m screen) moved(s desk.State) (p vehicles.RunPoint, there bool) {
	if m.moving == hole {
		if s.Job.Cut == nil {
			return p, false
		}
		return vehicles.RunPoint{X: s.Job.Cut.At[0], Y: s.Job.Cut.At[1]}, true
	}
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return p, false
	}
	return run.Path[m.index(s)], true
}

// middle is the middle of the view, or of the floor while the whole of it is shown.
func (m screen) middle(s desk.State) geometry.Point {
	if s.Camera.Scale > 0 {
		return s.Camera.View.Projection().Unproject(s.Camera.Middle).Plan()
	}
	return geometry.Point{X: s.Job.Floor.From + s.Job.Floor.Length/2}
}

// mouse answers the wheel and taps. A tap on the plan leaves a field, or puts what is moved where it was.
func (m screen) mouse(msg tea.MouseMsg, s desk.State) (screen, desk.Change) {
	pane, change, at := m.pane.Update(msg, s, m.shown(s))
	m.pane = pane
	switch {
	case at == nil:
		return m, change
	case m.tapes.open:
		return m.tape(tea.KeyMsg{Type: tea.KeyEsc}, s)
	case m.Typing():
		m.prompt, m.explaining, m.choosing, m.shielding = prompt{}, false, false, false
		return m, desk.Change{}
	case m.moving == hole:
		return m, besideHole(placeCut(s, *at), s)
	}
	return m.tapRun(s, geometry.Point{X: math.Round(at.X), Y: math.Round(at.Y)})
}

// tapRun picks the point of the run that was tapped, or puts the picked one where nothing was.
func (m screen) tapRun(s desk.State, at geometry.Point) (screen, desk.Change) {
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return m, desk.Change{Say: "No " + m.moving.String() + " yet: " + keyAdd.Help().Key + " adds its first point."}
	}
	for i, p := range run.Path {
		if at.Sub(geometry.Point{X: p.X, Y: p.Y}).Norm() <= pickWithin(s) {
			m.point = i
			return m, desk.Change{}
		}
	}
	p := run.Path[m.point]
	return m, m.setPoint(s, vehicles.RunPoint{X: at.X, Y: at.Y, Drop: p.Drop}, "")
}

// pickWithin is how near to a point, mm, a tap picks it: three cells where the scale is known.
func pickWithin(s desk.State) float64 {
	const dots, whole = 6, 40
	if s.Camera.Scale > 0 {
		return dots * s.Camera.Scale
	}
	return whole
}
