package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// stretch is open nodes of a row in a line between which the way is surely open, from a column to before another.
type stretch struct {
	row, from, to int32
	best          float32
}

// labelling joins open nodes to areas. A label is the number of a stretch, or a later one for what is looked at closely; labels
// of one area have one root.
type labelling struct {
	Map
	*tiling
	stretches []stretch
	rows      []int32   // by row, and one more: number of its first stretch
	parent    []int32   // by label
	best      []float32 // by root: greatest margin known
	doubtful  []doubt
}

// doubt is between two stretches that lie side by side or one above the other: columns from to before to, of row and the next one, or
// when level the two columns from and from + 1.
type doubt struct {
	a, b          int32
	row, from, to int32
	level         bool
}

func newLabelling(p Map) *labelling {
	a := &labelling{Map: p}
	a.tiling = newTiling(p.margins, &a.nodes)
	return a
}

// label returns a new label with the best margin known.
func (a *labelling) label(best float32) int32 {
	a.parent, a.best = append(a.parent, int32(len(a.parent))), append(a.best, best)
	return int32(len(a.parent) - 1)
}

func (a *labelling) find(label int32) int32 {
	for a.parent[label] != label {
		a.parent[label] = a.parent[a.parent[label]]
		label = a.parent[label]
	}
	return label
}

func (a *labelling) join(b, c int32) {
	if b, c = a.find(b), a.find(c); b != c {
		b, c = min(b, c), max(b, c)
		a.parent[c], a.best[b] = b, max(a.best[b], a.best[c])
	}
}

// scan makes the stretches and joins what surely belongs together: the way between two places is open when their margins add up to
// its length.
func (a *labelling) scan() {
	n := &a.nodes
	for row := range n.rows {
		a.rows = append(a.rows, int32(len(a.stretches)))
		a.scanRow(row)
		if row > 0 {
			a.joinRows(row)
		}
	}
	a.rows = append(a.rows, int32(len(a.stretches)))
}

func (a *labelling) scanRow(row int) {
	step, open := float32(a.nodes.step), false
	var r stretch
	end := func(col int) {
		r.to, open = int32(col), false
		a.stretches = append(a.stretches, r)
		a.label(r.best)
	}
	values, before := a.nodes.row(row), float32(0)
	for col, margin := range values {
		switch {
		case margin < 0:
			if open {
				end(col)
			}
		case open && before+margin >= step:
			if margin > r.best { // quicker than max
				r.best = margin
			}
		default:
			if open {
				end(col)
				k := int32(len(a.stretches))
				a.doubtful = append(a.doubtful, doubt{k - 1, k, int32(row), int32(col) - 1, int32(col), true})
			}
			r, open = stretch{int32(row), int32(col), 0, margin}, true
		}
		before = margin
	}
	if open {
		end(len(values))
	}
}

// joinRows joins the stretches of a row with those of the row before it.
func (a *labelling) joinRows(row int) {
	k, end := a.rows[row-1], a.rows[row]
	for l := end; l < int32(len(a.stretches)); l++ {
		upper := a.stretches[l]
		for k < end && a.stretches[k].to < upper.from {
			k++
		}
		for i := k; i < end && a.stretches[i].from <= upper.to; i++ {
			lower := a.stretches[i]
			if a.surely(upper, lower) {
				a.join(i, l)
			} else if from, to := max(lower.from, upper.from), min(lower.to, upper.to); from < to {
				a.doubtful = append(a.doubtful, doubt{i, l, int32(row) - 1, from, to, false})
			}
		}
	}
}

// surely says whether the way between two stretches one above the other is surely open, straight or slantwise.
func (a *labelling) surely(upper, lower stretch) bool {
	step := float32(a.nodes.step)
	high, low := a.nodes.row(int(upper.row)), a.nodes.row(int(lower.row))
	for _, w := range [3]struct {
		aside  int32
		length float32
	}{{0, step}, {1, step * math.Sqrt2}, {-1, step * math.Sqrt2}} {
		for col := max(upper.from, lower.from-w.aside); col < min(upper.to, lower.to-w.aside); col++ {
			if high[col]+low[col+w.aside] >= w.length {
				return true
			}
		}
	}
	return false
}

// settle looks at the ways that are in doubt, where they matter, and keeps in doubt those that are closed.
func (a *labelling) settle() {
	var closed []doubt
	for _, d := range a.doubtful {
		if a.find(d.a) == a.find(d.b) {
			continue
		}
		if a.passable(d) {
			a.join(d.a, d.b)
		} else {
			closed = append(closed, d)
		}
	}
	a.doubtful = closed
}

func (a *labelling) passable(d doubt) bool {
	for col := int(d.from); col < int(d.to); col++ {
		from, to := a.Node(col, int(d.row)), a.Node(col, int(d.row)+1)
		if d.level {
			to = a.Node(col+1, int(d.row))
		}
		if a.m.passable(from, to, a.tile(col, int(d.row)).near) {
			return true
		}
	}
	return false
}

// passable says whether the straight way from one place to the other is open, but for closed stretches shorter than 0.01 mm;
// near lists what can matter there.
func (m *Margins) passable(from, to geometry.Point, near []int32) bool {
	a, _ := m.lead(near, from)
	b, _ := m.lead(near, to)
	return m.passes(from, to, a, b, near)
}

func (m *Margins) passes(from, to geometry.Point, a, b float64, near []int32) bool {
	length := to.Sub(from).Norm()
	if a < 0 || b < 0 || a+b >= length || length < finest {
		return a >= 0 && b >= 0
	}
	middle := from.Add(to).Scale(0.5)
	c, _ := m.lead(near, middle)
	return m.passes(from, middle, a, c, near) && m.passes(middle, to, c, b, near)
}

// labelOf returns the label of an open node.
func (a *labelling) labelOf(col, row int) int32 {
	k, end := a.rows[row], a.rows[row+1]
	for end-k > 1 {
		if middle := (k + end) / 2; a.stretches[middle].from <= int32(col) {
			k = middle
		} else {
			end = middle
		}
	}
	return k
}
