package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// signs are the characters of a pen's sign.
var signs = [...]rune{
	scene.Disc: '●', scene.Ring: '○', scene.Lozenge: '◆', scene.Wedge: '▲', scene.Saltire: '×', scene.Plus: '+', scene.Dot: '•',
	scene.Target: '◎', scene.Stroked: 'ø',
}

// Sign is the character that a role is marked with.
func Sign(r scene.Role) string { return string(signs[r.Pen().Sign]) }

// spots draws spots and keeps the cut and its surroundings free of words.
func (p *painter) spots() {
	for i := range p.parts {
		it := &p.parts[i]
		switch {
		case it.Role == scene.Hole && p.Scale <= far && p.small(&it.Area):
			p.spot(it.Area.Middle, inkOf(it.Item))
		case it.Role == scene.Cut && it.Primitive != scene.Spot && p.small(&it.Area):
			p.spot(it.Area.Middle, Ink{Role: scene.Cut, Tone: Inverse})
			p.protect(&it.Area, 1)
		case it.Role == scene.Cut && it.Primitive != scene.Spot:
			p.protect(&it.Area, 0)
		case it.Primitive == scene.Spot:
			p.spot(it.Line[0], inkOf(it.Item))
		}
	}
}

// spot puts a role's sign on a place, unless something in front of it stands there.
func (p *painter) spot(at geometry.Point, ink Ink) {
	col, row, ok := p.Cell(at)
	if !ok {
		return
	}
	i := row*p.canvas.Width + col
	if there := &p.canvas.Cells[i]; p.taken[i] && there.Ink.Role.Pen().Front >= ink.Role.Pen().Front && there.Rune < 0x2800 {
		return
	}
	p.canvas.Put(col, row, Sign(ink.Role), ink)
	p.taken[i] = true
}

// protect keeps the cells of a footprint and so many round it free of words.
func (p *painter) protect(f *geometry.Footprint, rim int) {
	low, high := f.Bounds()
	c0, r0, _ := p.Cell(low)
	c1, r1, _ := p.Cell(high)
	for row := max(min(r0, r1)-rim, p.Top); row <= min(max(r0, r1)+rim, p.Top+p.Rows-1); row++ {
		for col := max(c0-rim, p.Left); col <= min(c1+rim, p.Left+p.Cols-1); col++ {
			p.taken[row*p.canvas.Width+col] = true
		}
	}
}

// inkOf is the ink of an item's letters and of its spot.
func inkOf(it *scene.Item) Ink {
	ink := Ink{Role: it.Role, Tone: Bold, Selected: it.Selected}
	if !it.Role.Pen().Steady {
		ink.State = it.State
	}
	if it.Selected {
		ink.Tone = Inverse
	}
	return ink
}

// labels writes what things are called, the most important first. What comes last is only written where it hides nothing.
func (p *painter) labels() {
	ranks := make([]scene.Rank, len(p.parts))
	for i := range p.parts {
		ranks[i] = p.parts[i].Rank()
	}
	for rank := scene.RankFocus; ; rank-- {
		modest := rank == scene.RankAside
		for i := range p.parts {
			if it := &p.parts[i]; ranks[i] == rank {
				if p.nameable(it, modest) {
					p.label(it, modest)
				}
			}
		}
		if modest {
			return
		}
	}
}

// nameable tells whether an item that is drawn at this scale may have its name: the cut always, one of many small holes where it
// is not clear.
func (p *painter) nameable(it *part, modest bool) bool {
	switch {
	case it.Role == scene.Cut:
		return true
	case it.Role == scene.Hole:
		return p.Scale <= far && (!p.small(&it.Area) || it.Warning() != "")
	}
	return !p.tiny(it) && !(modest && p.Scale > far && it.Primitive == scene.Outline)
}

// label writes an item's name or its letters, and the warning behind them, at the best of the places it could stand.
func (p *painter) label(it *part, modest bool) {
	if it.Label == "" && it.Code == "" && it.Measure == nil {
		return
	}
	text := label{name: p.text(it.Item), ink: inkOf(it.Item), modest: modest}
	text.tail = it.Warning()
	text.tailInk = Ink{Role: it.Role, State: it.State, Tone: text.ink.Tone, Selected: it.Selected}
	if it.Code != "" {
		p.obstruction(it, text)
		return
	}
	seats := p.seats[:0]
	switch {
	case it.Primitive == scene.Spot && it.Role != scene.Dimension:
		seats = p.beside(seats, it.Line[0], 1)
	case it.Role == scene.Dimension:
		seats = p.beside(seats, geometry.Along(it.Line, 0.5), 4)
	case it.Line != nil:
		seats = p.alongside(seats, it.Line)
	case it.Area.Shape == geometry.Line:
		seats = p.alongside(seats, it.Area.Path)
	default:
		seats = p.around(p.inside(seats, &it.Area, 0), &it.Area)
	}
	p.write(text, seats)
	p.seats = seats
}

// text is what is written at an item: its name, or its figure in the units of whoever looks.
func (p *painter) text(it *scene.Item) string {
	m := it.Measure
	switch {
	case m == nil:
		return clean(it.Label)
	case !m.Bare:
		return desk.Quantity(m.Value, rules.Unit(m.Unit), p.look.Units)
	case m.Unit == scene.MM:
		return survey.Format(m.Value, p.look.Units)
	}
	return survey.Figure(m.Value)
}

// obstruction writes the name of what is large enough to hold it, or is picked out, and the letters of what is not.
func (p *painter) obstruction(it *part, text label) {
	text.own = true
	p.seats = p.inside(p.seats[:0], &it.Area, text.length()+1)
	if p.write(text, p.seats) {
		return
	}
	p.seats = p.inside(p.seats[:0], &it.Area, 0)
	if it.Selected && it.Area.Shape == geometry.Line {
		p.seats = p.alongside(p.seats, it.Area.Path)
	}
	seats := p.seats
	if it.Selected && p.write(text, seats) {
		return
	}
	text.name = it.Code
	if it.State == scene.Foul {
		text.ink.Tone, text.tailInk.Tone = Inverse, Inverse
	}
	p.write(text, seats)
}
