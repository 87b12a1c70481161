package desk

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Fit returns text as exactly h rows of exactly w columns: long rows are cut, short ones filled with blanks.
// Escape sequences take no columns.
func Fit(text string, w, h int) string {
	rows := strings.Split(text, "\n")
	out := make([]string, max(h, 0))
	for i := range out {
		row := ""
		if i < len(rows) {
			row = rows[i]
		}
		out[i] = FitRow(row, w)
	}
	return strings.Join(out, "\n")
}

// FitRow returns one row of exactly w columns; a row that is cut ends in "…".
func FitRow(row string, w int) string {
	if w <= 0 {
		return ""
	}
	switch n := ansi.StringWidth(row); {
	case n < w:
		return row + strings.Repeat(" ", w-n)
	case n > w:
		row = ansi.Truncate(row, w, "…")
		return row + strings.Repeat(" ", max(0, w-ansi.StringWidth(row))) // half of a wide rune may be cut
	}
	return row
}

// Wrap breaks text at blanks into rows of at most w columns; a longer word is broken.
func Wrap(text string, w int) []string { return strings.Split(ansi.Wrap(text, max(w, 1), ""), "\n") }
