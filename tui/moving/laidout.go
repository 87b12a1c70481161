package moving

import (
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// laidOut is the list of the worst as it stands in some rows and columns. No name in it is cut: what has no room beside its figures goes
// on in the next row.
type laidOut struct {
	title string // "" where there is no room for one
	shown []*rules.Finding
	names [][]string // of each of them, by rows
	rows  []int      // how many of those are seen
	top   int        // the first one shown
	last  int        // the top from which on the end of the list is seen
	foot  []string
	far   [2]int // from which row of the foot to which the far doubts have theirs

	margins, off desk.Figures // the columns of what may be shown
}

// lay lays the list out; with few rows its title gives way, then what no move changes. The last row says what is seen when that is not all.
func (l Worst) lay(s desk.State, top Scroll, w, h int) (out laidOut) {
	foot, far, room := l.unmovedRows(s, w, h), l.farRows(w, h), h
	why := l.whyClear(h)
	if room -= len(foot) + len(far) + len(why); room < 1 {
		foot, far, room = nil, nil, h
	}
	titled := room >= leastTitled
	if titled {
		room--
		out.title = headed(s, w)
	}
	room = max(room, 0)
	if out.last = l.last(s, w, room); out.last > 0 && len(foot) == 0 && room > 1 {
		room--
		out.last = l.last(s, w, room)
	}
	if out.top = max(0, min(top.First, out.last)); out.top != top.First {
		top.Skip = 0
	}
	if h > room && !titled && room < l.first(s, out.top, w)-top.Skip { // a name is seen whole before anything is said below it
		foot, far, why, room = nil, nil, nil, h
	}
	l.take(&out, s, top.Skip, w, room)
	if h < leastTold && slices.ContainsFunc(out.shown, func(f *rules.Finding) bool { return words.WithinItself(*f) }) {
		if room > 1 && l.elsewhere(s) != "" && out.height()+len(far)+1 >= h { // what is foul elsewhere is told as well: for that the last of the list goes
			out.shown, out.names, out.rows = nil, nil, nil
			l.take(&out, s, top.Skip, w, room-1)
			why = []string{words.ClearWithin}
		} else {
			out.foot = append(far, toldShort(out.seen(len(l.Moved)), w, h-out.height()-len(far))...)
			out.far[1] = len(far)
			return out
		}
	}
	switch seen := out.seen(len(l.Moved)); {
	case seen != "" && len(foot) > 0 && desk.Width(seen+". "+foot[0]) <= w:
		foot[0] = seen + ". " + foot[0]
	case seen != "" && len(foot) == 1 && desk.Width(bare(seen)+". "+foot[0]) <= w:
		foot[0] = bare(seen) + ". " + foot[0]
	case seen != "" && len(foot) > 1 && foot[0] == "":
		foot[0] = seen + "."
	case seen != "" && out.height() < h:
		foot = []string{seen}
	}
	at := 0
	if len(foot) > 1 { // what is seen of the list stands before them, the rest below
		at = 1
	}
	out.far = [2]int{at, at + len(far)}
	out.foot = append(slices.Insert(foot, at, far...), why...)
	return out
}

// toldShort is the last row of a list that has few, where it shows a margin within its ±: why that is clear, with what is seen where both fit.
func toldShort(seen string, w, room int) []string {
	switch both := seen + ". " + words.ClearWithin; {
	case room < 1:
		return nil
	case seen != "" && desk.Width(both) <= w:
		return []string{both}
	}
	return []string{words.ClearWithin}
}

// whyClear is the row that says why a margin may be less than its ± and clear, where a finding has such a margin and there is room.
func (l Worst) whyClear(h int) []string {
	if h < leastTold || !slices.ContainsFunc(l.Moved, func(f *rules.Finding) bool { return words.WithinItself(*f) }) {
		return nil
	}
	return []string{words.ClearWithin}
}

// leastTitled is from how many rows on a list has a title: the banner has the tally, and below that a row more of the list says more.
const leastTitled = 5

// leastTold is from how many rows on a list has a row of its own for what no move changes.
const leastTold = 10

// unmovedRows say what no move changes and what is not in the list, in as few rows as that takes; the first is left for what is seen where there
// is no room for that beside it. With few rows names go, then what is clear: that something is foul elsewhere is never left out.
func (l Worst) unmovedRows(s desk.State, w, h int) []string {
	elsewhere := l.elsewhere(s)
	switch {
	case h >= 2 && h < leastTitled && len(l.Far) > 0: // they have no row of their own
		return []string{l.inShort(s, w)}
	case h < 2 || len(l.Rest) == 0 && elsewhere == "":
		return nil
	}
	for _, text := range []string{unmoved(l.Rest, s), counted(l.Rest)} {
		one, rows := survey.Joined(". ", text, elsewhere), append(desk.Wrap(text, w), desk.Wrap(elsewhere, w)...)
		switch {
		case desk.Width(one)+seenWidth <= w:
			return []string{one}
		case h >= leastTold && len(rows) <= h/leastTold+2:
			return append([]string{""}, rows...)
		}
	}
	return []string{fitting(w, survey.Joined(". ", counted(l.Rest), elsewhere), Worst{Moved: l.Moved, Far: l.Far}.elsewhere(s))}
}

// bare is what is seen of a list without the key that scrolls it.
func bare(seen string) string { return strings.TrimSuffix(seen, scrolls) }

// seenWidth is how many columns what is seen of a list takes in front of what else its last row says.
const seenWidth = len("10-20 of 100 (PgDn). ")

// fitting is a text if it has room behind what is seen of a list, else a shorter one.
func fitting(w int, text, shorter string) string {
	if desk.Width(text)+seenWidth > w && shorter != "" {
		return shorter
	}
	return text
}

// first is how many rows the first finding takes where the list begins with it.
func (l Worst) first(s desk.State, at, w int) int {
	if at >= len(l.Moved) {
		return 0
	}
	figures := widthOf(columnsOf(l.Moved[at:min(at+2, len(l.Moved))], s)) // it has a neighbour at the most where that matters
	return len(nameRows(l.Moved[at], w, figures))
}

// take lays out what of the list stands in so many rows from its top on, of whose first finding so many rows are not seen.
func (l Worst) take(out *laidOut, s desk.State, skip, w, room int) {
	window := l.Moved[out.top:min(len(l.Moved), out.top+room)]
	out.margins, out.off = columnsOf(window, s)
	figures := widthOf(out.margins, out.off)
	for i, used := 0, 0; i < len(window); i++ {
		names := nameRows(window[i], w, figures)
		n := len(names)
		if i == 0 {
			n = max(n-skip, 1)
		}
		if used += n; used > room && i > 0 {
			break
		}
		out.shown, out.names, out.rows = append(out.shown, window[i]), append(out.names, names), append(out.rows, n)
	}
}

// last is the first finding from which on all others stand in so many rows.
func (l Worst) last(s desk.State, w, room int) int {
	first := max(0, len(l.Moved)-room)
	figures := widthOf(columnsOf(l.Moved[first:], s))
	for i, used := len(l.Moved)-1, 0; i >= first; i-- {
		if used += len(nameRows(l.Moved[i], w, figures)); used > room {
			return min(i+1, len(l.Moved)-1)
		}
	}
	return first
}

// height is how many rows the list takes with its title, without its last ones.
func (l laidOut) height() (h int) {
	if l.title != "" {
		h++
	}
	for _, n := range l.rows {
		h += n
	}
	return h
}

// at is the finding in a row of the list, counted from its first; below is the row of what stands under the list, -1 for none.
func (l laidOut) at(row int) (f *rules.Finding, below int) {
	if row < 0 {
		return nil, -1
	}
	for i, n := range l.rows {
		if row < n {
			return l.shown[i], -1
		}
		row -= n
	}
	return nil, row
}

// columnsOf are the columns of figures that findings have.
func columnsOf(findings []*rules.Finding, s desk.State) (margins, off desk.Figures) {
	for _, f := range findings {
		margins, off = margins.With(words.Signed(*f, s.Settings.Units)), off.With(words.PlusMinus(*f, s.Settings.Units))
	}
	return margins, off
}

// widthOf is how wide both columns are together.
func widthOf(margins, off desk.Figures) int { return margins.Width() + len("  ") + off.Width() }

// verdictWidth is how many columns the longest verdict takes, with the blank behind it.
const verdictWidth = 9

// nameRows is what a finding is of, whole: in the first row beside its figures, then below them too.
func nameRows(f *rules.Finding, w, figures int) []string {
	beside, below := w-verdictWidth-1-figures, w-verdictWidth
	name := words.Named(*f)
	if desk.Width(name) <= beside {
		return []string{name}
	}
	rows := desk.Wrap(f.About(), max(beside-2, 1))
	mark := strings.TrimSuffix(name, f.About())
	rest := strings.ReplaceAll(strings.Join(rows[1:], " "), "- ", "-")
	all := []string{mark + rows[0]}
	if rest == "" {
		return all
	}
	for _, row := range desk.Wrap(rest, max(below-2, 1)) {
		all = append(all, "  "+row)
	}
	return all
}

// findingRows are a verdict, what it is of by rows, and its figures at the end of the first.
func findingRows(f *rules.Finding, names []string, figures string, st desk.Styles, w int) (rows []string) {
	for i, name := range names {
		if i > 0 {
			rows = append(rows, desk.FitRow(strings.Repeat(" ", verdictWidth)+name, w))
			continue
		}
		rows = append(rows, findingRow(f, name, figures, st, w))
	}
	return rows
}

// findingRow is the first of them, with as much of a name as stands beside the figures.
func findingRow(f *rules.Finding, name, figures string, st desk.Styles, w int) string {
	word := desk.VerdictWord(f.Verdict)
	verdict := st.Verdict(f.Verdict).Render(word) + strings.Repeat(" ", max(0, verdictWidth-len(word)))
	return verdict + desk.FitRow(name, w-verdictWidth-1-desk.Width(figures)) + " " + figures
}
