package place

import (
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
)

// shown is what the plan shows beside the job.
func (m screen) shown(s desk.State) plan.Options {
	o := plan.Options{
		Focus: s.Focus, Shown: drawing.Worst(s.Result.Findings, (*rules.Finding).WithCut, moving.Dimensions), MayMove: true,
		Wishes: bestPlaces(s), Room: !m.unshaded, Areas: m.area > 0, Calm: m.stepping,
	}
	if best := m.proposed(); len(best) > 0 {
		o.Areas, o.Area = true, best[m.at].Area
	}
	return o
}

// followed has the view follow the cut when that leaves the picture.
func (m screen) followed(change desk.Change, s desk.State) desk.Change {
	if change.Job != nil {
		s.Job = *change.Job
	}
	if s.Job.Cut == nil || m.w == 0 {
		return change
	}
	return moving.Followed(change, plan2(s.Job.Cut.At).At(0), canvas.RingReach(s.Job.Cut.Across/2, s.Camera.Scale), m.pane.Sized(moving.Sizes(m.w, m.h)), s, m.shown(s))
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
	if !m.Typing() {
		if top, change, mine := worst(s).Mouse(msg, m.top, s, m.beside(s)); mine {
			m.top = top
			if change.Focus != nil && change.Goto == m.Title() {
				seen := s
				seen.Focus = change.Focus
				m.top = worst(s).Kept(change.Focus, msg.Y, top, seen, m.beside(seen))
			}
			return m, change
		}
	}
	if m.explaining {
		p, _ := pilotOf(s)
		switch msg.Button {
		case tea.MouseButtonWheelDown:
			return m.explainedFrom(m.slip+1, p), desk.Change{}
		case tea.MouseButtonWheelUp:
			return m.explainedFrom(m.slip-1, p), desk.Change{}
		}
	}
	if entryscreen.IsTap(msg) {
		if next, change, mine := m.tapOpen(msg.X, msg.Y, s); mine {
			return next, m.followed(carried(besideHole(change, s), s), s)
		}
	}
	pane, change, at := m.pane.Sized(m.body(s, m.w, m.h).Sizes()).Update(msg, s, m.shown(s))
	m.pane = pane.Sized(moving.Sizes(m.w, m.h))
	switch {
	case at == nil:
		return m, change
	case m.tapes.open:
		return m.tape(tea.KeyMsg{Type: tea.KeyEsc}, s)
	case m.choosing && m.places.Going(): // only Esc stops it
		return m, desk.Change{Say: m.picks()}
	case m.Typing():
		m.prompt, m.explaining = moving.Prompt{}, false
		return m.left(), desk.Change{}
	}
	return m, carried(m.tapCut(s, *at), s)
}

// revealed shows the finding that the state picks out in the middle of the plan.
func (m screen) revealed(s desk.State) (screen, desk.Change) {
	if s.Focus == nil {
		return m, desk.Change{}
	}
	m.prompt, m.explaining, m.tapes = moving.Prompt{}, false, taping{}
	if m.choosing {
		m = m.left()
	}
	return m, moving.LookAt(*s.Focus, s, m.w, m.h)
}
