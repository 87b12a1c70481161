package geometry

import (
	"math"
	"slices"
	"sync/atomic"
)

// Outline knows the way out of a line of many legs. Where a short line looks for meeting points of any two pieces of its outline
// each time (wayOut), an Outline works out once, and only of pieces that it comes to, what of them is seen from outside: what
// lies in no leg's stadium. It may be asked by several goroutines at once; what it answers never changes.
type Outline struct {
	line   Footprint
	pieces []piece
	live   atomic.Pointer[[]int32] // the pieces that may have something seen from outside
}

// NewOutline returns the outline of a line; its footprint must not be changed after.
func NewOutline(line *Footprint) *Outline {
	o := &Outline{line: *line, pieces: make([]piece, 0, 3*len(line.Path))}
	s := exit{line: line}
	for i, c := range line.Path {
		o.pieces = append(o.pieces, piece{round: true, a: c})
		for k := range 2 {
			if i == len(line.Path)-1 {
				break
			}
			if a, b, ok := s.side(i, k); ok {
				o.pieces = append(o.pieces, piece{a: a, b: b, long: b.Sub(a).Norm()})
			}
		}
	}
	live := make([]int32, len(o.pieces))
	for i := range live {
		live[i] = int32(i)
	}
	o.live.Store(&live)
	return o
}

// candidate is a piece and how near it may come at least.
type candidate struct {
	piece int32
	least float64
}

// WayOut returns minus the shortest way from p, inside the line, to its outline, mm, and where that ends: off by at most 1e-9 mm
// within 20 m of the datum.
func (o *Outline) WayOut(p Point) (gap float64, nearest Point) {
	least, gone := math.Inf(1), 0
	take := func(k int32) {
		shown := o.shown(k)
		if len(shown) == 0 {
			gone++
		}
		for _, s := range shown {
			q := o.pieces[k].nearest(p, s, o.line.Radius)
			if d := q.Sub(p).Norm(); d < least {
				least, nearest = d, q
			}
		}
	}
	live := *o.live.Load()
	var unknown []candidate
	for _, k := range live {
		if bound := o.pieces[k].bound(p, o.line.Radius); bound < least {
			if o.pieces[k].shown.Load() != nil {
				take(k)
			} else {
				unknown = append(unknown, candidate{k, bound})
			}
		}
	}
	slices.SortFunc(unknown, func(a, b candidate) int {
		if a.least < b.least {
			return -1
		}
		return 1
	})
	for _, c := range unknown {
		if c.least >= least {
			break
		}
		take(c.piece)
	}
	if gone > len(live)/8 {
		o.forget(live)
	}
	return -least, nearest
}

// forget leaves out of live the pieces that nothing is seen of.
func (o *Outline) forget(live []int32) {
	var left []int32
	for _, k := range live {
		if shown := o.pieces[k].shown.Load(); shown == nil || len(*shown) > 0 {
			left = append(left, k)
		}
	}
	o.live.Store(&left)
}

// shown returns the intervals of a piece that lie in no leg's stadium, from the legs beside it on: those hide it soonest.
func (o *Outline) shown(k int32) []interval {
	s := &o.pieces[k]
	if shown := s.shown.Load(); shown != nil {
		return *shown
	}
	left := []interval{{0, s.long}}
	if s.round {
		left = []interval{{-math.Pi, math.Pi}}
	}
	legs := len(o.line.Path) - 1
	here := int(k) * legs / len(o.pieces)
	for i := range 2 * legs {
		leg := here + (i+1)/2*(1-2*(i%2))
		if leg < 0 || leg >= legs {
			continue
		}
		if left = s.less(left, o.line.Path[leg], o.line.Path[leg+1], o.line.Radius); len(left) == 0 {
			break
		}
	}
	s.shown.Store(&left)
	return left
}
