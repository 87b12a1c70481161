package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// besideRows is how many rows off a thing at the most a name stands beside it.
const besideRows = 2

// mistaken tells whether a text on a seat would be read as the name of another thing of the kind of what it names: of one in the picture that is nearer
// than its own. What stands off with a leader is so only close beside that other thing, or where the leader goes over it.
func (p *painter) mistaken(of *part, s seat, length int) bool {
	if of == nil || of.Code == "" {
		return false
	}
	box := p.box(s.start(length), s.row, length)
	own := apart(box, &of.Area)
	_, high := p.CellSize()
	for i := range p.parts {
		it := &p.parts[i]
		if it == of || it.Code != of.Code || it.Ref == of.Ref || it.Primitive != scene.Area || it.Line != nil {
			continue
		}
		if off := apart(box, &it.Area); off < own && (!s.led || off < besideRows*high || p.ledOver(it, s)) && p.inPicture(it) {
			return true
		}
	}
	return false
}

// ledOver tells whether the leader of a seat goes over a part.
func (p *painter) ledOver(it *part, s seat) bool {
	for row := min(s.row, s.of[1]); row <= max(s.row, s.of[1]); row++ {
		if apart(p.box(s.of[0], row, 1), &it.Area) == 0 {
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
	return !p.edgeTo(&it.Area).out
}
