package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/words"
)

// rearBeyond says at the edge of the picture where the rear bumper lies that is out of sight, and how far from that edge: all readings
// along the van are taken from there. From behind it lies before all there is, and its name would hide more than it says.
func (p *painter) rearBeyond() {
	if !p.projection.Lengthwise() {
		return
	}
	for i := range p.parts {
		it := &p.parts[i]
		if it.Role != scene.Bumper || it.Label == "" {
			continue
		}
		e, plain := p.edgeTo(&it.Area), clean(it.Label)
		name := "rear " + plain
		if p.look.Datum != "" {
			name, plain = rearEnd, rearEnd
		}
		l := label{name: name, ink: Ink{Role: it.Role, Tone: Bold}, over: true, always: true}
		switch {
		case p.saidBelow(it):
		case p.barOff > 0:
			p.farBar(it, plain, l)
		case e.out:
			p.write(pointing(l, e.arrow), p.atEdge(p.seats[:0], e.at))
		default:
			p.besideRear(it, l)
		}
		return
	}
}

// rearEnd is what the van's rear is called where the readings are taken from another datum than its bumper.
const rearEnd = "rear end"

// barAtEdge is the bumper bar where it is drawn; where in a plan it lies beyond the picture, the first column of that, beside it, where the van is broken off, and
// by how much the bar is farther off, mm.
func (m *Map) barAtEdge(it *scene.Item, seen *scene.Projection) (bar scene.Item, off float64) {
	low, high := it.Solid.Prism.Footprint.Bounds()
	if bar, off = *it, m.west-high.X; !seen.FacesFloor() || off <= 0 {
		return bar, 0
	}
	x := m.west + m.Scale*dotsAcross/2
	bar.Solid.Prism.Footprint = geometry.NewLine([]geometry.Point{{X: x, Y: low.Y}, {X: x, Y: high.Y}}, m.Scale*dotsAcross/2)
	return bar, off
}

// breakOff draws the edge at which the van is broken off where its bumper lies beyond the picture: a line alone, so that nothing but the bumper looks like one.
func (p *painter) breakOff() {
	for i := range p.parts {
		it := &p.parts[i]
		if it.Role != scene.Bumper || p.barOff == 0 {
			continue
		}
		for row := p.Top; row < p.Top+p.Rows; row++ {
			if p.covers(it, p.Left, row) {
				*p.canvas.At(p.Left, row) = Cell{Rune: teeth[row%2], Ink: Ink{Role: it.Role}}
				p.taken.add(row*p.canvas.Width + p.Left)
			}
		}
	}
}

// teeth are what that edge is made of, in even rows and in odd ones: the zigzag of a break line (ISO 128-2).
var teeth = [2]rune{'╲', '╱'}

// broken is the edge that teeth show in cells, for a bar beside the picture; none where no row sees it.
func (m *Map) broken(bar *geometry.Footprint) (edge []scene.Item) {
	wide, _ := m.CellSize()
	x, _ := m.point(m.Left, m.Top)
	var path []geometry.Point3
	for row := m.Top; row < m.Top+m.Rows; row++ {
		at, _ := m.point(m.Left, row)
		if !bar.Contains(at) {
			continue
		}
		above, _ := m.point(m.Left, row-1)
		below, _ := m.point(m.Left, row+1)
		side := []float64{x.X - wide/2, x.X + wide/2}
		if len(path) == 0 {
			path = append(path, geometry.Point{X: side[row%2], Y: (above.Y + at.Y) / 2}.At(0))
		}
		path = append(path, geometry.Point{X: side[(row+1)%2], Y: (at.Y + below.Y) / 2}.At(0))
	}
	if len(path) > 0 {
		edge = append(edge, scene.Item{Role: scene.Bumper, Primitive: scene.Stroke, Path: scene.Straight(path...)})
	}
	return edge
}

// neverBare is what the bumper's name without how far it is costs: more than all that a longer one may hide.
const neverBare = 8 * mostHidden

// farBar says at the edge where the van is broken off how far out of the picture its bumper is.
func (p *painter) farBar(it *part, plain string, l label) {
	p.seats = p.atEdge(p.seats[:0], p.visible(it.Area.Bounds()))
	far := scene.Measure{Value: coarse(p.barOff, p.look.Units), Unit: scene.MM}
	off := " " + words.Measure(far, p.look.Units) + outOfView
	names, dear := []string{l.name + off, plain + off, plain}, []int{0, endWorth / 4, neverBare}
	p.writeOne(names, dear, l, toLeft)
}

// besideRear names the rear bumper beside it where its name did not stand on it.
func (p *painter) besideRear(it *part, l label) {
	if !p.rearNamed {
		p.write(l, p.atEdge(p.seats[:0], p.visible(it.Area.Bounds())))
	}
}
