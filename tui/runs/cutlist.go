package runs

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
)

var keyCutList = bind("q", "cut list", "q")

// cutListHead stands above the cut list.
const cutListHead = "Cut list: " + cutlist.CutFromAndHungWith

// cutListLines are the cut list of all runs, of the job as it was judged last.
func cutListLines(s desk.State) []string {
	lines := words.CutList(cutlist.Of(&s.Result, cutlist.Usual()), s.Settings.Units)
	if len(s.Faults) > 0 {
		lines = append([]string{"Of the job " + moving.BeforeFault + "."}, lines...)
	}
	return lines
}

// cutListRows are its lines in rows of w columns, each line's further rows set in.
func cutListRows(s desk.State, w int) (rows []string) {
	const in = 2
	st := s.Settings.Styles()
	for _, line := range cutListLines(s) {
		for i, row := range desk.Wrap(line, w-in) {
			if i > 0 {
				row = "  " + row
			}
			rows = append(rows, st.Plain.Render(row))
		}
	}
	return rows
}

// cutListPanel is the cut list in h rows: what is seen of it, and, where that is not all, how much.
func (m screen) cutListPanel(s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	head := desk.Wrapped(st.Title, cutListHead, w)
	rows := cutListRows(s, w)
	room := max(1, h-len(head))
	if len(rows) <= room {
		return append(head, rows...)
	}
	room = max(1, room-1)
	top := max(0, min(m.cutTop, len(rows)-room))
	seen := fmt.Sprintf("rows %d-%d of %d (PgDn)", top+1, top+room, len(rows))
	return append(append(head, rows[top:top+room]...), st.Faint.Render(desk.FitRow(seen, w)))
}

// pressCutList answers a key while the cut list is open.
func (m screen) pressCutList(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	if key.Matches(k, desk.KeyLeave) || key.Matches(k, keyCutList) {
		m.cutting = false
		return m, desk.Change{}
	}
	w, h := m.panelSize(s)
	rows := len(cutListRows(s, w))
	page := max(1, h-len(desk.Wrap(cutListHead, w))-1)
	if to, moved := form.MoveIn(k.String(), m.cutTop, max(1, rows-page+1), page); moved {
		m.cutTop = to
		return m, desk.Change{}
	}
	return m, desk.Change{Say: m.listTakes(s)}
}

// panelSize is how many columns and rows the panel has.
func (m screen) panelSize(s desk.State) (w, h int) {
	_, _, w, h = m.arranged(s, m.w, m.h).body.PanelIn()
	return w, h
}

// wheelCutList scrolls the cut list.
func (m screen) wheelCutList(msg tea.MouseMsg, s desk.State) (next screen, mine bool) {
	by := map[tea.MouseButton]tea.KeyType{tea.MouseButtonWheelDown: tea.KeyDown, tea.MouseButtonWheelUp: tea.KeyUp}
	press, wheel := by[msg.Button]
	if !wheel {
		return m, false
	}
	m, _ = m.pressCutList(tea.KeyMsg{Type: press}, s)
	return m, true
}

// plainCutList is what the cut list says in lines.
func plainCutList(s desk.State) desk.Plain {
	lines := aloud.Rows(append([]string{cutListHead}, cutListLines(s)...)...)
	return desk.Plain{Here: lines, All: func() []string { return lines }}
}
