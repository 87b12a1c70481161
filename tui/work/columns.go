package work

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// What came out otherwise and what comes of it, in two tables under each other.

// entry is a row of a table: a name with its verdict, and figures.
type entry struct {
	verdict rules.Verdict
	name    string
	figures []string
}

// rows are what came out otherwise and the findings that are others now, in rows of w columns.
func (c *comparison) rows(s desk.State, w int) []string {
	rows := c.deviated(s, w)
	if note := words.Unexplained(c.deviations); note != "" {
		rows = append(rows, desk.Wrapped(s.Settings.Styles().Fault, "! "+note, w)...)
	}
	return append(rows, c.findings(s, w)...)
}

// deviated are what was planned, what was built, and by how much that is more.
func (c *comparison) deviated(s desk.State, w int) []string {
	list := make([]entry, len(c.deviations))
	for i, d := range c.deviations {
		cells := words.Deviation(d, s.Settings.Units)
		list[i] = entry{d.Verdict, d.Verdict.String() + " " + cells[0], cells[1:]}
	}
	return table(words.DeviationHeads[0], words.DeviationHeads[1:], list, s.Settings.Styles(), w)
}

// findings are those that came out otherwise, their margins as built and as planned.
func (c *comparison) findings(s desk.State, w int) []string {
	u := s.Settings.Units
	list := make([]entry, len(c.differ))
	for i, p := range c.differ {
		verdict, of, built, planned := rules.Clear, p.Planned, "", ""
		if p.Built != nil {
			verdict, of, built = p.Built.Verdict, p.Built, words.Signed(*p.Built, u)
		}
		if p.Planned != nil {
			planned = words.Signed(*p.Planned, u)
		}
		list[i] = entry{verdict, words.BuiltVerdict(p) + " " + words.Named(*of), []string{built, planned}}
	}
	return table("margin", []string{"built", "planned"}, list, s.Settings.Styles(), w)
}

const (
	leastName = 30 // columns of a name beside two figures
	gap       = 2  // columns in front of a figure
)

// columns are the columns of figures of a table, and their heads. One that nothing stands in is left out.
type columns struct {
	figures []desk.Figures
	heads   []string
}

func columnsOf(heads []string, list []entry) columns {
	c := columns{make([]desk.Figures, len(heads)), heads}
	for i := range heads {
		for _, e := range list {
			c.figures[i] = c.figures[i].With(e.figures[i])
		}
	}
	return c
}

// width is how many columns of the screen a column takes.
func (c columns) width(i int) int {
	if c.figures[i].Width() == 0 {
		return 0
	}
	return gap + max(c.figures[i].Width(), desk.Width(c.heads[i]))
}

// row puts texts into the columns.
func (c columns) row(write func(i int) string) (text string) {
	for i := range c.heads {
		if w := c.width(i); w > 0 {
			cell := write(i)
			text += strings.Repeat(" ", w-desk.Width(cell)) + cell
		}
	}
	return text
}

// table paints rows of w columns: names, and figures with their points under each other below their heads. A name for which there is too
// little room has a row of its own.
func table(title string, heads []string, list []entry, st desk.Styles, w int) []string {
	c, room, widest := columnsOf(heads, list), w, 0
	for i := range heads {
		room -= c.width(i)
	}
	for _, e := range list {
		widest = max(widest, desk.Width(e.name))
	}
	out := []string{st.Faint.Render(desk.FitRow(title, room) + c.row(func(i int) string { return heads[i] }))}
	for _, e := range list {
		figures := st.Plain.Render(c.row(func(i int) string { return c.figures[i].Write(e.figures[i]) }))
		if room < min(leastName, widest) {
			out = append(out, st.Verdict(e.verdict).Render(desk.FitRow(e.name, w)), strings.Repeat(" ", max(0, room))+figures)
			continue
		}
		out = append(out, st.Verdict(e.verdict).Render(desk.FitRow(e.name, room))+figures)
	}
	return out
}
