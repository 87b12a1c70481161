package vector

import (
	"image/color"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// signSize is how far a spot's sign reaches from its middle, mm.
const signSize = 1.3

// spot draws a spot's sign and keeps words off it.
func (d *drawing) spot(p *part) {
	sign := p.Role.Pen().Sign
	if p.Primitive != scene.Spot || sign == scene.NoSign || p.ink.Line.A == 0 {
		return
	}
	at := d.frame.Place(p.Line[0])
	if !d.frame.shows(at) {
		return
	}
	d.sign(at, sign, p.ink.Line)
	d.taken = append(d.taken, Box{at.X - signSize, at.Y - signSize, 2 * signSize, 2 * signSize})
}

// sign draws a sign.
func (d *drawing) sign(at geometry.Point, sign scene.Sign, ink color.NRGBA) {
	width := d.look.Widths[scene.Heavy]
	poly := func(r float64, corners int, from float64) []geometry.Point {
		points := make([]geometry.Point, corners+1)
		for i := range points {
			points[i] = at.Add(geometry.Point{X: r}.Turn(from + 360*float64(i%corners)/float64(corners)))
		}
		return points
	}
	ring := func(r float64) []geometry.Point {
		points := arc(nil, at, r, 0, 2*math.Pi, off)
		points[len(points)-1] = points[0]
		return points
	}
	stroke := func(points []geometry.Point) {
		d.board.Line(points, Stroke{Width: 3 * width, Colour: d.look.Paper})
		d.board.Line(points, Stroke{Width: width, Colour: ink})
	}
	cross := func(turn float64) {
		for _, t := range []float64{turn, turn + 90} {
			arm := geometry.Point{X: signSize}.Turn(t)
			stroke([]geometry.Point{at.Sub(arm), at.Add(arm)})
		}
	}
	switch sign {
	case scene.Disc:
		d.board.Face(ring(signSize), ink)
	case scene.Dot:
		d.board.Face(ring(signSize/2), ink)
	case scene.Ring:
		stroke(ring(signSize))
	case scene.Lozenge:
		d.board.Face(poly(signSize, 4, 0), ink)
	case scene.Wedge:
		d.board.Face(poly(signSize, 3, -90), ink)
	case scene.Saltire:
		cross(45)
	case scene.Plus:
		cross(0)
	case scene.Target:
		stroke(ring(signSize))
		d.board.Face(ring(signSize/2), ink)
	case scene.Crossed:
		d.board.Face(poly(1.4*signSize, 4, 45), ink)
		for _, turn := range []float64{45, -45} {
			arm := geometry.Point{X: signSize}.Turn(turn)
			d.board.Line([]geometry.Point{at.Sub(arm), at.Add(arm)}, Stroke{Width: width, Colour: d.look.Paper})
		}
	case scene.Stroked:
		stroke(ring(signSize))
		arm := geometry.Point{X: signSize * 1.4}.Turn(-45)
		stroke([]geometry.Point{at.Sub(arm), at.Add(arm)})
	}
}
