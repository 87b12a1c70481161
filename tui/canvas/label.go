package canvas

import (
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
)

// symbols are the characters of spots.
var symbols = map[scene.Role]rune{
	scene.Outlet: '●', scene.Mouth: '○', scene.Tie: '◆', scene.Mark: '▲', scene.Pilot: '×', scene.CutCentre: '+', scene.Dimension: '•',
}

// spots draws spots and keeps the cut and its surroundings free of words.
func (p *painter) spots() {
	for i := range p.parts {
		it := &p.parts[i]
		switch {
		case it.Role == scene.Cut && it.Form != scene.Spot && p.small(&it.Area):
			p.spot(it.Area.Middle, '◎', Ink{Role: scene.Cut, Tone: Inverse})
			p.protect(&it.Area, 1)
		case it.Role == scene.Cut && it.Form != scene.Spot:
			p.protect(&it.Area, 0)
		case it.Form == scene.Spot:
			p.spot(it.Line[0], symbols[it.Role], inkOf(it.Item))
		}
	}
}

// spot puts a character on a place, unless something more important stands there.
func (p *painter) spot(at geometry.Point, symbol rune, ink Ink) {
	col, row, ok := p.Cell(at)
	if !ok {
		return
	}
	i := row*p.canvas.Width + col
	if p.taken[i] && weight(p.canvas.Cells[i].Ink.Role) >= weight(ink.Role) && p.canvas.Cells[i].Rune < 0x2800 {
		return
	}
	p.canvas.Put(col, row, string(symbol), ink)
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
	if judged(it.Role) {
		ink.State = it.State
	}
	if it.Selected {
		ink.Tone = Inverse
	}
	return ink
}

// The labels in order of importance. What comes last is only written where it hides nothing.
var ranks = []func(*scene.Item) bool{
	func(it *scene.Item) bool { return it.Role == scene.Dimension && it.Selected },
	func(it *scene.Item) bool { return it.Role == scene.Cut },
	func(it *scene.Item) bool { return it.Selected },
	func(it *scene.Item) bool { return it.Role == scene.Dimension },
	func(it *scene.Item) bool { return it.Code != "" && it.State == scene.Foul },
	func(it *scene.Item) bool { return it.Code != "" },
	func(it *scene.Item) bool { return it.Role == scene.Exhaust || it.Role == scene.Mark },
	func(it *scene.Item) bool { return true },
}

// labels writes what things are called, the most important first.
func (p *painter) labels() {
	for rank, wanted := range ranks {
		modest := rank == len(ranks)-1
		for i := range p.parts {
			if it := &p.parts[i]; !p.done[i] && wanted(it.Item) {
				p.done[i] = true
				if !p.tiny(it) && !(modest && p.Scale > far && it.Form == scene.Outline) || it.Role == scene.Cut {
					p.label(it, modest)
				}
			}
		}
	}
}

// label writes an item's name or its letters at the best of the places it could stand. An exclamation mark behind it
// says foul, a question mark doubtful or not measured.
func (p *painter) label(it *part, modest bool) {
	if it.Label == "" && it.Code == "" && it.Measure == nil {
		return
	}
	text := label{name: p.text(it.Item), ink: inkOf(it.Item), modest: modest}
	text.tailInk = Ink{Role: it.Role, State: it.State, Tone: text.ink.Tone, Selected: it.Selected}
	switch {
	case it.State == scene.Foul:
		text.tail = "!"
	case it.State == scene.Doubtful, it.Unsure:
		text.tail = "?"
	}
	switch {
	case it.Code != "":
		p.obstruction(it, text)
	case it.Form == scene.Spot && it.Role != scene.Dimension:
		p.write(text, p.beside(it.Line[0], 1))
	case it.Role == scene.Dimension:
		p.write(text, p.beside(along(it.Line, 0.5), 4))
	case it.Line != nil:
		p.write(text, p.alongside(it.Line))
	case it.Area.Shape == geometry.Line:
		p.write(text, p.alongside(it.Area.Path))
	default:
		p.write(text, append(p.within(&it.Area, 0), p.around(&it.Area)...))
	}
}

// text is what is written at an item: its name, or its figure in the units of whoever looks.
func (p *painter) text(it *scene.Item) string {
	m := it.Measure
	switch {
	case m == nil:
		return clean(it.Label)
	case m.Unit == scene.MM && p.look.Units == survey.Inches:
		return survey.Format(m.Value, survey.Inches)
	case m.Bare, m.Unit == "":
		return survey.Format(m.Value, survey.Millimetres)
	}
	return survey.Format(m.Value, survey.Millimetres) + " " + m.Unit
}

// obstruction writes the name of what is large enough to hold it, or is picked out, and the letters of what is not.
func (p *painter) obstruction(it *part, text label) {
	text.own = true
	inside := p.within(&it.Area, text.length()+1)
	if len(inside) > 0 && p.write(text, inside) {
		return
	}
	seats := p.within(&it.Area, 0)
	if it.Selected && it.Area.Shape == geometry.Line {
		seats = slices.Concat(seats, p.alongside(it.Area.Path))
	}
	if it.Selected && p.write(text, seats) {
		return
	}
	text.name = it.Code
	if it.State == scene.Foul {
		text.ink.Tone, text.tailInk.Tone = Inverse, Inverse
	}
	p.write(text, seats)
}
