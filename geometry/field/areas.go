package field

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry/beside"
)

// Area is a connected part of the floor where the margin is at least 0.
type Area struct {
	Name string  // A, B, ... Z, AA, ...: best first
	Size float64 // mm², counted by nodes
	Best Site    // its roomiest place, its margin within 0.01 mm of the greatest there, or what was asked for
}

// Areas returns the open areas, best first.
//
// Neighbouring nodes are in one area when the straight way between them is open. Where no node shows it whether two areas
// meet, or whether there is one at all, and in areas that hold no circle as large as a cell of the grid, the cells are
// looked at with nodes eight times as dense, and in the same way once more. Areas whose best margin is less than a 64th of
// a step (0.08 mm with a step of 5) are left out, unless there is no other; so may be one that has no node, in cells that have a
// corner in another area. Two areas count as one, or one as two, only where the way between them is closed or open by less; very
// seldom (once in some thousands of floors made to be tight) also two as one where a wall between them is thinner than the
// denser nodes are apart, an eighth of a step.
func (p Map) Areas() []Area {
	m := p.margins
	if closing := m.closing(); closing != m {
		p = closing.Map(p.nodes.step, p.workers)
	}
	return p.areas(m, finest)
}

// AreasTo returns the open areas as they are with a Map of such a step, but the margins of their best places within
// tolerance (mm, more than 0) of the greatest.
func (m *Margins) AreasTo(tolerance, step float64, workers int) []Area {
	return m.closing().Map(step, workers).areas(m, tolerance)
}

// closing returns the margins of the parts that may close a place. The others, such as a shelf above what is carried, only
// say how much room there is where there is some; they would make a wide area look narrow.
func (m *Margins) closing() *Margins {
	c := *m
	c.all = slices.DeleteFunc(slices.Clone(m.all), func(k int32) bool { return !m.parts[k].closes() })
	if len(c.all) == len(m.all) {
		return m
	}
	if c.ways() < m.ways() { // one is open everywhere
		c.all, _ = c.split(c.all)
	}
	return &c
}

// ways counts the ways there are.
func (m *Margins) ways() (n int) {
	for _, ways := m.split(m.all); len(ways) > 0; n++ {
		_, ways = m.next(ways)
	}
	return n
}

// areas returns the areas of a map whose best places are those of whole, the map being of what may close a place.
func (p Map) areas(whole *Margins, tolerance float64) []Area {
	a := newLabelling(p)
	var borders []int
	var other beside.Work
	if find := func() { borders = p.nodes.borders() }; p.workers > 1 {
		other.Go(find)
	} else {
		find()
	}
	a.scan()
	a.settle()
	other.Wait()
	d := newDetail(a)
	d.examine(&a.nodes, borders, 0, 0)
	for _, w := range a.doubtful {
		for col := w.from; col < w.to; col++ {
			d.markBeside(int(col), int(w.row), w.level)
		}
	}
	d.look()
	f := d.finer()
	f.look()
	tiles := a.tiling
	if whole != a.m {
		tiles = newTiling(whole, &a.nodes)
	}
	return a.areas(tiles, tolerance, d, f)
}

// least is the margin below which openings are passed over, mm.
func (a *labelling) least() float64 { return a.nodes.step / (dense * dense) }

// wide returns half the diagonal of a cell: a circle of that radius holds a node.
func wide(step float64) float32 { return float32(step / math.Sqrt2) }

// areas gathers the groups and finds the best place in each.
func (a *labelling) areas(tiles *tiling, tolerance float64, details ...*detail) []Area {
	groups := make([]*group, len(a.parent)) // by root
	at := func(label int32) *group {
		root := a.find(label)
		if groups[root] == nil {
			groups[root] = &group{best: -1}
		}
		return groups[root]
	}
	for k := range a.stretches {
		at(int32(k)).addStretch(&a.stretches[k])
	}
	for level, d := range details {
		for _, u := range d.order {
			u.gather(at, level)
		}
	}
	var found []Area
	for _, g := range groups {
		if g != nil {
			area := g.area(a, tiles, tolerance)
			if m := area.Best.Margin; m < a.least() && m+tolerance >= a.least() {
				area = g.area(a, tiles, smallest) // whether it is left out does not rest on how near its best place is looked for
			}
			found = append(found, area)
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
