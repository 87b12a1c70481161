package main

import (
	"io"
	"text/tabwriter"

	"bench.example/undermark/tui/desk"
)

// grid writes a table, its head first, if it has one. In the columns from first up to but not to last stand figures, each under
// the others by its point.
func grid(to io.Writer, head []string, rows [][]string, first, last int) {
	columns := make([]desk.Figures, last)
	for _, cells := range rows {
		for i := first; i < min(last, len(cells)); i++ {
			columns[i] = columns[i].With(cells[i])
		}
	}
	t := tabwriter.NewWriter(to, 0, 0, 2, ' ', 0)
	if head != nil {
		row(t, head...)
	}
	for _, cells := range rows {
		for i := first; i < min(last, len(cells)); i++ {
			cells[i] = columns[i].Write(cells[i])
		}
		row(t, cells...)
	}
	_ = t.Flush() // a builder takes everything
}
