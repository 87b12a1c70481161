package place

import (
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
)

// tapOpen answers a tap at a place of the body on what is open there; mine is false where nothing is.
func (m screen) tapOpen(x, y int, s desk.State) (next screen, change desk.Change, mine bool) {
	if m.abreast(m.w, m.h) {
		return m.tapAbreast(x, y, s), change, true
	}
	x, y, w, h, on := m.beside(s).At(x, y)
	if !on {
		return m, change, false
	}
	switch {
	case m.explaining:
		if i, is := m.explanations(s, w, h).at(y); is {
			p, _ := pilotOf(s)
			m, change = m.putRight(p.Slips[i], s)
		}
	case m.choosing:
		m, change = m.tapChoice(m.choices(s, w, h), y, h, s)
	case m.tapes.open:
		m, change = m.tapTape(y, w, h, s)
	case m.prompt.Kind != nothing:
		head := len(desk.Wrapped(s.Settings.Styles().Title, m.heading(s), w))
		m, change = m.answered(s)(m.prompt.Tap(x, y-head, w, max(1, h-head), m.asks(m.prompt.Kind, s), s))
	default:
		return m, change, false
	}
	return m, change, true
}

// tapChoice shows the layout in row y; where there is room for one alone, the next.
func (m screen) tapChoice(rows panelRows, y, h int, s desk.State) (screen, desk.Change) {
	if h < roomForAll {
		return m.pick(tea.KeyMsg{Type: tea.KeyDown}, s)
	}
	if i, is := rows.at(y); is {
		m.at = i
	}
	return m, desk.Change{}
}

// tapAbreast shows the layout whose picture or line is tapped.
func (m screen) tapAbreast(x, y int, s desk.State) screen {
	n := len(m.proposed())
	lines := m.under(s, m.w)
	if under := y - (m.h - len(lines.rows)); under >= 0 {
		m, _ = m.tapChoice(lines, under, linesUnder, s)
		return m
	}
	m.at = min(n-1, x/((m.w-n+1)/n+1))
	return m
}

// tapTape goes on to the tape in row y of the list, once what was typed is taken.
func (m screen) tapTape(y, w, h int, s desk.State) (screen, desk.Change) {
	i, is := m.tapeRows(s, w, h).at(y)
	fields := tapeFields(s)
	if !is || fields[i].Key == m.tapes.form.On() {
		return m, desk.Change{}
	}
	m, change, err := m.tapeTaken(s)
	if err != nil {
		return m, change // the field says why
	}
	m.tapes.form = form.Form{}.Open(fields[i].Key, fields)
	return m, m.pointed(change, s)
}
