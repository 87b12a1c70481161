// Package canvas paints a scene on the cells of a terminal, true to scale, eight dots to a cell. Where there is
// colour, what is solid is a face and shows as blocks of it; thin lines are drawn whole, and what runs aslant as braille.
//
// Places are mm; a Map carries them to cells and back. Dots are counted as the scene's plane has them; where that is
// seen from its back the finished picture is turned over, so that below and above are mirror images dot by dot. A
// Canvas is a plain grid of cells; colours come in only when it is written out.
package canvas

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/mattn/go-runewidth"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles/harmless"
)

// The smallest canvas that can be read, and the scales that a camera can have, mm a dot.
const (
	MinWidth  = 40
	MinHeight = 6
	MinScale  = 0.25
	MaxScale  = 200
)

// Look is how a scene is to be shown.
type Look struct {
	Camera      desk.Camera
	Units       survey.Units
	Left, Right string            // what the van's sides are called
	Datum       string            // what stands at 0 of a ruler along the van, where that is not its rear end; "" for the bumper
	Shade       *Shade            // of the floor, for this layout; nil for none
	Faces       bool              // there are colours for whole faces: what is solid is shown by them, and not by textures
	Few         bool              // there are sixteen: little room is dots on the floor, as they have but two greens
	Calm        bool              // names stay where they stood in the picture before, where they can
	Codes       bool              // the letters of kinds are asked for
	Signs       []geometry.Point3 // where somebody else puts signs on the picture: no name stands there
	Marked      [][2]int          // the same by cell, column and row
}

// Canvas is a painted picture.
type Canvas struct {
	Map
	Width, Height int
	Cells         []Cell  // row after row
	Texts         []Text  // what is written in the picture
	faces, few    bool    // what is solid is shown by faces; with sixteen colours
	ring          float64 // the radius of the ring, mm; 0 for none
	known         wardrobe
}

// Text is a text in the picture, and where that is: whoever paints the picture in pixels writes it in the same cells.
type Text struct {
	Col, Row     int // of its first character
	Name, Tail   string
	Ink, TailInk Ink
	align        align
	down         bool           // its letters stand one under the other
	middle       geometry.Point // of those: the middle of what they are of, in the plane
	led          bool           // a leader goes to a cell
	of           [2]int         // that cell
}

// length is how many cells it takes.
func (w Text) length() int { return utf8.RuneCountInString(w.Name) + utf8.RuneCountInString(w.Tail) }

// Write writes a text in the picture.
func (c *Canvas) Write(w Text) {
	if w.down {
		for i, r := range []rune(w.Name) {
			c.Put(w.Col, w.Row+i, string(r), w.Ink)
		}
	} else {
		c.Put(w.Col, w.Row, w.Name, w.Ink)
		c.Put(w.Col+utf8.RuneCountInString(w.Name), w.Row, w.Tail, w.TailInk)
	}
	c.Texts = append(c.Texts, w)
}

// Cell is one character of the picture.
type Cell struct {
	Rune   rune
	Ink    Ink
	Ground Ground
}

// Ink is what a cell's character belongs to; the palette makes a colour of it.
type Ink struct {
	Role     scene.Role
	State    scene.State
	Tone     Tone
	Selected bool
	Grade    scene.Grade // of shaded floor
	Face     Ground      // the ink is the colour of a face
}

// Tone says how loud a character is.
type Tone uint8

// The tones.
const (
	Normal  Tone = iota
	Faint        // the grid, the texture of an area
	Bold         // letters and words
	Inverse      // what must be seen first
	Word         // names that come after the others
	Pale         // lines that come after the others
)

// Ground is what lies behind a cell: the role of the area that covers it.
type Ground struct {
	Role     scene.Role
	Set      bool
	Grade    scene.Grade // of shaded floor
	Selected bool
	Unsure   bool // not measured on this van
	Foul     bool // near the cut, in the way of it
}

// At returns the cell of a column and row.
func (c *Canvas) At(col, row int) *Cell { return &c.Cells[row*c.Width+col] }

// Put writes plain text from a column and row on, cut off at the canvas's edge. Every cell holds one character: a wide one
// is shown as a box, and accents that stand on a letter as characters of their own are left out.
func (c *Canvas) Put(col, row int, text string, ink Ink) {
	if row < 0 || row >= c.Height {
		return
	}
	for _, r := range clean(text) {
		if col >= 0 && col < c.Width {
			cell := c.At(col, row)
			cell.Rune, cell.Ink = r, ink
		}
		col++
	}
}

// widths are those of characters outside East Asia, whatever the terminal's language: the plan's own signs are narrow.
var widths = &runewidth.Condition{StrictEmojiNeutral: true}

// clean returns text made harmless, with exactly one cell a character.
func clean(text string) string {
	if printable(text) {
		return text
	}
	return strings.Map(func(r rune) rune {
		switch {
		case ' ' <= r && r <= '~':
			return r
		case unicode.Is(unicode.M, r):
			return -1
		case widths.RuneWidth(r) == 1:
			return r
		}
		return harmless.Box
	}, harmless.Text(text))
}

// printable tells whether a text has nothing but printable ASCII, which is harmless and one cell a character.
func printable(text string) bool {
	for i := range len(text) {
		if c := text[i]; c < ' ' || c > '~' {
			return false
		}
	}
	return true
}
