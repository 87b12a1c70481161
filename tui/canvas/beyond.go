package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// beyond names at the edge of the picture the tanks that lie beyond it, which one looks for.
func (p *painter) beyond() {
	for i := range p.parts {
		it := &p.parts[i]
		if it.Label == "" || it.Aside || it.Primitive != scene.Area || it.Role != scene.Lines || it.Area.Shape == geometry.Line {
			continue
		}
		if at, arrow, out := p.edgeTo(&it.Area); out {
			ink := inkOf(it.Item)
			ink.Tone = Word
			l := label{name: clean(it.Label), tail: " " + string(arrows[arrow]), ink: ink, tailInk: ink, over: true}
			p.write(l, p.atEdge(p.seats[:0], at))
		}
	}
}

// edgeTo is the place of the picture that is nearest to an outline, which of the arrows points there, and whether all of
// that lies beyond.
func (p *painter) edgeTo(f *geometry.Footprint) (at geometry.Point, arrow int, out bool) {
	low, high := f.Bounds()
	west, south := p.west, p.north-float64(p.tall)*p.Scale
	east, north := p.west+float64(p.wide)*p.Scale, p.north
	clamp := func(from, to, least, most float64) (v, off float64) {
		v = max(min((from+to)/2, most), least)
		return v, max(from-most, least-to, 0)
	}
	x, aside := clamp(low.X, high.X, west, east)
	y, away := clamp(low.Y, high.Y, south, north)
	if aside == 0 && away == 0 {
		return at, 0, false
	}
	const inside = 1e-6
	at = geometry.Point{X: max(min(x, east-inside*p.Scale), west), Y: min(max(y, south+inside*p.Scale), north)}
	return at, p.heading(at, low.Add(high).Scale(0.5)), true
}

// atEdge adds seats at an edge of the picture, the nearest to a place first.
func (p *painter) atEdge(seats []seat, at geometry.Point) []seat {
	col, row, ok := p.Cell(at)
	if !ok {
		return seats
	}
	hold := byStart
	if col > p.Left+p.Cols/2 {
		hold = byEnd
	}
	for d := range p.Rows {
		for _, r := range [2]int{row - d, row + d} {
			seats = append(seats, seat{col: col, row: r, hold: hold, off: leaderRow * d})
		}
	}
	return seats
}
