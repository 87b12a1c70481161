package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// mistaken tells whether a text would stand nearer to another thing of the kind of what it names, as far as that is in the picture, than to its
// own: it would be read as the name of that, whatever leader it has.
func (p *painter) mistaken(of *part, col, row, length int) bool {
	if of == nil || of.Code == "" {
		return false
	}
	box := p.box(col, row, length)
	own := apart(box, &of.Area)
	for i := range p.parts {
		it := &p.parts[i]
		if it != of && it.Code == of.Code && it.Ref != of.Ref && it.Primitive == scene.Area && it.Line == nil && apart(box, &it.Area) < own && p.inPicture(it) {
			return true
		}
	}
	return false
}

// box is what so many cells of a row cover, in the plane.
func (p *painter) box(col, row, length int) geometry.Footprint {
	first, _ := p.point(col, row)
	last, _ := p.point(col+length-1, row)
	wide, high := p.CellSize()
	half := geometry.Point{X: wide / 2, Y: high / 2}
	return geometry.NewRectangle(first.Sub(half), last.Add(half), 0)
}

// apart is how far two outlines are apart, 0 where they overlap.
func apart(a geometry.Footprint, b *geometry.Footprint) float64 {
	return max(geometry.Between(a, *b).Gap, 0)
}

// inPicture tells whether anything of a part may lie in the picture.
func (p *painter) inPicture(it *part) bool {
	_, _, out := p.edgeTo(&it.Area)
	return !out
}
