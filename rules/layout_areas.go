package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
)

// lettering tells which open area a place is in.
type lettering struct {
	areas []field.Area
	nodes field.Map
	of    []int32 // by node: its area, counted from 1; 0 for none
}

// newLettering knows the open areas of a room.
func newLettering(room Room, workers int) lettering {
	nodes := room.Margins.Map(areaStep, workers)
	l := lettering{areas: nodes.Areas(), nodes: nodes}
	cols, rows := nodes.Size()
	l.of = make([]int32, cols*rows)
	for i := range l.areas {
		l.flood(l.areas[i].Best.At, int32(i+1))
	}
	return l
}

// node is the column and row of the node nearest to a place.
func (l *lettering) node(at geometry.Point) (col, row int) {
	off := at.Sub(l.nodes.Node(0, 0)).Scale(1 / l.nodes.Step())
	return int(math.Round(off.X)), int(math.Round(off.Y))
}

// open tells whether there is an open node that belongs to no area yet.
func (l *lettering) open(col, row int) bool {
	cols, rows := l.nodes.Size()
	return col >= 0 && row >= 0 && col < cols && row < rows && l.of[row*cols+col] == 0 && l.nodes.Margin(col, row) >= 0
}

// flood gives an area the open nodes that are reached from a place.
func (l *lettering) flood(at geometry.Point, area int32) {
	cols, _ := l.nodes.Size()
	col, row := l.node(at)
	todo := [][2]int{{col, row}}
	for len(todo) > 0 {
		n := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		if !l.open(n[0], n[1]) {
			continue
		}
		l.of[n[1]*cols+n[0]] = area
		todo = append(todo, [2]int{n[0] + 1, n[1]}, [2]int{n[0] - 1, n[1]}, [2]int{n[0], n[1] + 1}, [2]int{n[0], n[1] - 1})
	}
}

// at is which of the areas a place is in, -1 for none.
func (l *lettering) at(p geometry.Point) int {
	cols, rows := l.nodes.Size()
	col, row := l.node(p)
	if col < 0 || row < 0 || col >= cols || row >= rows {
		return -1
	}
	return int(l.of[row*cols+col]) - 1
}

// ranked are the open areas by the best that was laid out in each, those where nothing was behind them as they are, lettered in that order.
func (l *layouting) ranked(laid []*Layout) []field.Area {
	var order []int
	for _, a := range laid { // the best first
		if i := l.in.at(a.At); i >= 0 && !slices.Contains(order, i) {
			order = append(order, i)
		}
	}
	for i := range l.areas {
		if !slices.Contains(order, i) {
			order = append(order, i)
		}
	}
	ranked := make([]field.Area, len(order))
	for to, from := range order {
		ranked[to] = l.areas[from]
		ranked[to].Name = l.areas[to].Name
	}
	return ranked
}

// letter is that of the area which a place is in, "" for none.
func (l *layouting) letter(ranked []field.Area, at geometry.Point) string {
	i := l.in.at(at)
	if i < 0 {
		return ""
	}
	for _, a := range ranked {
		if a.Best == l.areas[i].Best {
			return a.Name
		}
	}
	return ""
}
