package canvas

import (
	"image"
	"image/color"
	"image/draw"
	"unicode/utf8"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
)

// cellHigh is how high a cell is on the board that a picture in pixels is drawn on, mm. All else of a picture's looks is in
// proportion to that: on 20 pixels one of these is 4.
const cellHigh = 5

// Looks of a picture in pixels, mm of the board.
const (
	letterSize = 0.8 * cellHigh // an em: capitals fill more than half of a cell's height
	ringWidth  = 1.1
)

// screenWidths are those of lines: on 20 pixels to a cell one and a half and two and a half pixels.
var screenWidths = vector.Widths{scene.Fine: 0.35, scene.Heavy: 0.65}

// pictured is a picture in pixels of what a canvas shows in cells: of the same places, with the same texts.
type pictured struct {
	*Canvas
	scene *scene.Scene
	shade *Shade
	light bool
	board *vector.Pixels
}

// Picture returns what paints the picture of a canvas in pixels, for any number of them: each cell of it covers what it covers on
// the canvas. It is to be called with the scene and the look that the canvas was painted with, and may be called by another
// goroutine; the canvas must not be painted on any more.
func (c *Canvas) Picture(s scene.Scene, look Look, light bool) func(size image.Point) *image.RGBA {
	behind := make([]Ground, len(c.Texts))
	for i, text := range c.Texts {
		behind[i] = c.At(text.Col, text.Row).Ground
	}
	kept := Canvas{Map: c.Map, Texts: c.Texts, ring: c.ring}
	return func(size image.Point) *image.RGBA {
		p := pictured{Canvas: &kept, scene: &s, shade: look.Shade, light: light}
		return p.paint(size, behind)
	}
}

func (p *pictured) paint(size image.Point, behind []Ground) *image.RGBA {
	box := vector.Box{Width: float64(p.Cols) * cellHigh / 2, Height: float64(p.Rows) * cellHigh}
	p.board = vector.Stretched(size.X, size.Y, float64(size.X)/box.Width, float64(size.Y)/box.Height)
	bare := solid(paper.on(p.light))
	draw.Draw(p.board.Picture, p.board.Picture.Rect, image.NewUniform(bare), image.Point{}, draw.Src)
	frame := vector.At(p.scene, box, p.Middle(), p.Scale*dotsDown/cellHigh)
	vector.Draw(p.board, p.scene, frame, vector.Look{
		Colours: p.inksOf, Paper: p.rim(), Letters: letterSize, Widths: screenWidths,
		Screen: &vector.Screen{
			Ring: p.ring / frame.Scale, Width: ringWidth, Conflict: solid(tints[scene.Conflict].on(p.light)),
			OnFloor: p.shaded, Words: p.words(&frame, behind),
		},
	})
	return p.board.Picture
}

// rim is the colour of the bare rim round lines: that of the floor.
func (p *pictured) rim() color.NRGBA { return solid(tints[scene.Floor].on(p.light)) }

// shaded lays the shade of the floor, each of its dots as large as it is there.
func (p *pictured) shaded() {
	if !p.shade.Of(p.Map) {
		return
	}
	to := p.board.Picture
	at := func(dot, dots, pixels int) int { return (dot*pixels + dots/2) / dots }
	for grade := scene.LittleRoom; grade <= scene.MuchRoom; grade++ {
		ink := image.NewUniform(solid(grounds[grade].on(p.light)))
		mask := &p.shade.masks[grade]
		for y := mask.top; y < mask.bottom; y++ {
			row := y
			if p.over {
				row = p.tall - 1 - y
			}
			top, bottom := at(row, p.tall, to.Rect.Dy()), at(row+1, p.tall, to.Rect.Dy())
			mask.runs(y, func(from, to1 int) {
				box := image.Rect(at(from, p.wide, to.Rect.Dx()), top, at(to1, p.wide, to.Rect.Dx()), bottom)
				draw.Draw(to, box, ink, image.Point{}, draw.Src)
			})
		}
	}
}

// words are the texts of the canvas, where they are there.
func (p *pictured) words(frame *vector.Frame, behind []Ground) []vector.Word {
	words := make([]vector.Word, len(p.Texts))
	for i, text := range p.Texts {
		words[i] = p.word(frame, &text, behind[i])
	}
	return words
}

// word is a text of the canvas on the board.
func (p *pictured) word(frame *vector.Frame, text *Text, at Ground) vector.Word {
	length := utf8.RuneCountInString(text.Name) + utf8.RuneCountInString(text.Tail)
	word := vector.Word{
		Name: text.Name, Tail: text.Tail, Down: text.down, Bold: text.Ink.Tone != Word, Box: p.cells(text.Col, text.Row, length, 1),
		Hold: [...]vector.Hold{byMiddle: vector.ByMiddle, byStart: vector.ByStart, byEnd: vector.ByEnd}[text.hold],
	}
	if text.down {
		word.Box = p.cells(text.Col, text.Row, 1, length)
	}
	word.Colour, word.Rim, word.Back = p.lettered(text.Ink, at)
	word.Ends = word.Colour
	if word.Back.A == 0 {
		word.Ends, _, _ = p.lettered(text.TailInk, at)
	}
	if text.led {
		word.Leader = p.leader(text, length)
	}
	return word
}

// cells is the box of some cells on the board.
func (p *pictured) cells(col, row, cols, rows int) vector.Box {
	return vector.Box{
		Left: float64(col-p.Left) * cellHigh / 2, Top: float64(row-p.Top) * cellHigh, Width: float64(cols) * cellHigh / 2, Height: float64(rows) * cellHigh,
	}
}

// leader is the line from what a text is of to the text, as its cells have it.
func (p *pictured) leader(text *Text, length int) []geometry.Point {
	middle := func(col, row int) geometry.Point {
		b := p.cells(col, row, 1, 1)
		return geometry.Point{X: b.Left + b.Width/2, Y: b.Top + b.Height/2}
	}
	const gap = 0.4 // mm
	of, b := middle(text.of[0], text.of[1]), p.cells(text.Col, text.Row, length, 1)
	end := geometry.Point{X: of.X, Y: b.Top + b.Height/2}
	switch {
	case text.hold == byStart:
		end.X = b.Left - gap
	case text.hold == byEnd:
		end.X = b.Left + b.Width + gap
	case text.Row > text.of[1]:
		return []geometry.Point{of, {X: of.X, Y: b.Top}}
	default:
		return []geometry.Point{of, {X: of.X, Y: b.Top + b.Height}}
	}
	return []geometry.Point{of, {X: of.X, Y: end.Y}, end}
}
