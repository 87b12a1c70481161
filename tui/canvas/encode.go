package canvas

import (
	"unicode/utf8"

	"bench.example/undermark/tui/desk"
)

// Encode returns the picture as Height lines joined by newlines, with an escape sequence where the look changes and a
// plain end of line. Without colour only bold, reverse and underline are left.
func (c Canvas) Encode(colour desk.Colour, light bool) string {
	e := encoder{out: make([]byte, 0, c.Width*c.Height*4), colour: colour, light: light, known: c.known}
	if e.known == nil {
		e.known = wardrobe{}
	}
	for row := range c.Height {
		if row > 0 {
			e.out = append(e.out, '\n')
		}
		e.line(c.Cells[row*c.Width : (row+1)*c.Width])
	}
	return string(e.out)
}

// encoder writes a picture out.
type encoder struct {
	out    []byte
	colour desk.Colour
	light  bool
	known  wardrobe
}

// line writes a row of cells.
func (e *encoder) line(cells []Cell) {
	worn, last := "", dress{}
	for i := range cells {
		cell := &cells[i]
		if i == 0 || !cell.dressedAs(&cells[i-1]) {
			if d := dressOf(cell, e.colour); worn == "" || d != last && !(cell.Rune == ' ' && last.suitsBlank(d)) {
				last = d
				worn = e.put(worn, d)
			}
		}
		e.out = utf8.AppendRune(e.out, cell.Rune)
	}
	if worn != plain {
		e.out = append(e.out, plain+"m"...)
	}
}

// dressedAs tells whether a cell needs the dress that another does.
func (c *Cell) dressedAs(other *Cell) bool {
	return c.Ink == other.Ink && c.Ground == other.Ground && (c.Rune == ' ') == (other.Rune == ' ')
}

// put writes the escape sequence for a dress unless it is worn already, and returns the one now worn.
func (e *encoder) put(worn string, d dress) string {
	at := wear{d, e.colour, e.light}
	want, ok := e.known[at]
	if !ok {
		want = sgr(d, e.colour, e.light)
		e.known[at] = want
	}
	if want != worn && (want != plain || worn != "") {
		e.out = append(append(e.out, want...), 'm')
	}
	return want
}

const plain = "\x1b[0"

// wardrobe holds the escape sequences for dresses that were worn before.
type wardrobe map[wear]string

// wear is a dress and what else decides its sequence.
type wear struct {
	dress
	colour desk.Colour
	light  bool
}

// wardrobe is kept from one picture to the next: what it holds hangs on no picture.
func (p *painter) wardrobe() wardrobe {
	if p.canvas.known == nil {
		return wardrobe{}
	}
	return p.canvas.known
}

// dress is what of a cell decides its looks: a blank only shows its ground, and that in true colour only.
type dress struct {
	ink    Ink
	ground Ground
}

// suitsBlank says whether a blank that wants another dress looks the same in this one.
func (d dress) suitsBlank(want dress) bool {
	return d.ground == want.ground && d.ink.Tone != Inverse && !d.ink.Selected && want.ink == Ink{}
}

func dressOf(c *Cell, colour desk.Colour) dress {
	d := dress{c.Ink, c.Ground}
	if c.Rune == ' ' && c.Ink.Tone != Inverse {
		d.ink = Ink{}
	}
	if colour != desk.TrueColour {
		d.ground = Ground{}
	}
	return d
}
