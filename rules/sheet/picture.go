package sheet

import (
	"math"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
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
	scale := roundScale(max(size.X/room, size.Y/p.Most))
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

// Beside is two parts beside each other, the fold between them. Where a page does not hold the higher of them they come one after the other.
type Beside struct {
	Left, Right Part
}

func (p Beside) lay(f *flow) {
	half := (f.wide - gutter) / 2
	high := max(f.measured(p.Left, half), f.measured(p.Right, half))
	if high > f.full()*0.8 && !f.endless {
		p.Left.lay(f)
		f.y += gap
		p.Right.lay(f)
		return
	}
	f.need(high)
	left, all, from := f.left, f.wide, f.y
	f.wide = half
	p.Left.lay(f)
	below := f.y
	f.left, f.y = left+half+gutter, from
	p.Right.lay(f)
	f.left, f.wide, f.y = left, all, max(below, f.y)
}

// Parts are parts below each other.
type Parts []Part

func (all Parts) lay(f *flow) {
	for i, p := range all {
		if i > 0 {
			f.y += gap
		}
		p.lay(f)
	}
}

// Kept is a part that stays together where a page holds it.
type Kept struct{ Part }

func (p Kept) lay(f *flow) {
	if high := f.measured(p.Part, f.wide); high < f.full()-2*second {
		f.need(high)
	}
	p.Part.lay(f)
}

// Facts are words with what they mean behind them.
type Facts [][2]string

func (all Facts) lay(f *flow) {
	const name = 24.0 // mm
	room := min(name, f.wide/3)
	style := vector.Text{Size: body}
	for _, fact := range all {
		if fact[1] == "" {
			continue
		}
		for i, row := range wrapped(strings.ReplaceAll(fact[1], "\n", " "), style, f.wide-room) {
			f.need(leading * body)
			if i == 0 {
				f.write(f.left, f.y+body, vector.Text{Words: fact[0], Size: small})
			}
			style.Words = row
			f.write(f.left+room, f.y+body, style)
			f.y += leading * body
		}
	}
}
