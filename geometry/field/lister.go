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
	choices   []choice  // the ways in that list
}

// sift gives c, whose list may still be that of a larger cell, its own. It returns the least margin at the middle (a bent
// line's taken leg by leg), the part that has it, and a margin that c has nowhere more of.
func (l *lister) sift(c *cell) (least float64, lead int32, most float64) {
	common, ways := l.m.split(c.near)
	l.distances = l.distances[:0]
	least, lead, most = l.measure(common, c)
	if len(ways) > 0 {
		return l.siftWays(common, ways, c, choice{least: least, lead: lead, most: most})
	}
	c.near = l.keep(c.near, l.distances, most, c.radius())
	return least, lead, most
}

// measure appends the margins in the middle of c of a list without ways, or of one of them.
func (l *lister) measure(list []int32, c *cell) (least float64, lead int32, most float64) {
	least, lead = math.Inf(1), -1
	for _, k := range list {
		d := l.m.parts[k].at(c.x, c.y)
		l.distances = append(l.distances, d)
		if d < least {
			least, lead = d, k
		}
	}
	most = least + c.radius()
	if lead >= 0 {
		most = min(most, greatest(l.m.corners(lead, c)))
	}
	return least, lead, most
}

// keep puts those of list, whose margins in the middle are given, on the stack that can matter in a cell of radius r that
// has no margin above most; also the legs of bent lines that places in it may be inside of, whose margins count for more
// than they say.
func (l *lister) keep(list []int32, distances []float64, most, r float64) []int32 {
	start := len(l.stack)
	for i, k := range list {
		if least := distances[i] - r - slack; least <= most || l.m.inside(k, least) {
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
		most := m.parts[k].at(c.x, c.y) + c.radius()
		return [4]float64{most, most, most, most}
	}
	s := &m.parts[k]
	return [4]float64{
		s.at(c.x-c.halfX, c.y-c.halfY), s.at(c.x+c.halfX, c.y-c.halfY),
		s.at(c.x-c.halfX, c.y+c.halfY), s.at(c.x+c.halfX, c.y+c.halfY),
	}
}

// closed says whether some part alone closes all of c, or one of each way does: its margin is convex, so below 0
// throughout when it is at the corners.
func (m *Margins) closed(c *cell) bool {
	common, ways := m.split(c.near)
	if m.shuts(common, c) {
		return true
	}
	for len(ways) > 0 {
		var way []int32
		if way, ways = m.next(ways); !m.shuts(way, c) {
			return false
		}
		if len(ways) == 0 {
			return true
		}
	}
	return false
}

// shuts says whether a part in the list alone closes all of c.
func (m *Margins) shuts(list []int32, c *cell) bool {
	for _, k := range list {
		if greatest(m.corners(k, c)) < 0 {
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
