package canvas

import (
	"bench.example/undermark/geometry"
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
	own := geometry.Apart(&box, &of.Area)
	_, high := p.CellSize()
	strip := p.leaderBox(s)
	takes := func(it *part) bool {
		if it.Ref == of.Ref {
			return false
		}
		near := boxGap(&box, &it.Area)
		if near >= own || s.led && near >= besideRows*high && boxGap(&strip, &it.Area) > 0 {
			return false // without comparing outlines
		}
		off := geometry.Apart(&box, &it.Area)
		return off < own && (!s.led || off < besideRows*high || geometry.Apart(&strip, &it.Area) == 0)
	}
	if own == 0 {
		return false
	}
	if !s.led {
		return p.rivals.any(of.kind, &box, own, takes)
	}
	return p.rivals.any(of.kind, &box, min(own, besideRows*high), takes) || p.rivals.any(of.kind, &strip, p.Scale, takes)
}

// leaderBox is what the column of cells covers that the leader of a seat goes along, in the plane.
func (p *painter) leaderBox(s seat) geometry.Footprint {
	first, _ := p.point(s.of[0], s.row)
	last, _ := p.point(s.of[0], s.of[1])
	wide, high := p.CellSize()
	low := geometry.Point{X: min(first.X, last.X) - wide/2, Y: min(first.Y, last.Y) - high/2}
	return geometry.NewRectangle(low, geometry.Point{X: max(first.X, last.X) + wide/2, Y: max(first.Y, last.Y) + high/2}, 0)
}

// boxGap is how far the boxes about two outlines are apart along X or Y, whichever is more: the outlines are not nearer.
func boxGap(a, b *geometry.Footprint) float64 {
	lowA, highA := a.Bounds()
	lowB, highB := b.Bounds()
	return max(lowA.X-highB.X, lowB.X-highA.X, lowA.Y-highB.Y, lowB.Y-highA.Y, 0)
}

// box is what so many cells of a row cover, in the plane.
func (p *painter) box(col, row, length int) geometry.Footprint {
	first, _ := p.point(col, row)
	last, _ := p.point(col+length-1, row)
	wide, high := p.CellSize()
	half := geometry.Point{X: wide / 2, Y: high / 2}
	return geometry.NewRectangle(first.Sub(half), last.Add(half), 0)
}

// inPicture tells whether anything of a part may lie in the picture.
func (p *painter) inPicture(it *part) bool {
	return !p.edgeTo(&it.Area).out
}

// seen tells whether anything of a part may lie in the picture, whatever it is drawn by.
func (p *painter) seen(it *part) bool {
	if it.Line == nil {
		return p.inPicture(it)
	}
	low, high := it.Line[0], it.Line[0]
	for _, at := range it.Line {
		low = geometry.Point{X: min(low.X, at.X), Y: min(low.Y, at.Y)}
		high = geometry.Point{X: max(high.X, at.X), Y: max(high.Y, at.Y)}
	}
	from, to := p.Corners()
	return low.X <= to.X && low.Y <= to.Y && high.X >= from.X && high.Y >= from.Y
}
