package canvas

import (
	"bench.example/undermark/geometry/scene"
)

// inTheWay shows in the colour of what is foul the part of a thing that stands in the way of the cut.
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
