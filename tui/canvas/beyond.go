package canvas

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/words"
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
			p.write(pointing(label{name: clean(it.Label), ink: ink, over: true}, arrow), p.atEdge(p.seats[:0], at))
		}
	}
}

// rearBeyond says at the edge of the picture where the rear bumper lies that is out of sight, and how far from that edge: all readings
// along the van are taken from there.
func (p *painter) rearBeyond() {
	for i := range p.parts {
		it := &p.parts[i]
		if it.Role != scene.Bumper || it.Label == "" {
			continue
		}
		at, arrow, out := p.edgeTo(&it.Area)
		if !out {
			return
		}
		name := "rear " + clean(it.Label)
		if p.look.Datum != "" {
			name = "rear end"
		} else if mm := coarse(p.west, p.look.Units); mm > 0 && arrow == toLeft && p.projection.Across.Low == scene.ToBumper {
			name = words.Measure(scene.Measure{Value: mm, Unit: scene.MM}, p.look.Units) + " to " + name
		}
		l := label{name: name, ink: Ink{Role: it.Role, Tone: Bold}, over: true, always: true}
		p.write(pointing(l, arrow), p.atEdge(p.seats[:0], at))
		return
	}
}

// coarse is a length to the nearest centimetre, or whole inch: the edge of a picture is no place that anybody measures from.
func coarse(mm float64, u survey.Units) float64 {
	step := max(u.Size(), 10)
	return math.Round(mm/step) * step
}

// pointing is a label with one of the arrows on the side that it points to.
func pointing(l label, arrow int) label {
	if l.tailInk = l.ink; arrow == toLeft {
		l.name = string(arrows[arrow]) + " " + l.name
	} else {
		l.tail = " " + string(arrows[arrow])
	}
	return l
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
	to := at // what lies beside the picture is no farther up or down than a part of it is
	if aside > 0 {
		to.X = (low.X + high.X) / 2
	}
	if away > 0 {
		to.Y = (low.Y + high.Y) / 2
	}
	return at, p.heading(at, to), true
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
