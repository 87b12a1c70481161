// Package digits writes a length in block figures, to be read at arm's length from the screen.
package digits

import "strings"

// glyphs are the block figures, five rows of squares each. A 1 is narrow, so that inches with a fraction fit.
var glyphs = map[rune][5]string{
	'0': {"###", "#.#", "#.#", "#.#", "###"},
	'1': {".#", "##", ".#", ".#", ".#"},
	'2': {"###", "..#", "###", "#..", "###"},
	'3': {"###", "..#", ".##", "..#", "###"},
	'4': {"#.#", "#.#", "###", "..#", "..#"},
	'5': {"###", "#..", "###", "..#", "###"},
	'6': {"###", "#..", "###", "#.#", "###"},
	'7': {"###", "..#", ".#.", ".#.", ".#."},
	'8': {"###", "#.#", "###", "#.#", "###"},
	'9': {"###", "#.#", "###", "..#", "###"},
	'.': {".", ".", ".", ".", "#"},
	'-': {"..", "..", "##", "..", ".."},
	'/': {".#", ".#", "#.", "#.", "#."},
	'"': {"#.#", "#.#", "...", "...", "..."},
	'+': {"...", ".#.", "###", ".#.", "..."},
	',': {".", ".", ".", "#", "#"},
	'L': {"#..", "#..", "#..", "#..", "###"},
	'R': {"##.", "#.#", "##.", "#.#", "#.#"},
	' ': {".", ".", ".", ".", "."},
}

// Big writes text in block figures, size columns to a square: figures are 5*size/2 rows high, rounded up, and all
// rows equally wide. It is false for text with anything but figures, a point or comma, plus and minus, a slash, inch marks, the L and R of the sides, blanks.
func Big(text string, size int) (rows []string, ok bool) {
	dots := make([]string, 5*size)
	for i, r := range []rune(text) {
		glyph, known := glyphs[r]
		if !known {
			return nil, false
		}
		for y := range dots {
			if i > 0 {
				dots[y] += strings.Repeat(".", (size+1)/2)
			}
			for _, square := range glyph[y/size] {
				dots[y] += strings.Repeat(string(square), size)
			}
		}
	}
	return halves(dots), text != "" && size > 0
}

// halves paints two rows of dots into one row of cells.
func halves(dots []string) []string {
	var rows []string
	for y := 0; y < len(dots); y += 2 {
		var row strings.Builder
		for x := range dots[y] {
			top, bottom := dots[y][x] == '#', y+1 < len(dots) && dots[y+1][x] == '#'
			row.WriteRune(cell(top, bottom))
		}
		rows = append(rows, row.String())
	}
	return rows
}

func cell(top, bottom bool) rune {
	switch {
	case top && bottom:
		return '█'
	case top:
		return '▀'
	case bottom:
		return '▄'
	}
	return ' '
}

// largest is the greatest size that Fit uses: 15 rows, 18 columns a figure.
const largest = 6

// Fit writes text in the largest block figures that stay within w columns and h rows, and as it is, in one row, where
// none do.
func Fit(text string, w, h int) []string {
	for size := largest; size > 0; size-- {
		rows, ok := Big(text, size)
		if ok && len(rows) <= h && len([]rune(rows[0])) <= w {
			return rows
		}
	}
	return []string{text}
}
