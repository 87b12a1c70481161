package marks

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/tui/desk"
)

// mouse answers the wheel and taps: a tap on a row of the list shows that mark, one on its box or on the row shown ticks it; a
// tap on an answer gives it.
func (m screen) mouse(msg tea.MouseMsg, s desk.State) (screen, desk.Change) {
	m.at, m.drills = m.index(s), false
	tap := msg.Button == tea.MouseButtonLeft && msg.Action == tea.MouseActionPress
	switch st := m.stage(s); {
	case st != marking && tap:
		return m.tapGate(st, msg.Y, s)
	case st == warning && msg.Button == tea.MouseButtonWheelDown:
		m = m.unclearBy(1, s)
	case st == warning && msg.Button == tea.MouseButtonWheelUp:
		m = m.unclearBy(-1, s)
	case st != marking:
	case msg.Button == tea.MouseButtonWheelDown:
		m.at = min(m.at+1, len(items(s))-1)
	case msg.Button == tea.MouseButtonWheelUp:
		m.at = max(m.at-1, 0)
	case tap:
		return m.tapMark(msg.X, msg.Y, s)
	}
	return m, desk.Change{}
}

// tapGate gives the answer in row y, if there is one.
func (m screen) tapGate(st stage, y int, s desk.State) (screen, desk.Change) {
	rows := strings.Split(m.viewGate(st, s, m.w, m.h), "\n")
	if y < 0 || y >= len(rows) {
		return m, desk.Change{}
	}
	for _, k := range gateKeys(st) {
		if k.Help() == keyUnclearDown.Help() || k.Help() == keyUnclearUp.Help() {
			continue // no answers
		}
		if strings.TrimSpace(ansi.Strip(rows[y])) == strings.TrimSpace(ansi.Strip(choice(s.Settings.Styles(), k))) {
			return m.answerGate(st, keyOf(k), s)
		}
	}
	return m, desk.Change{}
}

// keyOf is the key of a binding of the gate: Enter, or its letter.
func keyOf(k key.Binding) tea.KeyMsg {
	if name := k.Keys()[0]; name != "enter" {
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
	}
	return tea.KeyMsg{Type: tea.KeyEnter}
}

// tapMark answers a tap on the list, or on the head of the mark shown.
func (m screen) tapMark(x, y int, s desk.State) (screen, desk.Change) {
	if m.page != table && (m.w < desk.SideBySide || x >= listWidth) {
		if y == 0 { // where it says whether it is made
			return m, ticked(m.here(s), s)
		}
		return m, desk.Change{}
	}
	all, head := items(s), m.listHead()
	first, last := m.window(len(all), m.listRoom(s))
	at := first + y - head
	if y < head || at >= last {
		return m, desk.Change{}
	}
	if at == m.at || x < desk.BoxColumns {
		m.at = at
		return m, ticked(all[at], s)
	}
	m.at = at
	return m, desk.Change{}
}
