package marks

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/digits"
	"bench.example/undermark/tui/words"
)

// reading is one number the tape must say.
type reading struct {
	from  string  // "from the left edge"
	mm    float64 // what the tape says
	sigma float64 // of the mark, along this reading; only with hasSigma
	known bool    // sigma is given
}

// above says whether the mark is shown as marked from above.
func (m screen) above(mark rules.Mark) bool { return mark.Above != nil && !m.below }

// tapeReadings are the reading from the bumper, the one from the nearer side, and the one from the other side.
func (m screen) tapeReadings(mark rules.Mark, s desk.State) [3]reading {
	zero := m.sideZero(mark, s)
	left := reading{from: "from the " + desk.Left(s.Settings) + " edge" + zero, mm: mark.Below.Left}
	right := reading{from: "from the " + desk.Right(s.Settings) + " edge" + zero, mm: mark.Below.Right}
	bumper := reading{mm: mark.Below.Bumper}
	bumper.sigma, left.sigma, right.sigma = mark.Below.Sigma[0], mark.Below.Sigma[1], mark.Below.Sigma[1]
	if m.above(mark) {
		a := mark.Above
		bumper.mm, left.mm, right.mm = a.Bumper, a.Left, a.Right
		bumper.sigma, left.sigma, right.sigma = a.Sigma[0], a.Sigma[1], a.Sigma[1]
	}
	bumper.known, left.known, right.known = true, true, true
	bumper.from = "from the " + s.Job.Datum.Edge()
	if bumper.mm < 0 {
		bumper.from = "behind the " + s.Job.Datum.Edge()
	}
	if right.mm < left.mm {
		left, right = right, left
	}
	return [3]reading{bumper, left, right}
}

// sideZero says where the zero of a side edge hangs when the tape slopes from it.
func (m screen) sideZero(mark rules.Mark, s desk.State) string {
	drop, from := s.Job.Datum.SideBelow, "below floor"
	if m.above(mark) {
		drop, from = s.Job.Datum.SideAbove, "below the floor's top"
	}
	if drop.Or(0) == 0 {
		return ""
	}
	return ", zero " + desk.Length(drop.Value, s.Settings.Units) + " " + from
}

func (m screen) pinReadings(mark rules.Mark, s desk.State) [2]reading {
	of := func(side string, mm float64, way rules.TapeWay) reading {
		return reading{from: "from the " + side + " pin", mm: mm, sigma: rules.SigmaOf(&s.Result, mark, way), known: true}
	}
	return [2]reading{
		of(desk.Left(s.Settings), mark.Above.PinLeft, rules.FromLeftPin), of(desk.Right(s.Settings), mark.Above.PinRight, rules.FromRightPin),
	}
}

// viewMark paints one mark.
func (m screen) viewMark(s desk.State, w, h int) string {
	mark := m.mark(s)
	rows := m.head(s, mark, w)
	if m.page == pins && mark.Above != nil {
		rows = append(append(rows, banners(s, mark, w, false)...), movedRows(mark, s, w)...)
		return strings.Join(append(rows, m.pinPage(mark, s, w, h-len(rows))...), "\n")
	}
	three := m.tapeReadings(mark, s)
	rows = append(rows, m.overFigures(mark, s, w, h-len(rows))...)
	tail := []string{small(three[2], s)}
	switch left := h - len(rows); {
	case m.above(mark) && left >= roomy:
		tail = append(append(tail, ""), pinDrawing(m.pinReadings(mark, s), s)...)
	case m.above(mark) && left >= middling:
		p := m.pinReadings(mark, s)
		tail = append(tail, beside(small(p[0], s), small(p[1], s), w)...)
	}
	return strings.Join(append(append(rows, both(three[0], three[1], s, w, h-len(rows)-len(tail))...), tail...), "\n")
}

// leastFigures is how many rows the readings of a mark take with large figures: a row of words above three of figures for two of them, and the third.
const leastFigures = 9

// overFigures is what stands above the figures, both in h rows. Where that is too little it is said in fewer words, and what is left of it is cut, but for what
// says not to drill or saw: the figures are read from farther away than words are.
func (m screen) overFigures(mark rules.Mark, s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	rows := append(append(banners(s, mark, w, false), movedRows(mark, s, w)...), desk.Wrapped(st.Plain, m.hooked(mark, s)+m.edges(mark, s), w)...)
	var ways []string
	for _, text := range m.inTheWay(mark, s, h) {
		ways = append(ways, desk.Wrapped(st.Doubtful, text, w)...)
	}
	room := h - leastFigures
	if len(rows)+len(ways) <= room {
		return append(rows, ways...)
	}
	rows = append(append(banners(s, mark, w, true), movedRows(mark, s, w)...), ways...)
	rows = append(rows, desk.Wrapped(st.Plain, m.hooked(mark, s), w)...)
	return rows[:min(len(rows), max(room, len(warnings(s, w, true))))]
}

// movedRows say in w columns how far a mark lies from where it was.
func movedRows(mark rules.Mark, s desk.State, w int) []string {
	if text := moved(mark, s); text != "" {
		return desk.Wrapped(s.Settings.Styles().Strong, text, w)
	}
	return nil
}

// From how many rows on the pins are drawn under the figures, and from how many on their readings are given there.
const roomy, middling = 34, 18

// both writes two readings in h rows, with a blank row above each where that costs no size.
func both(a, b reading, s desk.State, w, h int) []string {
	first, second := figure(a, s, w, h/2), figure(b, s, w, h/2)
	var gap []string
	if len(first)+len(second)+2 <= h {
		gap = []string{""}
	}
	return slices.Concat(gap, first, gap, second)
}

// head names the mark, says from which side it is marked and whether it is made.
func (m screen) head(s desk.State, mark rules.Mark, w int) []string {
	return []string{m.headline(mark.Words, m.side(mark), s.Ticked[mark.Name], made, s, w)}
}

// headline is what is picked of the marks and the lengths, from which side, whether it is done and which of how many it is. Where that is too long its box alone says
// whether it is done, and then its name gives way.
func (m screen) headline(name, side string, ticked bool, says func(bool) string, s desk.State, w int) string {
	st, count := s.Settings.Styles(), m.count(s)
	box, look := "[ ]", st.Strong
	if ticked {
		box, look = "[x]", st.Clear
	}
	if side != "" {
		side = "  " + side
	}
	name = " " + name + " "
	room := w - desk.Width(side+"  "+box) - lipgloss.Width(count)
	if said := " " + says(ticked); desk.Width(name+said) <= room {
		box += said
	}
	return st.Here.Render(desk.Cut(name, room)) + st.Title.Render(side) + "  " + look.Render(box) + count
}

// made says whether a mark is made.
func made(ticked bool) string { return map[bool]string{true: "made", false: "not made"}[ticked] }

// side says from which side a mark is shown.
func (m screen) side(mark rules.Mark) string {
	if m.above(mark) {
		return "FROM ABOVE"
	}
	return "FROM BELOW"
}

// count says which of how many is shown.
func (m screen) count(s desk.State) string {
	return s.Settings.Styles().Faint.Render(fmt.Sprintf("   %d of %d", m.index(s)+1, len(items(s))))
}

// banners are what must stay in sight while marking, or the least of it.
func banners(s desk.State, mark rules.Mark, w int, brief bool) []string {
	rows := append(warnings(s, w, brief), standing(s, w)...)
	if off := pilotLine(s, brief); off != "" && mark.Name == s.Marks.Marks[0].Name {
		rows = append(rows, desk.Wrapped(s.Settings.Styles().Strong, off, w)...)
	}
	return rows
}

// warnings say what must not be drilled or sawn yet, and that nothing ties what stands above to what hangs below.
func warnings(s desk.State, w int, brief bool) (rows []string) {
	if slices.Contains(s.Result.Unchecked, rules.LacksTies) {
		rows = append(rows, untied(s, w, brief)...)
	}
	return append(rows, dangerRows(s, w)...)
}

// standing says how the job stands and what nobody has looked for, in one row where it fits.
func standing(s desk.State, w int) []string {
	st := s.Settings.Styles()
	at, others := words.SplitAtCut(s.Result.Findings)
	var parts []string
	worst := max(words.Worst(at), rules.Doubtful)
	switch {
	case words.Worst(at) != rules.Clear:
		parts = append(parts, "At the cut "+words.Tally(at))
	case words.Worst(others) != rules.Clear:
		parts, worst = append(parts, "Away from the cut "+words.Tally(others)), words.Worst(others)
	case s.Result.Verdict != rules.Clear:
		parts = append(parts, "The job is "+desk.VerdictWord(s.Result.Verdict))
	}
	if n := len(s.Result.Open()); n > 0 {
		parts = append(parts, fmt.Sprintf("%d kinds not looked for", n))
	}
	if len(parts) == 0 {
		return nil
	}
	return desk.Wrapped(st.Verdict(worst), strings.Join(parts, "; ")+".", w)
}

// untied says what having fewer than two matching points in use means for marking.
func untied(s desk.State, w int, brief bool) []string {
	st := s.Settings.Styles()
	if s.Marks.Pilot.Drilled == nil {
		return desk.Wrapped(st.Foul, " Not tied: drill the pilot only, then measure it from below. ", w)
	}
	text := "Not tied: what stands above may be off"
	if !brief {
		text += " from what hangs below"
	}
	return desk.Wrapped(st.Doubtful, text+".", w)
}

// pilotLine says where the pilot hole came out, briefly without what follows from that, or what a centre takes that was moved from it; "" before it is
// drilled.
func pilotLine(s desk.State, brief bool) string {
	switch {
	case s.Marks.Pilot.Drilled == nil:
		return words.OldPilot(&s.Result, s.Settings)
	case brief:
		return words.PilotOff(*s.Marks.Pilot, s.Settings) + "."
	}
	return words.PilotOff(*s.Marks.Pilot, s.Settings) + ". All else is set off the hole, not off the centre as meant"
}

// hooked says where the tape hangs.
func (m screen) hooked(mark rules.Mark, s desk.State) string {
	d, u := s.Job.Datum, s.Settings.Units
	if !m.above(mark) {
		if !d.HookBelow.Set {
			return "Hook on the " + d.Edge() + " and hold the tape level."
		}
		return "Hook on the " + d.Edge() + ", zero " + desk.Height(d.HookBelow.Value, u) + "."
	}
	text := "Hook on the " + d.Edge()
	if h := d.HookAbove.Or(0); h != 0 {
		text += ", zero " + desk.Length(h, u) + " below the floor's top"
	}
	if x := d.ShiftAbove.Or(0); x != 0 {
		text += ", " + desk.Length(max(x, -x), u) + map[bool]string{true: " ahead of", false: " behind"}[x > 0] + " the one used below"
	}
	return text + "."
}

// inTheWay says what stands where the tapes of a mark would lie, as it is shown in h rows.
func (m screen) inTheWay(mark rules.Mark, s desk.State, h int) []string {
	if !m.above(mark) {
		return nil
	}
	ways := slices.DeleteFunc(words.EveryTape(mark), func(way rules.TapeWay) bool { return way.OfPin() != (m.page == pins) })
	if m.page != pins && h < middling { // the farther side's tape is small print there
		ways = ways[:2]
	}
	return words.TapesInTheWay(&s.Result, mark, s.Settings, ways...)
}

// moved says how far a mark lies from where it was before the pilot hole was measured, "" where it lies there.
func moved(mark rules.Mark, s desk.State) string {
	for _, m := range s.Marks.Moved {
		if m.Name == mark.Name {
			return "Moved " + words.Moved(m.By, s.Settings) + " since the pilot was measured."
		}
	}
	return ""
}

// edges says which edges the left and the right one are, where somebody has said it.
func (m screen) edges(mark rules.Mark, s desk.State) string {
	text := s.Job.Datum.EdgesBelow
	if m.above(mark) {
		text = s.Job.Datum.EdgesAbove
	}
	if text == "" {
		return ""
	}
	return " Side edges: " + text + "."
}

// figure writes a reading with its number as large as h rows hold, its label with it.
func figure(r reading, s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	label := st.Title.Render(r.from) + "   " + st.Plain.Render(desk.Length(r.mm, s.Settings.Units))
	if r.known {
		label += " " + st.Plain.Render(desk.Within95(r.sigma, s.Settings.Units))
	}
	rows := []string{label}
	for _, row := range digits.Fit(whole(r.mm, s.Settings.Units), w, h-1) {
		rows = append(rows, st.Strong.Render(row))
	}
	return rows
}

// whole is a reading as it is marked: nobody sets a pencil to a tenth of a mm. It is rounded from what stands beside it.
func whole(mm float64, u survey.Units) string {
	if u == survey.Millimetres {
		mm = math.Round(math.Round(mm*10) / 10)
	}
	return survey.Format(mm, u)
}

// small writes a reading in one row.
func small(r reading, s desk.State) string {
	text := r.from + " " + s.Settings.Styles().Strong.Render(desk.Length(r.mm, s.Settings.Units))
	if r.known {
		text += " " + desk.PlusMinus95(r.sigma, s.Settings.Units)
	}
	return text
}

// beside are two painted texts in one row, or in two where that is too short.
func beside(a, b string, w int) []string {
	if row := a + "   " + b; lipgloss.Width(row) <= w {
		return []string{row}
	}
	return []string{a, b}
}
