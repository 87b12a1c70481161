package field

// mark has a cell looked at closely, unless it is beyond the grid. What is looked at more closely still is in a cell looked at
// closely.
func (d *detail) mark(col, row int) {
	if col < 0 || row < 0 || col > d.cols-2 || row > d.rows-2 {
		return
	}
	key := [2]int{col, row}
	if d.cells[key] != nil {
		return
	}
	if d.above != nil {
		d.above.mark(col/dense, row/dense)
		d.above.look()
	}
	d.cells[key] = &closeUp{col: col, row: row}
	d.order = append(d.order, d.cells[key])
}

// markCorner marks the cells that a node is a corner of.
func (d *detail) markCorner(col, row int) {
	for k := range 4 {
		d.mark(col-k%2, row-k/2)
	}
}

// markAround marks a cell and its eight neighbours.
func (d *detail) markAround(col, row int) {
	for k := range 9 {
		d.mark(col+k%3-1, row+k/3-1)
	}
}

// markBeside marks the cells on both sides of a way between two nodes, and those around them: along a row when level, else along a column.
func (d *detail) markBeside(col, row int, level bool) {
	d.markAround(col, row)
	if level {
		d.markAround(col, row-1)
	} else {
		d.markAround(col-1, row)
	}
}

// follow marks the cells that narrow areas lead to across the sides of a cell, and those that an opening does which no
// corner of the cell shows.
func (d *detail) follow(u *closeUp) {
	const across = dense + 1
	hidden := max(u.values[0], u.values[dense], u.values[dense*across], u.values[dense*across+dense]) < 0
	for _, side := range [4]struct{ from, by, col, row int }{
		{0, across, -1, 0}, {dense, across, 1, 0}, {0, 1, 0, -1}, {dense * across, 1, 0, 1},
	} {
		for at, i := side.from, 0; i < across; at, i = at+side.by, i+1 {
			if u.values[at] >= 0 && (hidden || d.narrow(u.labels[at])) {
				d.mark(u.col+side.col, u.row+side.row)
				break
			}
		}
	}
}

// look measures the marked cells that are not yet, labels their open nodes, and joins them with those of the grid and of
// other cells.
func (d *detail) look() {
	for d.looked < len(d.order) { // it grows on the way
		u := d.order[d.looked]
		d.looked++
		d.measure(u)
		d.joinWithin(u)
		d.joinGrid(u)
		d.joinBeside(u)
		d.follow(u)
	}
}

// joinBeside joins the open nodes on the sides of a cell with those of the cells beside it.
func (d *detail) joinBeside(u *closeUp) {
	const across = dense + 1
	left, right := d.cells[[2]int{u.col - 1, u.row}], d.cells[[2]int{u.col + 1, u.row}]
	below, above := d.cells[[2]int{u.col, u.row - 1}], d.cells[[2]int{u.col, u.row + 1}]
	for i := range across {
		d.joinAcross(u, left, i*across, i*across+dense)
		d.joinAcross(u, right, i*across+dense, i*across)
		d.joinAcross(u, below, i, dense*across+i)
		d.joinAcross(u, above, dense*across+i, i)
	}
}

// joinGrid joins the corners of a cell with the nodes of the grid there.
func (d *detail) joinGrid(u *closeUp) {
	for k := range 4 {
		at := k%2*dense + k/2*dense*(dense+1)
		if label := d.labelAt(u.col+k%2, u.row+k/2); label >= 0 && u.values[at] >= 0 {
			d.join(label, u.labels[at])
		}
	}
}

func (d *detail) measure(u *closeUp) {
	u.patch = patch{
		values: make([]float32, len(u.labels)), stride: dense + 1, cols: dense + 1, rows: dense + 1,
		left: (d.nodes.left*d.fineness + u.col) * dense, low: (d.nodes.low*d.fineness + u.row) * dense,
		step: d.step / dense,
	}
	c := d.cellAt(u.col, u.row)
	c.halfX, c.halfY = c.halfX+u.step, c.halfY+u.step // squares about nodes reach over the sides
	d.sift(&c)
	u.near = c.near
	d.m.fill(&u.patch, &c)
}

func (d *detail) joinWithin(u *closeUp) {
	const across = dense + 1
	for at, margin := range u.values {
		if margin < 0 {
			continue
		}
		behind, below := at%across > 0 && u.values[at-1] >= 0, at >= across && u.values[at-across] >= 0
		switch {
		case behind:
			u.labels[at] = u.labels[at-1]
		case below:
			u.labels[at] = u.labels[at-across]
		default:
			u.labels[at] = d.label(0) // dense nodes count in the next detail
		}
		if behind && below {
			d.join(u.labels[at], u.labels[at-across])
		}
	}
}

// joinAcross joins two open nodes of measured cells.
func (d *detail) joinAcross(u, v *closeUp, at, other int) {
	if v != nil && v.values != nil && u.values[at] >= 0 && v.values[other] >= 0 {
		d.join(u.labels[at], v.labels[other])
	}
}
