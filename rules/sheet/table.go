package sheet

// Table is rows under a head, which comes again on each page that the table goes on on. A column takes what its cells take; where that
// is more than there is, columns of text are broken into lines, those of figures never.
type Table struct {
	Cols []Col
	Rows []Row
	Size float64 // of its letters, mm; 0 for those of running text
	// Close: its columns stand close, as there are many of figures.
	Close bool
}

// Col is a column.
type Col struct {
	Head   string
	Figure bool    // it holds figures, which stand by their points
	Most   float64 // how wide it may be before its text is broken, mm; 0 for as wide as there is room
}

// Row is a row's cells. One with a single cell is a title over the rows below it.
type Row struct {
	Cells  []string
	Strong bool   // its first cell is bold
	Under  string // said under it, from its second column on
}

// The room between columns, mm: no less, in a table whose columns stand close either, and no more where there is more.
const between, beside, most = 4, 2, 9

// least is how narrow a table, or a column of broken text, may be, mm.
const least = 8

func (t Table) lay(f *flow) {
	if len(t.Rows) == 0 {
		return
	}
	t = t.filled()
	g := t.laidOut(f.wide)
	f.need(max(g.headHigh()+g.begins(f, g.rowHigh(t.Rows[0])), g.together()))
	f.over(func() { g.head(f) }, func() {
		for i, row := range t.Rows {
			if len(row.Cells) == 1 && i+1 < len(t.Rows) { // a title is never alone at a page's foot
				f.need(g.rowHigh(row) + g.least(f, g.rowHigh(t.Rows[i+1])))
			}
			g.row(f, row)
		}
	})
}

// begins is what is to be left of a page under the head for a first row so high to begin there: room for another like it, where it is low.
func (g *grid) begins(f *flow, high float64) float64 {
	return max(g.least(f, high), min(2*high, g.someLines()))
}

// together is how high a table is that stays on one page as it is short; 0 for a longer one.
func (g *grid) together() float64 {
	const short = 45 // mm
	high := g.headHigh()
	for _, row := range g.Rows {
		if high += g.rowHigh(row); high > short {
			return 0
		}
	}
	return high
}

// filled is a table without the columns in which nothing stands.
func (t Table) filled() Table {
	there := make([]bool, len(t.Cols))
	for _, row := range t.Rows {
		for i, cell := range row.Cells {
			there[i] = there[i] || cell != "" && len(row.Cells) > 1
		}
	}
	out := Table{Size: t.Size, Close: t.Close}
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
