package canvas

import (
	"image/color"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
)

// The palette as whoever paints in pixels takes it.

// solid is a colour of the palette that hides what is behind it.
func solid(rgb int) color.NRGBA {
	return color.NRGBA{R: uint8(rgb >> 16), G: uint8(rgb >> 8), B: uint8(rgb), A: 255}
}

// inksOf are the colours of an item in a picture of a scale.
func (p *pictured) inksOf(it *scene.Item) (c vector.Colours) {
	line := lineInk(it)
	if it.Role == scene.Cut {
		line.State = scene.Plain // the ring is the brightest there is, however it stands
	}
	ink, _ := colours(Cell{Ink: line, Ground: Ground{Role: scene.Floor, Set: true}}, p.table)
	c.Line = solid(ink)
	if it.Primitive != scene.Area || !faced(it.Role) {
		return c
	}
	face := groundOf(it)
	tint, _ := tintIn(face, p.table)
	c.Ground = solid(tint)
	if it.Role == scene.Floor || it.Unsure || p.slender(it) {
		return c
	}
	// What is solid is told by its face; its edge only parts it from its neighbours.
	line.State = scene.Plain
	ink, behind := colours(Cell{Ink: line, Ground: face}, p.table)
	c.Line = solid(between(ink, behind))
	if it.Role.Pen().Fill == scene.Hatched && !it.Selected {
		c.Fill = solid(between(between(ink, behind), behind))
	}
	return c
}

// foulInks are those of a foul thing round the ring: a line is red, a face half as much.
func (p *pictured) foulInks(it *scene.Item) (c vector.Colours) {
	face := groundOf(it)
	face.Foul = true
	tint, _ := tintIn(face, p.table)
	ink, _ := colours(Cell{Ink: Ink{Role: it.Role, State: scene.Foul, Selected: it.Selected}, Ground: Ground{Role: scene.Floor, Set: true}}, p.table)
	c.Ground, c.Line = solid(tint), solid(ink)
	return c
}

// slender tells whether an area is a line that is drawn as one.
func (p *pictured) slender(it *scene.Item) bool {
	seen, ok := p.scene.Projection.Seen(it, p.Scale/finer)
	return ok && seen.Area.Shape == geometry.Line && seen.Area.Radius < thin*p.Scale
}

// lettered are the colours of a text: its ink, what a rim round it has, and what lies behind it where that is to be seen first. The
// rim is bare floor, so that letters are read on any face.
func (p *pictured) lettered(ink Ink) (letters, rim, back color.NRGBA) {
	if ink.Tone == Inverse {
		ink.Tone = Normal
		letters, _, _ = p.lettered(ink)
		return solid(p.table.Paper.RGB), color.NRGBA{}, letters
	}
	over, under := colours(Cell{Ink: ink, Ground: Ground{Role: scene.Floor, Set: true}}, p.table)
	return solid(over), solid(under), color.NRGBA{}
}
