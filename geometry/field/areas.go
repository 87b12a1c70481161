package field

import (
	"cmp"
	"math"
	"slices"
	"sync"
)

// Area is a connected part of the floor where the margin is at least 0.
type Area struct {
	Name string  // A, B, ... Z, AA, ...: best first
	Size float64 // mm², counted by nodes
	Best Place   // its roomiest place, its margin within 0.01 mm of the greatest there, or what was asked for
}

// Areas returns the open areas, best first.
//
// Neighbouring nodes are in one area when the straight way between them is open. Where no node shows it whether two areas
// meet, or whether there is one at all, and in areas that hold no circle as large as a cell of the grid, the cells are
// looked at with nodes eight times as dense, and in the same way once more. Areas whose best margin is less than a 64th of
// a step (0.08 mm with a step of 5) are left out, unless there is no other; so may be one in a single cell that has a corner
// in another area. Two areas count as one, or one as two, only where the way between them is closed or open by less.
func (p Map) Areas() []Area { return p.AreasWithin(finest) }

// AreasWithin returns the open areas as Areas does, but the margins of their best places within tolerance (mm, more than
// 0) of the greatest: constraints that take long are asked less often.
func (p Map) AreasWithin(tolerance float64) []Area {
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
	d.examine(&a.nodes, borders, 0, 0)
	for _, w := range a.doubtful {
		for col := w.from; col < w.to; col++ {
			d.markAround(int(col), int(w.row))
		}
	}
	d.look()
	f := d.finer()
	f.look()
	return a.areas(tolerance, d, f)
}

// least is the margin below which openings are passed over, mm.
func (a *labelling) least() float64 { return a.nodes.step / (dense * dense) }

// wide returns half the diagonal of a cell: a circle of that radius holds a node.
func wide(step float64) float32 { return float32(step / math.Sqrt2) }

// areas gathers the groups and finds the best place in each.
func (a *labelling) areas(tolerance float64, details ...*detail) []Area {
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
	for level, d := range details {
		for _, u := range d.order {
			u.gather(at, level)
		}
	}
	var found []Area
	for _, g := range groups {
		if g != nil {
			found = append(found, g.area(a, tolerance))
		}
	}
	slices.SortFunc(found, func(f, g Area) int {
		return cmp.Or(cmp.Compare(g.Best.Margin, f.Best.Margin), cmp.Compare(f.Best.At.X, g.Best.At.X),
			cmp.Compare(f.Best.At.Y, g.Best.At.Y))
	})
	for i := range found {
		if i > 0 && found[i].Best.Margin < a.least() {
			return found[:i]
		}
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
