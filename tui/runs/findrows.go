package runs

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
)

// findKeys are the keys of the finder as it is.
func (m screen) findKeys(s desk.State) (keys []key.Binding) {
	f := m.finder
	switch {
	case f.asks:
		for _, to := range m.outlets(s) {
			keys = append(keys, to.key)
		}
		keys = append(keys, keyFindBoth)
	case f.found.Going():
		return []key.Binding{desk.Named(desk.KeyLeave, "stops it")}
	case m.foundSome() && f.found.Said[0].Run != nil:
		keys = append(keys, keyPutIn)
	}
	return append(keys, desk.KeyLeave)
}

// foundSome tells whether the finder tells of what it found.
func (m screen) foundSome() bool {
	return m.finder.found.Done && !m.finder.found.Failed && len(m.finder.found.Said) > 0
}

// pressFinder answers a key while the finder is open.
func (m screen) pressFinder(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	f := m.finder
	switch {
	case key.Matches(k, desk.KeyLeave):
		m.finder = f.closed()
		if f.found.Going() {
			return m, desk.Change{Say: desk.Stopped}
		}
		return m, desk.Change{}
	case f.asks && key.Matches(k, keyFindBoth):
		return m.findBoth(s)
	case f.asks:
		for _, to := range m.outlets(s) {
			if key.Matches(k, to.key) {
				return m.findTo(to, s)
			}
		}
	case m.foundSome() && f.found.Said[0].Run != nil && key.Matches(k, keyPutIn):
		return m.putIn(s)
	}
	return m, desk.Change{Say: m.finderTakes(s)}
}

// finderTakes says which keys the finder takes as it is.
func (m screen) finderTakes(s desk.State) string {
	if m.finder.found.Going() {
		return "It is still looked for. " + desk.KeyLeave.Help().Key + " stops it."
	}
	var names []string
	for _, k := range m.findKeys(s) {
		names = append(names, k.Help().Key+" "+k.Help().Desc)
	}
	return strings.Join(names, ", ") + "."
}

// wanted are the runs that are found, in words.
func (m screen) wanted() string {
	switch len(m.finder.quest.runs) {
	case 2:
		return "exhaust and intake together"
	case 3:
		return "exhaust, intake and fuel line together"
	}
	return "the " + m.of.String()
}

// finderRow is a row of the finder, with the key that a tap on it presses, "" for none.
type finderRow struct {
	text string
	key  string
}

// finderRows are the finder in rows of w columns, with as much told of what was found.
func (m screen) finderRows(s desk.State, w int, how telling) (rows []finderRow) {
	st, f := s.Settings.Styles(), m.finder
	put := func(look desk.Style, text, key string) {
		for _, row := range desk.Wrapped(look, text, w) {
			rows = append(rows, finderRow{row, key})
		}
	}
	switch {
	case f.asks:
		put(st.Title, "Where shall the "+m.of.String()+" come out?", "")
		for _, b := range m.findKeys(s) {
			put(st.Plain, b.Help().Key+"  "+b.Help().Desc, b.Keys()[0])
		}
	case f.found.Failed:
		put(st.Fault, desk.NotWorkedOut, "esc")
	case !f.found.Done:
		text := "Looking for " + m.wanted() + "..."
		if f.found.Far != "" {
			text += " " + f.found.Far + "."
		}
		put(st.Title, text, "")
		put(st.Plain, "Esc stops it.", "esc")
	default:
		m.toldRows(s, how, put)
	}
	return rows
}

// finderPanel are its rows in h rows, the last ones, which say what to press, kept.
func (m screen) finderPanel(s desk.State, w, h int) (texts []string) {
	rows := m.finderShown(s, w, h)
	for _, r := range rows {
		texts = append(texts, r.text)
	}
	return texts
}

// finderShown are the rows that are seen of the finder: less is told where they are too many, and where that does not do those between the first and
// what to press give way.
func (m screen) finderShown(s desk.State, w, h int) (rows []finderRow) {
	for _, how := range m.tellings(h) {
		if rows = m.finderRows(s, w, how); len(rows) <= h {
			return rows
		}
	}
	tail := 0
	for tail < len(rows) && rows[len(rows)-1-tail].key != "" {
		tail++
	}
	over := len(rows) - h
	at := max(0, len(rows)-tail-over)
	return append(rows[:at:at], rows[at+over:]...)
}

// tapFinder presses the key of the row that is tapped.
func (m screen) tapFinder(y, w, h int, s desk.State) (screen, desk.Change) {
	rows := m.finderShown(s, w, h)
	if y < 0 || y >= len(rows) || rows[y].key == "" {
		return m, desk.Change{}
	}
	for _, b := range append(m.findKeys(s), desk.KeyLeave) {
		if b.Keys()[0] == rows[y].key {
			return m.pressFinder(pressOf(rows[y].key), s)
		}
	}
	return m, desk.Change{}
}

// pressOf is the press of a key by its name.
func pressOf(name string) tea.KeyMsg {
	switch name {
	case "enter":
		return tea.KeyMsg{Type: tea.KeyEnter}
	case "esc":
		return tea.KeyMsg{Type: tea.KeyEsc}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// plainFinder is what the finder says in lines.
func (m screen) plainFinder(s desk.State) desk.Plain {
	m.finder.found.Far = "" // it would be said again and again
	lines := aloud.Rows(m.finderPanel(s, aloud.Unbroken, aloud.Unbroken)...)
	return desk.Plain{Here: lines, All: func() []string { return lines }}
}
