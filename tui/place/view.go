package place

import (
	"strings"

	"bench.example/undermark/tui/desk"
)

// Where there is room the panel stands beside the plan, a third of the columns within these bounds; on less it lies under it.
const (
	leastPanel  = 40
	mostPanel   = 52
	panelHeight = 8
)

// sizes are the plan's columns and rows in a body of w by h.
func sizes(w, h int) (planW, planH int) {
	if w >= desk.SideBySide {
		return w - 1 - max(leastPanel, min(w/3, mostPanel)), h
	}
	return w, max(1, h-panelHeight)
}

// View paints the screen.
func (m screen) View(s desk.State, w, h int) string {
	m = m.current(s)
	planW, planH := sizes(w, h)
	picture := m.picture(s, planW, planH)
	if w < desk.SideBySide {
		return picture + "\n" + desk.Fit(strings.Join(m.panel(s, w, h-planH), "\n"), w, h-planH)
	}
	panelW := w - planW - 1
	return desk.Beside(picture, desk.Fit(strings.Join(m.panel(s, panelW, h), "\n"), panelW, h), s.Settings.Styles())
}

// panel is what stands beside the plan or under it.
func (m screen) panel(s desk.State, w, h int) []string {
	switch {
	case m.explaining:
		return m.explanations(s, w)
	case m.choosing:
		return m.choices(s, w)
	case m.shielding:
		return m.shieldRows(s, w, h)
	case m.tapes.open:
		return m.tapeRows(s, w, h)
	case m.Typing():
		return m.promptRows(s, w, h)
	}
	rows := m.where(s, w)
	rows = append(rows, m.notes(s, w)...)
	return append(rows, m.clearances(s, w, h-len(rows))...)
}

// promptRows is the prompt in place of the panel.
func (m screen) promptRows(s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	var rows []string
	for _, row := range desk.Wrap(m.heading(), w) {
		rows = append(rows, st.Title.Render(row))
	}
	fields := m.prompt.form.View(m.fields(s), w, max(1, h-len(rows)), st)
	return append(rows, strings.Split(fields, "\n")...)
}
