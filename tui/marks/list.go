package marks

import (
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// listWidth is how many columns the list takes where it stands beside the mark.
const listWidth = 26

// viewList lists the marks with their ticks.
func (m screen) viewList(s desk.State, w, h int) string {
	all := items(s)
	first, last := m.window(len(all), h-1)
	rows := []string{s.Settings.Styles().ListTitle("Marks", first, len(all)-last, w)}
	for i := first; i < last; i++ {
		rows = append(rows, row(s, all[i], i == m.index(s), w, all[i].short(s.Settings)))
	}
	return strings.Join(rows, "\n")
}

// viewTable lists the marks with what the tape must say at each, from the side it is marked from.
func (m screen) viewTable(s desk.State, w, h int) string {
	st := s.Settings.Styles()
	t := readingsOf(s)
	t.narrow = t.total() > w
	head := desk.FitRow("      mark", boxWidth+t.words) + t.from("from")
	for i, name := range [...]string{desk.Datum(&s.Job.Datum, 9), desk.Left(s.Settings), desk.Right(s.Settings)} {
		head += "  " + strings.Repeat(" ", t.width(i)-desk.Width(name)) + name
	}
	title := "All marks, " + s.Settings.Units.String()
	if left := len(leftOf(s, t.items)); left > 0 {
		title += fmt.Sprintf(": %d not made", left)
	} else {
		title += ": all made"
	}
	if more := waiting(s); more != "" {
		title += "; " + more
	}
	under := underTable(s, t, w, h)
	first, last := m.window(len(t.items), h-2-len(under))
	rows := []string{st.ListTitle(title, first, len(t.items)-last, w), st.Faint.Render(desk.FitRow(head, w))}
	for i := first; i < last; i++ {
		rows = append(rows, row(s, t.items[i], i == m.index(s), w, t.row(t.items[i], s.Settings)))
	}
	return strings.Join(append(rows, under...), "\n")
}

// underTable is what stands under all marks: the pilot holes that are there, which marks moved since the pilot was measured, and where the
// stubs will be. It takes no more than a third of the rows.
func underTable(s desk.State, t readings, w, h int) (rows []string) {
	for i := range s.Marks.Holes { // nothing to tick
		rows = append(rows, desk.FitRow(strings.Repeat(" ", boxWidth)+t.row(item{mark: &s.Marks.Holes[i]}, s.Settings), w))
	}
	for _, text := range afterwards(s) {
		rows = append(rows, desk.Wrapped(s.Settings.Styles().Plain, text, w)...)
	}
	return rows[:min(len(rows), h/3)]
}

// afterwards are lines behind all marks: those that moved since the pilot was measured, with how far, and the stubs.
func afterwards(s desk.State) (lines []string) {
	for _, text := range words.MovedMarks(s.Marks.Moved, s.Settings) {
		lines = append(lines, text+".")
	}
	var stubs []string
	for _, m := range s.Marks.Stubs {
		_, texts := tapes(m, s.Settings.Units)
		stubs = append(stubs, m.Words+" "+strings.Join(texts[:], ", "))
	}
	if len(stubs) > 0 {
		from := fmt.Sprintf("from the %s, the %s and the %s edge", s.Job.Datum.Called(), desk.Left(s.Settings), desk.Right(s.Settings))
		lines = append(lines, "Stubs, "+from+", above; nothing to tick, they go with the disc: "+strings.Join(stubs, "; ")+".")
	}
	return lines
}

// How wide the tick stands in front of a mark, the side it is marked from, and a column of readings at least.
const (
	boxWidth   = 6
	fromWidth  = 5
	leastWidth = 9
)

// readings are the marks with the columns of their readings: from the datum, from the left edge, from the right one.
type readings struct {
	items   []item
	words   int
	columns [3]desk.Figures
	narrow  bool // there is no room for from which side each is marked
}

// total is how many columns a whole row takes.
func (t readings) total() int {
	return boxWidth + t.words + 2 + fromWidth + 3*2 + t.width(0) + t.width(1) + t.width(2)
}

// from is a cell of the side that a mark is marked from, with the gap before it.
func (t readings) from(text string) string {
	if t.narrow {
		return ""
	}
	return "  " + desk.FitRow(text, fromWidth)
}

func readingsOf(s desk.State) readings {
	t := readings{items: items(s), words: 14}
	measured := slices.Clone(t.items)
	for i := range s.Marks.Holes {
		measured = append(measured, item{mark: &s.Marks.Holes[i]})
	}
	for _, it := range measured {
		if it.mark == nil {
			continue
		}
		t.words = max(t.words, desk.Width(it.mark.Words))
		_, texts := tapes(*it.mark, s.Settings.Units)
		for i, text := range texts {
			t.columns[i] = t.columns[i].With(text)
		}
	}
	for _, it := range t.items {
		if it.check != nil { // its length stands under the last readings
			t.columns[2] = t.columns[2].With(survey.Format(it.check.Length, s.Settings.Units))
		}
	}
	return t
}

func (t readings) width(i int) int { return max(leastWidth, t.columns[i].Width()) }

// cell is a reading as it stands in its column.
func (t readings) cell(i int, text string) string {
	text = t.columns[i].Write(text)
	return "  " + strings.Repeat(" ", t.width(i)-desk.Width(text)) + text
}

func (t readings) row(it item, set desk.Settings) string {
	if it.check != nil {
		room := t.words + desk.Width(t.from("")) + 2 + t.width(0) + 2 + t.width(1)
		return desk.FitRow(words.CheckText(*it.check, set), room) + t.cell(2, survey.Format(it.check.Length, set.Units))
	}
	from, texts := tapes(*it.mark, set.Units)
	out := desk.FitRow(it.mark.Words, t.words) + t.from(from)
	for i, text := range texts {
		out += t.cell(i, text)
	}
	return out
}

// tapes are a mark's readings on the side it is marked from.
func tapes(mark rules.Mark, u survey.Units) (from string, texts [3]string) {
	from, at := "below", [3]float64{mark.Below.Bumper, mark.Below.Left, mark.Below.Right}
	if a := mark.Above; a != nil {
		from, at = "above", [3]float64{a.Bumper, a.Left, a.Right}
	}
	for i, mm := range at {
		texts[i] = survey.Format(mm, u)
	}
	return from, texts
}

func row(s desk.State, it item, here bool, w int, text string) string {
	box, pointer := "[ ] ", "  "
	if s.Ticked[it.id()] {
		box = "[x] "
	}
	if here {
		pointer = "▶ "
	}
	text = desk.FitRow(pointer+box+text, w)
	if here {
		return s.Settings.Styles().Here.Render(text)
	}
	return text
}

// window is the stretch of n rows, at most h long, that keeps the one picked in sight, and else stays as it was.
func (m screen) window(n, h int) (first, last int) {
	at := max(0, min(m.at, n-1))
	first = desk.InSight(desk.Filled(m.first, n, h), at, at, n, h)
	return first, min(n, first+max(h, 0))
}

// listHead is how many rows stand above the marks of the list, or of the table.
func (m screen) listHead() int {
	if m.page == table {
		return 2
	}
	return 1
}

// settled is the screen with the list where it shows the mark picked.
func (m screen) settled(s desk.State) screen {
	m.first, _ = m.window(len(items(s)), m.listRoom(s))
	return m
}

// listRoom is how many rows the marks have in the list, or in the table.
func (m screen) listRoom(s desk.State) int {
	room := m.h - m.listHead()
	if m.page == table && m.stage(s) == marking {
		t := readingsOf(s)
		t.narrow = t.total() > m.w
		room -= len(underTable(s, t, m.w, m.h))
	}
	return room
}
