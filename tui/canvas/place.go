package canvas

import (
	"unicode/utf8"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
)

// seat is where a label could stand: the cell of its first, middle or last character, and how far off that is. With a leader
// a line goes from there to the cell it is of.
type seat struct {
	col, row int
	hold     hold
	off      int
	led      bool
	of       [2]int // the cell that the leader goes to
}

type hold uint8

const (
	byMiddle hold = iota
	byStart
	byEnd
)

func (s seat) start(length int) int {
	switch s.hold {
	case byStart:
		return s.col
	case byEnd:
		return s.col - length + 1
	}
	return s.col - (length-1)/2
}

// label is a name with a mark behind it.
type label struct {
	name, tail   string
	ink, tailInk Ink
	role         scene.Role // whose own face it may stand on
	over         bool       // it may hide what matters less, and stand off with a leader
	urgent       bool       // it may hide more
}

func (l label) length() int { return utf8.RuneCountInString(l.name) + utf8.RuneCountInString(l.tail) }

// mostHidden is what a name that may hide something hides at the most, by what hides counts; one that is urgent more.
const (
	mostHidden = 90
	mostUrgent = 300
)

// choice is the best seat so far: found tells whether there is one, and cost is what it hides or, without one, may hide.
type choice struct {
	seat
	cost  int
	found bool
}

// most is what a label may hide at the most.
func (l label) most() int {
	switch {
	case l.urgent:
		return mostUrgent
	case l.over:
		return mostHidden
	}
	return 0
}

// write puts a label on the seat where it hides least, the earlier of equals, and says whether there was one.
func (p *painter) write(l label, seats []seat) bool {
	best := choice{cost: l.most()}
	p.choose(&best, l, seats)
	return p.settle(l, best)
}

// settle puts a label where it was found to hide least.
func (p *painter) settle(l label, best choice) bool {
	if best.found {
		p.put(l, best.seat)
	}
	return best.found
}

// choose looks for a better seat among more of them.
func (p *painter) choose(best *choice, l label, seats []seat) {
	length := l.length()
	for _, s := range seats {
		if best.found && best.cost <= s.off || s.off > best.cost {
			continue
		}
		cost, ok := p.hides(s.start(length), s.row, length, l.role, best.cost-s.off)
		if cost += s.off; ok && s.led {
			cost += p.leads(s, false, Ink{})
		}
		if ok && (cost < best.cost || cost == best.cost && !best.found) {
			*best = choice{s, cost, true}
		}
	}
}

// put writes a label on a seat, with its leader.
func (p *painter) put(l label, s seat) {
	col := s.start(l.length())
	p.back(col, s.row, l.length(), l.ink)
	p.canvas.Put(col, s.row, l.name, l.ink)
	p.canvas.Put(col+utf8.RuneCountInString(l.name), s.row, l.tail, l.tailInk)
	for i := range l.length() {
		p.taken[s.row*p.canvas.Width+col+i] = true
	}
	if s.led {
		p.leads(s, true, Ink{Role: l.ink.Role, State: l.ink.State, Selected: l.ink.Selected})
	}
}

// back lays bare floor behind a word that would be read on one of the faces behind it and not on another: letters in two
// colours are two words.
func (p *painter) back(col, row, length int, ink Ink) {
	cells := p.canvas.Cells[row*p.canvas.Width+col:][:length]
	mixed, clear := false, true
	for i := range cells {
		mixed = mixed || cells[i].Ground != cells[0].Ground
		clear = clear && legible(ink, cells[i].Ground)
	}
	if !p.look.Faces || !mixed || clear {
		return
	}
	for i := range cells {
		cells[i].Ground = Ground{Role: scene.Floor, Set: true}
	}
}

// What a character of a name costs where it hides something: a line most, and the face of another thing a little.
const (
	hidesExhaust = 60 // it is one line, unbroken
	hidesLine    = 7
	hidesDots    = 4
	hidesFace    = 3
)

// hides adds up what a text would hide; ok is false where it can't stand, or hides more than most.
func (p *painter) hides(col, row, length int, role scene.Role, most int) (cost int, ok bool) {
	if col < p.Left || col+length > p.Left+p.Cols || row < p.Top || row >= p.Top+p.Rows {
		return 0, false
	}
	at := row*p.canvas.Width + col
	for _, taken := range p.taken[at-1 : min(at+length+1, (row+1)*p.canvas.Width)] {
		if taken { // two words side by side would be read as one
			return 0, false
		}
	}
	for _, c := range p.costs[at : at+length] {
		if cost += int(c); cost > most && role == scene.Floor {
			return cost, false
		}
	}
	if cost > 0 && role != scene.Floor && p.allOf(p.canvas.Cells[at:at+length], role) {
		cost = 0
		for i := range length { // its own face costs nothing, what lies on that does
			if line := &p.strokes.cells[at+i]; line.arms != 0 {
				cost += int(p.costs[at+i])
			}
		}
	}
	return cost, cost <= most
}

// weighed works out what a character would hide in each cell of the picture.
func (p *painter) weighed() {
	for row := p.Top; row < p.Top+p.Rows; row++ {
		for col := p.Left; col < p.Left+p.Cols; col++ {
			i := row*p.canvas.Width + col
			p.costs[i] = p.cost(i, p.flip(row-p.Top), col-p.Left)
		}
	}
}

// cost is what a character hides in a cell of the canvas, which is in this row and column of the plane.
func (p *painter) cost(i, row, col int) uint8 {
	ground, line, front := &p.canvas.Cells[i].Ground, &p.strokes.cells[i], p.fronts[row*p.Cols+col]
	switch {
	case line.arms != 0 && line.ink.Role == scene.Exhaust, ground.Role == scene.Exhaust:
		return hidesExhaust
	case line.arms != 0:
		return hidesLine + line.front
	case front > 0 && p.dots.octet(col, row) != 0:
		return hidesDots
	case ground.Set && ground.Role != scene.Floor || front > 0 && ground.Role != scene.Floor:
		return hidesFace
	}
	return 0
}

// allOf tells whether cells show nothing but the face of a role.
func (p *painter) allOf(cells []Cell, role scene.Role) bool {
	for i := range cells {
		if g := &cells[i].Ground; !g.Set || g.Role != role {
			return false
		}
	}
	return true
}

// Shares of a shape's length at which a label is tried, the middle first.
var shares = []float64{0.5, 0.375, 0.625, 0.25, 0.75, 0.125, 0.875, 0.44, 0.56, 0.31, 0.69, 0.19, 0.81, 0.06, 0.94}

// within2 adds seats inside a footprint, for a text of so many characters only those where that lies wholly inside it.
func (p *painter) within2(seats []seat, f *geometry.Footprint, length int) []seat {
	low, top := f.Bounds()
	_, high := p.CellSize()
	try := func(at geometry.Point) {
		if col, row, ok := p.Cell(at); ok && (length == 0 || p.holds(f, col, row, length)) {
			seats = append(seats, seat{col: col, row: row})
		}
	}
	if middle := p.visible(low, top); f.Contains(middle) {
		try(middle)
	}
	spread(f, field.Thickness(f) > 3*high, try)
	return seats
}

// inLine adds seats on a line, for a text only where that is not higher than the line.
func (p *painter) inLine(seats []seat, f *geometry.Footprint, length int) []seat {
	if _, high := p.CellSize(); length > 0 && 2*f.Radius < high {
		return seats
	}
	for _, s := range shares {
		if col, row, ok := p.Cell(geometry.Along(f.Path, s)); ok && (length == 0 || p.holds(f, col, row, length)) {
			seats = append(seats, seat{col: col, row: row})
		}
	}
	return seats
}

// spread calls try with places all over a rectangle or round, those in the middle of its length first; when broad also
// with some to both sides of that.
func spread(f *geometry.Footprint, broad bool, try func(geometry.Point)) {
	half, turn := f.Half, f.Turn
	if f.Shape == geometry.Round {
		half, turn = geometry.Point{X: f.Radius, Y: f.Radius}, 0
	}
	long, short := geometry.Point{X: 2 * half.X}.Turn(turn), geometry.Point{Y: 2 * half.Y}.Turn(turn)
	if half.Y > half.X {
		long, short = short, long
	}
	for _, across := range []float64{0.5, 0.25, 0.75} {
		for _, s := range shares {
			at := f.Middle.Add(long.Scale(s - 0.5)).Add(short.Scale(across - 0.5))
			if across == 0.5 || broad && f.Contains(at) {
				try(at)
			}
		}
	}
}

// lineHeight is how high a line of text with a little air is, in cells.
const lineHeight = 0.7

// holds says whether a text of room cells about a cell lies wholly inside a footprint.
func (p *painter) holds(f *geometry.Footprint, col, row, room int) bool {
	wide, high := p.CellSize()
	middle, _ := p.Point(col, row)
	for _, corner := range [4]geometry.Point{{X: -1, Y: -1}, {X: -1, Y: 1}, {X: 1, Y: -1}, {X: 1, Y: 1}} {
		at := geometry.Point{X: corner.X * float64(room) / 2 * wide, Y: corner.Y * lineHeight / 2 * high}
		if !f.Contains(middle.Add(at)) {
			return false
		}
	}
	return true
}

// visible returns the middle of that part of a box that lies in the picture.
func (p *painter) visible(low, high geometry.Point) geometry.Point {
	east, south := p.west+float64(p.wide)*p.Scale, p.north-float64(p.tall)*p.Scale
	return geometry.Point{
		X: (max(low.X, p.west) + min(high.X, east)) / 2,
		Y: (max(low.Y, south) + min(high.Y, p.north)) / 2,
	}
}

// beside adds seats round a place, the nearest first and none more than reach rows away.
func (p *painter) beside(seats []seat, at geometry.Point, reach int) []seat {
	const dear = 12 // what a row farther off is worth in what is hidden
	col, row, ok := p.Cell(at)
	if !ok {
		return seats
	}
	seats = append(seats, seat{col: col + 2, row: row, hold: byStart}, seat{col: col - 2, row: row, hold: byEnd})
	for d := 1; d <= reach; d++ {
		for _, s := range [6]seat{
			{col: col, row: row - d}, {col: col, row: row + d}, {col: col + d, row: row - d, hold: byStart},
			{col: col - d, row: row - d, hold: byEnd}, {col: col + d, row: row + d, hold: byStart}, {col: col - d, row: row + d, hold: byEnd},
		} {
			s.off = (d - 1) * dear
			seats = append(seats, s)
		}
	}
	return seats
}

// alongside adds seats close to several places of a path, its middle first.
func (p *painter) alongside(seats []seat, path []geometry.Point) []seat {
	for _, s := range shares[:7] {
		at := geometry.Along(path, s)
		if _, _, ok := p.Cell(at); ok {
			seats = p.beside(seats, at, 1)
		}
	}
	return seats
}

// around adds seats at the corners of a footprint's box.
func (p *painter) around(seats []seat, f *geometry.Footprint) []seat {
	low, high := f.Bounds()
	for _, at := range []geometry.Point{high, {X: low.X, Y: high.Y}, {X: high.X, Y: low.Y}, low} {
		seats = p.beside(seats, at, 2)
	}
	return seats
}
