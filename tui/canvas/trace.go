package canvas

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// thin tells whether an area is a line that is thinner than two dots.
func (p *painter) thin(it *part) bool {
	return it.Primitive == scene.Area && it.Area.Shape == geometry.Line && it.Area.Radius < thin*p.Scale
}

// trace draws an item's lines.
func (p *painter) trace(it *part) {
	switch {
	case it.Primitive == scene.Spot, it.Role == scene.Cut && p.circle.shown, p.tiny(it):
	case it.Line != nil:
		p.along(it, it.Line)
	case p.thin(it):
		p.along(it, it.Area.Path)
	case it.Primitive == scene.Area && p.look.Faces && faced(it.Role) && !it.Unsure:
	case p.upright(it):
		p.along(it, corners(&it.Area))
	default:
		p.outlined(it)
	}
}

// upright tells whether an outline is a rectangle along the rows and columns that is drawn with lines.
func (p *painter) upright(it *part) bool {
	lined := it.Primitive == scene.Outline || it.Role.Pen().Fill == scene.Unfilled
	return lined && it.Area.Shape == geometry.Rectangle && math.Mod(it.Area.Turn, 90) == 0
}

// corners are those of a rectangle, the first again at the end.
func corners(f *geometry.Footprint) []geometry.Point {
	c := f.Corners()
	return []geometry.Point{c[0], c[1], c[2], c[3], c[0]}
}

// along draws an item's line through places.
func (p *painter) along(it *part, path []geometry.Point) {
	like := stroke{style: styleOf(p.projection.LineOf(it.Item), it.Weight()), front: it.Role.Pen().Front, ink: lineInk(it.Item), foul: it.Code != "" && it.State == scene.Foul}
	if like.foul {
		like.front = foulFront
	}
	p.mask.reset()
	p.stroke(path, like, &p.mask)
	it.stroke = p.strokes.of
	if it.Role.Pen().Ended {
		p.witness(path, like)
	}
	p.draw(&p.mask, it)
}

// foulFront is how far in front a line is that is in the way: its course is followed past what else crosses it.
const foulFront = 7

// outlined draws an item's outline by dots.
func (p *painter) outlined(it *part) {
	line := &p.edge
	p.mask.reset()
	p.mask.footprint(&it.Area, &p.Map)
	p.mask.outline(&p.edge)
	if it.Role.Pen().Fill == scene.Filled {
		line = &p.mask
	}
	p.draw(line, it)
}

// draw lays the dots of an item's line.
func (p *painter) draw(line *bitmap, it *part) {
	if line.top >= line.bottom {
		return
	}
	if pen := it.Role.Pen(); !p.look.Faces && (pen.Rim || it.Selected) {
		line.grow(&p.halo)
		p.dots.erase(&p.halo)
	}
	if it.Weight() == scene.Heavy {
		line.grow(&p.halo)
		line = &p.halo
	}
	p.lay(line, &p.lines[p.projection.LineOf(it.Item)], lineInk(it.Item), it.Role.Pen().Front)
}

// lineInk is the ink of an item's lines. What was surveyed keeps its own, however it stands: its name says that, and its conflict
// with the cut where it crosses it.
func lineInk(it *scene.Item) Ink {
	ink := Ink{Role: it.Role, Selected: it.Selected}
	if tank(it) {
		ink.Role = scene.Bumper
	}
	if !it.Role.Pen().Steady && it.Code == "" {
		ink.State = it.State
	}
	switch {
	case it.Layer != scene.Through && it.Role == scene.Fitting:
		ink.Tone = Faint
	case minor(it):
		ink.Tone = Pale
	}
	return ink
}

// minor tells whether an item is a pipe or a wire that kills nobody: one is to follow those that can.
func minor(it *scene.Item) bool {
	return it.Role == scene.Lines && it.Primitive == scene.Area && it.Solid.Prism.Footprint.Shape == geometry.Line && !it.Deadly && !it.Selected
}
