package field

import "math"

// dense is how many times as dense as those of the map the nodes are in a cell looked at closely.
const dense = 8

// detail looks closely at some cells of a map, a cell being the square between four nodes; cell c has its least node at column
// c % cols and row c / cols.
type detail struct {
	*labelling
	cells map[int]*closeUp
	order []int // of the cells, as they came
}

// closeUp holds the dense nodes of a cell, its sides' included.
type closeUp struct {
	patch
	near   []int32
	labels [(dense + 1) * (dense + 1)]int32 // of the open ones
	index  int
	hidden bool // no corner is open
}

func newDetail(a *labelling) *detail {
	return &detail{labelling: a, cells: map[int]*closeUp{}}
}

// borders returns the cells, in rising order, that the margins at their corners leave neither all open nor all closed.
func (b *patch) borders() (cells []int) {
	// Two corners whose margins add up to s bound the margin at p by half of s and p's distances from both. Of the two
	// diagonals' bounds the lesser is greatest in the middle of a side, where those distances are (1 + sqrt 5)/2 sides.
	reach := float32(b.step*math.Phi + 1e-3) // and more than rounding
	for row := range b.rows - 1 {
		low, high := b.row(row), b.row(row+1)
		for col := range low[1:] {
			across, other := low[col]+high[col+1], low[col+1]+high[col]
			if across >= reach && other >= reach || across < -reach && other < -reach {
				continue
			}
			cells = append(cells, row*b.cols+col)
		}
	}
	return cells
}

// hidden marks those of the border cells that may hide something: an opening that no corner shows, a way between areas
// across the middle, or one across a side between closed corners.
func (d *detail) hidden(borders []int) {
	n := &d.nodes
	step := float32(n.step)
	for _, cell := range borders {
		col, row := cell%n.cols, cell/n.cols
		low, high := n.row(row), n.row(row+1)
		a, b, c, e := low[col], low[col+1], high[col], high[col+1]
		switch {
		case a >= 0 && b >= 0 && c >= 0 && e >= 0:
		case a < 0 && b < 0 && c < 0 && e < 0:
			if !d.shut(d.cellAt(col, row), dense) {
				d.mark(col, row).hidden = true
			}
		case (a >= 0) == (e >= 0) && (b >= 0) == (c >= 0):
			d.meeting(col, row, col, row)
		default:
			if b < 0 && e < 0 && b+e+step >= 0 {
				d.meeting(col, row, col+1, row)
			}
			if c < 0 && e < 0 && c+e+step >= 0 {
				d.meeting(col, row, col, row+1)
			}
		}
	}
	for _, w := range d.doubtful {
		for col := w.from; col < w.to; col++ {
			d.markAround(int(col), int(w.row))
		}
	}
}

// shut says whether parts close all of c, each of its quarters, or theirs, down to what divides it parts across, one alone.
func (d *detail) shut(c cell, parts int) bool {
	top := len(d.stack)
	defer func() { d.stack = d.stack[:top] }()
	if least, _, most := d.sift(&c); least >= 0 || most < 0 {
		return least < 0
	}
	if d.m.closed(&c) || parts == 1 {
		return d.m.closed(&c)
	}
	for _, q := range c.quarters() {
		if !d.shut(q, parts/2) {
			return false
		}
	}
	return true
}

func (d *detail) cellAt(col, row int) cell {
	at, half := d.Node(col, row), d.nodes.step/2
	return cell{at.X + half, at.Y + half, half, half, d.tile(col, row)}
}

// meeting marks two cells, or one, when the open corners have different labels.
func (d *detail) meeting(col, row, col2, row2 int) {
	label, differ := int32(-1), false
	for _, at := range [2][2]int{{col, row}, {col2, row2}} {
		d.corners(at[0], at[1], func(l int32) {
			differ = differ || label >= 0 && l != label
			label = l
		})
	}
	if differ {
		d.markAround(col, row)
		d.markAround(col2, row2)
	}
}

// corners calls each with the roots of a cell's open corners.
func (d *detail) corners(col, row int, each func(root int32)) {
	for k := range 4 {
		if i, j := col+k%2, row+k/2; i < d.nodes.cols && j < d.nodes.rows && d.nodes.row(j)[i] >= 0 {
			each(d.find(d.labelOf(i, j)))
		}
	}
}

// narrow marks the cells at the nodes of areas in which no circle as large as a cell is known.
func (d *detail) narrow() {
	best := map[int32]float32{}
	for k, r := range d.runs {
		root := d.find(int32(k))
		best[root] = max(best[root], r.best)
	}
	for k, r := range d.runs {
		if best[d.find(int32(k))] < d.wide() {
			for col := r.from; col < r.to; col++ {
				for k := range 4 { // the cells the node is a corner of
					d.mark(int(col)-k%2, int(r.row)-k/2)
				}
			}
		}
	}
}

// mark has a cell looked at closely; off the map it does nothing of use.
func (d *detail) mark(col, row int) *closeUp {
	if col < 0 || row < 0 || col > d.nodes.cols-2 || row > d.nodes.rows-2 {
		return &closeUp{}
	}
	c := row*d.nodes.cols + col
	if d.cells[c] == nil {
		d.cells[c] = &closeUp{index: c}
		d.order = append(d.order, c)
	}
	return d.cells[c]
}

// markAround marks a cell and its eight neighbours.
func (d *detail) markAround(col, row int) {
	for k := range 9 {
		d.mark(col+k%3-1, row+k/3-1)
	}
}

// follow marks the cells that an opening of a hidden cell leads to across its sides.
func (d *detail) follow(u *closeUp, col, row int) {
	const across = dense + 1
	var left, right, below, above bool
	for i := range across {
		left, right = left || u.values[i*across] >= 0, right || u.values[i*across+dense] >= 0
		below, above = below || u.values[i] >= 0, above || u.values[dense*across+i] >= 0
	}
	for _, way := range [4]struct {
		open     bool
		col, row int
	}{{left, col - 1, row}, {right, col + 1, row}, {below, col, row - 1}, {above, col, row + 1}} {
		if way.open {
			d.mark(way.col, way.row)
		}
	}
}

// look measures the marked cells, labels their open nodes, and joins them with each other and with the map's.
func (d *detail) look() {
	for i := 0; i < len(d.order); i++ { // it grows on the way
		u, col, row := d.cells[d.order[i]], d.order[i]%d.nodes.cols, d.order[i]/d.nodes.cols
		d.measure(u, col, row)
		d.joinWithin(u)
		if u.hidden {
			d.follow(u, col, row)
		}
	}
	for _, c := range d.order {
		u := d.cells[c]
		for k := range 4 {
			col, row, at := c%d.nodes.cols+k%2, c/d.nodes.cols+k/2, k%2*dense+k/2*dense*(dense+1)
			if d.nodes.row(row)[col] >= 0 && u.values[at] >= 0 {
				d.join(d.labelOf(col, row), u.labels[at])
			}
		}
		right, above := d.cells[c+1], d.cells[c+d.nodes.cols]
		for i := range dense + 1 {
			d.joinAcross(u, right, i*(dense+1)+dense, i*(dense+1))
			d.joinAcross(u, above, dense*(dense+1)+i, i)
		}
	}
}

func (d *detail) measure(u *closeUp, col, row int) {
	u.patch = patch{
		values: make([]float32, len(u.labels)), stride: dense + 1, cols: dense + 1, rows: dense + 1,
		left: (d.nodes.left + col) * dense, low: (d.nodes.low + row) * dense, step: d.nodes.step / dense,
	}
	c := d.cellAt(col, row)
	d.sift(&c)
	u.near = c.near
	d.m.fill(&u.patch, &c)
}

func (d *detail) joinWithin(u *closeUp) {
	for at, margin := range u.values {
		if margin < 0 {
			continue
		}
		behind, below := at%(dense+1) > 0 && u.values[at-1] >= 0, at > dense && u.values[at-dense-1] >= 0
		switch {
		case behind:
			u.labels[at] = u.labels[at-1]
		case below:
			u.labels[at] = u.labels[at-dense-1]
		default:
			u.labels[at] = d.label()
		}
		if behind && below {
			d.join(u.labels[at], u.labels[at-dense-1])
		}
	}
}

// joinAcross joins two open nodes of cells looked at.
func (d *detail) joinAcross(u, v *closeUp, at, other int) {
	if v != nil && u.values[at] >= 0 && v.values[other] >= 0 {
		d.join(u.labels[at], v.labels[other])
	}
}

// gather adds the open nodes to their groups, of those that hold no wide circle.
func (u *closeUp) gather(at func(label int32) *group, wide float32) {
	for k, margin := range u.values {
		if margin < 0 {
			continue
		}
		if g := at(u.labels[k]); g.best < wide {
			g.fine = append(g.fine, speck{u.node(k%(dense+1), k/(dense+1)), margin, u.index})
			g.finest = max(g.finest, margin)
		}
	}
}
