package moving

import (
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

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
	above, figures := max(0, y-first), figuresWidth(l.Moved[max(0, i-h):i+1], s)
	for i > 0 {
		if above -= len(nameRows(l.Moved[i-1], w, figures)); above < 0 {
			break
		}
		i--
	}
	return Scroll(i)
}
