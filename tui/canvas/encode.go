package canvas

import (
	"unicode/utf8"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

// Encode returns the picture as Height lines joined by newlines, with an escape sequence where the look changes and a
// plain end of line. Without colour only bold, reverse and underline are left.
func (c Canvas) Encode(colour desk.Colour, look looks.Look) string {
	out := make([]byte, 0, c.Width*c.Height*4)
	known, table := map[dress]string{}, look.Table()
	for row := range c.Height {
		if row > 0 {
			out = append(out, '\n')
		}
		worn, last := "", dress{}
		for _, cell := range c.Cells[row*c.Width : (row+1)*c.Width] {
			if d := dressOf(cell, colour); worn == "" || d != last && !(cell.Rune == ' ' && last.suitsBlank(d)) {
				last = d
				out, worn = put(out, worn, known, d, cell, colour, table)
			}
			out = utf8.AppendRune(out, cell.Rune)
		}
		if worn != plain {
			out = append(out, plain+"m"...)
		}
	}
	return string(out)
}

// put writes the escape sequence for a dress unless it is worn already, and returns what is written and the one now worn.
func put(out []byte, worn string, known map[dress]string, d dress, c Cell, colour desk.Colour, t *looks.Table) ([]byte, string) {
	want, ok := known[d]
	if !ok {
		want = sgr(c, colour, t)
		known[d] = want
	}
	if want != worn && (want != plain || worn != "") {
		out = append(append(out, want...), 'm')
	}
	return out, want
}

const plain = "\x1b[0"

// dress is what of a cell decides its looks: a blank only shows its ground, and that in true colour only.
type dress struct {
	ink    Ink
	ground Ground
}

// suitsBlank says whether a blank that wants another dress looks the same in this one.
func (d dress) suitsBlank(want dress) bool {
	return d.ground == want.ground && d.ink.Tone != Inverse && !d.ink.Selected && want.ink == Ink{}
}

func dressOf(c Cell, colour desk.Colour) dress {
	d := dress{c.Ink, c.Ground}
	if c.Rune == ' ' && c.Ink.Tone != Inverse {
		d.ink = Ink{}
	}
	if colour != desk.TrueColour {
		d.ground = Ground{}
	}
	return d
}
