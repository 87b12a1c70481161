package field

import "math"

// dense is how many times as dense as before the nodes are in a cell looked at closely.
const dense = 8

// detail looks closely at some cells of a grid, a cell being the square between four nodes; it goes by the column and row
// of its least node. The first detail looks at cells of a map, the next at cells between the dense nodes of the first.
type detail struct {
	*labelling
	above      *detail // nil for the first
	step       float64 // of the grid
	cols, rows int     // of its nodes
	fineness   int     // how many times as dense as the map's nodes they are
	cells      map[[2]int]*closeUp
	order      []*closeUp // as they came
	looked     int        // how many of them are measured
}

// closeUp holds the dense nodes of a cell, its sides' included.
type closeUp struct {
	patch
	col, row int
	near     []int32
	labels   [(dense + 1) * (dense + 1)]int32 // of the open ones
}

// newDetail returns the detail of a map's cells, with those at the nodes of narrow areas.
func newDetail(a *labelling) *detail {
	n := &a.nodes
	d := &detail{labelling: a, step: n.step, cols: n.cols, rows: n.rows, fineness: 1, cells: map[[2]int]*closeUp{}}
	for k, r := range a.stretches {
		if d.narrow(int32(k)) {
			for col := r.from; col < r.to; col++ {
				d.markCorner(int(col), int(r.row))
			}
		}
	}
	return d
}

// narrow says whether no wide circle is known in an area.
func (d *detail) narrow(label int32) bool { return d.best[d.find(label)] < wide(d.step) }

// finer returns the detail of the cells between the dense nodes of d, with those that need it.
func (d *detail) finer() *detail {
	f := &detail{
		labelling: d.labelling, above: d, step: d.step / dense, cells: map[[2]int]*closeUp{},
		cols: (d.cols-1)*dense + 1, rows: (d.rows-1)*dense + 1, fineness: d.fineness * dense,
	}
	d.count()
	for _, u := range d.order {
		f.examine(&u.patch, u.patch.borders(), u.col*dense, u.row*dense)
		for k, margin := range u.values {
			if margin >= 0 && f.narrow(u.labels[k]) {
				f.markCorner(u.col*dense+k%(dense+1), u.row*dense+k/(dense+1))
			}
		}
	}
	return f
}

// count lets the dense nodes count for the best margins known.
func (d *detail) count() {
	for _, u := range d.order {
		for k, margin := range u.values {
			if margin >= 0 {
				root := d.find(u.labels[k])
				d.best[root] = max(d.best[root], margin)
			}
		}
	}
}

// borders returns the cells, in rising order, that the margins at their corners leave neither all open nor all closed.
func (b *patch) borders() (cells []int) {
	// Two corners whose margins add up to s bound the margin at p by half of s and p's distances from both. Of the two
	// diagonals' bounds the lesser is greatest in the middle of a side, where those distances are (1 + sqrt 5)/2 sides.
	reach := float32(b.step*math.Phi + brink)
	for row := range b.rows - 1 {
		low, high := b.row(row), b.row(row + 1)[:b.cols]
		behind, above := low[0], high[0]
		for col := 1; col < len(low); col++ {
			across, other := behind+high[col], low[col]+above
			behind, above = low[col], high[col]
			if across >= reach && other >= reach || across < -reach && other < -reach {
				continue
			}
			cells = append(cells, row*b.cols+col-1)
		}
	}
	return cells
}

// examine marks those of the border cells of a patch, whose least node is at left and low, that may hide something: an
// opening that no corner shows, a way between areas across the middle, or one across a side between closed corners.
func (d *detail) examine(p *patch, borders []int, left, bottom int) {
	step := float32(d.step)
	for _, cell := range borders {
		i, j := cell%p.cols, cell/p.cols
		low, high := p.row(j), p.row(j+1)
		a, b, c, e := low[i], low[i+1], high[i], high[i+1]
		col, row := left+i, bottom+j
		switch {
		case a >= 0 && b >= 0 && c >= 0 && e >= 0:
		case a < 0 && b < 0 && c < 0 && e < 0:
			if !d.shut(d.cellAt(col, row), dense) {
				d.mark(col, row)
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
}

// shut says whether c is closed but for what is narrower than is looked for: c, each of its quarters, or theirs, down to
// what divides it parts across.
func (d *detail) shut(c cell, parts int) bool {
	top := len(d.stack)
	defer func() { d.stack = d.stack[:top] }()
	least, lead, most := d.sift(&c)
	if least >= d.least() {
		return false
	}
	most = min(most, d.m.ceiling(&c, lead))
	if most < d.least() || d.m.closed(&c) {
		return true
	}
	if parts == 1 {
		return false
	}
	for _, q := range c.quarters() {
		if !d.shut(q, parts/2) {
			return false
		}
	}
	return true
}

// cellAt returns a cell with what can matter in it, and perhaps more.
func (d *detail) cellAt(col, row int) cell {
	scale, half := d.step, d.step/2
	x := float64(d.nodes.left*d.fineness+col)*scale + half
	y := float64(d.nodes.low*d.fineness+row)*scale + half
	return cell{x, y, half, half, d.near(col, row)}
}

func (d *detail) near(col, row int) []int32 {
	if d.above == nil {
		return d.tile(col, row).near
	}
	return d.above.cells[[2]int{col / dense, row / dense}].near // it is looked at closely before anything in it is
}

// meeting marks two cells, or one, and those around, when their open corners have different labels.
func (d *detail) meeting(col, row, col2, row2 int) {
	first, differ := int32(-1), false
	for k := range 8 {
		i, j := col+k%2, row+k/2%2
		if k >= 4 {
			i, j = col2+k%2, row2+k/2%2
		}
		if label := d.labelAt(i, j); label >= 0 {
			differ = differ || first >= 0 && d.find(label) != first
			first = d.find(label)
		}
	}
	if differ {
		d.markAround(col, row)
		d.markAround(col2, row2)
	}
}

// labelAt returns the label of a node of the grid, -1 when it is closed or nobody looked.
func (d *detail) labelAt(col, row int) int32 {
	if d.above == nil {
		if col >= d.cols || row >= d.rows || d.nodes.row(row)[col] < 0 {
			return -1
		}
		return d.labelOf(col, row)
	}
	for k := range 4 { // a node on a side or corner is in several cells
		i, j := col/dense-k%2, row/dense-k/2
		if u := d.above.cells[[2]int{i, j}]; u != nil && u.values != nil && col-i*dense <= dense && row-j*dense <= dense {
			if at := col - i*dense + (row-j*dense)*(dense+1); u.values[at] >= 0 {
				return u.labels[at]
			}
			return -1
		}
	}
	return -1
}
