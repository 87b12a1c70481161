package sheet

import (
	"strings"

	"bench.example/undermark/geometry/scene/vector"
)

// Table is rows under a head, which comes again on each page that the table goes on on. A column takes what its cells take; where that
// is more than there is, columns of text are broken into lines, those of figures never.
type Table struct {
	Cols []Col
	Rows []Row
	Size float64 // of its letters, mm; 0 for those of running text
}

// Col is a column.
type Col struct {
	Head   string
	Figure bool // it holds figures, which stand by their points
}

// Row is a row's cells. One with a single cell is a title over the rows below it.
type Row struct {
	Cells  []string
	Strong bool   // its first cell is bold
	Under  string // said under it, from its second column on
}

// The room between columns, mm: no less, and no more where there is more.
const between, most = 4, 9

// least is how narrow a table, or a column of broken text, may be, mm.
const least = 8

func (t Table) lay(f *flow) {
	if len(t.Rows) == 0 {
		return
	}
	t = t.filled()
	g := t.laidOut(f.wide)
	f.need(g.headHigh() + 2*g.rowHigh(t.Rows[0]))
	f.over(func() { g.head(f) }, func() {
		for _, row := range t.Rows {
			g.row(f, row)
		}
	})
}

// filled is a table without the columns in which nothing stands.
func (t Table) filled() Table {
	there := make([]bool, len(t.Cols))
	for _, row := range t.Rows {
		for i, cell := range row.Cells {
			there[i] = there[i] || cell != "" && len(row.Cells) > 1
		}
	}
	out := Table{Size: t.Size}
	for i, c := range t.Cols {
		if there[i] {
			out.Cols = append(out.Cols, c)
		}
	}
	for _, row := range t.Rows {
		only := Row{Strong: row.Strong, Under: row.Under}
		for i, cell := range row.Cells {
			if there[i] || len(row.Cells) == 1 {
				only.Cells = append(only.Cells, cell)
			}
		}
		out.Rows = append(out.Rows, only)
	}
	return out
}

// grid is a table whose columns have their places.
type grid struct {
	*Table
	size  float64
	cols  []column
	width float64
}

// column is where a column stands, from the table's left, and what it takes; before is what figures take before their points.
type column struct {
	figured
	at, width float64
}

// figured is what a column's figures take before their points and behind.
type figured struct{ before, behind float64 }

// laidOut gives columns their places in a width.
func (t *Table) laidOut(width float64) *grid {
	g := &grid{Table: t, size: t.Size, cols: make([]column, len(t.Cols)), width: width}
	if g.size == 0 {
		g.size = body
	}
	for i := range t.Cols {
		g.cols[i] = g.natural(i)
	}
	g.fit(width - between*float64(len(g.cols)-1))
	all := 0.0
	for _, c := range g.cols {
		all += c.width
	}
	apart := min(max((width-all)/max(float64(len(g.cols)-1), 1), between), most)
	at := 0.0
	for i := range g.cols {
		g.cols[i].at = at
		at += g.cols[i].width + apart
	}
	g.width = min(max(at-apart, least), width)
	return g
}

func (g *grid) style(bold bool) vector.Text { return vector.Text{Size: g.size, Bold: bold} }

func (g *grid) headStyle() vector.Text { return vector.Text{Size: small} }

func measured(style vector.Text, words string) float64 {
	style.Words = printable(words)
	return vector.WidthOf(style)
}

// headWide is how wide a head of at most two lines is.
func (g *grid) headWide(head string) (width float64) {
	for _, word := range split(head) {
		width = max(width, measured(g.headStyle(), word))
	}
	for len(wrapped(head, g.headStyle(), width)) > 2 {
		width++
	}
	return width
}

// natural is what a column takes unbroken: its cells, and its head in two lines.
func (g *grid) natural(i int) (c column) {
	c.width = g.headWide(g.Cols[i].Head)
	for _, row := range g.Rows {
		switch {
		case i >= len(row.Cells) || len(row.Cells) == 1:
		case g.Cols[i].Figure:
			before, behind := atPoint(row.Cells[i])
			c.before = max(c.before, measured(g.style(false), before))
			c.behind = max(c.behind, measured(g.style(false), behind))
		default:
			c.width = max(c.width, measured(g.style(row.Strong && i == 0), row.Cells[i]))
		}
	}
	c.width = max(c.width, c.before+c.behind)
	return c
}

// fit takes from the widest columns of text what all together take too much of a width.
func (g *grid) fit(width float64) {
	for {
		over, widest, next := -width, -1, 0.0
		for i, c := range g.cols {
			over += c.width
			switch {
			case g.Cols[i].Figure:
			case widest < 0 || c.width > g.cols[widest].width:
				if widest >= 0 {
					next = g.cols[widest].width
				}
				widest = i
			default:
				next = max(next, c.width)
			}
		}
		const hairsbreadth = 1e-6 // mm
		if over <= hairsbreadth || widest < 0 || g.cols[widest].width <= least {
			return
		}
		take := over
		if w := g.cols[widest].width; next < w {
			take = min(over, w-next+0.5)
		} else {
			take = min(over, 0.5)
		}
		g.cols[widest].width -= take
	}
}

// atPoint parts a text behind its first whole number, where figures in a column stand under each other; one without is all behind.
func atPoint(text string) (before, behind string) {
	text = printable(text)
	begin := strings.IndexAny(text, "0123456789")
	if begin < 0 {
		return "", text
	}
	end := begin + strings.IndexFunc(text[begin:]+".", func(r rune) bool { return r < '0' || r > '9' })
	return text[:end], text[end:]
}

func (g *grid) headHigh() float64 {
	lines := 0
	for i, c := range g.Cols {
		lines = max(lines, len(wrapped(c.Head, g.headStyle(), g.cols[i].width)))
	}
	return float64(lines)*small*1.2 + 1.5
}

// head writes the names of the columns over a line, those of figures by their right edge.
func (g *grid) head(f *flow) {
	high := g.headHigh()
	for i, c := range g.Cols {
		lines := wrapped(c.Head, g.headStyle(), g.cols[i].width)
		for k, words := range lines {
			style := g.headStyle()
			style.Words = words
			x := f.left + g.cols[i].at
			if c.Figure {
				style.Hold = vector.ByEnd
				x += max(g.cols[i].before+g.cols[i].behind, vector.WidthOf(style))
			}
			f.write(x, f.y+high-1.5-float64(len(lines)-1-k)*small*1.2, style)
		}
	}
	f.y += high - 0.7
	f.level(g.width, thin)
}

// lines are a row's cells, broken.
func (g *grid) lines(row Row) (cells [][]string, high int) {
	if len(row.Cells) == 1 {
		cells = [][]string{wrapped(row.Cells[0], g.style(true), g.width)}
		return cells, len(cells[0])
	}
	for i, cell := range row.Cells {
		lines := []string{printable(cell)}
		if !g.Cols[i].Figure {
			lines = wrapped(cell, g.style(row.Strong && i == 0), g.cols[i].width)
		}
		cells, high = append(cells, lines), max(high, len(lines))
	}
	return cells, high
}

// pad is left above and below a row's letters, mm.
const pad = 0.45

func (g *grid) rowHigh(row Row) float64 {
	_, lines := g.lines(row)
	return float64(lines+len(g.under(row)))*g.size*leading + 2*pad
}

// row writes a row and a hair line under it. One that half a page would not hold goes on line by line.
func (g *grid) row(f *flow, row Row) {
	cells, high := g.lines(row)
	first := func(i int) bool { return len(row.Cells) == 1 || row.Strong && i == 0 }
	line := g.size * leading
	if whole := g.rowHigh(row); whole < f.full()/2 {
		f.need(whole)
		f.y += pad
		for i, lines := range cells { // a cell after the other, as they are read
			for k, words := range lines {
				g.cell(f, i, f.y+float64(k)*line, words, first(i))
			}
		}
		f.y += float64(high) * line
	} else {
		f.y += pad
		for k := range high {
			f.need(line)
			for i, lines := range cells {
				if k < len(lines) {
					g.cell(f, i, f.y, lines[k], first(i))
				}
			}
			f.y += line
		}
	}
	for _, words := range g.under(row) {
		f.need(line)
		style := g.style(false)
		style.Words = words
		f.write(f.left+g.cols[1].at, f.y+g.size*0.98, style)
		f.y += line
	}
	f.y += pad
	f.level(g.width, hair)
}

// under is what is said under a row, broken.
func (g *grid) under(row Row) []string {
	if row.Under == "" || len(g.cols) < 2 {
		return nil
	}
	return wrapped(row.Under, g.style(false), g.width-g.cols[1].at)
}

// cell writes a line of a cell below a height.
func (g *grid) cell(f *flow, i int, y float64, words string, bold bool) {
	style := g.style(bold)
	x := f.left + g.cols[i].at
	if g.Cols[i].Figure && !bold {
		if before, _ := atPoint(words); before != "" {
			x += g.cols[i].before - measured(style, before)
		}
	}
	style.Words = words
	f.write(x, y+g.size*0.98, style)
}
