package canvas

import (
	"math"
	"math/bits"
	"unicode/utf8"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
)

// seat is where a label could stand: the cell of its first, middle or last character, and how far off that is.
type seat struct {
	col, row int
	hold     hold
	off      int
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
	own          bool // it stands on its own texture, which is seen round it all the same
	modest       bool // it may hide nothing
}

func (l label) length() int { return utf8.RuneCountInString(l.name) + utf8.RuneCountInString(l.tail) }

// write puts a label on the seat where it hides least, the earlier of equals, and says whether there was one.
func (p *painter) write(l label, seats []seat) bool {
	length := l.length()
	best, least := seat{}, math.MaxInt
	found := false
	for _, s := range seats {
		cost, ok := p.hides(s.start(length), s.row, length, l.own)
		if ok && l.modest && cost > 0 {
			continue
		}
		if cost += s.off; ok && cost < least {
			best, least, found = s, cost, true
			if cost == 0 {
				break
			}
		}
	}
	if !found {
		return false
	}
	col := best.start(length)
	p.canvas.Put(col, best.row, l.name, l.ink)
	p.canvas.Put(col+utf8.RuneCountInString(l.name), best.row, l.tail, l.tailInk)
	for i := range length {
		p.taken[best.row*p.canvas.Width+col+i] = true
	}
	return true
}

// hides adds up what a text would hide, textures only where they are not its own; ok is false where it can't stand.
func (p *painter) hides(col, row, length int, own bool) (cost int, ok bool) {
	if col < p.Left || col+length > p.Left+p.Cols || row < p.Top || row >= p.Top+p.Rows {
		return 0, false
	}
	const close = 40 // two words side by side read as one
	for _, c := range [2]int{col - 1, col + length} {
		if c >= 0 && c < p.canvas.Width && p.taken[row*p.canvas.Width+c] {
			cost += close
		}
	}
	for c := col; c < col+length; c++ {
		if p.taken[row*p.canvas.Width+c] {
			return 0, false
		}
		i := p.flip(row-p.Top)*p.Cols + c - p.Left
		w := int(p.fronts[i])
		if w == 1 && own {
			continue
		}
		cost += w * w * bits.OnesCount8(p.dots.octet(c-p.Left, p.flip(row-p.Top)))
	}
	return cost, true
}

// Shares of a shape's length at which a label is tried, the middle first.
var shares = []float64{0.5, 0.375, 0.625, 0.25, 0.75, 0.125, 0.875, 0.44, 0.56, 0.31, 0.69, 0.19, 0.81, 0.06, 0.94}

// inside adds seats inside a footprint; with room only those where that many cells lie wholly inside it.
func (p *painter) inside(seats []seat, f *geometry.Footprint, room int) []seat {
	wide, high := p.CellSize()
	low, top := f.Bounds()
	if room > 0 && (top.X-low.X < float64(room)*wide || field.Thickness(f) < lineHeight*high) {
		return seats
	}
	try := func(at geometry.Point) {
		col, row, ok := p.Cell(at)
		if ok && (room == 0 || p.holds(f, col, row, room)) {
			seats = append(seats, seat{col: col, row: row})
		}
	}
	if f.Shape == geometry.Line {
		for _, s := range shares {
			try(geometry.Along(f.Path, s))
		}
	} else {
		if middle := p.visible(low, top); f.Contains(middle) {
			try(middle)
		}
		spread(f, field.Thickness(f) > 3*high, try)
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
const lineHeight = 1.2

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
	const dear = 12 // what a row farther off is worth in hidden dots
	col, row, _ := p.Cell(at)
	seats = append(seats, seat{col + 2, row, byStart, 0}, seat{col - 2, row, byEnd, 0})
	for d := 1; d <= reach; d++ {
		off := (d - 1) * dear
		seats = append(seats,
			seat{col, row - d, byMiddle, off}, seat{col, row + d, byMiddle, off},
			seat{col + d, row - d, byStart, off}, seat{col - d, row - d, byEnd, off},
			seat{col + d, row + d, byStart, off}, seat{col - d, row + d, byEnd, off},
			seat{col + 2 + d, row, byStart, off}, seat{col - 2 - d, row, byEnd, off})
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
