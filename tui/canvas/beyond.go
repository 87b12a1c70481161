package canvas

import (
	"math"
	"unicode/utf8"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/words"
)

// beyond names at the edge of the picture what one looks for and lies beyond it, the tanks, the van's exhaust, and on either side where none is seen the nearest
// chassis rail: with how far from that edge it is where there is room for that.
func (p *painter) beyond() {
	for _, it := range p.soughtBeyond() {
		if !p.saidBelow(it) {
			p.pointTo(it)
		}
	}
}

// soughtBeyond are those parts, the rails first.
func (p *painter) soughtBeyond() (sought []*part) {
	for _, rail := range p.railsBeyond() {
		if rail != nil {
			sought = append(sought, rail)
		}
	}
	for i := range p.parts {
		it := &p.parts[i]
		if it.Label != "" && !it.Aside && it.Primitive == scene.Area && (it.Role == scene.Hot || it.Role == scene.Lines && it.Area.Shape != geometry.Line) && p.edgeTo(&it.Area).out {
			sought = append(sought, it)
		}
	}
	return sought
}

// railsBeyond are the chassis rails that are nearest beyond the picture's top and bottom; nil for one that is none.
func (p *painter) railsBeyond() (nearest [2]*part) {
	off := [2]float64{}
	for i := range p.parts {
		it := &p.parts[i]
		if it.Role != scene.Rail || it.Primitive != scene.Area || it.Label == "" {
			continue
		}
		e, side := p.edgeTo(&it.Area), 0
		switch e.arrow {
		case toBottom:
			side = 1
		case toTop:
		default:
			continue
		}
		if e.out && (nearest[side] == nil || e.off < off[side]) {
			nearest[side], off[side] = it, e.off
		}
	}
	return nearest
}

// pointTo names at the edge of the picture a part that lies beyond it.
func (p *painter) pointTo(it *part) {
	e := p.edgeTo(&it.Area)
	ink := inkOf(it.Item)
	ink.Tone = Word
	low, high := it.Area.Bounds()
	east := p.west + float64(p.wide)*p.Scale
	seats := p.atEdge(p.seats[:0], e.at)
	for _, x := range [2]float64{max(low.X, p.west), min(high.X, east-inside*p.Scale)} { // as right along all that it is beside
		if p.west <= x && x < east {
			seats = p.atEdge(seats, geometry.Point{X: x, Y: e.at.Y})
		}
	}
	p.seats = seats
	name := clean(it.Label)
	names, dear := []string{p.past(name, e.off), name}, []int{0, 3 * fromEdge}
	if it.Role == scene.Rail { // its side says which one it is, or its arrow alone
		names, dear = []string{names[0], p.besideOf(e.arrow) + " " + aRail, aRail}, []int{0, fromEdge, railWorth}
	}
	p.writeOne(names, dear, label{ink: ink, over: true, guides: bears(it)}, e.arrow)
}

// besideOf is the word for the side of the van that one of the upright arrows points to.
func (p *painter) besideOf(arrow int) string {
	if arrow == toTop {
		return p.word(p.projection.Top())
	}
	return p.word(p.projection.Bottom())
}

// writeOne writes the first of some names, each briefer than the one before, with an arrow on the best of the seats at the edge, or a briefer one where
// that is better by more than it is dear.
func (p *painter) writeOne(names []string, dear []int, l label, arrow int) {
	var text label
	best, least := choice{}, l.most()
	for i, name := range names {
		one := l
		one.name = name
		one = pointing(one, arrow)
		c := choice{cost: least - dear[i]}
		if !best.found {
			c.cost = l.most()
		}
		if p.choose(&c, &one, p.seats); c.found && (!best.found || c.cost+dear[i] < least) {
			best, text, least = c, one, c.cost+dear[i]
		}
	}
	p.settle(text, best)
}

// inside is how many dots within the picture a place is that lies on its edge.
const inside = 1e-6

// outOfView stands behind how far past the edge of the picture a thing is, and says from where that is.
const outOfView = " out of view"

// past is a name with how far out of the picture the thing is; the bare name of what is close by, and in a narrow picture.
// A bare figure would be read as the way from the cut.
func (p *painter) past(name string, mm float64) string {
	if mm = coarse(mm, p.look.Units); mm == 0 {
		return name
	}
	full := name + " " + words.Measure(scene.Measure{Value: mm, Unit: scene.MM}, p.look.Units) + outOfView
	if 5*utf8.RuneCountInString(full) > 2*p.Cols { // it would hide what one looks for
		return name
	}
	return full
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

// edge is where something lies that is out of the picture.
type edge struct {
	at    geometry.Point // the place of the picture that is nearest to it
	arrow int            // which of the arrows points there
	off   float64        // how far from the edge, mm
	out   bool           // all of it lies beyond
}

// edgeTo is where an outline lies beyond the picture.
func (p *painter) edgeTo(f *geometry.Footprint) edge {
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
		return edge{}
	}
	at := geometry.Point{X: max(min(x, east-inside*p.Scale), west), Y: min(max(y, south+inside*p.Scale), north)}
	to := at // what lies beside the picture is no farther up or down than a part of it is
	if aside > 0 {
		to.X = (low.X + high.X) / 2
	}
	if away > 0 {
		to.Y = (low.Y + high.Y) / 2
	}
	return edge{at, p.heading(at, to), max(aside, away), true}
}

// fromEdge is what each row costs that a name stands away from the edge beyond which its thing is.
const fromEdge = 20

// atEdge adds seats at an edge of the picture, the nearest to a place first.
func (p *painter) atEdge(seats []seat, at geometry.Point) []seat {
	col, row, ok := p.Cell(at)
	if !ok {
		return seats
	}
	if p.barOff > 0 {
		col = max(col, p.Left+2) // beside the edge where the van is broken off
	}
	align := byStart
	if col > p.Left+p.Cols/2 {
		align = byEnd
	}
	rows := p.Rows
	if len(p.below) > 0 {
		rows = 2 // there is no room for what is told of elsewhere
	}
	for d := range rows {
		for _, r := range [2]int{row - d, row + d} {
			seats = append(seats, seat{col: col, row: r, align: align, off: fromEdge * d})
		}
	}
	return seats
}
