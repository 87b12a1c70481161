package checks

import (
	"fmt"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// verdictWidth is the column of the verdict's word, with a blank on both sides.
const verdictWidth = 10

// column is one column of numbers: its head, and how a finding's number is written.
type column struct {
	head    string
	write   func(rules.Finding) string
	figures desk.Figures
	width   int
}

const (
	between   = 2  // columns in front of each column
	leastName = 30 // columns of what a finding is of; where found and asked leave less they go, and the picked finding says them
)

// columns are the columns of numbers in a list of w columns, wide enough for every finding listed.
func columns(listed []*rules.Finding, s desk.State, w int) []column {
	u := s.Settings.Units
	cols := []column{
		{head: "found", write: func(f rules.Finding) string { return words.InColumn(f.Value, f.Rule.Unit, u) }},
		{head: "asked", write: func(f rules.Finding) string { return asked(f, s) }},
		{head: "margin", write: func(f rules.Finding) string { return words.Signed(f, u) }},
		{head: desk.PlusMinusHead, write: func(f rules.Finding) string { return words.PlusMinus(f, u) }},
	}
	taken := verdictWidth
	for i := len(cols) - 1; i >= 0; i-- {
		cols[i].measure(listed, cols[i+1:])
		taken += between + cols[i].width
	}
	if w-taken < leastName {
		cols = cols[2:]
	}
	return cols
}

// measure makes a column as wide as its figures take. One that nothing stands behind in the next column runs on into that: a single
// "826.7 mm/m" would else take six columns from every name.
func (c *column) measure(listed []*rules.Finding, next []column) {
	long := desk.Figures{}
	for _, f := range listed {
		text := c.write(*f)
		long = long.With(text)
		if len(next) > 0 && next[0].write(*f) == "" {
			c.figures = c.figures.RunsOn(text)
		} else {
			c.figures = c.figures.With(text)
		}
	}
	if len(next) > 0 && long.Width()-c.figures.Width() > next[0].width {
		c.figures = long
	}
	c.width = max(desk.Width(c.head), c.figures.Width())
}

// cell is a finding's number as it stands in the column, headed what stands above them.
func (c *column) cell(f rules.Finding) string {
	return blanks(c.width-c.figures.Width()) + c.figures.Write(c.write(f))
}

func (c *column) headed() string { return blanks(c.width-desk.Width(c.head)) + c.head }

func blanks(n int) string { return strings.Repeat(" ", max(0, n)) }

// asked is what the rule asks for: the least has a sign in front, as has the most.
func asked(f rules.Finding, s desk.State) string {
	if !f.Required.Set {
		return "?"
	}
	sign := "≥ "
	if f.Rule.Sense == rules.Most {
		sign = "≤ "
	}
	return sign + words.InColumn(f.Required.Value, f.Rule.Unit, s.Settings.Units)
}

// listView is the list in h rows of w columns, its head first.
func (m screen) listView(s desk.State, w, h int) []string {
	st, listed := s.Settings.Styles(), m.listed(s)
	title := fmt.Sprintf("%s: %s (%d of %d)", m.Title(), m.only, len(listed), len(s.Result.Findings))
	if len(listed) == 0 {
		return []string{st.Title.Render(title), "", nobody(m.only, s)}
	}
	cols := columns(listed, s, w)
	first, room := m.first(s, h-listHead), max(0, h-listHead)
	rows := []string{st.ListTitle(title, first, max(0, len(listed)-first-room), w), st.Faint.Render(cells(legend(s), cols, w, (*column).headed))}
	here := m.index(s)
	for i := first; i < len(listed) && len(rows) < h; i++ {
		rows = append(rows, m.row(*listed[i], i == here, cols, s, w))
	}
	return rows
}

// legend says above the list what its signs are, and its figures without a unit.
func legend(s desk.State) string {
	text := " " + words.DeadlyIs
	if bare := words.BareIs(s.Settings.Units); bare != "" {
		text += "; " + bare
	}
	return text
}

// listHead is how many rows stand above the findings of a list.
const listHead = 2

// first is the first finding shown in a list with room for so many.
func (m screen) first(s desk.State, room int) int {
	at := m.index(s)
	return desk.InSight(m.top, at, at, len(m.listed(s)), room)
}

// scrolled is the screen with its list where it shows what is picked: from there it goes on.
func (m screen) scrolled(s desk.State) screen {
	room := m.listRows(s)
	switch {
	case m.large || m.w == 0:
	case m.next:
		m.top = m.firstAdvice(s, room)
	default:
		m.top = m.first(s, room)
	}
	return m
}

// filled is that with no row of the list left free at its end, as a tap leaves where less is said of what is picked since.
func (m screen) filled(s desk.State) screen {
	n := len(m.listed(s))
	if m.next {
		n = len(s.Next.Advice)
	}
	if !m.large && m.w > 0 {
		m.top = desk.Filled(m.top, n, m.listRows(s))
	}
	return m.scrolled(s)
}

// nobody says why a list is empty.
func nobody(only filter, s desk.State) string {
	switch {
	case len(s.Result.Findings) == 0:
		return "Nothing could be checked yet: measure the floor, enter what is under it, place a cut."
	case only == foulOnly:
		return "Nothing is foul of what was entered."
	}
	return "Nothing is foul or doubtful of what was entered."
}

func (m screen) row(f rules.Finding, here bool, cols []column, s desk.State, w int) string {
	st := s.Settings.Styles()
	word := desk.VerdictWord(f.Verdict)
	rest := cells(words.Named(f), cols, w-verdictWidth, func(c *column) string { return c.cell(f) })
	if here {
		return st.Here.Render("▶" + desk.FitRow(word, verdictWidth-1) + rest)
	}
	return " " + st.Verdict(f.Verdict).Render(word) + strings.Repeat(" ", max(0, verdictWidth-1-len(word))) + rest
}

// cells writes a row: text, and the numbers at its end, each wider than its column in the room of the next. Text that is long ends a blank
// before the first number.
func cells(text string, cols []column, w int, write func(*column) string) string {
	numbers, over := "", 0
	for i := range cols {
		number := blanks(between) + write(&cols[i])
		taken := min(over, leading(number))
		over += desk.Width(number) - between - cols[i].width - taken
		numbers += number[taken:]
	}
	room := w - desk.Width(numbers)
	more := max(0, min(leading(numbers)-1, desk.Width(text)-room))
	return desk.FitRow(text, room+more) + numbers[more:]
}

// leading is how many blanks a text begins with.
func leading(text string) int { return len(text) - len(strings.TrimLeft(text, " ")) }
