package field

import (
	"math"
	"sync/atomic"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/beside"
)

// Map holds the margin at every node of a grid over the floor. Nodes are at multiples of the step from the datum, from
// the last at or before the floor's least corner to the first at or after its greatest. A Map never changes.
//
// Margins are exact but for their rounding to 32 bits: by at most 6e-8 of their size (0.0001 mm at 2 m). The sign is
// exact.
type Map struct {
	margins *Margins
	nodes   patch
	workers int
}

// Map returns the map with a node every step mm, made by the given number of goroutines, at least 1.
func (m *Margins) Map(step float64, workers int) Map {
	low, high := m.limits.Min.Scale(1/step), m.limits.Max.Scale(1/step)
	n := patch{left: int(math.Floor(low.X + slack)), low: int(math.Floor(low.Y + slack)), step: step}
	n.cols, n.rows = int(math.Ceil(high.X-slack))-n.left+1, int(math.Ceil(high.Y-slack))-n.low+1
	n.stride, n.values = n.cols, make([]float32, n.cols*n.rows)
	p := Map{margins: m, nodes: n, workers: workers}
	p.compute()
	return p
}

// Step returns the distance between nodes, mm.
func (p Map) Step() float64 { return p.nodes.step }

// Size returns how many nodes there are along X and along Y.
func (p Map) Size() (cols, rows int) { return p.nodes.cols, p.nodes.rows }

// Node returns where the node in a column and row is, counted from the least corner.
func (p Map) Node(col, row int) geometry.Point { return p.nodes.node(col, row) }

// Margin returns the margin at the node in a column and row, mm.
func (p Map) Margin(col, row int) float64 { return float64(p.nodes.values[row*p.nodes.stride+col]) }

// compute lets the workers share the squares the map starts with.
func (p *Map) compute() {
	size := leaf
	for (p.nodes.cols+size-1)/size*((p.nodes.rows+size-1)/size) > tiles {
		size *= 2
	}
	across := (p.nodes.cols + size - 1) / size
	count := across * ((p.nodes.rows + size - 1) / size)
	var next atomic.Int64
	work := func() {
		q := quarterer{lister: lister{m: p.margins}, nodes: &p.nodes}
		for t := int(next.Add(1)) - 1; t < count; t = int(next.Add(1)) - 1 {
			q.square(t%across*size, t/across*size, size, p.margins.all)
		}
	}
	var others beside.Work
	for range p.workers - 1 {
		others.Go(work)
	}
	work()
	others.Wait()
}

// quarterer fills a map square by square.
type quarterer struct {
	lister
	nodes *patch
}

// square fills the nodes from column i and row j, size of them each way, as far as there are any.
func (q *quarterer) square(i, j, size int, list []int32) {
	b := q.nodes.sub(i, j, size)
	if b.cols <= 0 || b.rows <= 0 {
		return
	}
	c := b.cell(list)
	top := len(q.stack)
	q.sift(&c)
	defer func() { q.stack = q.stack[:top] }()
	if size <= leaf {
		q.m.fill(&b, &c)
		return
	}
	half := size / 2
	q.square(i, j, half, c.near)
	q.square(i+half, j, half, c.near)
	q.square(i, j+half, half, c.near)
	q.square(i+half, j+half, half, c.near)
}

// sub returns the nodes from column i and row j, at most size each way.
func (b *patch) sub(i, j, size int) patch {
	c := *b
	c.cols, c.rows = min(size, b.cols-i), min(size, b.rows-j)
	c.left, c.low = b.left+i, b.low+j
	if c.cols > 0 && c.rows > 0 {
		c.values = b.values[j*b.stride+i:]
	}
	return c
}
