package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// A square of the floor is quartered again and again, and each quarter carries only the parts that can matter in it.
// As margins change by no more than the place moves, within r of a middle where the least margin is m no margin is above
// m + r, and a part with margin d there is nowhere below d - r: it can't matter when d - r > m + r. Convexity often betters m + r: the margin of one
// part is greatest at a corner.

// lister makes the lists of parts. Lists lie one after the other on a stack; an older list stays good when the stack moves.
type lister struct {
	m         *Margins
	stack     []int32
	distances []float64 // of the list last made, before it was sifted
}

// sift gives c, whose list may still be that of a larger cell, its own. It returns the least margin at the middle (a bent
// line's taken leg by leg), the part that has it, and a margin that c has nowhere more of.
func (l *lister) sift(c *cell) (least float64, lead int32, most float64) {
	least, lead = math.Inf(1), -1
	l.distances = l.distances[:0]
	for _, k := range c.near {
		d := l.m.margin(k, c.x, c.y)
		l.distances = append(l.distances, d)
		if d < least {
			least, lead = d, k
		}
	}
	r := c.radius()
	most = least + r
	if lead >= 0 {
		most = min(most, greatest(l.m.corners(lead, c)))
	}
	c.near = l.keep(c.near, most, r)
	return least, lead, most
}

// keep puts those of list on the stack that can matter in a cell of radius r that has no margin above most; also the
// legs of bent lines that places in it may be inside of, whose margins count for more than they say.
func (l *lister) keep(list []int32, most, r float64) []int32 {
	start := len(l.stack)
	for i, k := range list {
		if least := l.distances[i] - r - slack; least <= most || l.m.inside(k, least) {
			l.stack = append(l.stack, k)
		}
	}
	return l.stack[start:len(l.stack):len(l.stack)]
}

// cell is a rectangle of the floor: middle, half sides, and what can matter in it.
type cell struct {
	x, y, halfX, halfY float64
	near               []int32
}

func (c *cell) radius() float64 { return math.Sqrt(c.halfX*c.halfX + c.halfY*c.halfY) }

func (c *cell) middle() geometry.Point { return geometry.Point{X: c.x, Y: c.y} }

// quarters returns the four quarters, still with the whole's list.
func (c *cell) quarters() [4]cell {
	hx, hy := c.halfX/2, c.halfY/2
	return [4]cell{
		{c.x - hx, c.y - hy, hx, hy, c.near}, {c.x + hx, c.y - hy, hx, hy, c.near},
		{c.x - hx, c.y + hy, hx, hy, c.near}, {c.x + hx, c.y + hy, hx, hy, c.near},
	}
}

// corners returns the margins of part k at the four corners of c; of a constraint, whose margin need not be convex, what
// it can be at most.
func (m *Margins) corners(k int32, c *cell) (d [4]float64) {
	if m.parts[k].kind == other {
		most := m.margin(k, c.x, c.y) + c.radius()
		return [4]float64{most, most, most, most}
	}
	s := &m.parts[k]
	return [4]float64{
		s.at(c.x-c.halfX, c.y-c.halfY), s.at(c.x+c.halfX, c.y-c.halfY),
		s.at(c.x-c.halfX, c.y+c.halfY), s.at(c.x+c.halfX, c.y+c.halfY),
	}
}

// closed says whether some part alone closes all of c: its margin is convex, so below 0 throughout when it is at the
// corners.
func (m *Margins) closed(c *cell) bool {
	for _, k := range c.near {
		if d := m.corners(k, c); greatest(d) < 0 {
			return true
		}
	}
	return false
}

// start returns cells that cover the floor, about square, each with all parts.
func (m *Margins) start() []cell {
	size := m.limits.Max.Sub(m.limits.Min)
	across := max(min(size.X, size.Y)/2, max(size.X, size.Y)/64)
	if across <= 0 {
		across = 1
	}
	nx, ny := max(1, math.Round(size.X/across)), max(1, math.Round(size.Y/across))
	half := geometry.Point{X: size.X / nx / 2, Y: size.Y / ny / 2}
	var cells []cell
	for j := range int(ny) {
		for i := range int(nx) {
			x, y := m.limits.Min.X+half.X*float64(2*i+1), m.limits.Min.Y+half.Y*float64(2*j+1)
			cells = append(cells, cell{x, y, half.X, half.Y, m.all})
		}
	}
	return cells
}
