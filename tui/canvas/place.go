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
	align    align
	off      int
	inside   bool // the text lies wholly inside what it is of
	onBeam   bool // it lies along a beam that is thinner than a row
	about    bool // it is merely somewhere about what it is of
	led      bool
	of       [2]int // the cell that the leader goes to
}

type align uint8

const (
	byMiddle align = iota
	byStart
	byEnd
)

func (s seat) start(length int) int {
	switch s.align {
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
	of           *part // whose own face it may stand on; nil for what has none
	names        *part // what it is the name of, for which no other of its kind may be taken; nil for none
	over         bool  // it may hide what matters less, and stand off with a leader
	urgent       bool  // it may hide more
	guides       bool  // it may hide a little more: people find their way by it
	always       bool  // it stands in every picture
}

func (l *label) length() int { return utf8.RuneCountInString(l.name) + utf8.RuneCountInString(l.tail) }

// line is which line a label's thing is drawn by; 0 for none.
func (l *label) line() uint16 {
	if l.names == nil {
		return 0
	}
	return l.names.stroke
}

// leaderInk is the ink of the leader of a text: it belongs to that, and its pen, which nothing else has, tells it from a pipe.
func leaderInk(text Ink) Ink { return Ink{Role: text.Role, State: text.State, Selected: text.Selected} }

// put writes a label on a seat, with its leader.
func (p *painter) put(l label, s seat) {
	col := s.start(l.length())
	if s.onBeam && l.of != nil && p.look.Faces {
		for i := range l.length() {
			p.canvas.At(col+i, s.row).Ground = groundOf(l.of.Item) // letters half on it would be two words
		}
	}
	p.back(col, s.row, l.length(), l.ink, l.of)
	p.canvas.Write(Text{
		Col: col, Row: s.row, Name: l.name, Tail: l.tail, Ink: l.ink, TailInk: l.tailInk, align: s.align, led: s.led, of: s.of,
	})
	for i := range l.length() {
		p.taken.add(s.row*p.canvas.Width + col + i)
	}
	p.aloof(l.line(), s.row, col-1, -1)
	p.aloof(l.line(), s.row, col+l.length(), 1)
	if s.led {
		at := s.of[1]*p.canvas.Width + s.of[0] // a sign is seen there itself, and of a line on few rows every cell is wanted
		p.lead(s, leaderInk(l.ink), !p.taken.has(at) && (p.Rows >= fewRows || p.strokes.cells[at].arms == 0))
	}
}

// apart is how many cells of another thing's line are left out beside a name that stands on it.
const apart = 2

// aloof parts a name from another thing's line along its row that goes on beside it: grown out of the name it would be what that is called. What is in
// the way of the cut, and the heater's exhaust, stay whole.
func (p *painter) aloof(own uint16, row, col, step int) {
	for i := range apart {
		at := row*p.canvas.Width + col + i*step
		if c := col + i*step; c < p.Left || c >= p.Left+p.Cols || p.taken.has(at) {
			return
		}
		line := &p.strokes.cells[at]
		if line.arms&(east|west) == 0 || line.arms&(north|south) != 0 || line.of == own && own != 0 || line.foul || line.ink.Role == scene.Exhaust {
			return
		}
		p.canvas.Cells[at].Rune = ' '
	}
}

// Shares of a shape's length at which a label is tried, the middle first.
var shares = []float64{0.5, 0.375, 0.625, 0.25, 0.75, 0.125, 0.875, 0.44, 0.56, 0.31, 0.69, 0.19, 0.81, 0.06, 0.94}

// seatsIn adds seats inside a footprint, for a text of so many characters only those where that lies wholly inside it.
func (p *painter) seatsIn(seats []seat, f *geometry.Footprint, length int) []seat {
	low, top := f.Bounds()
	_, high := p.CellSize()
	if !p.roomy(low, top, length) {
		return seats
	}
	last := seat{row: -1}
	try := func(at geometry.Point) {
		col, row, ok := p.cell(at)
		here := seat{col: col, row: row, inside: true}
		if here == last {
			return // small things lie in a cell or two
		}
		if last = here; ok && (length == 0 || p.holds(f, here.col, here.row, length)) {
			seats = append(seats, here)
		}
	}
	if middle := p.visible(low, top); f.Contains(middle) {
		try(middle)
	}
	spread(f, field.Thickness(f) > 3*high, try)
	return seats
}

// onBeam adds seats along a beam that is thinner than a row, for a text of so many characters only those where it shows under all of them: what
// is called so is seen best where it stands.
func (p *painter) onBeam(seats []seat, f *geometry.Footprint, length int) []seat {
	const thinner = 6 // what that costs: a name in its own face goes before
	low, high := f.Bounds()
	wide, tall := p.CellSize()
	if high.X-low.X < float64(length+2)*wide || high.Y-low.Y < tall/dotsDown {
		return seats
	}
	spread(f, false, func(at geometry.Point) {
		col, row, ok := p.cell(at)
		middle, _ := p.point(col, row)
		for _, end := range [2]float64{-0.5, 0.5} {
			ok = ok && f.GapOnly(middle.Add(geometry.Point{X: end * float64(length) * wide})) < tall/2
		}
		if ok {
			seats = append(seats, seat{col: col, row: row, inside: true, onBeam: true, off: thinner})
		}
	})
	return seats
}

// inLine adds seats on a line, for a text only where that is not higher than the line.
func (p *painter) inLine(seats []seat, f *geometry.Footprint, length int) []seat {
	if _, high := p.CellSize(); length > 0 && 2*f.Radius < high {
		return seats
	}
	if low, high := f.Bounds(); !p.roomy(low, high, length) {
		return seats
	}
	for _, s := range shares {
		if col, row, ok := p.Cell(geometry.Along(f.Path, s)); ok && (length == 0 || p.holds(f, col, row, length)) {
			seats = append(seats, seat{col: col, row: row, inside: true})
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
			if across == 0.5 || f.Contains(at) {
				try(at)
			}
		}
		if !broad {
			return
		}
	}
}

// roomy tells whether a text of so many characters could lie in a box at all: most things are smaller than their names.
func (p *painter) roomy(low, high geometry.Point, length int) bool {
	const rounding = 1e-6 // mm
	wide, tall := p.CellSize()
	size := high.Sub(low)
	return length == 0 || size.X > float64(length)*wide-rounding && size.Y > lineHeight*tall-rounding
}

// lineHeight is how high a line of text with a little air is, in cells.
const lineHeight = 0.7

// holds says whether a text of room cells about a cell lies wholly inside a footprint.
func (p *painter) holds(f *geometry.Footprint, col, row, room int) bool {
	wide, high := p.CellSize()
	middle, _ := p.point(col, row)
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
	seats = append(seats, seat{col: col + 2, row: row, align: byStart}, seat{col: col - 2, row: row, align: byEnd})
	for d := 1; d <= reach; d++ {
		for _, s := range [6]seat{
			{col: col, row: row - d}, {col: col, row: row + d}, {col: col + d, row: row - d, align: byStart},
			{col: col - d, row: row - d, align: byEnd}, {col: col + d, row: row + d, align: byStart}, {col: col - d, row: row + d, align: byEnd},
		} {
			s.off = (d - 1) * dear
			seats = append(seats, s)
		}
	}
	return seats
}

// overAndUnder adds seats in the rows over and under a place, for a text of so many characters that begins or ends a quarter of that away from it.
func (p *painter) overAndUnder(seats []seat, at geometry.Point, length int) []seat {
	col, row, ok := p.Cell(at)
	if !ok {
		return seats
	}
	for _, aside := range [2]int{-length / 4, length / 4} {
		for _, down := range [2]int{-1, 1} {
			seats = append(seats, seat{col: col + aside, row: row + down})
		}
	}
	return seats
}

// roundAbout adds seats farther and farther round a place, for a name that must have one.
func (p *painter) roundAbout(seats []seat, at geometry.Point) []seat {
	const far = 12 // columns
	col, row, ok := p.Cell(at)
	if !ok {
		return seats
	}
	for away := 1; away <= far; away++ {
		for _, down := range [...]int{1, -1, 2, -2, 3, -3} {
			off := leaderRow * (away + abs(down))
			seats = append(seats, seat{col: col + away, row: row + down, align: byStart, off: off}, seat{col: col - away, row: row + down, align: byEnd, off: off})
		}
	}
	return seats
}

// alongside adds seats close to several places of a path, its middle first.
func (p *painter) alongside(seats []seat, path []geometry.Point) []seat {
	for _, s := range shares {
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
