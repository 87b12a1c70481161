package canvas

import (
	"math"
	"slices"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// signs are the characters of a pen's sign.
var signs = [...]rune{
	scene.Disc: '●', scene.Ring: '○', scene.Lozenge: '◆', scene.Wedge: '▲', scene.Saltire: '×', scene.Plus: '+', scene.Dot: '•',
	scene.Target: '◎', scene.Stroked: 'ø', scene.Crossed: '╳',
}

// Sign is the character that a role is marked with.
func Sign(r scene.Role) string { return string(signs[r.Pen().Sign]) }

// leastWithCentre is the radius of a ring, in dots, from which on there is room for its centre.
const leastWithCentre = 10

// spots draws spots and keeps the cut free of words.
func (p *painter) spots() {
	if p.circle.shown {
		p.protect()
	}
	for i := range p.parts {
		it := &p.parts[i]
		switch {
		case it.Role == scene.Hole && it.State == scene.Foul && p.small(&it.Area):
			p.foulHole(it)
		case it.Role == scene.Hole && p.Scale <= near && p.small(&it.Area):
			p.spot(it.Area.Middle, inkOf(it.Item))
		case it.Role == scene.Cut && !p.circle.shown && p.small(&it.Area):
			p.spot(it.Area.Middle, Ink{Role: scene.Cut, Tone: Inverse})
		case it.Role == scene.CutCentre && p.circle.shown && p.circle.radius < leastWithCentre:
		case it.Role == scene.Conflict && p.crossing(it):
		case it.Primitive == scene.Spot:
			p.spot(it.Line[0], inkOf(it.Item))
		}
	}
	p.goesOn()
}

// foulHole marks a hole that is foul, however far away, where it is. In the ring it is left out: round one that is drawn larger than the cut is, it would
// stand at a place where it is not.
func (p *painter) foulHole(it *part) {
	ink := inkOf(it.Item)
	ink.Tone = Inverse
	if col, row, ok := p.Cell(it.Area.Middle); ok && !p.onRing(col, row) && !p.ringed(col, row) {
		p.spot(it.Area.Middle, ink)
	}
}

// spot puts a role's sign on a place, unless something in front of it stands there.
func (p *painter) spot(at geometry.Point, ink Ink) {
	col, row, ok := p.Cell(at)
	if !ok {
		return
	}
	if ink.Role == scene.Conflict {
		ink.Tone = Inverse
		if p.onRing(col, row) {
			if col, row = p.inside(col, row); p.onRing(col, row) || p.look.Faces && !p.red(col, row) {
				return // a small ring has no room for it: it is red inside, and beside that a mark would be of another place
			}
		}
	}
	if ink.Tone == Bold {
		ink.Tone = Normal // a sign is told apart as a line is
	}
	i := row*p.canvas.Width + col
	front := ink.Role.Pen().Front
	if ink.Tone == Inverse {
		front++ // what must be seen first
	}
	if there := &p.canvas.Cells[i]; p.taken.has(i) && there.Ink.Role.Pen().Front >= front && there.Rune != ' ' {
		return
	}
	if ink.Role == scene.Hole && ink.State == scene.Foul { // a picture in pixels has it, too, however far away
		p.canvas.Write(Text{Col: col, Row: row, Name: Sign(ink.Role), Ink: ink})
	} else {
		p.canvas.Put(col, row, Sign(ink.Role), ink)
	}
	if p.look.Faces && p.canvas.Cells[i].Ground.Set && ink.Role.Pen().Told == scene.BySign {
		p.canvas.Cells[i].Ground = Ground{Role: scene.Floor, Set: true} // a sign has one colour, whatever it lies on
	}
	p.taken.add(i)
}

// inside is the cell for a mark of what is in the way that would stand on the ring, which stays whole: in it, the nearest, and where something red is
// rather than beside that.
func (p *painter) inside(col, row int) (int, int) {
	middle, centre, _ := p.circle.cell(p)
	aside, away := int(p.circle.radius)/dotsAcross+2, int(p.circle.radius)/dotsDown+2
	at, least := [2]int{col, row}, math.MaxInt
	for r := max(centre-away, p.Top); r < min(centre+away+1, p.Top+p.Rows); r++ {
		for c := max(middle-aside, p.Left); c < min(middle+aside+1, p.Left+p.Cols); c++ {
			off := abs(c-col)*dotsAcross + abs(r-row)*dotsDown
			if !p.red(c, r) {
				off += besideRed
			}
			if p.ringed(c, r) && !p.onRing(c, r) && off < least {
				at, least = [2]int{c, r}, off
			}
		}
	}
	return at[0], at[1]
}

// besideRed is how many dots farther off a mark stands on what is in the way rather than beside it.
const besideRed = 24

// red tells whether a cell shows what is in the way.
func (p *painter) red(col, row int) bool {
	i := row*p.canvas.Width + col
	line := &p.strokes.cells[i]
	return p.canvas.Cells[i].Ground.Role == scene.Conflict || line.foul && line.arms != 0
}

// protect keeps the cells of the ring and within it free of words.
func (p *painter) protect() {
	middle, centre, _ := p.circle.cell(p)
	aside, away := int(p.circle.radius)/dotsAcross+2, int(p.circle.radius)/dotsDown+2
	for row := max(centre-away, p.Top); row < min(centre+away+1, p.Top+p.Rows); row++ {
		for col := max(middle-aside, p.Left); col < min(middle+aside+1, p.Left+p.Cols); col++ {
			if p.ringed(col, row) {
				p.taken.add(row*p.canvas.Width + col)
			}
		}
	}
}

// ends writes what the van's ends are called on them, one letter under the other. From behind they lie before the middle of the van: there a name
// would hide what is behind it.
func (p *painter) ends() {
	if !p.projection.Lengthwise() {
		return
	}
	for i := range p.parts {
		it := &p.parts[i]
		if !it.Role.Pen().Stacked || it.Label == "" || it.Role == scene.Bumper && p.barOff > 0 {
			continue // it is not there
		}
		low, high := it.Area.Bounds()
		name := []rune(strings.ToUpper(it.Label))
		if it.Role == scene.Bumper && p.look.Datum != "" {
			name = []rune("REAR")
		}
		middle := p.visible(low, high)
		col, row, ok := p.Cell(middle)
		row = max(min(row-len(name)/2, p.Top+p.Rows-len(name)), p.Top)
		if !ok || row < p.Top || row+len(name) > p.Top+p.Rows || p.takenDown(col, row, len(name)) {
			continue
		}
		p.canvas.Write(Text{Col: col, Row: row, Name: string(name), Ink: Ink{Role: it.Role, Tone: Bold}, down: true, middle: middle})
		p.rearNamed = p.rearNamed || it.Role == scene.Bumper
		for k := range name {
			p.taken.add((row+k)*p.canvas.Width + col)
			if cell := p.canvas.At(col, row+k); p.look.Faces {
				cell.Ground = groundOf(it.Item) // letters half on it would be two words
			}
		}
	}
}

// takenDown tells whether a word stands in one of so many cells, one under the other.
func (p *painter) takenDown(col, row, cells int) bool {
	for k := range cells {
		at := (row+k)*p.canvas.Width + col
		if p.taken.any(at-1, at+2) {
			return true
		}
	}
	return false
}

// arrows point to the picture's right, bottom, left and top.
var arrows = [4]rune{'►', '▼', '◄', '▲'}

// Three of them by where they point.
const (
	toBottom = 1
	toLeft   = 2
	toTop    = 3
)

// leaves tells whether a part is a run that gas goes through, exhaust or intake: where that ends must be known.
func leaves(it *part) bool {
	return it.Role.Pen().EndNamed && it.Primitive == scene.Area && it.Area.Shape == geometry.Line
}

// goesOn puts an arrow where the heater's exhaust leaves the picture, and where its intake does.
func (p *painter) goesOn() {
	for i := range p.parts {
		if it := &p.parts[i]; leaves(it) {
			p.goesOut(it)
		}
	}
}

// goesOut puts an arrow where a run leaves the picture whose end is out of sight.
func (p *painter) goesOut(it *part) {
	path := it.Area.Path
	if _, _, seen := p.Cell(path[len(path)-1]); seen {
		return
	}
	for k := len(path) - 1; k > 0; k-- {
		a, b, ok := p.clipped(path[k-1], path[k])
		if !ok {
			continue
		}
		out := exit{of: it, at: b, arrow: p.heading(a, b)}
		col, row, _ := p.Cell(b)
		if p.barOff > 0 {
			col = max(col, p.Left+1) // beside the edge where the van is broken off
		}
		beside := slices.ContainsFunc(p.exits, func(other exit) bool { // two arrows would be one sign; each name has its own
			c, r, _ := p.Cell(other.at)
			return r == row && abs(c-col) <= 1
		})
		p.exits = append(p.exits, out)
		if !p.onRing(col, row) && !beside {
			p.canvas.Write(Text{Col: col, Row: row, Name: string(arrows[out.arrow]), Ink: Ink{Role: it.Role, Tone: Inverse}})
			p.taken.add(row*p.canvas.Width + col)
		}
		return
	}
}

// exit is where a run leaves the picture.
type exit struct {
	of    *part
	at    geometry.Point
	arrow int
}

// exitOf is where a part leaves the picture; nil where it has its end in it, or nothing.
func (p *painter) exitOf(it *part) *exit {
	for i := range p.exits {
		if p.exits[i].of == it {
			return &p.exits[i]
		}
	}
	return nil
}

// farFromExit is how many rows from where a run leaves the picture its name stands: farther off it would be read as another's.
const farFromExit = 5

// atExit adds seats to both sides of a run where it leaves the picture, the nearest first.
func (p *painter) atExit(seats []seat, it *part, at geometry.Point) []seat {
	col, row, _ := p.Cell(at)
	aside := int(it.Area.Radius/p.Scale/dotsAcross+0.5) + 2
	for d := range min(p.Rows/2, farFromExit) {
		off := 2 * leaderRow * d
		for _, r := range [2]int{row - d, row + d} {
			seats = append(seats, seat{col: col + aside, row: r, align: byStart, off: off}, seat{col: col - aside, row: r, align: byEnd, off: off})
		}
	}
	return p.roundAbout(seats, at)
}

// clipped is what of a line lies in the picture.
func (p *painter) clipped(a, b geometry.Point) (from, to geometry.Point, ok bool) {
	const steps = 200
	for i := range steps + 1 {
		at := a.Add(b.Sub(a).Scale(float64(i) / steps))
		if _, _, seen := p.Cell(at); seen {
			if !ok {
				from = at
			}
			to, ok = at, true
		}
	}
	return from, to, ok
}

// heading is which of the arrows points from a place to another.
func (p *painter) heading(a, b geometry.Point) int {
	by := b.Sub(a)
	down := -by.Y
	if p.over {
		down = by.Y
	}
	switch {
	case abs(by.X) >= abs(down) && by.X >= 0:
		return 0
	case abs(by.X) >= abs(down):
		return 2
	case down > 0:
		return 1
	}
	return 3
}
