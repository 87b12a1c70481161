package checks

import (
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/plan"
)

// picture is the plan with the picked finding on it. Beside the list it looks at that finding by itself; large, it is
// moved as every plan.
func (m screen) picture(s desk.State, w, h int) string {
	if m.next {
		return m.pictureNext(s, w, h)
	}
	if f := m.picked(s); f != nil && !m.large {
		s.Camera = plan.LookAt(*f, s.Camera.View, w, h, s.Settings.Units)
	}
	return m.pane.View(s, w, h, m.shown(s))
}

// shown is what the plan shows beside the job.
func (m screen) shown(s desk.State) plan.Options { return plan.Options{Focus: m.picked(s)} }

// enlarge gives the plan the whole screen, looking at the picked finding.
func (m screen) enlarge(s desk.State) (screen, desk.Change) {
	f := m.picked(s)
	if f == nil {
		return m, desk.Change{}
	}
	m.large = true
	m.pane = m.sized()
	_, w, h := m.sizes(m.w, m.h)
	camera := plan.LookAt(*f, s.Camera.View, w, h, s.Settings.Units)
	return m, desk.Change{Camera: &camera}
}

// sized is the pane at the size it has on the screen.
func (m screen) sized() plan.Pane {
	_, w, h := m.sizes(m.w, m.h)
	return m.pane.Sized(w, h)
}

// passOn gives the large plan the keys that are its own.
func (m screen) passOn(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	if !m.large {
		return m, desk.Change{}
	}
	pane, change, _ := m.pane.Update(k, s, m.shown(s))
	m.pane = pane
	return m, change
}

// mouse answers the wheel and taps: in the list a tap picks a finding, on the picked one and on the plan beside it a tap enlarges that.
func (m screen) mouse(msg tea.MouseMsg, s desk.State) (screen, desk.Change) {
	listW, _, _ := m.sizes(m.w, m.h)
	tap := msg.Action == tea.MouseActionPress && msg.Button == tea.MouseButtonLeft
	switch {
	case m.large:
		pane, change, _ := m.pane.Update(msg, s, m.shown(s))
		m.pane = pane
		return m, change
	case tap && m.next:
		return m.tapNext(msg, s)
	case tap && msg.X > listW:
		return m.enlarge(s)
	case tap:
		return m.tapList(msg.Y, s)
	case msg.Button == tea.MouseButtonWheelDown:
		return m.press(tea.KeyMsg{Type: tea.KeyDown}, s)
	case msg.Button == tea.MouseButtonWheelUp:
		return m.press(tea.KeyMsg{Type: tea.KeyUp}, s)
	}
	return m, desk.Change{}
}

// tapList picks the finding in row y, and shows it on the plan when it was picked already.
func (m screen) tapList(y int, s desk.State) (screen, desk.Change) {
	listW, _, _ := m.sizes(m.w, m.h)
	row := y - len(m.faults(s, listW)) - listHead
	to := m.first(s, m.listRows(s)) + row
	switch {
	case row < 0 || row >= m.listRows(s) || to >= len(m.listed(s)):
		return m, desk.Change{}
	case to == m.index(s):
		return m.enlarge(s)
	}
	m.at = to
	return m, desk.Change{}
}
