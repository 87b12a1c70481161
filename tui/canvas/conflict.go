package canvas

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// How far round the ring a thing that is foul is drawn as such, in radii of the ring: a line, which the ring may cover whole, and a face,
// of which there is more. The rest of the picture stays calm.
const (
	nearRing = 8
	nearFace = 2
)

// inTheWay shows in the colour of what is foul the part of a thing that stands in the way of the cut, and its lines on either side.
func (p *painter) inTheWay() {
	if !p.circle.shown {
		return
	}
	foul := Ground{Role: scene.Conflict, Set: true}
	for i := range p.parts {
		it := &p.parts[i]
		if it.State != scene.Foul || it.Primitive != scene.Area || it.Code == "" {
			continue
		}
		p.redden(it)
		p.mask.reset()
		p.mask.footprint(&it.Area, &p.Map)
		if p.thin(it) {
			p.cellsOf(it)
		}
		p.edge.reset()
		p.edge.disc(p.circle.middle, p.circle.radius)
		p.mask.meet(&p.edge)
		p.faces.lay(&p.mask, foul)
	}
}

// pastRing draws a short end beyond the ring of a line in the way that ends past the cut, where the ring, drawn larger, hides that: one sees that it goes
// right across.
func (p *painter) pastRing() {
	if !p.circle.shown {
		return
	}
	for i := range p.parts {
		it := &p.parts[i]
		if it.State != scene.Foul || it.Code == "" || !p.thin(it) || it.stroke == 0 {
			continue
		}
		if path := it.Area.Path; len(path) > 1 {
			p.endPast(it, path[1], path[0])
			p.endPast(it, path[len(path)-2], path[len(path)-1])
		}
	}
}

// endPast draws the end of a line that comes from a place where the ring hides it.
func (p *painter) endPast(it *part, from, end geometry.Point) {
	cut := p.circle.item.Solid.Prism.Footprint
	col, row, ok := p.Cell(end)
	off, along := end.Sub(cut.Middle), end.Sub(from)
	if !ok || !p.ringed(col, row) && !p.onRing(col, row) || off.Norm() <= cut.Radius || off.X*along.X+off.Y*along.Y <= 0 {
		return
	}
	arrow := p.heading(from, end)
	by := [4][2]int{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}[arrow]
	for p.ringed(col, row) || p.onRing(col, row) {
		col, row = col+by[0], row+by[1]
	}
	if col < p.Left || col >= p.Left+p.Cols || row < p.Top || row >= p.Top+p.Rows {
		return
	}
	arms := [4]uint8{west, north, east, south}[arrow]
	ink := Ink{Role: it.Role, State: scene.Foul, Selected: it.Selected}
	p.strokes.cells[row*p.canvas.Width+col] = stroke{arms: arms, style: heavy, front: foulFront, ink: ink, of: it.stroke, foul: true}
	p.canvas.Put(col, row, string(pieces[1][arms]), ink)
	if cell := p.canvas.At(col, row); p.look.Faces {
		cell.Ground = Ground{Role: scene.Floor, Set: true} // what is foul stays red
	}
}

// redden gives what is drawn of a thing near the ring the colour of what is foul: a line is red and heavy, a face half as strong as
// where it is in the way.
func (p *painter) redden(it *part) {
	thin := p.thin(it)
	reach := nearFace * p.circle.radius
	if thin {
		reach = nearRing * p.circle.radius
	}
	p.edge.reset()
	p.edge.disc(p.circle.middle, reach)
	p.mask.reset()
	p.mask.footprint(&it.Area, &p.Map)
	p.mask.meet(&p.edge)
	if !thin {
		if faced(it.Role) {
			face := groundOf(it.Item)
			face.Foul = true
			p.faces.recast(&p.mask, groundOf(it.Item), face)
		}
		return
	}
	red := Ink{Role: it.Role, State: scene.Foul, Selected: it.Selected}
	for row := p.mask.top / dotsDown; row*dotsDown < p.mask.bottom; row++ {
		p.mask.cells(row, func(col int) {
			if ink := &p.inks[row*p.Cols+col]; ink.Role == it.Role {
				*ink = red // of what runs aslant
			}
		})
	}
	for row := range p.Rows {
		for col := range p.Cols {
			s := &p.strokes.cells[(p.flip(row)+p.Top)*p.canvas.Width+p.Left+col]
			middle := vec{(float64(col) + 0.5) * dotsAcross, (float64(row) + 0.5) * dotsDown}
			if s.arms != 0 && s.of == it.stroke && p.circle.off(middle) <= reach {
				s.ink, s.style = red, s.style.heavier()
			}
		}
	}
}

// cellsOf sets the mask to the whole cells that a thin line is drawn in.
func (p *painter) cellsOf(it *part) {
	for row := range p.Rows {
		for col := range p.Cols {
			s := &p.strokes.cells[(p.flip(row)+p.Top)*p.canvas.Width+p.Left+col]
			if s.arms == 0 || s.of != it.stroke {
				continue
			}
			for y := range dotsDown {
				p.mask.span(row*dotsDown+y, col*dotsAcross, (col+1)*dotsAcross-1)
			}
		}
	}
}

// crossing marks what is in the way of the cut on the ring where that crosses it as it is drawn: under one that is drawn larger than the cut is the place of the
// conflict itself may not be seen. False where the thing crosses no cell of the ring, or no such ring is there.
func (p *painter) crossing(conflict *part) bool {
	of := p.inWay(conflict)
	if of == nil || !p.circle.shown || asLarge(p.circle.item.Solid.Prism.Footprint.Radius/p.Scale) {
		return false
	}
	at, least := [2]int{}, math.Inf(1)
	middle, centre, _ := p.circle.cell(p)
	aside, away := int(p.circle.radius)/dotsAcross+2, int(p.circle.radius)/dotsDown+2
	for row := max(centre-away, p.Top); row < min(centre+away+1, p.Top+p.Rows); row++ {
		for col := max(middle-aside, p.Left); col < min(middle+aside+1, p.Left+p.Cols); col++ {
			if !p.onRing(col, row) || p.canvas.At(col, row).Rune == signs[scene.Crossed] { // each has a mark of its own
				continue
			}
			here, _ := p.point(col, row)
			off, box := here.Sub(conflict.Line[0]).Norm(), p.box(col, row, 1)
			if off < least && boxGap(&box, &of.Area) == 0 && geometry.Apart(&box, &of.Area) == 0 {
				at, least = [2]int{col, row}, off
			}
		}
	}
	if math.IsInf(least, 1) {
		return false
	}
	ring := Ink{Role: scene.Cut, Tone: Bold, Selected: p.circle.item.Selected} // which stays whole
	*p.canvas.At(at[0], at[1]) = Cell{Rune: signs[scene.Crossed], Ink: ring, Ground: Ground{Role: scene.Conflict, Set: true}}
	return true
}
