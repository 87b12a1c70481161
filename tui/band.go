package tui

import (
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/digits"
)

// The band under the heading shows what is being taped in big figures, while a field of a length has the keys. The screen has the
// rows below it for a body.

// bands are how many rows the band has in a window of so many: a row of words and the figures.
var bands = []struct{ window, rows int }{{40, 11}, {27, 9}, {leastHeight, 6}}

// bandHeight is how many rows the band takes; 0 while there is none.
func (r *Root) bandHeight() int {
	if r.taped == nil || r.overlay() != nil {
		return 0
	}
	for _, b := range bands {
		if r.h >= b.window {
			return b.rows
		}
	}
	return 0
}

// retaped looks what is being taped now.
func (r *Root) retaped() {
	r.taped = nil
	if screen := r.screens[r.at]; r.desk.State.Settings.Big && !r.plain && screen.Typing() {
		r.taped = screen.Plain(r.desk.State).Taped
	}
}

// bandRows paint the band: what the tape is held to, and what it says, as it was typed.
func (r *Root) bandRows() []string {
	h := r.bandHeight()
	if h == 0 {
		return nil
	}
	st := r.desk.State.Settings.Styles()
	number, unit := parted(r.taped.Text, r.taped.Unit)
	rows := []string{st.Title.Render(measuredFrom(*r.taped, r.desk.State.Settings, r.w))}
	figures := digits.Fit(strings.ToUpper(number), r.w-desk.Width(unit)-1, h-1)
	for i, figure := range figures {
		row := st.Strong.Render(figure)
		if i == len(figures)-1 && number != "" {
			row += " " + st.Plain.Render(unit)
		}
		rows = append(rows, row)
	}
	return strings.Split(desk.Fit(strings.Join(rows, "\n"), r.w, h), "\n")
}

// measuredFrom says in w columns what the tape is held to: what the first letter of a reading says goes before what its field does. Where
// there is little room the field's own words stay whole.
func measuredFrom(t desk.Taped, s desk.Settings, w int) string {
	head := t.Head
	switch first := strings.ToUpper(strings.TrimSpace(t.Text) + " ")[0]; first {
	case 'L':
		head = "From the " + desk.Left(s) + " edge"
	case 'R':
		head = "From the " + desk.Right(s) + " edge"
	case '+':
		head = "On from the reading before"
	}
	label := strings.TrimSpace(t.Label)
	if room := w - desk.Width(label) - 2; desk.Width(head) > room {
		head = strings.TrimRight(desk.FitRow(head, max(0, room)), " ")
	}
	return desk.FitRow(strings.TrimPrefix(head+": "+label, ": "), w)
}

// parted parts a unit from the number that it was typed behind; a number without one is in the field's.
func parted(text, unit string) (number, its string) {
	text = strings.TrimSpace(text)
	number = strings.TrimRight(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ")
	switch {
	case number == "":
		return text, unit // one of the sides, so far
	case number != text:
		return strings.TrimSpace(number), text[len(number):]
	case strings.HasSuffix(text, `"`):
		return text, ""
	}
	return text, unit
}
