package vector

import (
	"cmp"
	"image/color"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Look is what of a picture is the painter's own.
type Look struct {
	Colours func(it *scene.Item) Colours
	Paper   color.NRGBA                  // what all is drawn on: rims have its colour
	Letters float64                      // size of labels, mm
	Length  func(m scene.Measure) string // as it is written
	Name    func(label string) string    // fit to be shown
	Widths  Widths
	Screen  *Screen // for a picture beside which the cells of a screen stand; nil for paper
}

// Colours are those of an item; what has no colour is not drawn.
type Colours struct {
	Line, Fill color.NRGBA // Fill is a pattern's
	Ground     color.NRGBA // behind an area
	Words      color.NRGBA
}

// Widths are those of lines by weight, mm.
type Widths map[scene.Weight]float64

// PaperWidths are the line widths of ISO 128-2, line group 0.5: narrow and wide.
var PaperWidths = Widths{scene.Fine: 0.25, scene.Heavy: 0.5}

// off is how far off bends may be drawn, mm of the board: less than a printer's dot at 1200 dpi.
const off = 0.01

// Draw draws what is seen of a scene in a frame: faces first, lines on them in the order of their pens, then spots and words.
func Draw(b Board, s *scene.Scene, f Frame, look Look) {
	d := drawing{board: b, frame: f, look: look, projection: &s.Projection}
	for i := range s.Items {
		if seen, ok := s.Projection.Seen(&s.Items[i], off*f.Scale); ok {
			d.parts = append(d.parts, part{&s.Items[i], seen, look.Colours(&s.Items[i])})
		}
	}
	b.Windowed(f.Box, func() {
		for i := range d.parts {
			d.face(&d.parts[i])
			d.onFloor(&d.parts[i])
		}
		d.inTheWay()
		front := slices.Clone(d.parts)
		slices.SortStableFunc(front, func(p, q part) int { return cmp.Compare(p.Role.Pen().Front, q.Role.Pen().Front) })
		for i := range front {
			d.line(&front[i])
		}
		d.leaders()
		for i := range front {
			d.spot(&front[i])
		}
		if look.Screen == nil {
			d.words()
		} else {
			d.placed()
		}
		d.ring() // over a name that comes up to it, too
	})
}

type drawing struct {
	board      Board
	frame      Frame
	look       Look
	projection *scene.Projection
	parts      []part
	taken      []Box // where words and signs stand
}

// part is an item, what is seen of it, and its colours.
type part struct {
	*scene.Item
	scene.Seen
	ink Colours
}

// outline is what is seen of an area, on the board.
func (d *drawing) outline(p *part) []geometry.Point {
	return d.frame.places(outlineOf(&p.Area, off*d.frame.Scale))
}

// face draws an area's ground and pattern.
func (d *drawing) face(p *part) {
	if p.Primitive != scene.Area || d.slender(p) {
		return
	}
	outline := d.outline(p)
	if d.onFace(p) && p.Role.Pen().Rim {
		d.board.Line(append(outline, outline[0]), Stroke{Width: 3 * d.look.Widths[p.Weight()], Colour: d.look.Paper})
	}
	if p.ink.Ground.A > 0 {
		d.board.Face(outline, p.ink.Ground)
	}
	d.foulFace(p, outline)
	pattern, ok := patterns[p.Role.Pen().Fill]
	if !ok || p.ink.Fill.A == 0 {
		return
	}
	if pattern == nil {
		d.board.Face(outline, p.ink.Fill)
	}
	for _, lay := range pattern {
		for _, piece := range hatched(outline, lay.angle, lay.spacing) {
			d.board.Line(piece, Stroke{Width: lay.width, Dashes: lay.dashes, Colour: p.ink.Fill})
		}
	}
}

// lay is one family of lines of a pattern.
type lay struct {
	angle, spacing, width float64 // degrees; mm
	dashes                []float64
}

// patterns are what the fills are on paper, in lines; one without lines is filled.
var patterns = map[scene.Fill][]lay{
	scene.Hatched:   {{angle: 45, spacing: 1.6, width: 0.13}},
	scene.Dense:     {{angle: 0, spacing: 0.6, width: 0.25}},
	scene.Lined:     {{angle: 0, spacing: 0.9, width: 0.13}},
	scene.Chequered: {{angle: 45, spacing: 1.4, width: 0.13}, {angle: -45, spacing: 1.4, width: 0.13}},
	scene.Speckled:  {{angle: 0, spacing: 1.2, width: 0.25, dashes: []float64{0.01, 1.2}}},
	scene.Filled:    nil,
}

// line draws an item's lines, with a bare rim where its pen has one.
func (d *drawing) line(p *part) {
	if p.Primitive == scene.Spot || p.ink.Line.A == 0 || d.ringed(p) {
		return
	}
	width := d.look.Widths[p.Weight()]
	stroke := Stroke{Width: width, Dashes: dashesOf(d.projection.LineOf(p.Item), width), Colour: p.ink.Line}
	rim := 3 * width
	var points []geometry.Point
	switch {
	case p.Line != nil:
		points = d.frame.places(p.Line)
	case d.slender(p):
		points = d.frame.places(p.Area.Path)
		stroke.Width = max(leastSlender*width, 2*p.Area.Radius/d.frame.Scale)
		stroke.Dashes = dashesOf(d.projection.LineOf(p.Item), max(width, stroke.Width/2))
		rim = stroke.Width + 2*width
	default:
		points = d.outline(p)
		points = append(points, points[0])
	}
	if d.onFace(p) {
		stroke.Dashes, rim = d.faceDashes(p, width), 0
	}
	if rim > 0 && p.Role.Pen().Rim {
		d.board.Line(points, Stroke{Width: rim, Colour: d.look.Paper})
	}
	d.board.Line(points, stroke)
	d.foulLine(p, points, stroke)
	if p.Role.Pen().Ended && p.Primitive == scene.Stroke {
		d.ends(points, width, p.ink.Line)
	}
}

// dashesOf are a line's dashes and gaps, in widths of it (ISO 128-2: dashes 12 and 24, gaps 3, dots no longer than the line is wide).
func dashesOf(line scene.Line, width float64) []float64 {
	var of []float64
	switch line {
	case scene.Dashed:
		of = []float64{12, 3}
	case scene.Dotted:
		of = []float64{0.5, 3}
	case scene.DashDot:
		of = []float64{24, 3, 0.5, 3}
	}
	for i := range of {
		of[i] *= width
	}
	return of
}

// ends draws a stroke across either end of a dimension line.
func (d *drawing) ends(points []geometry.Point, width float64, ink color.NRGBA) {
	a, b := points[0], points[len(points)-1]
	along := b.Sub(a)
	if along.Norm() == 0 {
		return
	}
	const half = 1.2 // mm
	across := geometry.Point{X: -along.Y, Y: along.X}.Scale(half / along.Norm())
	for _, end := range []geometry.Point{a, b} {
		d.board.Line([]geometry.Point{end.Sub(across), end.Add(across)}, Stroke{Width: width, Colour: ink})
	}
}
