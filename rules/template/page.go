package template

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/geometry/survey"
)

// Words are what is written on each page beside what is drawn, fit to be shown.
type Words struct {
	Job      string // its reference
	Van      string
	Date     string
	Standing string // how the place stands with the rules
}

// bar is how long the bars are that show whether the printer kept the size, mm.
const bar = 100

const (
	letters = 3.2
	title   = 5.0
)

// The widths of lines, mm, as in all that is printed.
var (
	thin  = vector.PaperWidths[scene.Fine]
	thick = vector.PaperWidths[scene.Heavy]
)

// Draw draws the page.
func (p *Page) Draw(b vector.Board, w Words) {
	d := drawer{p, b}
	d.head(w)
	d.bars()
	part := vector.Box{Left: leftOf, Top: above, Width: p.Paper.Wide - leftOf - rightOf, Height: p.Paper.High - above - below}
	b.Windowed(part, func() {
		for _, j := range p.joins() {
			d.cross(j.at, 6, thin)
			d.write(j.at.Add(geometry.Point{X: 1.5, Y: -1.5}), letters, vector.ByStart, false, j.name)
		}
		d.lines()
		d.plateOutline()
		for _, c := range p.circles {
			d.circle(c)
		}
	})
}

type drawer struct {
	*Page
	board vector.Board
}

// on is where a place of the template is on the paper.
func (d *drawer) on(at geometry.Point) geometry.Point {
	return at.Sub(d.from).Add(geometry.Point{X: leftOf, Y: above})
}

func (d *drawer) line(width float64, dashes []float64, points ...geometry.Point) {
	on := make([]geometry.Point, len(points))
	for i, q := range points {
		on[i] = d.on(q)
	}
	d.board.Line(on, vector.Stroke{Width: width, Dashes: dashes, Colour: vector.Ink})
}

func (d *drawer) write(at geometry.Point, size float64, align vector.Align, bold bool, words string) {
	d.board.Write(d.on(at), vector.Text{Words: words, Size: size, Bold: bold, Align: align, Colour: vector.Ink, Rim: vector.White})
}

// head says what the page is, how it lies and how it is printed.
func (d *drawer) head(w Words) {
	row := 14.0
	say := func(size float64, bold bool, words string) {
		d.board.Write(geometry.Point{X: leftOf, Y: row}, vector.Text{Words: words, Size: size, Bold: bold, Colour: vector.Ink})
		row += size * 1.35
	}
	face := "THIS FACE UP, on the floor inside"
	if d.Face == Below {
		face = "UNDER THE VAN, this face down to you, its back against the floor"
	}
	say(title, true, face)
	part := ""
	if d.All > 1 {
		part = fmt.Sprintf("Page %d of %d: lay join on join. ", d.Row*(d.All/d.Rows)+d.Col+1, d.All)
	}
	say(letters, false, d.cut(survey.Joined(", ", w.Job, w.Date, w.Van)))
	say(letters, false, part+"The place is "+w.Standing+".")
	say(letters, false, fmt.Sprintf("Print at 100 %%, not fitted to the page: both bars are %d mm. Tape the marks first; the template does not replace them.", bar))
}

// cut is what of a text a row at the head holds: a van's name may be long, and stands on the sheet.
func (d *drawer) cut(text string) string {
	fits := func(text string) bool {
		return vector.WidthOf(vector.Text{Words: text, Size: letters}) <= d.Paper.Wide-leftOf-rightOf
	}
	if fits(text) {
		return text
	}
	letters := []rune(text)
	for len(letters) > 0 && !fits(string(letters)+"…") {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}

// bars draws a bar each way to hold a rule to.
func (d *drawer) bars() {
	y := d.Paper.High - below/2
	d.board.Line([]geometry.Point{{X: leftOf, Y: y}, {X: leftOf + bar, Y: y}}, vector.Stroke{Width: thin, Colour: vector.Ink})
	for _, x := range []float64{leftOf, leftOf + bar} {
		d.board.Line([]geometry.Point{{X: x, Y: y - 3}, {X: x, Y: y + 3}}, vector.Stroke{Width: thin, Colour: vector.Ink})
	}
	words := fmt.Sprintf("%d mm", bar)
	d.board.Write(geometry.Point{X: leftOf + bar/2, Y: y - 1.5}, vector.Text{Words: words, Size: letters, Align: vector.ByMiddle, Colour: vector.Ink})
	x := leftOf / 2.0
	d.board.Line([]geometry.Point{{X: x, Y: above}, {X: x, Y: above + bar}}, vector.Stroke{Width: thin, Colour: vector.Ink})
	for _, y := range []float64{above, above + bar} {
		d.board.Line([]geometry.Point{{X: x - 3, Y: y}, {X: x + 3, Y: y}}, vector.Stroke{Width: thin, Colour: vector.Ink})
	}
	d.board.Write(geometry.Point{X: x - 1.5, Y: above + bar/2}, vector.Text{Words: words, Size: letters, Align: vector.ByMiddle, Turned: true, Colour: vector.Ink})
}

// lines draws the two lines through the cut's middle that run as the van does, and which way is which.
func (d *drawer) lines() {
	chain := []float64{6, 0.75, 0.125, 0.75} // ISO 128-2, long-dashed dotted at 0.25 mm
	d.line(thin, chain, geometry.Point{X: d.low.X}, geometry.Point{X: d.far.X})
	d.line(thin, chain, geometry.Point{Y: d.low.Y}, geometry.Point{Y: d.far.Y})
	left, right := "van's left", "van's right"
	if d.Face == Below {
		left, right = right, left
	}
	d.side(left, d.low.X+letters)
	d.side(right, d.far.X-1)
	d.arrow(geometry.Point{Y: d.low.Y + 10}, geometry.Point{Y: d.low.Y + 1})
	d.write(geometry.Point{X: 3, Y: d.low.Y + 6}, title, vector.ByStart, true, "van's front")
}

// side writes what lies at a side of the van, reading upwards over the line across.
func (d *drawer) side(words string, x float64) {
	at := d.on(geometry.Point{X: x, Y: -2})
	d.board.Write(at, vector.Text{Words: words, Size: letters, Turned: true, Colour: vector.Ink})
}

// arrow draws an arrow's head, and its shaft.
func (d *drawer) arrow(from, to geometry.Point) {
	d.line(thick, nil, from, to)
	back := from.Sub(to)
	back = back.Scale(4 / back.Norm())
	d.line(thick, nil, to.Add(back.Turn(25)), to, to.Add(back.Turn(-25)))
}

// plateOutline draws the plate, its corners by name, and the way of the warm air.
func (d *drawer) plateOutline() {
	if d.plate == nil {
		return
	}
	d.line(thick, nil, append(d.plate, d.plate[0])...)
	for i, corner := range d.plate {
		at, align := d.inside(corner)
		d.write(at, letters, align, false, d.corners[i])
	}
	edge := math.Inf(1) // from the middle to the plate's edge
	for i, corner := range d.plate {
		middle := corner.Add(d.plate[(i+1)%len(d.plate)]).Scale(0.5)
		if along := middle.X*d.warm.X + middle.Y*d.warm.Y; along > 0 && middle.Sub(d.warm.Scale(along)).Norm() < 1 {
			edge = along
		}
	}
	d.arrow(d.warm.Scale(edge-16), d.warm.Scale(edge-2))
	d.write(d.warm.Scale(edge-18).Add(geometry.Point{X: 2, Y: 4}), letters, vector.ByStart, true, "warm air")
}

// inside is where a corner's name stands: in the corner of a plate that lies as the van does, else farther in.
func (d *drawer) inside(corner geometry.Point) (geometry.Point, vector.Align) {
	const edge = 1.5
	if square := d.plate[1].Sub(d.plate[0]); math.Abs(square.X) > edge && math.Abs(square.Y) > edge {
		return corner.Scale(1 - 12/corner.Norm()), vector.ByMiddle
	}
	align, x, y := vector.ByStart, corner.X+edge, corner.Y+letters+edge/2
	if corner.X > 0 {
		align, x = vector.ByEnd, corner.X-edge
	}
	if corner.Y > 0 {
		y = corner.Y - edge
	}
	return geometry.Point{X: x, Y: y}, align
}

// circle draws a hole with its middle, or a pipe.
func (d *drawer) circle(c circle) {
	width, dashes := thin, []float64(nil)
	switch c.sort {
	case theCut:
		width = thick
	case stub:
		dashes = []float64{3, 0.75} // ISO 128-2, dashed at 0.25 mm
	}
	points := scene.Circle(c.at, c.across/2, 0.01)
	d.line(width, dashes, points...)
	if c.sort != stub {
		d.cross(c.at, min(c.across/2+3, 8), thin)
	}
	words := fmt.Sprintf("%s, %s", c.name, survey.InMM(c.across))
	off, align := geometry.Point{X: c.across/2 + 1.5, Y: c.across/2 + 2.5}, vector.ByStart
	switch {
	case c.sort == theCut:
		off, align = geometry.Point{X: -2, Y: c.across/2 + 4}, vector.ByEnd
	case c.sort == stub && c.across > 20: // it holds its name
		off, align = geometry.Point{Y: letters / 3}, vector.ByMiddle
	case c.sort == stub:
		off, align = geometry.Point{Y: c.across/2 + 4}, vector.ByMiddle
	case c.at.X > 0: // towards the middle, where there is paper
		off, align = geometry.Point{X: -off.X, Y: off.Y}, vector.ByEnd
	}
	if c.sort == drilled && c.at.Y > 0 {
		off.Y = -c.across/2 - 1.5
	}
	d.write(c.at.Add(off), letters, align, c.sort == theCut, words)
}

// cross draws two short lines through a place.
func (d *drawer) cross(at geometry.Point, half, width float64) {
	d.line(width, nil, at.Sub(geometry.Point{X: half}), at.Add(geometry.Point{X: half}))
	d.line(width, nil, at.Sub(geometry.Point{Y: half}), at.Add(geometry.Point{Y: half}))
}
