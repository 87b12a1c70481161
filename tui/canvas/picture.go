package canvas

import (
	"image"
	"image/color"
	"image/draw"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/tui/looks"
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
	table *looks.Table
	board *vector.Pixels
}

// Picture returns what paints the picture of a canvas in pixels, for any number of them: each cell of it covers what it covers on
// the canvas. It is to be called with the scene and the look that the canvas was painted with, and may be called by another
// goroutine; the canvas must not be painted on any more.
func (c *Canvas) Picture(s scene.Scene, look Look, table *looks.Table) func(size image.Point) *image.RGBA {
	kept := Canvas{Map: c.Map, Texts: c.Texts, ring: c.ring}
	return func(size image.Point) *image.RGBA {
		p := pictured{Canvas: &kept, scene: &s, shade: look.Shade, table: table}
		return p.paint(size)
	}
}

func (p *pictured) paint(size image.Point) *image.RGBA {
	box := vector.Box{Width: float64(p.Cols) * cellHigh / 2, Height: float64(p.Rows) * cellHigh}
	p.board = vector.Stretched(size.X, size.Y, float64(size.X)/box.Width, float64(size.Y)/box.Height)
	bare := solid(p.table.Paper.RGB)
	draw.Draw(p.board.Picture, p.board.Picture.Rect, image.NewUniform(bare), image.Point{}, draw.Src)
	frame := vector.At(p.scene, box, p.Middle(), p.Scale*dotsDown/cellHigh)
	seen := p.distinct()
	vector.Draw(p.board, &seen, frame, vector.Look{
		Colours: p.inksOf, Paper: p.rim(), Letters: letterSize, Widths: screenWidths,
		Screen: &vector.Screen{
			Ring: p.ring / frame.Scale, Width: ringWidth, Thin: 2 * thin * cellHigh / dotsDown, Conflict: solid(p.table.Faces[looks.FoulFace]),
			Foul:    &vector.Foul{Face: nearFace, Line: nearRing, Colours: p.foulInks},
			OnFloor: p.shaded, Words: p.words(&frame),
		},
	})
	return p.board.Picture
}

// distinct is the scene without what would only be a blot.
func (p *pictured) distinct() scene.Scene {
	all := *p.scene
	all.Items = make([]scene.Item, 0, len(p.scene.Items))
	for i := range p.scene.Items {
		it := &p.scene.Items[i]
		if it.Role == scene.Bumper {
			bar, off := p.barAtEdge(it, &all.Projection)
			if it = &bar; off > 0 {
				all.Items = append(all.Items, p.broken(&bar.Solid.Prism.Footprint)...)
				continue
			}
		}
		seen, ok := all.Projection.Seen(it, p.Scale/finer)
		small := it.Role == scene.CutCentre && p.ring < (leastWithCentre+ringHalf)*p.Scale || it.Role == scene.Hole && p.Scale > near
		if ok && !small && (it.Role == scene.Hole || !p.tiny(&all.Projection, &part{Item: it, Seen: seen})) {
			all.Items = append(all.Items, *it)
		}
	}
	return all
}

// rim is the colour of the bare rim round lines: that of the floor.
func (p *pictured) rim() color.NRGBA { return solid(p.table.Faces[looks.FloorFace]) }

// words are the texts of the canvas, where they are there.
func (p *pictured) words(frame *vector.Frame) []vector.Word {
	words := make([]vector.Word, len(p.Texts))
	for i, text := range p.Texts {
		words[i] = p.word(frame, &text)
	}
	return words
}

// word is a text of the canvas on the board.
func (p *pictured) word(frame *vector.Frame, text *Text) vector.Word {
	length := text.length()
	word := vector.Word{
		Name: text.Name, Tail: text.Tail, Down: text.down, Bold: text.Ink.Tone != Word, Box: p.cells(text.Col, text.Row, length, 1),
		Align: [...]vector.Align{byMiddle: vector.ByMiddle, byStart: vector.ByStart, byEnd: vector.ByEnd}[text.align],
	}
	if text.down {
		word.Box = p.cells(text.Col, text.Row, 1, length)
		word.Box.Left = frame.Place(text.middle).X - word.Box.Width/2
	}
	word.Colour, word.Rim, word.Back = p.lettered(text.Ink)
	word.Ends = word.Colour
	if word.Back.A == 0 {
		word.Ends, _, _ = p.lettered(text.TailInk)
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
	case text.align == byStart:
		end.X = b.Left - gap
	case text.align == byEnd:
		end.X = b.Left + b.Width + gap
	case text.Row > text.of[1]:
		return []geometry.Point{of, {X: of.X, Y: b.Top}}
	default:
		return []geometry.Point{of, {X: of.X, Y: b.Top + b.Height}}
	}
	return []geometry.Point{of, {X: of.X, Y: end.Y}, end}
}
