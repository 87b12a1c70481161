package canvas

import (
	"unicode/utf8"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/tui/pixels"
)

// Encode returns the picture as Height lines joined by newlines, with an escape sequence where the look changes and a
// plain end of line. Without colour only bold, reverse and underline are left.
func (c Canvas) Encode(colour desk.Colour, look looks.Look) string {
	e := encoder{out: make([]byte, 0, c.Width*c.Height*4), colour: colour, look: look, known: c.known}
	if e.known == nil {
		e.known = wardrobe{}
	}
	for row := range c.Height {
		if row > 0 {
			e.out = append(e.out, '\n')
		}
		e.line(&c, row)
	}
	return string(e.out)
}

// encoder writes a picture out.
type encoder struct {
	out    []byte
	colour desk.Colour
	look   looks.Look
	known  wardrobe
}

// line writes a row of cells.
func (e *encoder) line(c *Canvas, row int) {
	cells := c.Cells[row*c.Width : (row+1)*c.Width]
	worn, last := "", dress{}
	for i := range cells {
		cell := &cells[i]
		if cell.Rune == pixels.First {
			if worn != picture {
				e.out, worn, last = append(append(e.out, picture...), 'm'), picture, dress{}
			}
			e.out = pixels.AppendPlaceholder(e.out, i-c.Left, row-c.Top)
			continue
		}
		if i == 0 || worn == picture || !cell.dressedAs(&cells[i-1]) {
			if d := dressOf(cell, e.colour.Faces(e.look)); worn == "" || d != last && !(cell.Rune == ' ' && last.suitsBlank(d)) {
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
	at := wear{d, e.colour, e.look}
	want, ok := e.known[at]
	if !ok {
		want = sgr(d, e.colour, tableOf(e.look, e.colour))
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
	look   looks.Look
}

// wardrobe is kept from one picture to the next: what it holds hangs on no picture.
func (p *painter) wardrobe() wardrobe {
	if p.canvas.known == nil {
		return wardrobe{}
	}
	return p.canvas.known
}

// picture is the colour that says of which picture a cell shows its part.
var picture = plain + rgb(38, pixels.ID)

// Pictured has every cell of the picture show its part of one in pixels; false when that has more columns or rows than can be said.
// What is put there later stands before it.
func (c *Canvas) Pictured() bool {
	if c.Cols > pixels.Most || c.Rows > pixels.Most || c.Left+c.Cols > c.Width || c.Top+c.Rows > c.Height {
		return false
	}
	for row := c.Top; row < c.Top+c.Rows; row++ {
		for col := c.Left; col < c.Left+c.Cols; col++ {
			*c.At(col, row) = Cell{Rune: pixels.First}
		}
	}
	return true
}

// dress is what of a cell decides its looks: a blank only shows its ground, and that where there are faces only.
type dress struct {
	ink    Ink
	ground Ground
}

// suitsBlank says whether a blank that wants another dress looks the same in this one.
func (d dress) suitsBlank(want dress) bool {
	return d.ground == want.ground && d.ink.Tone != Inverse && !d.ink.Selected && want.ink == Ink{}
}

func dressOf(c *Cell, faces bool) dress {
	d := dress{c.Ink, c.Ground}
	if c.Rune == ' ' && c.Ink.Tone != Inverse {
		d.ink = Ink{}
	}
	if !faces {
		d.ground = Ground{}
	}
	return d
}
