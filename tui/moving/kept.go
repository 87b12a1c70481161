package moving

import (
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// Shows tells whether a finding stands in the list in so many rows.
func (l Worst) Shows(f *rules.Finding, s desk.State, top Scroll, w, h int) bool {
	return f != nil && h > 0 && slices.Contains(l.lay(s, top, w, h).shown, f)
}

// Least is how many rows the list must have for the finding at its top to be seen whole.
func (l Worst) Least(s desk.State, top Scroll, w int) int {
	return l.first(s, min(top.First, max(len(l.Moved)-1, 0)), w)
}

// Kept is how far the list is scrolled where a finding stands in row y of the body, or as near to it as can be: what is shown has a row
// above the list, and the row that was tapped is to stay under the finger.
func (l Worst) Kept(f *rules.Finding, y int, top Scroll, s desk.State, p Panel) Scroll {
	i := slices.Index(l.Moved, f)
	if i < 0 {
		return top
	}
	_, first, w, h := p.area()
	if l.lay(s, top, w, h).title != "" {
		first++
	}
	above := max(0, y-first)
	for from := i; from >= 0; from-- {
		out, rows := l.lay(s, Scroll{First: from}, w, h), 0
		if out.top != from {
			continue // the end of the list is seen
		}
		for k := from; k < i && k-from < len(out.rows); k++ {
			rows += out.rows[k-from]
		}
		if rows >= above {
			return Scroll{First: from, Skip: rows - above}
		}
	}
	return Scroll{}
}
