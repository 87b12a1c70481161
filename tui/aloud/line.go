// Package aloud makes lines of what the screens show: for a screen reader, a braille line, a terminal that can't draw, a pipe.
// It says in words what the plan shows as a picture, from the same result, and writes only what is new.
//
// Nothing it writes moves the cursor, sets a colour or is drawn of boxes and dots. Places are as geometry has them: mm, X
// forward of the datum, Y to the van's left.
package aloud

import (
	"regexp"
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles/harmless"
)

// The columns of a terminal: where nobody knows how many, and the fewest that lines are broken to.
const (
	UsualWidth = 80
	LeastWidth = 20
)

// Unbroken is a width at which no row of a screen is broken: rows made for it are lines.
const Unbroken = 4000

// signs are spelled, as a screen reader passes them over or calls them by names that say nothing here.
var signs = strings.NewReplacer(
	"† can kill", "can kill", "† ", "can kill: ", "†", "can kill", "▶ ", "", "▶", "", "▸ ", "", "▸", "", "● ", "", "●", "",
	"Shift-↑", "Shift-Up", "↑", "Up", "↓", "Down", "←", "Left", "→", "Right", "↵", " new line ",
	" │ ", "; ", "│", ";", "≥ ", "at least ", "≥", "at least ", "≤ ", "at most ", "≤", "at most ",
	"⌀", "diameter ", "−", "-", "–", "-", "—", "-",
)

// unsaid are the signs that no reader reads and that stand for a drawing: arrows, technical and control pictures, boxes, blocks,
// shapes, dingbats, braille.
var unsaid = &unicode.RangeTable{R16: []unicode.Range16{
	{Lo: 0x2190, Hi: 0x21FF, Stride: 1}, {Lo: 0x2300, Hi: 0x25FF, Stride: 1}, {Lo: 0x2700, Hi: 0x27BF, Stride: 1},
	{Lo: 0x2800, Hi: 0x28FF, Stride: 1},
}}

// spelled is a text that may be said, its blanks as they are: what would steer a terminal is made harmless, looks are left out,
// signs are words. What stands for a drawing and has no word is "?".
func spelled(text string) string {
	text = signs.Replace(harmless.Text(ansi.Strip(harmless.Painted(text))))
	return strings.Map(func(r rune) rune {
		if unicode.Is(unsaid, r) || unicode.IsControl(r) {
			return '?'
		}
		return r
	}, text)
}

// apart is what sets the columns of a row apart.
var apart = regexp.MustCompile(`([^\s:;,.?!])\s{3,}`)

// Line is a text as one line that may be said, without blanks at its ends and with single ones within; what stood in columns of
// its own is set apart.
func Line(text string) string {
	return strings.Join(strings.Fields(apart.ReplaceAllString(strings.TrimSpace(spelled(text)), "$1; ")), " ")
}

// Rows are rows of a screen as lines; rows without text are left out.
func Rows(rows ...string) []string {
	var lines []string
	for _, row := range rows {
		if line := Line(row); line != "" && strings.Trim(line, "?; ") != "" {
			lines = append(lines, line)
		}
	}
	return lines
}

// Broken are lines broken at words so that none is longer than w columns.
func Broken(lines []string, w int) (rows []string) {
	for _, line := range lines {
		for _, row := range desk.Wrap(Line(line), w) {
			rows = append(rows, strings.TrimSpace(row))
		}
	}
	return rows
}

// Whole is a title and all that stands under it.
func Whole(title string, lines ...[]string) (all []string) {
	for _, some := range lines {
		if len(some) > 0 && len(all) == 0 {
			all = append(all, title)
		}
		all = append(all, some...)
	}
	return all
}
