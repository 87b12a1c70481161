package vector

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Rulers draws a frame's edge with a ruler below and on its left, and the names of the ways round it. It takes RulerSpace on the
// left and below, and a line of letters above.
func Rulers(b Board, s *scene.Scene, f Frame, look Look, name func(scene.Way) string) {
	d := drawing{board: b, frame: f, look: look, projection: &s.Projection}
	ink := look.Colours(&scene.Item{Role: scene.Floor})
	b.Line(append(f.outline(), f.outline()[0]), Stroke{Width: look.Widths[scene.Fine], Colour: ink.Line})
	d.ruler(s.Projection.Across, false, ink)
	d.ruler(s.Projection.Up, true, ink)
	at := geometry.Point{X: f.Left, Y: f.Top - 1}
	seat := func(words string, x float64, align Align) {
		b.Write(geometry.Point{X: x, Y: at.Y}, Text{Words: words, Size: look.Letters, Align: align, Colour: ink.Words})
	}
	seat("< "+name(s.Projection.Across.Low), f.Left, ByStart)
	seat(name(s.Projection.Across.High)+" >", f.right(), ByEnd)
	seat("seen from "+s.Projection.From+"; up: "+name(s.Projection.Top())+", down: "+name(s.Projection.Bottom()), f.middle().X, ByMiddle)
}

// RulerSpace is what the rulers take beside a frame, mm, for letters of a size.
func RulerSpace(letters float64) float64 { return 4.5 * letters }

// ruler draws the ticks and figures of one axis: round figures of mm, about 25 mm of the board apart.
func (d *drawing) ruler(axis scene.Axis, up bool, ink Colours) {
	step := roundStep(25 * d.frame.Scale)
	low, high := d.frame.Plane(geometry.Point{X: d.frame.Left, Y: d.frame.bottom()}), d.frame.Plane(geometry.Point{X: d.frame.right(), Y: d.frame.Top})
	from, to := low.X, high.X
	if up {
		from, to = min(low.Y, high.Y), max(low.Y, high.Y)
	}
	for k := math.Ceil(from / step); k*step <= to; k++ {
		d.tick(k*step, d.figure(k*step*axis.Counts, axis.Signed), up, ink)
	}
}

func (d *drawing) figure(mm float64, signed bool) string {
	text := fmt.Sprintf("%.0f", mm+0) // -0 is 0
	if signed && mm > 0 {
		text = "+" + text
	}
	return text
}

func (d *drawing) tick(at float64, figure string, up bool, ink Colours) {
	const long = 1.5
	size := d.look.Letters
	text := Text{Words: figure, Size: size, Align: ByMiddle, Colour: ink.Words}
	edge := geometry.Point{X: d.frame.Place(geometry.Point{X: at}).X, Y: d.frame.bottom()}
	end := edge.Add(geometry.Point{Y: long})
	seat := end.Add(geometry.Point{Y: size})
	if up {
		edge = geometry.Point{X: d.frame.Left, Y: d.frame.Place(geometry.Point{Y: at}).Y}
		end = edge.Sub(geometry.Point{X: long})
		text.Align = ByEnd
		seat = end.Add(geometry.Point{X: -0.6, Y: size * (ascent - descent) / 2})
	}
	d.board.Line([]geometry.Point{edge, end}, Stroke{Width: d.look.Widths[scene.Fine], Colour: ink.Line})
	d.board.Write(seat, text)
}

// roundStep is the smallest of 1, 2 and 5 times a power of ten that is not below a length, mm.
func roundStep(least float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, times := range []float64{1, 2, 5} {
		if times*power >= least {
			return times * power
		}
	}
	return 10 * power
}
