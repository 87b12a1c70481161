package field

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"bench.example/undermark/geometry"
)

// Area is a connected part of the floor where the margin is at least 0.
type Area struct {
	Name string  // A, B, ... Z, AA, ...: best first
	Size float64 // mm², counted by nodes
	Best Place   // its roomiest place, its margin within 0.01 mm of the greatest there
}

// finest is how near the margin of an area's best place comes to the greatest there is, mm.
const finest = 0.01

// Areas returns the open areas, best first.
//
// Neighbouring nodes are in one area when the straight way between them is open. Where no node shows it whether two areas
// meet, or whether there is one at all, and in areas that hold no circle as large as a cell of the grid, the cells are
// looked at with nodes eight times as dense. So an area in which no circle of a quarter of a step across fits, or one in
// a single cell that has a corner in another area, may be missed; and two areas may count as one when they are less than a
// quarter of a step apart, or as two when the neck between them is narrower than that.
func (p Map) Areas() []Area {
	a := newLabelling(p)
	var borders []int
	var beside sync.WaitGroup
	if find := func() { borders = p.nodes.borders() }; p.workers > 1 {
		beside.Go(find)
	} else {
		find()
	}
	a.scan()
	a.settle()
	beside.Wait()
	d := newDetail(a)
	d.hidden(borders)
	d.narrow()
	d.look()
	return a.areas(d)
}

// areas gathers the groups and finds the best place in each.
func (a *labelling) areas(d *detail) []Area {
	groups := make([]*group, len(a.parent)) // by root
	at := func(label int32) *group {
		root := a.find(label)
		if groups[root] == nil {
			groups[root] = &group{best: -1}
		}
		return groups[root]
	}
	for k := range a.runs {
		at(int32(k)).addRun(&a.runs[k])
	}
	for _, c := range d.order {
		d.cells[c].gather(at, a.wide())
	}
	var found []Area
	for _, g := range groups {
		if g != nil {
			found = append(found, g.area(d))
		}
	}
	slices.SortFunc(found, func(f, g Area) int {
		return cmp.Or(cmp.Compare(g.Best.Margin, f.Best.Margin), cmp.Compare(f.Best.At.X, g.Best.At.X),
			cmp.Compare(f.Best.At.Y, g.Best.At.Y))
	})
	for i := range found {
		found[i].Name = letters(i)
	}
	return found
}

// letters returns A for 0, Z for 25, AA for 26.
func letters(i int) string {
	name := ""
	for i++; i > 0; i = (i - 1) / 26 {
		name = string(rune('A'+(i-1)%26)) + name
	}
	return name
}

// group is what belongs to one area.
type group struct {
	runs   []*run
	nodes  int
	best   float32 // of the nodes of the map; -1 without one
	fine   []speck // of an area without a wide circle
	finest float32 // of the dense nodes
}

// wide is half the diagonal of a cell: a circle of that radius holds a node.
func (a *labelling) wide() float32 { return float32(a.nodes.step / math.Sqrt2) }

// speck is an open node of a cell looked at closely.
type speck struct {
	at     geometry.Point
	margin float32
	cell   int
}

func (g *group) addRun(r *run) {
	g.runs, g.nodes, g.best = append(g.runs, r), g.nodes+int(r.to-r.from), max(g.best, r.best)
}

// area finds the best place of a group. Every place of an area whose margin is above half the diagonal of a cell is in the
// square about an open node of the same area, whose margin can't be less by more than that; an area without such a place
// has been looked at closely.
func (g *group) area(d *detail) Area {
	step, size := d.nodes.step, float64(g.nodes)
	s := newClimb(d.margins, finest)
	if g.best >= d.wide() || len(g.fine) == 0 {
		g.offerNodes(s, d)
	} else {
		g.offerFine(s, d)
	}
	s.run()
	if g.nodes == 0 {
		size = float64(len(g.fine)) / (dense * dense)
	}
	return Area{Size: size * step * step, Best: d.margins.At(s.at)}
}

func (g *group) offerNodes(s *climb, d *detail) {
	r := d.wide()
	for _, run := range g.runs {
		if run.best+r < g.best {
			continue
		}
		row := int(run.row)
		for col := int(run.from); col < int(run.to); col++ {
			if d.nodes.row(row)[col]+r >= g.best {
				s.look(d.Node(col, row), d.nodes.step, d.tile(col, row))
			}
		}
	}
}

func (g *group) offerFine(s *climb, d *detail) {
	step := d.nodes.step / dense
	for _, f := range g.fine {
		if f.margin+float32(step/math.Sqrt2) >= g.finest {
			s.look(f.at, step, d.cells[f.cell].near)
		}
	}
}

// look offers the part on the floor of the square about a node.
func (s *climb) look(node geometry.Point, step float64, near []int32) {
	low, high, half := s.m.limits.Min, s.m.limits.Max, step/2
	left, right := max(node.X-half, low.X), min(node.X+half, high.X)
	bottom, top := max(node.Y-half, low.Y), min(node.Y+half, high.Y)
	s.offer(cell{(left + right) / 2, (bottom + top) / 2, (right - left) / 2, (top - bottom) / 2, near})
}
