// Package vector draws a scene as lines, faces and letters on anything that has a place for them: SVG, pixels, paper. What a thing
// looks like stands in the pens of package scene, as for the screen's cells; here stands how wide a line is on paper.
//
// Places on a board are mm from its top left, X to the right and Y down.
package vector

import (
	"image/color"

	"bench.example/undermark/geometry"
)

// Board is what is drawn on.
type Board interface {
	// Face fills a closed outline, of which the first point need not come again.
	Face(outline []geometry.Point, fill color.NRGBA)
	// Line draws through points; it is closed where the first comes again at the end.
	Line(points []geometry.Point, s Stroke)
	// Write writes one line of text.
	Write(at geometry.Point, t Text)
	// Windowed has everything that draw draws cut off at a box.
	Windowed(b Box, draw func())
}

// Stroke is how a line is drawn.
type Stroke struct {
	Width  float64   // mm
	Dashes []float64 // mm, drawn and left out by turns; nil for a whole line
	Colour color.NRGBA
}

// Text is a line of letters and how they are written.
type Text struct {
	Words  string
	Size   float64 // of the letters, mm: an em
	Bold   bool
	Align  Align
	Turned bool // it reads upwards
	Colour color.NRGBA
	Rim    color.NRGBA // round the letters, so that they are read on anything; no colour for none
}

// Align says what of a text stands at its place, on its baseline.
type Align uint8

// The alignments.
const (
	ByStart Align = iota
	ByMiddle
	ByEnd
)

// Box is an upright box on a board, mm.
type Box struct{ Left, Top, Width, Height float64 }

// right and bottom are a box's other edges.
func (b Box) right() float64  { return b.Left + b.Width }
func (b Box) bottom() float64 { return b.Top + b.Height }

// middle is the middle of a box.
func (b Box) middle() geometry.Point {
	return geometry.Point{X: b.Left + b.Width/2, Y: b.Top + b.Height/2}
}

// meets tells whether two boxes share more than an edge.
func (b Box) meets(c Box) bool {
	return b.Left < c.right() && c.Left < b.right() && b.Top < c.bottom() && c.Top < b.bottom()
}

// holds tells whether a box lies wholly in another.
func (b Box) holds(c Box) bool {
	return b.Left <= c.Left && b.Top <= c.Top && c.right() <= b.right() && c.bottom() <= b.bottom()
}

// grown is a box that reaches so much farther to all sides.
func (b Box) grown(by float64) Box {
	return Box{b.Left - by, b.Top - by, b.Width + 2*by, b.Height + 2*by}
}

// sampled are places all over a box, no farther apart than half a millimetre.
func (b Box) sampled() (all []geometry.Point) {
	const step = 0.5
	across, down := int(b.Width/step)+1, int(b.Height/step)+1
	for i := range across + 1 {
		for k := range down + 1 {
			all = append(all, geometry.Point{X: b.Left + b.Width*float64(i)/float64(across), Y: b.Top + b.Height*float64(k)/float64(down)})
		}
	}
	return all
}

// outline returns a box's corners.
func (b Box) outline() []geometry.Point {
	return []geometry.Point{
		{X: b.Left, Y: b.Top}, {X: b.right(), Y: b.Top}, {X: b.right(), Y: b.bottom()}, {X: b.Left, Y: b.bottom()},
	}
}
