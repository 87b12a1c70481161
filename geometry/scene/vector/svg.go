package vector

import (
	"encoding/xml"
	"fmt"
	"image/color"
	"strconv"
	"strings"

	"bench.example/undermark/geometry"
)

// SVG is a board that becomes an SVG file (SVG 1.1), its units mm.
type SVG struct {
	width, height float64
	body          strings.Builder
	boxes         int // that something was cut off at
}

// NewSVG returns an empty board, mm.
func NewSVG(width, height float64) *SVG { return &SVG{width: width, height: height} }

// Bytes returns the file.
func (s *SVG) Bytes() []byte {
	head := fmt.Sprintf(`<?xml version="1.0" encoding="UTF-8"?>`+"\n"+
		`<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="%smm" height="%smm" viewBox="0 0 %s %s">`+"\n",
		num(s.width), num(s.height), num(s.width), num(s.height))
	return []byte(head + s.body.String() + "</svg>\n")
}

// Face fills an outline.
func (s *SVG) Face(outline []geometry.Point, fill color.NRGBA) {
	fmt.Fprintf(&s.body, `<path d="%sz"%s/>`+"\n", pathOf(outline), paint("fill", fill))
}

// Line draws a line.
func (s *SVG) Line(points []geometry.Point, k Stroke) {
	d := pathOf(points)
	if last := len(points) - 1; last > 1 && points[0] == points[last] {
		d = pathOf(points[:last]) + "z"
	}
	var dashes string
	if k.Dashes != nil {
		all := make([]string, len(k.Dashes))
		for i, mm := range k.Dashes {
			all[i] = num(mm)
		}
		dashes = ` stroke-dasharray="` + strings.Join(all, " ") + `"`
	}
	fmt.Fprintf(&s.body, `<path d="%s" fill="none"%s stroke-width="%s" stroke-linejoin="round"%s/>`+"\n",
		d, paint("stroke", k.Colour), num(k.Width), dashes)
}

// Write writes a text: its letters as outlines, as a viewer's own may be wider and not all viewers draw them out to a width; and the words
// themselves without ink, where whoever looks for them finds them.
func (s *SVG) Write(at geometry.Point, t Text) {
	shown := t
	shown.Words = Legible(t.Words)
	turned := ""
	if t.Turned {
		turned = fmt.Sprintf(` transform="rotate(-90 %s %s)"`, num(at.X), num(at.Y))
	}
	outlines := outlinesOf(geometry.Point{X: BoxOf(at.X, at.Y, shown).Left, Y: at.Y}, shown)
	if t.Rim.A > 0 {
		fmt.Fprintf(&s.body, `<path class="letters" d="%s" fill="none"%s stroke-width="%s" stroke-linejoin="round"%s/>`+"\n",
			outlines, paint("stroke", t.Rim), num(2*rimOf(t.Size)), turned)
	}
	fmt.Fprintf(&s.body, `<path class="letters" d="%s"%s%s/>`+"\n", outlines, paint("fill", t.Colour), turned)
	weight := ""
	if t.Bold {
		weight = ` font-weight="bold"`
	}
	fmt.Fprintf(&s.body, `<text x="%s" y="%s" fill="none" font-family="sans-serif" font-size="%s" text-anchor="%s" textLength="%s" lengthAdjust="spacingAndGlyphs"%s%s>%s</text>`+"\n",
		num(at.X), num(at.Y), num(t.Size), [...]string{"start", "middle", "end"}[t.Align], num(WidthOf(shown)), weight, turned, escaped(t.Words))
}

// Windowed cuts off at a box.
func (s *SVG) Windowed(b Box, draw func()) {
	s.boxes++
	fmt.Fprintf(&s.body, `<clipPath id="box%d"><rect x="%s" y="%s" width="%s" height="%s"/></clipPath>`+"\n"+`<g clip-path="url(#box%d)">`+"\n",
		s.boxes, num(b.Left), num(b.Top), num(b.Width), num(b.Height), s.boxes)
	draw()
	s.body.WriteString("</g>\n")
}

// rimOf is how wide the rim round letters of a size is, mm.
func rimOf(size float64) float64 { return 0.15 * size }

func pathOf(points []geometry.Point) string {
	var d strings.Builder
	for i, p := range points {
		d.WriteByte("ML"[min(i, 1)])
		d.WriteString(num(p.X) + " " + num(p.Y))
	}
	return d.String()
}

// num writes mm to a thousandth.
func num(mm float64) string {
	text := strconv.FormatFloat(mm, 'f', 3, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

func paint(what string, c color.NRGBA) string {
	text := fmt.Sprintf(` %s="#%02x%02x%02x"`, what, c.R, c.G, c.B)
	if c.A < 255 {
		text += fmt.Sprintf(` %s-opacity="%s"`, what, num(float64(c.A)/255))
	}
	return text
}

// escaped writes a text as SVG's letters: what XML does not have becomes a box, as it can't be written.
func escaped(text string) string {
	var out strings.Builder
	_ = xml.EscapeText(&out, []byte(text)) // a Builder takes all
	return out.String()
}
