//go:build !windows

package main

import (
	"encoding/xml"
	"fmt"
	"image/color"
	"slices"
	"strings"
	"unicode/utf8"

	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/vt"
)

// A cell of a pictured screen, in the SVG's units. What a terminal draws of blocks, dots and lines is drawn as shapes, so that
// no font leaves gaps in it.
const (
	cellWide = 10
	cellHigh = 20
	baseline = 15 // of letters, from the cell's top
	ground   = "#101418"
	letters  = "#d6dde4"
)

// svgOf is what a terminal shows, as an SVG file.
func svgOf(e *vt.Emulator) string {
	bounds := e.Bounds()
	var s sketch
	for y := range bounds.Dy() {
		s.row(e, y, bounds.Dx())
	}
	w, h := bounds.Dx()*cellWide, bounds.Dy()*cellHigh
	var out strings.Builder
	fmt.Fprintf(&out, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" font-family="monospace" font-size="16">`+"\n", w, h)
	fmt.Fprintf(&out, `<rect width="%d" height="%d" fill="%s"/>`+"\n", w, h, ground)
	s.grounds.put(&out)
	s.inks.put(&out)
	out.WriteString(s.texts.String() + "</svg>\n")
	return out.String()
}

// sketch collects what a screen is made of: what lies behind cells, shapes on it, and letters.
type sketch struct {
	grounds, inks layer
	texts         strings.Builder
}

// layer are rectangles, a path for each colour.
type layer struct {
	order []string
	paths map[string]*strings.Builder
}

func (l *layer) rect(paint string, x, y, w, h float64) {
	if l.paths[paint] == nil {
		if l.paths == nil {
			l.paths = map[string]*strings.Builder{}
		}
		l.paths[paint] = &strings.Builder{}
		l.order = append(l.order, paint)
	}
	fmt.Fprintf(l.paths[paint], "M%.4g %.4gh%.4gv%.4gh-%.4gz", x, y, w, h, w)
}

func (l *layer) put(out *strings.Builder) {
	for _, paint := range l.order {
		fmt.Fprintf(out, `<path fill="%s" d="%s"/>`+"\n", paint, l.paths[paint])
	}
}

// ink is how a cell's letters look.
type ink struct {
	fill            string
	bold, underline bool
}

func (s *sketch) row(e *vt.Emulator, y, width int) {
	for x := 0; x < width; x++ { // grounds first: letters may reach into the next cell
		if _, under := dressOf(e.CellAt(x, y)); under != ground {
			from := x
			for x+1 < width && groundOf(e.CellAt(x+1, y)) == under {
				x++
			}
			s.grounds.rect(under, float64(from*cellWide), float64(y*cellHigh), float64((x-from+1)*cellWide), cellHigh)
		}
	}
	var word strings.Builder
	begun, worn := 0, ink{}
	flush := func() {
		s.write(word.String(), begun, y, worn)
		word.Reset()
	}
	for x := range width {
		cell := e.CellAt(x, y)
		over, _ := dressOf(cell)
		glyph, shaped := " ", false
		if cell != nil && cell.Content != "" {
			r, _ := utf8.DecodeRuneInString(cell.Content)
			glyph, shaped = cell.Content, s.shape(r, x, y, over.fill)
		}
		if shaped {
			glyph = " "
		}
		if glyph == " " && !over.underline {
			flush()
			continue
		}
		if word.Len() == 0 || over != worn {
			flush()
			begun, worn = x, over
		}
		word.WriteString(glyph)
	}
	flush()
}

// write puts a word at its cells: its length is given, so that it keeps to them in any font.
func (s *sketch) write(word string, x, y int, look ink) {
	if word == "" {
		return
	}
	var style string
	if look.bold {
		style += ` font-weight="bold"`
	}
	if look.underline {
		style += ` text-decoration="underline"`
	}
	fmt.Fprintf(&s.texts, `<text x="%d" y="%d" textLength="%d" fill="%s"%s xml:space="preserve">`,
		x*cellWide, y*cellHigh+baseline, utf8.RuneCountInString(word)*cellWide, look.fill, style)
	_ = xml.EscapeText(&s.texts, []byte(word)) // a Builder takes all
	s.texts.WriteString("</text>\n")
}

// shape draws a block, dots or a line, and says whether the character is one.
func (s *sketch) shape(r rune, x, y int, paint string) bool {
	left, top := float64(x*cellWide), float64(y*cellHigh)
	part := func(px, py, pw, ph float64) { // of the cell, from 0 to 1
		s.inks.rect(paint, left+px*cellWide, top+py*cellHigh, pw*cellWide, ph*cellHigh)
	}
	switch {
	case 0x2801 <= r && r <= 0x28ff:
		dots := [8][2]int{{0, 0}, {0, 1}, {0, 2}, {1, 0}, {1, 1}, {1, 2}, {0, 3}, {1, 3}} // in the order of the bits, ISO/IEC 10646
		for i, d := range dots {
			if (r-0x2800)>>i&1 == 1 {
				part(0.25*float64(1+2*d[0])-0.12, 0.125*float64(1+2*d[1])-0.06, 0.24, 0.12)
			}
		}
	case 0x2581 <= r && r <= 0x2588: // from the bottom by eighths
		eighths := float64(r-0x2580) / 8
		part(0, 1-eighths, 1, eighths)
	case 0x2589 <= r && r <= 0x258f: // from the left by eighths
		part(0, 0, float64(0x2590-r)/8, 1)
	case quadrants[r] != 0:
		for i := range 4 {
			if quadrants[r]>>i&1 == 1 {
				part(float64(i%2)/2, float64(i/2)/2, 0.5, 0.5)
			}
		}
	case 0x1fb00 <= r && r <= 0x1fb3b: // sixths: all patterns in order but blank, left, right and full
		bits := int(r) - 0x1fb00 + 1
		for _, skipped := range []int{0b010101, 0b101010} {
			if bits >= skipped {
				bits++
			}
		}
		for i := range 6 {
			if bits>>i&1 == 1 {
				part(float64(i%2)/2, float64(i/2)/3, 0.5, 1./3)
			}
		}
	case slices.Contains(strokes, r):
		s.stroke(r, part)
	default:
		return false
	}
	return true
}

// quadrants are which quarters a character fills: 1 top left, 2 top right, 4 bottom left, 8 bottom right.
var quadrants = map[rune]int{
	'▀': 3, '▐': 10, '▘': 1, '▝': 2, '▖': 4, '▗': 8, '▚': 9, '▞': 6, '▛': 7, '▜': 11, '▙': 13, '▟': 14,
}

var strokes = []rune("─│┌┐└┘├┤┬┴┼━┃")

// stroke draws a line's arms from the middle of its cell.
func (s *sketch) stroke(r rune, part func(x, y, w, h float64)) {
	thick := 0.06
	if strings.ContainsRune("━┃", r) {
		thick = 0.18
	}
	across := thick * cellWide / cellHigh
	if strings.ContainsRune("─┐┘┤┬┴┼━", r) {
		part(0, 0.5-across, 0.5+thick, 2*across)
	}
	if strings.ContainsRune("─┌└├┬┴┼━", r) {
		part(0.5-thick, 0.5-across, 0.5+thick, 2*across)
	}
	if strings.ContainsRune("│└┘├┤┴┼┃", r) {
		part(0.5-thick, 0, 2*thick, 0.5+across)
	}
	if strings.ContainsRune("│┌┐├┤┬┼┃", r) {
		part(0.5-thick, 0.5-across, 2*thick, 0.5+across)
	}
}

// dressOf is a cell's letters and what lies behind them.
func dressOf(c *uv.Cell) (ink, string) {
	if c == nil {
		return ink{fill: letters}, ground
	}
	fill, under := hex(c.Style.Fg, letters), hex(c.Style.Bg, ground)
	if c.Style.Attrs&uv.AttrReverse != 0 {
		fill, under = under, fill
	}
	return ink{fill, c.Style.Attrs&uv.AttrBold != 0, c.Style.Underline != uv.UnderlineNone}, under
}

func groundOf(c *uv.Cell) string {
	_, under := dressOf(c)
	return under
}

func hex(c color.Color, unset string) string {
	if c == nil {
		return unset
	}
	r, g, b, _ := c.RGBA()
	return fmt.Sprintf("#%02x%02x%02x", r>>8, g>>8, b>>8)
}
