package sheet

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules/template"
)

// Picture is a scene with its rulers, at a round scale: all of it, or what is around a place of its plane.
type Picture struct {
	Title  string
	Scene  scene.Scene
	Most   float64 // how high it may be, mm
	Around *Around // nil for all of the scene
	Say    Words
	Datum  string // the name of the line that x starts at; "" for the bumper
}

// Around is what of a scene is shown: so far from its middle to either side, mm, and across as much more as
// there is room for.
type Around struct {
	Middle geometry.Point
	Half   geometry.Point
}

func (p Picture) lay(f *flow) {
	const over = 2 * small // for the ways' names
	low, high := p.Scene.Min, p.Scene.Max
	if p.Around != nil {
		low, high = p.Around.Middle.Sub(p.Around.Half), p.Around.Middle.Add(p.Around.Half)
	}
	space, size := vector.RulerSpace(small), high.Sub(low)
	room := f.wide - space - 1
	most := p.Most * min(1, f.paper.High/template.Papers["a4"].High) // a shorter page has less room for it
	scale := roundScale(max(size.X/room, size.Y/most))
	box := vector.Box{Width: size.X / scale, Height: size.Y / scale}
	if p.Around != nil {
		box.Width = room
	}
	all := box.Height + over + rulerUnder
	if p.Title != "" {
		all += titleHigh
	}
	f.need(all)
	if p.Title != "" {
		f.write(f.left, f.y+body, vector.Text{Words: p.Title, Size: body, Bold: true})
		f.y += titleHigh
	}
	box.Left, box.Top = f.left+space, f.y+over
	p.paint(f, box, low.Add(high).Scale(0.5), scale)
	f.y = box.Top + box.Height + rulerUnder
}

// What a picture's ruler takes below it, and its title above, mm.
const (
	rulerUnder = 2*small + 1.5
	titleHigh  = 1.5 * body
)

// paint has the picture drawn in a box.
func (p *Picture) paint(f *flow, box vector.Box, middle geometry.Point, scale float64) {
	s := &p.Scene
	look := vector.Black(small, func(m scene.Measure) string { return printable(p.Say.Measure(m)) }, printable)
	frame := vector.At(s, box, middle, scale)
	f.draw(func(b vector.Board) {
		vector.Draw(b, s, frame, look)
		vector.Rulers(b, s, frame, look, func(w scene.Way) string { return w.Called(p.Datum) })
	})
}

// roundScale is the smallest round scale that is no less than one.
func roundScale(least float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, times := range []float64{1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8} {
		if times*power >= least {
			return times * power
		}
	}
	return 10 * power
}
