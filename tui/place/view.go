package place

import (
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
)

// View paints the screen.
func (m screen) View(s desk.State, w, h int) string {
	m = m.current(s)
	if m.abreast(w, h) {
		return m.pictures(s, w, h)
	}
	body := m.body(s, w, h)
	planW, planH := body.Sizes()
	seen := s
	if best := m.proposed(); len(best) > 0 {
		seen = laid(&best[m.at], s)
		seen.Camera = near(&best[m.at], seen, planW, planH) // the whole floor would show the van and little of what is proposed
	}
	picture := m.pane.View(seen, planW, planH, m.shown(seen))
	return body.Beside(picture, func(w, h int) []string { return m.panel(s, w, h) }, s)
}

// body is where plan and panel stand: under the plan the layouts' lines have the rows that they fill, as many whichever of them is shown.
func (m screen) body(s desk.State, w, h int) moving.Body {
	body := moving.Body{W: w, H: h}
	if w >= desk.SideBySide {
		return body
	}
	for m.at = range m.proposed() {
		body.Under = max(body.Under, min(len(m.choices(s, w, moving.PanelHeight).rows), moving.PanelHeight))
	}
	return body
}

// panel is what stands beside the plan or under it.
func (m screen) panel(s desk.State, w, h int) []string {
	switch {
	case m.explaining:
		return m.explanations(s, w, h).rows
	case m.choosing:
		return m.choices(s, w, h).rows
	case m.tapes.open:
		return m.tapeRows(s, w, h).rows
	case m.Typing():
		return m.prompt.Rows(m.heading(s), m.asks(m.prompt.Kind, s), s, w, h)
	}
	rows := m.above(s, w)
	return append(rows, worst(s).Rows(s, m.top, w, h-len(rows))...)
}

// above is what stands above the list of the worst.
func (m screen) above(s desk.State, w int) []string {
	return moving.Leaned(append(m.where(s, w), moving.Notes(s, w)...), s, w)
}

// beside is where that list stands.
func (m screen) beside(s desk.State) moving.Panel {
	return moving.Panel{Body: m.body(s, m.w, m.h), Above: func(w, _ int) int { return len(m.above(s, w)) }}
}

// worst are the findings of the cut: a move changes those of the cut, or of what is bolted on it, beside something else.
func worst(s desk.State) (l moving.Worst) {
	for _, f := range rules.ForPeople(s.Result.Findings) {
		switch {
		case f.WithCut():
			l.Moved = append(l.Moved, f)
		case f.Rule.AtCut:
			l.Rest = append(l.Rest, f)
		}
	}
	return l.Parted()
}
