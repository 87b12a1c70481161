package desk

import (
	"regexp"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/vehicles/harmless"
)

// There are two kinds of text: plain text, in which anything may stand that somebody wrote, and painted text, in which
// plain text was made harmless and given the looks of Styles. Width, Cut, FitRow and Wrap are for plain text and make it
// harmless; Fit and FitPainted are for painted text. Never is plain text put beside painted text before one of these,
// or a style, has had it.

// Width is how many columns plain text takes when it is shown.
func Width(text string) int { return width(harmless.Text(text)) }

// Cut returns plain text of at most w columns; text that is cut ends in "…", and never within a number.
func Cut(text string, w int) string { return cut(harmless.Text(text), max(w, 0)) }

// cut returns harmless text of at most w columns: text that is longer ends in "…". A number is shown whole or not at all: 6… of
// 64.3 would be read as 6.
func cut(text string, w int) string {
	if width(text) <= w {
		return text
	}
	all := ansi.Strip(text)
	seen := ansi.Truncate(all, w-1, "")
	if numberGoesOn.MatchString(all[len(seen):]) {
		if whole := lastNumber.ReplaceAllString(seen, ""); whole != seen {
			w = width(whole) + 1
		}
	}
	return ansi.Truncate(text, w, "…")
}

var (
	lastNumber   = regexp.MustCompile(`[0-9]+([.,][0-9]*)?$`) // a number at the end of a text, or the first of its digits
	numberGoesOn = regexp.MustCompile(`^[.,]?[0-9]`)          // how the rest of a text begins that was cut within a number
)

// FitRow returns plain text as one row of exactly w columns; a row that is cut ends in "…".
func FitRow(text string, w int) string { return fit(harmless.Text(text), w) }

// Wrap breaks plain text at blanks and hyphens into rows of at most w columns; a longer word is broken. A minus stays with its
// number: at the end of a row it would not be seen.
func Wrap(text string, w int) []string {
	kept, w := harmless.Text(text), max(w, 1)
	if strings.Contains(kept, "-") { // most texts have none, and looking for one costs more than breaking the rows
		kept = minus.ReplaceAllString(kept, "${1}"+asOne+"${2}")
	}
	var rows []string
	for row := range strings.SplitSeq(ansi.Wrap(kept, w, ""), "\n") {
		if len(row) > w && Width(row) > w { // the library lets a hyphen stand behind a full row, or a word behind a blank
			row = ansi.Hardwrap(row, w, true)
		}
		rows = append(rows, strings.Split(strings.ReplaceAll(row, asOne, "-"), "\n")...)
	}
	return rows
}

// asOne stands for a minus while text is wrapped: a sign as wide, at which no row is broken.
const asOne = "\u02d7"

var minus = regexp.MustCompile(`(^|[ (=])-(\d)`)

// Fit returns painted text as exactly h rows of exactly w columns: long rows are cut, short ones filled with blanks.
func Fit(text string, w, h int) string {
	rows := strings.Split(harmless.Painted(text), "\n")
	out := make([]string, max(h, 0))
	for i := range out {
		row := ""
		if i < len(rows) {
			row = rows[i]
		}
		out[i] = fit(row, w)
	}
	return strings.Join(out, "\n")
}

// FitPainted returns a painted row of exactly w columns; a row that is cut ends in "…".
func FitPainted(row string, w int) string { return Fit(row, w, 1) }

// fit returns harmless text as one row of exactly w columns. Sequences that set colours take none.
func fit(row string, w int) string {
	if w <= 0 {
		return ""
	}
	switch n := width(row); {
	case n < w:
		return row + strings.Repeat(" ", w-n)
	case n > w:
		row = cut(row, w)
		return row + strings.Repeat(" ", max(0, w-width(row))) // half of a wide rune may be cut
	}
	return row
}
