package canvas

import (
	"cmp"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// What a leader costs by itself, for each row and column that it goes, and for each line that it crosses.
const (
	leaderCost  = 8
	leaderRow   = 5
	leaderCross = 4
	leaderOver  = 24 // of a name that stands over its leader: no other passes there
	leaderFace  = 20 // of another thing than the one it goes to
	longestSide = 14 // columns

	longestLeader = 8 // rows, on many rows a quarter of them: a longer one goes right across a van

	leastLeader = leaderCost + 2*leaderRow // what the shortest costs
)

// leading looks for a better seat for a label away from a cell, with a leader to it: above, below and to both sides, the nearest
// first.
func (p *painter) leading(best *choice, l *label, of [2]int) {
	col, row, length := of[0], of[1], l.length()
	middle := func(col int) int { // so that it does not pass the picture's edge
		before := (length - 1) / 2
		return max(min(col, p.Left+p.Cols-length+before), p.Left+before)
	}
	way := p.crossingFrom(of, l.line())
	up, down := 0, 0 // what the stems cost that far
	for d := 2; d <= max(longestLeader, p.Rows/4) && best.beatenBy(leaderCost+leaderRow*d) && min(up, down) < tooDear; d++ {
		off := leaderCost + leaderRow*d
		p.seats = p.seats[:0]
		up, down = up+way.crosses(col, row-d+1), down+way.crosses(col, row+d-1)
		for _, side := range [2]struct{ row, stem int }{{row - d, up}, {row + d, down}} {
			if !best.beatenBy(off+side.stem) || p.ways.seek.rulesOut(l.names, side.row-row) {
				continue
			}
			r, bent, above := side.row, off+side.stem+way.crosses(col, side.row), off+side.stem+leaderOver
			p.seats = append(p.seats,
				seat{col: col + 2, row: r, align: byStart, off: bent, led: true, of: of},
				seat{col: col - 2, row: r, align: byEnd, off: bent, led: true, of: of},
				seat{col: middle(col), row: r, off: above, led: true, of: of},
				seat{col: middle(col - length/3), row: r, off: above, led: true, of: of},
				seat{col: middle(col + length/3), row: r, off: above, led: true, of: of})
		}
		p.choose(best, l, p.seats)
	}
	east, west := 0, 0
	for d := 3; d < longestSide && best.beatenBy(leaderCost+leaderRow*d/2); d++ {
		off := leaderCost + leaderRow*d/2
		east, west = east+way.crosses(col+d-2, row), west+way.crosses(col-d+2, row) // a blank is left before the name
		p.seats = append(p.seats[:0],
			seat{col: col + d, row: row, align: byStart, off: off + east + way.crosses(col+d-1, row), led: true, of: of},
			seat{col: col - d, row: row, align: byEnd, off: off + west + way.crosses(col-d+1, row), led: true, of: of})
		p.choose(best, l, p.seats)
	}
}

// tooDear is more than any name may cost.
const tooDear = 1 << 20

// crossing is what leaders from a cell may cross.
type crossing struct {
	*painter
	inRing bool       // it begins in the ring, which others only come up to
	own    scene.Role // of the face that it goes to
	line   uint16     // the line that it goes to, which it does not hide; 0 for none
}

func (p *painter) crossingFrom(of [2]int, line uint16) crossing {
	return crossing{p, p.ringed(of[0], of[1]) || p.onRing(of[0], of[1]), p.canvas.At(of[0], of[1]).Ground.Role, line}
}

// crosses is what a leader costs for what it hides in a cell that it passes.
func (p crossing) crosses(col, row int) int {
	if row < p.Top || row >= p.Top+p.Rows || col < p.Left || col >= p.Left+p.Cols {
		return tooDear
	}
	i := row*p.canvas.Width + col
	switch {
	case p.taken.has(i): // the ring is, and all within it
		if !p.inRing || !p.ringed(col, row) && !p.onRing(col, row) {
			return tooDear
		}
	case p.strokes.cells[i].arms == 0 && p.costs[i] >= hidesBand:
		return hidesBand
	case p.strokes.cells[i].arms != 0 && p.strokes.cells[i].of == p.line && p.line != 0:
		return tooDear
	case p.strokes.cells[i].foul:
		return hidesMain
	case p.strokes.cells[i].arms != 0:
		return leaderCross + int(p.strokes.cells[i].front)
	case p.costs[i] >= hidesFace && p.canvas.Cells[i].Ground.Role != p.own:
		return leaderFace
	}
	return 0
}

// The pen of leaders: dashes as no line has them, and one that ends on an area has a dot there.
const (
	leaderLying   = '┄'
	leaderUpright = '┆'
	leaderEnd     = '•'
)

// lead draws the leader of a seat, with its end where it ends on an area. In the ring it is not seen.
func (p *painter) lead(s seat, ink Ink, ended bool) {
	thin, own := quiet, ink // a leader is no pipe, whatever colour that has: its end has the text's
	draw := func(col, row int, char rune) {
		if ink = thin; char == leaderEnd {
			ink = own
		}
		if !p.ringed(col, row) && !p.onRing(col, row) {
			p.canvas.Put(col, row, string(char), ink)
			p.taken.add(row*p.canvas.Width + col)
			if cell := p.canvas.At(col, row); p.look.Faces && own.State == scene.Foul && !told(*cell) { // what is foul stays red
				cell.Ground = Ground{Role: scene.Floor, Set: true}
			}
		}
	}
	if ended {
		draw(s.of[0], s.of[1], leaderEnd)
	}
	step, corner := 1, [2]rune{'╰', '╯'}
	if s.row == s.of[1] {
		if s.align == byEnd {
			step = -1
		}
		for col := s.of[0] + step; col != s.col-step; col += step {
			draw(col, s.row, leaderLying)
		}
		return
	}
	if s.row < s.of[1] {
		step, corner = -1, [2]rune{'╭', '╮'}
	}
	for row := s.of[1] + step; row != s.row; row += step {
		draw(s.of[0], row, leaderUpright)
	}
	switch s.align {
	case byStart:
		draw(s.of[0], s.row, corner[0])
	case byEnd:
		draw(s.of[0], s.row, corner[1])
	}
}

// ledTo are the cells that a leader to an item may go to, each once: a small thing has all of its places in one or two.
func (p *painter) ledTo(it *part) (cells [][2]int) {
	for _, at := range p.anchors(it) {
		col, row, ok := p.cell(at)
		if cell := [2]int{col, row}; ok && !slices.Contains(cells, cell) {
			cells = append(cells, cell)
		}
	}
	return cells
}

// anchors are the places of an item that a leader may go to: those where it is seen, beside the ring, where there are any.
func (p *painter) anchors(it *part) (at []geometry.Point) {
	if it.Role == scene.Conflict {
		if of := p.inWay(it); of != nil {
			it = of
		}
	}
	if it.Role == scene.Cut || it.Primitive == scene.Spot {
		return p.anchorsOf(it)
	}
	seen := p.seenOf(it)
	if len(seen) == 0 {
		return p.anchorsOf(it)
	}
	if it.State == scene.Foul && p.circle.shown && it.Role != scene.Dimension { // where it is drawn as foul
		slices.SortStableFunc(seen, func(a, b geometry.Point) int { return cmp.Compare(p.circle.off(p.dot(a)), p.circle.off(p.dot(b))) })
	}
	return seen
}

// anchor is a place of an item that a leader may go to.
type anchor struct {
	geometry.Point
	own bool // nothing else of the picture passes there, of which it would be taken to be
}

// seenOf are the places of an item that a leader may go to, where it is seen. What else passes there stays, whatever words are written.
func (p *painter) seenOf(it *part) (seen []geometry.Point) {
	if it.anchors == nil {
		places, alike := p.anchorsOf(it), p.alike(it)
		it.anchors = make([]anchor, 0, len(places))
		for _, at := range places {
			col, row, ok := p.Cell(at)
			own := ok && (it.Primitive != scene.Area || !p.others(it, row*p.canvas.Width+col) && !p.shares(at, alike))
			it.anchors = append(it.anchors, anchor{at, own})
		}
	}
	seen = make([]geometry.Point, 0, len(it.anchors))
	for _, a := range it.anchors {
		if a.own && p.shows(it, a.Point) {
			seen = append(seen, a.Point)
		}
	}
	return seen
}

// shows tells whether a part is what is seen at a place of it, beside the ring, and no word stands there.
func (p *painter) shows(it *part, a geometry.Point) bool {
	col, row, ok := p.Cell(a)
	i := row*p.canvas.Width + col
	if !ok || p.taken.has(i) || p.beginsName(col, row) { // the ring is taken, and all within it
		return false
	}
	cell := p.canvas.At(col, row)
	return !p.look.Faces || p.thin(it) || it.Primitive != scene.Area || !faced(it.Role) || cell.Ground.Role == it.Role || cell.Ink.Face.Set && cell.Ink.Face.Role == it.Role
}

// beginsName tells whether a name begins or ends so close beside a cell that the end of a leader there would be taken for the name's.
func (p *painter) beginsName(col, row int) bool {
	return slices.ContainsFunc(p.canvas.Texts, func(t Text) bool {
		return !t.down && t.Row == row && col >= t.Col-apart && col < t.Col+t.length()+apart
	})
}

// alike are the areas that a part may not be told from where one of them lies over it or under it: those of its role, as their faces look the same,
// and where a rail and a member meet.
func (p *painter) alike(it *part) (others []*part) {
	_, high := p.CellSize()
	for i := range p.parts {
		other := &p.parts[i]
		same := other.Role == it.Role && other.Primitive == scene.Area && !p.thin(other)
		if other != it && (same || bears(it) && bears(other)) && boxGap(&it.Area, &other.Area) < high {
			others = append(others, other)
		}
	}
	return others
}

// shares tells whether one of the areas that a part may not be told from lies at a place of it, or meets it in the cell of that: which of them is
// meant would not be seen.
func (p *painter) shares(a geometry.Point, alike []*part) bool {
	return slices.ContainsFunc(alike, func(other *part) bool { return bears(other) && p.meets(other, a) || other.Area.Contains(a) })
}

// meets tells whether a part lies in the row of cells of a place, there or no cell away.
func (p *painter) meets(it *part, a geometry.Point) bool {
	_, high := p.CellSize()
	return it.Area.GapOnly(a) < high
}

// others tells whether a line of another thing passes over a part in a cell of the canvas, or comes up to it there: what ends there would be taken for
// that thing's.
func (p *painter) others(it *part, i int) bool {
	if line := &p.strokes.cells[i]; line.arms != 0 && line.of != it.stroke {
		return true
	}
	if !p.thin(it) {
		return false
	}
	for _, side := range [4]struct {
		by  int
		arm uint8
	}{{-1, east}, {1, west}, {-p.canvas.Width, south}, {p.canvas.Width, north}} {
		if k := i + side.by; k >= 0 && k < len(p.strokes.cells) && p.strokes.cells[k].arms&side.arm != 0 && p.strokes.cells[k].of != it.stroke {
			return true
		}
	}
	return false
}

// inWay is the thing that a conflict with the cut is of; nil where it is of none.
func (p *painter) inWay(conflict *part) *part {
	for i := range p.parts {
		if it := &p.parts[i]; it.OfObstruction() && it.Ref == conflict.Ref && it.Primitive == scene.Area {
			return it
		}
	}
	return nil
}

// anchorsOf are the places of an item that a leader may go to, in the ring too.
func (p *painter) anchorsOf(it *part) (at []geometry.Point) {
	switch {
	case p.exitOf(it) != nil:
		return nil
	case it.Role == scene.Cut:
		return []geometry.Point{it.Area.Middle}
	case it.Primitive == scene.Spot:
		return it.Line[:1]
	case it.Role == scene.Dimension:
		return []geometry.Point{geometry.Along(it.Line, 0.8), geometry.Along(it.Line, 0.5)} // away from what it is of, which is the cut
	case it.Line != nil:
		path := it.Line
		return []geometry.Point{geometry.Along(path, 0.5), geometry.Along(path, 0.25), geometry.Along(path, 0.75)}
	case it.Area.Shape == geometry.Line:
		path := it.Area.Path
		for _, share := range shares {
			at = append(at, geometry.Along(path, share))
		}
		return at
	}
	low, high := it.Area.Bounds()
	if wide, _ := p.CellSize(); p.barOff > 0 {
		low.X = max(low.X, p.west+wide) // beside the edge where the van is broken off
	}
	middle := p.visible(low, high)
	if !it.Area.Contains(middle) {
		return nil
	}
	at = append(at, middle)
	low, high = p.inSight(low, high)
	for _, share := range []float64{0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.05, 0.95} {
		for _, other := range [2]geometry.Point{
			{X: low.X + share*(high.X-low.X), Y: middle.Y}, {X: middle.X, Y: low.Y + share*(high.Y-low.Y)},
		} {
			if it.Area.Contains(other) {
				at = append(at, other)
			}
		}
	}
	return at
}

// inSight is what of a box lies in the picture.
func (p *painter) inSight(low, high geometry.Point) (least, most geometry.Point) {
	from, to := p.Corners()
	return geometry.Point{X: max(low.X, from.X), Y: max(low.Y, from.Y)}, geometry.Point{X: min(high.X, to.X), Y: min(high.Y, to.Y)}
}

// asideOfRing is what the name of the cut costs that stands a row off the middle of its ring.
const asideOfRing = 45

// atRing adds seats for the name of the cut beside the ring.
func (p *painter) atRing(seats []seat) []seat {
	col, row, ok := p.circle.cell(p)
	if !ok {
		return seats
	}
	across := int(p.circle.radius/dotsAcross) + 2
	down := int(p.circle.radius/dotsDown) + 1
	seats = append(seats, seat{col: col, row: row - down - 1}, seat{col: col, row: row + down + 1})
	for away := range 5 { // past the exhaust, which begins in it
		for _, by := range [...]int{0, -1, 1} { // past a pipe that goes out of it
			r, off := row+by, 2*leaderRow*away+asideOfRing*abs(by)
			seats = append(seats, seat{col: col + across + away, row: r, align: byStart, off: off}, seat{col: col - across - 1 - away, row: r, align: byEnd, off: off})
		}
	}
	return seats
}

// cell is the cell of the ring's middle, and whether that is in sight.
func (r *ring) cell(p *painter) (col, row int, ok bool) {
	if !r.shown {
		return 0, 0, false
	}
	col, row = floor(r.middle.x/dotsAcross), floor(r.middle.y/dotsDown)
	ok = col >= 0 && col < p.Cols && row >= 0 && row < p.Rows
	return col + p.Left, p.flip(row) + p.Top, ok
}
