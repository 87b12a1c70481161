package form

import (
	"slices"
	"strings"

	"bench.example/undermark/tui/desk"
)

// Row is a row of a list to choose from.
type Row struct {
	Head  string // a line above the row
	Mark  string // a letter or two in front
	Text  string
	Right string // at the right end: how it stands
	Fault bool   // Right is something wrong
	Value bool   // Right is what the row is there for
}

// listLine is a row as painted: row -1 is a heading.
type listLine struct {
	row  int
	text string
}

func listLines(rows []Row) []listLine {
	out := make([]listLine, 0, len(rows)+len(rows)/8)
	for i, r := range rows {
		if r.Head != "" {
			out = append(out, listLine{-1, r.Head})
		}
		out = append(out, listLine{i, ""})
	}
	return out
}

// Height is how many lines rows take, their heads among them.
func Height(rows []Row) int { return len(listLines(rows)) }

// listTop is the first line to show so that row at is seen, with the heading above it: top, where it was, while it is.
func listTop(lines []listLine, top, at, h int) int {
	y := slices.IndexFunc(lines, func(l listLine) bool { return l.row == at })
	if y < 0 {
		return desk.Filled(top, len(lines), h)
	}
	from := y
	if y > 0 && lines[y-1].row < 0 {
		from--
	}
	return desk.InSight(top, from, y, len(lines), h)
}

// Top is the first line of rows that is seen when they are painted into h lines; filled leaves none of those free at the end.
func Top(rows []Row, top, at, h int, filled bool) int {
	lines := listLines(rows)
	if filled {
		top = desk.Filled(top, len(lines), h)
	}
	return listTop(lines, top, at, h)
}

// Shown are the rows, from up to to, that are seen when rows are painted into h lines: what takes work to say need be said of
// these alone. Where the list stood before is top.
func Shown(rows []Row, top, at, h int) (from, to int) {
	lines := listLines(rows)
	top = listTop(lines, top, at, h)
	seen := slices.DeleteFunc(lines[top:min(top+max(h, 0), len(lines))], func(l listLine) bool { return l.row < 0 })
	if len(seen) == 0 {
		return 0, 0
	}
	return seen[0].row, seen[len(seen)-1].row + 1
}

// Unseen are how many rows are above and below those that are seen when they are painted into h lines.
func Unseen(rows []Row, top, at, h int) [2]int {
	from, to := Shown(rows, top, at, h)
	return [2]int{from, len(rows) - to}
}

// PaintRows paints rows into h lines of w columns, scrolled from line top so that row at, the one the keys act on, shows.
func PaintRows(rows []Row, top, at, w, h int, look desk.Styles) string {
	lines := listLines(rows)
	lines = lines[listTop(lines, top, at, h):]
	mark := markWidth(rows)
	out := make([]string, h)
	for y := range out {
		switch {
		case y >= len(lines):
			out[y] = strings.Repeat(" ", w)
		case lines[y].row < 0:
			out[y] = desk.FitPainted(look.Title.Render(lines[y].text), w)
		default:
			out[y] = paintRow(rows[lines[y].row], lines[y].row == at, mark, w, look)
		}
	}
	return strings.Join(out, "\n")
}

// markWidth is how many columns the marks of a list take, with the blank behind them; none where no row has one.
func markWidth(rows []Row) int {
	longest := "" // in bytes: all marks of a list are letters of one kind, and to measure each costs more than to paint the list
	for _, r := range rows {
		if len(r.Mark) > len(longest) {
			longest = r.Mark
		}
	}
	if longest == "" {
		return 0
	}
	return desk.Width(longest) + 1
}

// paintRow paints a row: what stands at its right end may take half of it, and whatever the text leaves.
func paintRow(r Row, here bool, markW, w int, look desk.Styles) string {
	mark := desk.FitRow(r.Mark, markW)
	room := max(1, w-2-markW)
	right := desk.Cut(r.Right, max(w/2, room-1-desk.Width(r.Text)))
	if right != "" {
		right, room = " "+right, room-1-desk.Width(right)
	}
	text := desk.FitRow(r.Text, max(1, room))
	if here {
		return look.Here.Render(desk.FitRow("▸ "+mark+text+right, w))
	}
	said := look.Faint
	switch {
	case r.Fault:
		said = look.Fault
	case r.Value:
		said = look.Plain
	}
	return desk.FitPainted("  "+look.Key.Render(mark)+text+said.Render(right), w)
}

// RowAt returns the row at line y of rows painted into h lines, false for a heading or nothing.
func RowAt(rows []Row, top, at, h, y int) (row int, ok bool) {
	if y < 0 || y >= h {
		return 0, false // above the list, or below it
	}
	lines := listLines(rows)
	y += listTop(lines, top, at, h)
	if y >= len(lines) || lines[y].row < 0 {
		return 0, false
	}
	return lines[y].row, true
}

// MoveIn answers a key that moves in a list of n rows; moved is false for any other key.
func MoveIn(key string, at, n, page int) (to int, moved bool) {
	switch key {
	case "up":
		at--
	case "down":
		at++
	case "pgup":
		at -= page
	case "pgdown":
		at += page
	case "home":
		at = 0
	case "end":
		at = n - 1
	default:
		return at, false
	}
	return max(0, min(at, n-1)), true
}
