package runs

import (
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// chip is a part in the list: a word, in its row, from a column on.
type chip struct {
	row, col int
	text     string
}

// short is what a part is called in the list: a point by its number alone.
func short(p placed) string {
	text := name(p)
	if p.sort == point {
		text = sign(p)
	}
	if !p.there && (p.sort == hung || p.sort == tank) {
		text = "no " + text
	}
	return " " + text + " "
}

// action is a word behind the parts that presses a key: a thumb has no keys.
type action struct {
	text string
	key  rune
}

// actions are those of the keys that no other tap can press.
func (m screen) actions(parts []placed) []action {
	if len(parts) == 0 {
		return []action{{"[add]", 'a'}, {"[find]", '/'}, {"[cut list]", 'q'}}
	}
	all := []action{{"[find]", '/'}, {"[add]", 'a'}, {"[insert]", 'i'}, {"[delete]", 'x'}, {"[side]", 'z'}}
	if !wholePanel(m.w, m.h) {
		all = append(all, action{"[fall]", 'e'})
	}
	if m.of == vehicles.ExhaustRun {
		all = append(all, action{"[out]", 'y'})
	}
	if m.of != vehicles.FuelRun {
		all = append(all, action{"[drain]", 'w'})
	}
	return append(all, action{"[cut list]", 'q'})
}

// chips are where the parts stand in a list of w columns, and the actions behind them.
func (m screen) chips(parts []placed, w int) []chip {
	var texts []string
	for _, p := range parts {
		texts = append(texts, short(p))
	}
	for _, a := range m.actions(parts) {
		texts = append(texts, a.text)
	}
	all, row, col := make([]chip, len(texts)), 0, 0
	for i, text := range texts {
		if col > 0 && col+len(text) > w {
			row, col = row+1, 0
		}
		all[i] = chip{row, col, text}
		col += len(text)
	}
	return all
}

// listTop is the first row of the list that is seen in h rows, so that row at is.
func listTop(all []chip, at, h int) int {
	return max(0, min(all[at].row-h/2, all[len(all)-1].row+1-h))
}

// list are the parts of the run in order along it, in at most h rows, the one that is picked among them.
func (m screen) list(s desk.State, w, h int) []string {
	parts, st := m.parts(s), s.Settings.Styles()
	all, at := m.chips(parts, w), m.row(parts)
	top := listTop(all, at, h)
	var rows []strings.Builder
	for i, c := range all {
		if c.row < top || c.row >= top+h {
			continue
		}
		for len(rows) <= c.row-top {
			rows = append(rows, strings.Builder{})
		}
		look := st.Plain
		switch {
		case i == at && len(parts) > 0:
			look = st.Here
		case i >= len(parts):
			look = st.Key
		case !parts[i].there:
			look = st.Faint
		}
		rows[c.row-top].WriteString(look.Render(c.text))
	}
	out := make([]string, len(rows))
	for i := range rows {
		out[i] = rows[i].String()
	}
	return out
}

// listAt is what stands in the list at a column of a row: which of the parts, or behind them of the actions.
func (m screen) listAt(parts []placed, w, h, x, y int) (i int, ok bool) {
	all := m.chips(parts, w)
	top := listTop(all, m.row(parts), h)
	for i, c := range all {
		if y < h && c.row == y+top && x >= c.col && x < c.col+len(c.text) {
			return i, true
		}
	}
	return 0, false
}
