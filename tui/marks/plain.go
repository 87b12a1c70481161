package marks

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// Plain is what the screen says where nothing is drawn. What stands before the first mark is said as it is shown, and the marks
// behind it alone.
func (m screen) Plain(s desk.State) desk.Plain {
	if st := m.stage(s); st != marking {
		lines := aloud.Rows(gateRows(st, 0, s, aloud.Unbroken, aloud.Unbroken)...)
		p := desk.Plain{Here: lines, All: func() []string { return lines }}
		if st != faulty && st != noCut {
			p.Behind = func() []string { return m.lines(s) }
		}
		return p
	}
	return desk.Plain{
		Here: append(m.item(m.here(s), s), aloud.Of(m.index(s), len(items(s)))),
		All: func() []string {
			return append(aloud.Rows(banners(s, m.mark(s), aloud.Unbroken, false)...), m.lines(s)...)
		},
	}
}

// lines are all marks and lengths to check: how the tape hooks once, then a line for each and each side.
func (m screen) lines(s desk.State) (lines []string) {
	hooks := map[string]bool{}
	for _, it := range itemsOf(s, true) {
		if it.check != nil {
			lines = append(lines, aloud.Joined(m.item(it, s)...))
			continue
		}
		for _, side := range m.sidesOf(*it.mark) {
			if hook := side.said(*it.mark) + ": " + side.hooked(*it.mark, s); !hooks[hook] {
				hooks[hook] = true
				lines = append(lines, hook)
			}
			lines = append(lines, aloud.Joined(append([]string{it.mark.Words + ", " + made(s.Ticked[it.id()]) + ", " + side.said(*it.mark)},
				append(side.readings(*it.mark, s), side.everyWay(*it.mark, s)...)...)...))
		}
	}
	if off := pilotLine(s, false); off != "" {
		lines = append(lines, off)
	}
	for _, hole := range s.Marks.Holes {
		_, texts := tapes(hole, s.Settings.Units)
		lines = append(lines, aloud.Joined(hole.Words+", above, nothing to tick", strings.Join(texts[:], ", ")))
	}
	lines = append(lines, afterwards(s)...)
	if more := waiting(s); more != "" {
		lines = append(lines, more)
	}
	return append(lines, aloud.Rows(pinWords(s, aloud.Unbroken)...)...)
}

// sidesOf are the screen from above and from below, or from below alone for a mark that has no other side.
func (m screen) sidesOf(mark rules.Mark) []screen {
	over, under := m, m
	over.below, under.below = false, true
	if mark.Above == nil {
		return []screen{under}
	}
	return []screen{over, under}
}

// said is from which side a mark is shown, as one says it.
func (m screen) said(mark rules.Mark) string { return strings.ToLower(m.side(mark)) }

// item is a mark with what the tape must say there, or a length to check.
func (m screen) item(it item, s desk.State) []string {
	if it.check != nil {
		return aloud.Rows(
			words.CheckText(*it.check, s.Settings)+": "+desk.Length(it.check.Length, s.Settings.Units)+", "+taped(s.Ticked[it.id()]),
			meaning(*it.check), words.CheckInTheWay(&s.Result, *it.check, s.Settings),
		)
	}
	lines := aloud.Rows(it.mark.Words+", "+made(s.Ticked[it.id()]), m.said(*it.mark), m.hooked(*it.mark, s)+m.edges(*it.mark, s), moved(*it.mark, s))
	return append(append(lines, m.everyWay(*it.mark, s)...), m.readings(*it.mark, s)...)
}

// readings are what the tape must say at a mark, from the side it is shown from.
func (m screen) readings(mark rules.Mark, s desk.State) (lines []string) {
	for _, r := range m.tapeReadings(mark, s) {
		lines = append(lines, said(r, s))
	}
	if m.above(mark) {
		for _, r := range m.pinReadings(mark, s) {
			lines = append(lines, said(r, s))
		}
	}
	return lines
}

// said is a reading as a line, with how sure the mark is.
func said(r reading, s desk.State) string {
	text := r.from + " " + desk.Length(r.mm, s.Settings.Units)
	if r.known {
		text += " " + desk.Within95(r.sigma, s.Settings.Units)
	}
	return text
}

// everyWay says what stands in the way of any of a mark's tapes, where it is shown from above.
func (m screen) everyWay(mark rules.Mark, s desk.State) []string {
	if !m.above(mark) {
		return nil
	}
	return words.TapesInTheWay(&s.Result, mark, s.Settings, words.EveryTape(mark)...)
}
