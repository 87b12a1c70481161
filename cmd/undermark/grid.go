package main

import (
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles/harmless"
)

// grid is a table, its head first, if it has one. In the columns from first up to but not to last stand figures; behind them
// there may be some of text, of which the last is broken. A row of one cell is a title over the rows below it.
type grid struct {
	head        []string
	rows        [][]string
	first, last int
}

// between is how many blanks are between columns.
const between = 2

// grid writes a table. On a terminal figures stand under each other by their points and the text behind them is broken; where
// too little room is left for it each row has lines of its own. Elsewhere a row is a line, and tabs part its cells.
func (p *paper) grid(g grid) {
	if p.width == 0 {
		for _, cells := range g.all() {
			p.hung("", joined(cells, "\t"), 0)
		}
		return
	}
	columns := make([]desk.Figures, g.last)
	for _, cells := range g.rows {
		for i := g.first; i < min(g.last, len(cells)); i++ {
			columns[i] = columns[i].With(harmless.Text(cells[i]))
		}
	}
	starts, end := g.starts(columns)
	text := 0 // where the text behind the figures begins
	if len(starts) > g.last {
		text = starts[len(starts)-1]
	}
	if end > p.width && (text == 0 || p.width-text < leastText) {
		p.records(g)
		return
	}
	for i, cells := range g.all() {
		p.row(cells, starts, func(at int) string {
			if at < g.first || at >= g.last || g.head != nil && i == 0 {
				return harmless.Text(cells[at])
			}
			return columns[at].Write(harmless.Text(cells[at]))
		})
	}
}

// all are the rows with the head.
func (g *grid) all() [][]string {
	if g.head == nil {
		return g.rows
	}
	return append([][]string{g.head}, g.rows...)
}

// starts are where the columns begin, and where the longest row ends.
func (g *grid) starts(columns []desk.Figures) (starts []int, end int) {
	var widths []int
	for _, cells := range g.all() {
		for i, cell := range cells {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			if len(cells) > 1 {
				widths[i] = max(widths[i], desk.Width(harmless.Text(cell)))
			}
		}
	}
	for i, width := range widths {
		if i >= g.first && i < g.last {
			width = max(width, columns[i].Width())
		}
		starts, end = append(starts, end), end+width+between
	}
	return starts, end - between
}

// row writes a row whose last cell goes on below itself.
func (p *paper) row(cells []string, starts []int, cell func(int) string) {
	last := len(cells) - 1
	begin := ""
	for i := range last {
		begin += strings.Repeat(" ", starts[i]-desk.Width(begin)) + cell(i)
	}
	begin += strings.Repeat(" ", starts[last]-desk.Width(begin))
	if last == 0 {
		p.hung("", cell(last), 0)
		return
	}
	p.hung(begin, strings.TrimRight(cell(last), " "), starts[last])
}

// records writes each row of a table as a line with what it is of, one of its figures, each named, and one of its text.
func (p *paper) records(g grid) {
	const indent = 4
	below := strings.Repeat(" ", indent)
	for _, cells := range g.rows {
		if g.first > 0 {
			p.hung("", joined(cells[:min(g.first, len(cells))], "  "), indent)
		}
		if figures := g.figures(cells); len(figures) > 0 {
			p.whole(below[:indent*min(g.first, 1)], figures, indent)
		}
		var texts []string
		for i := g.last; i < len(cells) && len(cells) > 1; i++ {
			if text := g.named(i, ": ", cells[i]); text != "" && !g.unit(i) {
				texts = append(texts, text)
			}
		}
		if len(texts) > 0 {
			p.hung(below, joined(texts, "; "), indent)
		}
	}
}

// unit tells whether a column is the unit of the figure before it: it has no head.
func (g grid) unit(i int) bool { return i < len(g.head) && g.head[i] == "" }

// named is a cell with what its column is called.
func (g grid) named(i int, part, cell string) string {
	if i >= len(g.head) || cell == "" {
		return cell
	}
	if rest, is := strings.CutPrefix(g.head[i], "± "); is { // the sign is the figure's own
		return cell + " (" + rest + ")"
	}
	return g.head[i] + part + cell
}

// figures are those of a row, each named and with its unit.
func (g grid) figures(cells []string) (figures []string) {
	for i := g.first; i < min(g.last, len(cells)); i++ {
		if figure := g.named(i, " ", strings.TrimSpace(cells[i])); figure != "" && !g.unit(i) {
			figures = append(figures, figure)
		}
	}
	for i := g.first; i < len(cells); i++ {
		if n := len(figures); g.unit(i) && cells[i] != "" && n > 0 {
			figures[n-1] += " " + cells[i]
		}
	}
	return figures
}

// whole writes parts in a row, each whole, so that a figure stays with its name; they go on below at a column.
func (p *paper) whole(begin string, parts []string, column int) {
	row := ""
	for i, part := range parts {
		part = harmless.Text(part)
		if i < len(parts)-1 {
			part += ","
		}
		switch {
		case row == "":
			row = part
		case desk.Width(begin)+desk.Width(row)+1+desk.Width(part) <= p.width:
			row += " " + part
		default:
			p.hung(begin, row, column)
			begin, row = strings.Repeat(" ", column), part
		}
	}
	p.hung(begin, row, column)
}

// joined are cells in a line. What others wrote is harmless in it, and can't leave its cell.
func joined(cells []string, between string) string {
	safe := make([]string, len(cells))
	for i, cell := range cells {
		safe[i] = harmless.Text(cell)
	}
	return strings.Join(safe, between)
}
