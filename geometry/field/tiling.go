package field

import "math"

// tiling lists what can matter round each node of a grid, square by square of the floor.
type tiling struct {
	lister
	grid   *patch
	across int             // nodes across a square
	tiles  map[[3]int]tile // by how many nodes a square is across, and its number along X and Y
}

// tile is what can matter within a step of a square of nodes, and a margin that there is nowhere more of.
type tile struct {
	near []int32
	most float64
}

// tileSize is about how far across the squares are that have a list each, mm: with a list as long as can be walked for
// every node, and made often enough to pay.
const tileSize = 160

func newTiling(m *Margins, grid *patch) *tiling {
	t := &tiling{lister: lister{m: m}, grid: grid, across: 32, tiles: map[[3]int]tile{}}
	for t.across > 4 && float64(t.across)*grid.step > tileSize {
		t.across /= 2
	}
	return t
}

// tile returns what can matter within a step of a node.
func (t *tiling) tile(col, row int) tile { return t.square(col, row, t.across) }

// square returns what can matter within a step of the square of nodes, across of them each way, that a node is in.
func (t *tiling) square(col, row, across int) tile {
	if across > t.grid.cols && across > t.grid.rows {
		return tile{t.m.all, math.Inf(1)}
	}
	key := [3]int{across, col / across, row / across}
	if known, ok := t.tiles[key]; ok {
		return known
	}
	b := t.grid.sub(key[1]*across, key[2]*across, across)
	c := b.cell(t.square(col, row, 4*across).near)
	c.halfX, c.halfY = c.halfX+t.grid.step, c.halfY+t.grid.step
	_, _, most := t.sift(&c)
	t.tiles[key] = tile{c.near, most}
	return t.tiles[key]
}
