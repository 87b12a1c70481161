package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// strokes are the thin lines of a picture that run along its rows and columns: drawn with the characters made for that they are
// whole, where dots would leave gaps. Cells are counted as the canvas has them.
type strokes struct {
	cells []stroke
	of    uint16 // how many lines there are so far
}

// stroke is what of a line is in a cell: to which sides it goes on.
type stroke struct {
	arms  uint8
	style style
	front uint8
	ink   Ink
	of    uint16 // which line it is
	foul  bool   // it is of a thing that is foul
}

// The sides of a cell that a line can go on to.
const (
	north = 1 << iota
	east
	south
	west
)

// style says which characters a line is drawn with.
type style uint8

const (
	light style = iota
	heavy
	lightDashed
	lightDotted
	heavyDashed
)

// DottedLine is a piece of a dotted line along a row, HeavyLine of a heavy one.
const (
	DottedLine = "┈┈"
	HeavyLine  = "━"
)

// pieces are the characters of a line by its arms, light and heavy; broken are the straight ones of broken lines, upright and
// lying.
var (
	pieces = [2][16]rune{
		{' ', '╵', '╶', '╰', '╷', '│', '╭', '├', '╴', '╯', '─', '┴', '╮', '┤', '┬', '┼'},
		{' ', '╹', '╺', '┗', '╻', '┃', '┏', '┣', '╸', '┛', '━', '┻', '┓', '┫', '┳', '╋'},
	}
	broken = [...][2]rune{lightDashed: {'╎', '╌'}, lightDotted: {'┊', '┈'}, heavyDashed: {'╏', '╍'}}
)

// followed are the characters of a line in the way that runs along the columns: blocks leave no gap between rows, whatever the terminal's letters are.
var followed = map[uint8]rune{north: '▘', south: '▖', north | south: '▌'}

// char is the character of a stroke.
func (s *stroke) char() rune {
	weight := 0
	if block, ok := followed[s.arms]; ok && s.foul && s.style == heavy {
		return block
	}
	if s.style == heavy || s.style == heavyDashed {
		weight = 1
	}
	if s.style >= lightDashed {
		switch s.arms {
		case north | south:
			return broken[s.style][0]
		case east | west:
			return broken[s.style][1]
		}
	}
	return pieces[weight][s.arms]
}

// heavier is a style with more weight. What was not measured stays dotted.
func (s style) heavier() style {
	switch s {
	case light:
		return heavy
	case lightDashed:
		return heavyDashed
	}
	return s
}

// styleOf is how a line of a pen is drawn.
func styleOf(line scene.Line, weight scene.Weight) style {
	switch {
	case weight == scene.Heavy && line == scene.Whole:
		return heavy
	case weight == scene.Heavy:
		return heavyDashed
	case line == scene.Dotted:
		return lightDotted
	case line != scene.Whole:
		return lightDashed
	}
	return light
}

// arm adds an arm to a cell for the line that is being drawn, unless something in front of it is there. Where two lines cross
// one passes whole.
func (p *painter) arm(col, row int, arm uint8, like *stroke) {
	if col < p.Left || col >= p.Left+p.Cols || row < p.Top || row >= p.Top+p.Rows {
		return
	}
	there := &p.strokes.cells[row*p.canvas.Width+col]
	switch {
	case there.of == like.of:
		there.arms |= arm
	case there.arms == 0, like.front >= there.front:
		*there = *like
		there.arms = arm
	}
}

// opposite is the arm by which the next cell is reached.
func opposite(arm uint8) uint8 { return (arm<<2 | arm>>2) & 15 }

// walk draws a line from cell to cell, along the row first.
func (p *painter) walk(from, to [2]int, like *stroke) {
	step := func(by [2]int, arm uint8, steps int) {
		for range steps {
			p.arm(from[0], from[1], arm, like)
			from[0], from[1] = from[0]+by[0], from[1]+by[1]
			p.arm(from[0], from[1], opposite(arm), like)
		}
	}
	across, down := to[0]-from[0], to[1]-from[1]
	if across > 0 {
		step([2]int{1, 0}, east, across)
	} else {
		step([2]int{-1, 0}, west, -across)
	}
	if down > 0 {
		step([2]int{0, 1}, south, down)
	} else {
		step([2]int{0, -1}, north, -down)
	}
}

// stroke draws a line through places of the plane: what runs along rows and columns with the characters made for it, what runs
// aslant with dots, which go on where those end.
func (p *painter) stroke(path []geometry.Point, like stroke, dots *bitmap) {
	p.strokes.of++
	like.of = p.strokes.of
	for i := 1; i < len(path); i++ {
		a, b, ok := p.shortened(path[i-1], path[i])
		if !ok {
			continue
		}
		if p.aslant(a, b) {
			dots.line(p.dot(a), p.dot(b))
			continue
		}
		from, to := p.cellAt(a), p.cellAt(b)
		if !p.lying(a, b) {
			to[0] = from[0] // a step aside is not seen
			p.walk(from, to, &like)
			p.walk(to, p.cellAt(b), &like)
			continue
		}
		p.walk(from, to, &like)
	}
}

// witness draws a stroke across either end of the line last drawn, unless it runs aslant.
func (p *painter) witness(path []geometry.Point, like stroke) {
	a, b := path[0], path[len(path)-1]
	if p.aslant(a, b) {
		return
	}
	across := uint8(east | west)
	if p.lying(a, b) {
		across = north | south
	}
	like.of = p.strokes.of
	for _, end := range [2]geometry.Point{a, b} {
		at := p.cellAt(end)
		p.arm(at[0], at[1], across, &like)
	}
}

// cellAt is the cell of a place, in sight or not.
func (p *painter) cellAt(at geometry.Point) [2]int {
	col, row, _ := p.Cell(at)
	return [2]int{col, row}
}

// lying tells whether a line runs along the rows rather than the columns.
func (p *painter) lying(a, b geometry.Point) bool {
	wide, high := p.CellSize()
	by := b.Sub(a)
	return abs(by.X)/wide >= abs(by.Y)/high
}

// aslant tells whether a line runs neither along the rows nor along the columns. Where slopes are looked at the least one counts.
func (p *painter) aslant(a, b geometry.Point) bool {
	if p.projection.Slopes {
		const level = 1e-6 // mm in a mm, far below what a tape tells
		return abs(b.Y-a.Y) > level*abs(b.X-a.X) && abs(b.X-a.X) > level*abs(b.Y-a.Y)
	}
	from, to := p.cellAt(a), p.cellAt(b)
	return abs(float64(from[0]-to[0])) > 1 && abs(float64(from[1]-to[1])) > 0 && abs(b.Y-a.Y) > abs(b.X-a.X)/20 ||
		abs(float64(from[0]-to[0])) > 0 && abs(float64(from[1]-to[1])) > 1 && abs(b.X-a.X) > abs(b.Y-a.Y)/20
}

func abs[N int | float64](x N) N { return max(x, -x) }

// shortened cuts a line down to the picture and a little more.
func (p *painter) shortened(a, b geometry.Point) (geometry.Point, geometry.Point, bool) {
	q, r, ok := p.dots.clip(p.dot(a), p.dot(b))
	if !ok {
		return a, b, false
	}
	back := func(v vec) geometry.Point { return geometry.Point{X: p.west + v.x*p.Scale, Y: p.north - v.y*p.Scale} }
	return back(q), back(r), true
}
