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
			name, plain = "rear end", "rear end"
		}
		l := label{name: name, ink: Ink{Role: it.Role, Tone: Bold}, over: true, always: true}
		switch {
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

// barAtEdge is the bumper bar as it is drawn: at the picture's edge, a cell wide, where in a plan it lies beyond that, as everybody looks for it, and by how much
// it does, mm; else where it is.
func (m *Map) barAtEdge(it *scene.Item, seen *scene.Projection) (bar scene.Item, off float64) {
	low, high := it.Solid.Prism.Footprint.Bounds()
	if bar, off = *it, m.west-high.X; !seen.FacesFloor() || off <= 0 {
		return bar, 0
	}
	x := m.west + m.Scale*dotsAcross/2
	bar.Solid.Prism.Footprint = geometry.NewLine([]geometry.Point{{X: x, Y: low.Y}, {X: x, Y: high.Y}}, m.Scale*dotsAcross/2)
	return bar, off
}

// partBar empties the cells of the bumper bar that is drawn at the picture's edge of what else is there, and tears the picture off from it: what lies between
// is left out.
func (p *painter) partBar() {
	for i := range p.parts {
		it := &p.parts[i]
		if it.Role != scene.Bumper || p.barOff == 0 {
			continue
		}
		for row := p.Top; row < p.Top+p.Rows; row++ {
			if p.covers(it, p.Left, row) {
				at := row*p.canvas.Width + p.Left
				if p.look.Faces {
					p.canvas.Cells[at] = Cell{Rune: ' ', Ground: groundOf(it.Item)}
				}
				p.canvas.Cells[at+1] = Cell{Rune: teeth[row%2], Ink: Ink{Role: it.Role}}
			}
		}
	}
}

// teeth are what a torn edge is made of, in even rows and in odd ones: the zigzag of a break line (ISO 128-2).
var teeth = [2]rune{'╲', '╱'}

// torn is the edge that teeth show in cells, for a bar at the picture's edge as it is seen; none where no row sees it.
func (m *Map) torn(bar *geometry.Footprint) (edge []scene.Item) {
	wide, _ := m.CellSize()
	x, _ := m.point(m.Left+1, m.Top)
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

// unseen stands behind how far the bumper is where there are few columns: so much between the torn edge and it is left out.
const unseen = " unseen"

// neverBare is what the bumper's name without how far it is costs: more than all that a longer one may hide.
const neverBare = 8 * mostHidden

// farBar says beside the bumper bar that is drawn at the picture's edge how far out of the picture it is.
func (p *painter) farBar(it *part, plain string, l label) {
	for row := range p.Rows {
		p.taken.add((row+p.Top)*p.canvas.Width + p.Left) // no name stands on it
	}
	p.seats = p.atEdge(p.seats[:0], p.visible(it.Area.Bounds()))
	far := scene.Measure{Value: coarse(p.barOff, p.look.Units), Unit: scene.MM}
	off := " " + words.Measure(far, p.look.Units)
	far.Bare = true
	names := []string{l.name + off + outOfView, plain + off + outOfView, plain + off + unseen, plain + " " + words.Measure(far, p.look.Units) + unseen, plain}
	dear := []int{0, endWorth / 4, endWorth / 2, endWorth, neverBare}
	if p.Rows < fewRows { // what is in the way of the cut wants the room
		names, dear = names[3:], dear[3:]
	}
	p.writeOne(names, dear, l, toLeft)
}

// besideRear names the rear bumper beside it where its name did not stand on it.
func (p *painter) besideRear(it *part, l label) {
	if !p.rearNamed {
		p.write(l, p.atEdge(p.seats[:0], p.visible(it.Area.Bounds())))
	}
}
