package sheet

import "bench.example/undermark/geometry/scene/vector"

// headLeading is how far apart the lines of a head are, of their letters' size.
const headLeading = 1.2

// headHigh is what the head takes.
func (g *grid) headHigh() float64 {
	lines := 0
	for i, c := range g.Cols {
		lines = max(lines, len(wrapped(c.Head, g.headStyle(), g.cols[i].width)))
	}
	return float64(lines)*small*headLeading + 1.5
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
				style.Align = vector.ByEnd
				x += max(g.cols[i].before+g.cols[i].behind, vector.WidthOf(style))
			}
			f.write(x, f.y+high-1.5-float64(len(lines)-1-k)*small*headLeading, style)
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

// pad is left above and below a row's letters, of their size: the more rows, the closer they may stand.
func (g *grid) pad() float64 {
	const of = 0.10
	return of * g.size
}

func (g *grid) rowHigh(row Row) float64 {
	_, lines := g.lines(row)
	return float64(lines+len(g.under(row)))*g.size*leading + 2*g.pad()
}

// broken says whether a row so high goes on line by line: no half page would hold it.
func broken(f *flow, high float64) bool { return high >= f.full()/2 }

// least is what is to be left of a page for a row so high to begin there: room for all of it, or for some lines of one that is broken.
func (g *grid) least(f *flow, high float64) float64 {
	if broken(f, high) {
		return g.someLines()
	}
	return high
}

func (g *grid) someLines() float64 { return 6 * leading * g.size }

// row writes a row and a hair line under it.
func (g *grid) row(f *flow, row Row) {
	cells, high := g.lines(row)
	first := func(i int) bool { return len(row.Cells) == 1 || row.Strong && i == 0 }
	line := g.size * leading
	if whole := g.rowHigh(row); !broken(f, whole) {
		f.need(whole)
		f.y += g.pad()
		for i, lines := range cells { // a cell after the other, as they are read
			for k, words := range lines {
				g.cell(f, i, f.y+float64(k)*line, words, first(i))
			}
		}
		f.y += float64(high) * line
	} else {
		f.y += g.pad()
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
	f.y += g.pad()
	f.level(g.width, hair)
}

// under is what is said under a row, broken.
func (g *grid) under(row Row) []string {
	if row.Under == "" || len(g.cols) < 2 {
		return nil
	}
	return wrapped(row.Under, g.style(false), g.room-g.cols[1].at)
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
