package marks

import (
	"fmt"
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
	rows := []string{s.Settings.Styles().Title.Render("Marks")}
	all := items(s)
	first, last := m.window(len(all), h-1)
	for i := first; i < last; i++ {
		rows = append(rows, row(s, all[i], i == m.index(s), w, all[i].short(s.Settings)))
	}
	return strings.Join(rows, "\n")
}

// viewTable lists the marks with what the tape must say at each, from the side it is marked from.
func (m screen) viewTable(s desk.State, w, h int) string {
	st := s.Settings.Styles()
	head := fmt.Sprintf("%-20s %-6s %9s %9s %9s", "      mark", "from", desk.Datum(&s.Job.Datum, 9), desk.Left(s.Settings), desk.Right(s.Settings))
	title := "All marks, " + s.Settings.Units.String()
	if left := len(leftOf(s, items(s))); left > 0 {
		title += fmt.Sprintf(": %d not made", left)
	} else {
		title += ": all made"
	}
	rows := []string{st.Title.Render(title), st.Faint.Render(head)}
	all := items(s)
	first, last := m.window(len(all), h-2)
	for i := first; i < last; i++ {
		rows = append(rows, row(s, all[i], i == m.index(s), w, all[i].tableRow(s.Settings)))
	}
	return strings.Join(rows, "\n")
}

func (it item) tableRow(set desk.Settings) string {
	if it.check != nil {
		return fmt.Sprintf("%-41s %9s", words.CheckText(*it.check, set), survey.Format(it.check.Length, set.Units))
	}
	return markRow(*it.mark, set.Units)
}

func markRow(mark rules.Mark, u survey.Units) string {
	from, bumper, left, right := "below", mark.Below.Bumper, mark.Below.Left, mark.Below.Right
	if a := mark.Above; a != nil {
		from, bumper, left, right = "above", a.Bumper, a.Left, a.Right
	}
	return fmt.Sprintf("%-14s %-6s %9s %9s %9s", mark.Words, from, survey.Format(bumper, u), survey.Format(left, u), survey.Format(right, u))
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

// window is the stretch of n rows, at most h long, that keeps the one picked in sight, and else stays as it was: no row goes
// from under a thumb.
func (m screen) window(n, h int) (first, last int) {
	at := max(0, min(m.at, n-1))
	first = max(0, min(max(min(m.first, at), at-h+1), n-h))
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
	m.first, _ = m.window(len(items(s)), m.h-m.listHead())
	return m
}
