package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// group is what belongs to one area.
type group struct {
	stretches []*stretch
	nodes     int
	best      float32    // of the nodes of the map; -1 without one
	fine      [2][]speck // the open nodes of the first and the second detail
	top       [2]float32 // the best of them
}

// speck is an open node of a cell looked at closely.
type speck struct {
	at     geometry.Point
	margin float32
	cell   *closeUp
}

func (g *group) addStretch(r *stretch) {
	g.stretches, g.nodes, g.best = append(g.stretches, r), g.nodes+int(r.to-r.from), max(g.best, r.best)
}

// gather adds the open nodes to their groups, of those that hold no wide circle.
func (u *closeUp) gather(at func(label int32) *group, level int) {
	for k, margin := range u.values {
		if margin < 0 {
			continue
		}
		if g := at(u.labels[k]); g.best < wide(u.step*dense) {
			g.fine[level] = append(g.fine[level], speck{u.node(k%(dense+1), k/(dense+1)), margin, u})
			g.top[level] = max(g.top[level], margin)
		}
	}
}

// area finds the best place of a group. Every place of an area whose margin is at least that of a wide circle is in the
// square about an open node of the same area, whose margin can't be less by more than half the square's diagonal; an area
// without such a place has been looked at closely. The margins of the nodes are those of what may close a place: more than
// those of the tiles nowhere.
func (g *group) area(a *labelling, tiles *tiling, tolerance float64) Area {
	s := newClimb(tiles.m, tolerance)
	step := a.nodes.step
	fine := len(g.fine[0]) + len(g.fine[1])
	switch {
	case g.best >= wide(step) || fine == 0:
		g.offerNodes(s, a, tiles)
	case g.top[0] >= wide(step/dense) || len(g.fine[1]) == 0:
		g.offerFine(s, a, tiles, 0)
	default:
		g.offerFine(s, a, tiles, 1)
	}
	s.quarter(s)
	size := float64(g.nodes)
	for level, cell := 0, 1.0; size == 0; level++ {
		cell /= dense * dense
		size = float64(len(g.fine[level])) * cell
	}
	return Area{Size: size * step * step, Best: tiles.m.At(s.at)}
}

// offerNodes offers the squares about the nodes of the map, the roomiest node's first.
func (g *group) offerNodes(s *climb, a *labelling, tiles *tiling) {
	offer := func(of *stretch, first bool) {
		values, row := a.nodes.row(int(of.row)), int(of.row)
		for col := int(of.from); col < int(of.to); col++ {
			if (values[col] == g.best) == first && s.promising(values[col], a.nodes.step) {
				s.look(a.Node(col, row), a.nodes.step, tiles.tile(col, row))
			}
		}
	}
	for _, first := range [2]bool{true, false} {
		for _, one := range g.stretches {
			if (!first || one.best == g.best) && s.promising(one.best, a.nodes.step) {
				offer(one, first)
			}
		}
	}
}

// offerFine offers the squares about the nodes of a detail, the roomiest node's first.
func (g *group) offerFine(s *climb, a *labelling, tiles *tiling, level int) {
	for _, first := range [2]bool{true, false} {
		for _, f := range g.fine[level] {
			if (f.margin == g.top[level]) != first || !s.promising(f.margin, f.cell.step) {
				continue
			}
			t := tile{f.cell.near, math.Inf(1)}
			if tiles != a.tiling {
				t = tiles.tile(f.cell.col/[2]int{1, dense}[level], f.cell.row/[2]int{1, dense}[level])
			}
			s.look(f.at, f.cell.step, t)
		}
	}
}

// promising says whether the square about a node with a margin may hold a better place.
func (s *climb) promising(margin float32, step float64) bool {
	return float64(margin+wide(step)) > s.best+s.tolerance
}

// look offers the part on the floor of the square about a node.
func (s *climb) look(node geometry.Point, step float64, t tile) {
	if t.most <= s.best+s.tolerance {
		return
	}
	low, high, half := s.m.limits.Min, s.m.limits.Max, step/2
	left, right := max(node.X-half, low.X), min(node.X+half, high.X)
	bottom, top := max(node.Y-half, low.Y), min(node.Y+half, high.Y)
	s.offer(cell{(left + right) / 2, (bottom + top) / 2, (right - left) / 2, (top - bottom) / 2, t.near})
}
