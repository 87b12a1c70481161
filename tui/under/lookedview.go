package under

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// The rows of the panel beside the kinds themselves.
const (
	headRows = 2 // the lists, and where one looks
	askRows  = 2 // how to look for the kind that the keys act on
)

// tabs are what the lists are called.
var tabs = [...]string{vehicles.AtCut: "at the cut", vehicles.AtRuns: "at the runs", vehicles.AtOutlet: "openings"}

// tab is how a list stands in the row of them, with how many of its kinds are left.
func tab(list vehicles.LookList, s desk.State) string {
	count := "-"
	if s.Job.HasToLookRound(list) {
		count = fmt.Sprint(len(left(list, s)))
	}
	return " " + tabs[list] + " " + count + " "
}

// tabAt is the list whose name is at column x of row y of the panel.
func tabAt(x, y int, s desk.State) (list vehicles.LookList, ok bool) {
	if y != 0 {
		return 0, false
	}
	for _, list := range vehicles.LookLists {
		w := desk.Width(tab(list, s))
		if x < w {
			return list, x >= 0
		}
		x -= w + 1
	}
	return 0, false
}

// paintTabs paints the row of lists.
func (l looking) paintTabs(s desk.State, w int) string {
	look := s.Settings.Styles()
	var all []string
	for _, list := range vehicles.LookLists {
		style := look.Key
		if list == l.list {
			style = look.Here
		}
		all = append(all, style.Render(tab(list, s)))
	}
	return desk.FitPainted(strings.Join(all, " "), w)
}

// rows are the kinds as they are painted.
func (l looking) rows(s desk.State, short bool) []form.Row {
	all := kinds(l.list, s)
	out := make([]form.Row, len(all))
	for i, k := range all {
		out[i] = form.Row{
			Mark: string(l.list.KindOf(k.kind).Letter), Text: k.kind, Right: k.says(short),
			Fault: k.asked && k.entered == 0 && !k.looked,
		}
	}
	return out
}

// paintLooked paints the lists, the kinds of the one that is picked, and how to look for the kind that the keys act on.
func (m Screen) paintLooked(s desk.State, w, h int) string {
	l, look := m.looking, s.Settings.Styles()
	unseen := l.unseen(s, w, h-headRows-askRows)
	title := look.ListTitle("Looked for "+roundWhat(l.list, s), unseen[0], unseen[1], w)
	asks := l.list.KindOf(l.list.Kinds()[l.kind()]).Asks
	foot := desk.Fit(strings.Join(desk.Wrapped(look.Strong, asks, w), "\n"), w, askRows)
	return strings.Join([]string{l.paintTabs(s, w), title, l.paintKinds(s, w, h-headRows-askRows), foot}, "\n")
}

// paintKinds paints the kinds into h rows.
func (l looking) paintKinds(s desk.State, w, h int) string {
	two, look := l.inTwo(w, h), s.Settings.Styles()
	rows := l.rows(s, two)
	if !two {
		return form.PaintRows(rows, l.top, l.kind(), w, h, look)
	}
	n := (len(rows) + 1) / 2
	first := form.PaintRows(rows[:n], l.top, l.kind(), w/2-1, h, look)
	second := form.PaintRows(rows[n:], l.top, l.kind()-n, w-w/2, h, look)
	return lipgloss.JoinHorizontal(lipgloss.Top, first, " ", second)
}

// unseen are how many kinds are above and below those that are seen in h rows.
func (l looking) unseen(s desk.State, w, h int) (unseen [2]int) {
	rows := l.rows(s, false)
	if !l.inTwo(w, h) {
		return form.Unseen(rows, l.top, l.kind(), h)
	}
	n := (len(rows) + 1) / 2
	first, second := form.Unseen(rows[:n], l.top, l.kind(), h), form.Unseen(rows[n:], l.top, l.kind()-n, h)
	return [2]int{first[0] + second[0], first[1] + second[1]}
}

// kept are the lists scrolled in the panel to where the kind that the keys act on is seen: from there they go on.
func (l looking) kept(panel entryscreen.Area, s desk.State) looking {
	rows, at, h := l.rows(s, false), l.kind(), panel.H-headRows-askRows
	if l.inTwo(panel.W, h) {
		n := (len(rows) + 1) / 2
		rows, at = rows[:n], at%n
	}
	l.top = form.Top(rows, l.top, at, h, true)
	return l
}

// inTwo says whether the kinds stand in two columns: where h rows do not hold them and the columns do.
func (l looking) inTwo(w, h int) bool { return h < len(l.list.Kinds()) && w >= 56 }

// lookedAt is the kind at column x and row y of the panel as painted.
func (l looking) lookedAt(x, y, w, h int, s desk.State) (kind int, ok bool) {
	rows := l.rows(s, false)
	n := (len(rows) + 1) / 2
	y, h = y-headRows, h-headRows-askRows
	switch {
	case y < 0 || y >= h:
		return 0, false
	case !l.inTwo(w, h):
		return form.RowAt(rows, l.top, l.kind(), h, y)
	case x < w/2:
		return form.RowAt(rows[:n], l.top, l.kind(), h, y)
	}
	kind, ok = form.RowAt(rows[n:], l.top, l.kind()-n, h, y)
	return kind + n, ok
}
