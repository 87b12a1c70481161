package marks

import (
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// Plain is what the screen says where nothing is drawn. What stands before the first mark is said as it is shown, and the marks
// behind it alone.
func (m screen) Plain(s desk.State) desk.Plain {
	if st := m.stage(s); st != marking {
		lines := aloud.Rows(gateRows(st, s, aloud.Unbroken, aloud.Unbroken)...)
		p := desk.Plain{Here: lines, All: func() []string { return lines }}
		if st != faulty && st != noCut {
			p.Behind = func() []string { return m.lines(s) }
		}
		return p
	}
	return desk.Plain{
		Here: append(m.item(m.here(s), s), aloud.Of(m.index(s), len(items(s)))),
		All:  func() []string { return append(aloud.Rows(banners(s, m.mark(s), aloud.Unbroken)...), m.lines(s)...) },
	}
}

// lines are all marks and lengths to check.
func (m screen) lines(s desk.State) (lines []string) {
	for _, it := range items(s) {
		lines = append(lines, aloud.Joined(m.item(it, s)...))
		if it.mark != nil && it.mark.Above != nil {
			lines = append(lines, aloud.Joined("The other way", otherSide(m, *it.mark, s)))
		}
	}
	if off := pilotLine(s); off != "" {
		lines = append(lines, off)
	}
	return append(lines, pinWords(s, aloud.Unbroken)...)
}

// otherSide is how a mark from above is found from the side that is not shown.
func otherSide(m screen, mark rules.Mark, s desk.State) string {
	m.below = !m.below
	return aloud.Joined(m.readings(mark, s)...)
}

// item is a mark with what the tape must say there, or a length to check.
func (m screen) item(it item, s desk.State) []string {
	if it.check != nil {
		return []string{
			words.CheckText(*it.check, s.Settings) + ": " + desk.Length(it.check.Length, s.Settings.Units) + ", " + taped(s.Ticked[it.id()]),
			meaning(*it.check),
		}
	}
	lines := append([]string{it.mark.Words + ", " + made(s.Ticked[it.id()])}, m.readings(*it.mark, s)...)
	if it.mark.Above != nil {
		for _, r := range m.pinReadings(*it.mark, s) {
			lines = append(lines, said(r, s))
		}
	}
	return lines
}

// readings are what the tape must say at a mark, from the side it is shown from.
func (m screen) readings(mark rules.Mark, s desk.State) []string {
	lines := []string{m.side(mark), m.hooked(mark, s)}
	for _, r := range m.tapeReadings(mark, s) {
		lines = append(lines, said(r, s))
	}
	return lines
}

// said is a reading as a line, with how sure the mark is.
func said(r reading, s desk.State) string {
	text := r.from + " " + desk.Length(r.mm, s.Settings.Units)
	if r.known {
		text += " " + desk.PlusMinus95(r.sigma, s.Settings.Units) + " (95 %)"
	}
	return text
}
