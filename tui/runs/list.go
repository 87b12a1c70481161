package runs

import (
	"strings"

	"bench.example/undermark/tui/desk"
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
	if !p.there && (p.sort == muffler || p.sort == pump || p.sort == tank) {
		text = "no " + text
	}
	return " " + text + " "
}

// chips are where the parts stand in a list of w columns.
func chips(parts []placed, w int) []chip {
	all, row, col := make([]chip, len(parts)), 0, 0
	for i, p := range parts {
		text := short(p)
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
	if len(parts) == 0 {
		return nil
	}
	all, at := chips(parts, w), m.row(parts)
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
		case i == at:
			look = st.Here
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

// listAt is the part that stands in the list at a column of a row.
func (m screen) listAt(s desk.State, w, h, x, y int) (p placed, ok bool) {
	parts := m.parts(s)
	if len(parts) == 0 {
		return p, false
	}
	all := chips(parts, w)
	top := listTop(all, m.row(parts), h)
	for i, c := range all {
		if y < h && c.row == y+top && x >= c.col && x < c.col+len(c.text) {
			return parts[i], true
		}
	}
	return p, false
}
