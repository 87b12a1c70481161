package marks

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// pinPage shows the two arcs in place of the tape's readings.
func (m screen) pinPage(mark rules.Mark, s desk.State, w, h int) []string {
	two := m.pinReadings(mark, s)
	rows := pinWords(s, w)
	for _, text := range m.inTheWay(mark, s, h) {
		rows = append(rows, desk.Wrapped(s.Settings.Styles().Doubtful, text, w)...)
	}
	if h >= len(rows)+14 {
		rows = append(rows, pinDrawing(two, s)...)
	}
	high := (h - len(rows)) / 2
	rows = append(rows, figure(two[0], s, w, high)...)
	return append(rows, figure(two[1], s, w, high)...)
}

// pinWords says what the two pins are.
func pinWords(s desk.State, w int) []string {
	out := desk.Length(s.Job.Pins(), s.Settings.Units)
	return desk.Wrapped(s.Settings.Styles().Plain,
		"A check: two "+pinsAre(s.Job.Datum)+" on the "+s.Job.Datum.Line()+", each "+out+" out from the centreline. Tape from each; the arcs cross on the mark.", w)
}

// pinsAre is what the tapes of the arcs start at.
func pinsAre(d vehicles.Datum) string {
	if d.PinsOn == vehicles.Batten {
		return "marks on a straight batten, clamped with its edge"
	}
	return "pins"
}

// pinDrawing shows the two tapes from above, the van's nose to the right.
func pinDrawing(two [2]reading, s desk.State) []string {
	st := s.Settings.Styles()
	of := func(r reading) string {
		return st.Strong.Render(desk.Length(r.mm, s.Settings.Units)) + " " + desk.PlusMinus95(r.sigma, s.Settings.Units)
	}
	left, right := of(two[0]), of(two[1])
	pad := func(word string) string { return word + strings.Repeat(" ", max(0, 10-len([]rune(word)))) }
	return []string{
		pad(desk.Left(s.Settings)+" pin") + " o──── " + left + " ────╮",
		pad(desk.Datum(&s.Job.Datum, 9)) + " │                    × mark   nose ▶",
		pad(desk.Right(s.Settings)+" pin") + " o──── " + right + " ────╯",
	}
}
