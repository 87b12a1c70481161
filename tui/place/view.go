package place

import (
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
)

// View paints the screen.
func (m screen) View(s desk.State, w, h int) string {
	m = m.current(s)
	planW, planH := moving.Sizes(w, h)
	picture := m.pane.View(s, planW, planH, m.shown(s))
	return moving.Beside(picture, func(w, h int) []string { return m.panel(s, w, h) }, s, w, h)
}

// panel is what stands beside the plan or under it.
func (m screen) panel(s desk.State, w, h int) []string {
	switch {
	case m.explaining:
		return m.explanations(s, w)
	case m.choosing:
		return m.choices(s, w)
	case m.tapes.open:
		return m.tapeRows(s, w, h)
	case m.Typing():
		return m.prompt.Rows(headings[m.prompt.Kind], m.asks(m.prompt.Kind, s), s, w, h)
	}
	rows := m.where(s, w)
	rows = append(rows, append(moving.Notes(s, w), moving.LeanRows(s, w)...)...)
	return append(rows, moving.Clearances(s, atCut, w, h-len(rows))...)
}
