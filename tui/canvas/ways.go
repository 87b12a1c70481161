package canvas

import "slices"

// What a name costs for each way that it stands across, and how many times as much that counts of a name for which a place is sought, and of one that
// has but one place or one side where it may be.
const (
	acrossWay = 12
	waySought = 3
	wayOnly   = 2
)

// mostUpright is how many columns wide a thing is at the most to which leaders go up or down, and from no side.
const mostUpright = 3

// passage is the column in which the leader of a name is likely to go, and how much that counts from a row upwards and from there downwards: of ends, and of
// what carries, stands upright and is but few columns wide.
type passage struct {
	col, row int
	up, down int16
}

// wayOf is the way of a name; one that counts nothing where it has none. A leader does not pass the ring.
func (p *painter) wayOf(n *naming) (w passage) {
	if !n.must {
		return w
	}
	if ending(n.it) && n.it.Line != nil {
		w.col, w.row, _ = p.Cell(n.it.Line[0])
		w.up, w.down = wayOnly, wayOnly
		return w
	}
	if low, high := n.it.Area.Bounds(); !bears(n.it) || high.X-low.X > mostUpright*p.Scale*dotsAcross {
		return w
	}
	for _, cell := range p.ledTo(n.it) {
		w.col, w.row = cell[0], cell[1]
		if p.ringless(w.col, w.row, -1) {
			w.up = 1
		}
		if p.ringless(w.col, w.row, 1) {
			w.down = 1
		}
	}
	if w.up == 0 || w.down == 0 {
		w.up, w.down = wayOnly*w.up, wayOnly*w.down
	}
	return w
}

// ringless tells whether a way up or down from a cell meets no ring.
func (p *painter) ringless(col, row, step int) bool {
	for ; row >= p.Top && row < p.Top+p.Rows; row += step {
		if p.ringed(col, row) || p.onRing(col, row) {
			return false
		}
	}
	return true
}

// ways are those of the names that are still to be written. A name that has another place as good leaves them free.
type ways struct {
	open        []openWay
	seek        *try // which order of names is tried; nil for none
	first, last int  // the rows between which anything is drawn
}

// openWay is the way of a name that is still to be written.
type openWay struct {
	passage
	of *part
}

// lay finds the ways of names in a picture.
func (w *ways) lay(p *painter, names []naming) {
	for i := range names {
		names[i].way = p.wayOf(&names[i])
	}
	bare := func(row int) bool {
		at := row*p.canvas.Width + p.Left
		return p.sums[at] == p.sums[at+p.Cols]
	}
	for w.first = p.Top; w.first < p.Top+p.Rows && bare(w.first); w.first++ {
	}
	for w.last = p.Top + p.Rows - 1; w.last > w.first && bare(w.last); w.last-- {
	}
}

// begin notes the ways of names.
func (w *ways) begin(names []naming, seek *try) {
	w.open, w.seek = w.open[:0], seek
	for i := range names {
		n := &names[i]
		if n.way.up+n.way.down == 0 {
			continue
		}
		open := openWay{n.way, n.it}
		if slices.Contains(seek.first, n.it) {
			open.up, open.down = waySought*open.up, waySought*open.down
		}
		w.open = append(w.open, open)
	}
}

// end forgets them: what else is written has no regard for leaders.
func (w *ways) end() { w.open, w.seek = w.open[:0], nil }

// pass forgets the way of a name that is written.
func (w *ways) pass(of *part) {
	w.open = slices.DeleteFunc(w.open, func(o openWay) bool { return o.of == of })
}

// across is what a name in so many cells costs for the ways that it stands across: less and less, the more rows it leaves free between it and all that is
// drawn, where other names may end theirs.
func (w *ways) across(col, row, length int) int {
	cost, free := 0, max(w.first-1-row, row-w.last-1, 0)
	for i := range w.open {
		switch o := &w.open[i]; {
		case o.col < col || o.col >= col+length:
		case row < o.row:
			cost += acrossWay * int(o.up)
		case row > o.row:
			cost += acrossWay * int(o.down)
		}
	}
	return cost >> free
}
