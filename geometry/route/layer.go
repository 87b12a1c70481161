package route

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
)

// layer is a range of heights that a way may have over a stretch of it in plan, and the highest that it can have come to at the
// stretch's end. It can always come lower: a way may fall as steeply as it likes.
type layer struct {
	low, high float64 // what is free
	highest   float64 // at most high
	from, to  float64 // mm along the way in plan
	before    *layer
}

// block is a range of heights that a leg can't have between two places of it, mm from its beginning.
type block struct {
	from, to  float64
	low, high float64
}

// holds tells whether a layer is one: there is a height in it.
func (l *layer) holds() bool { return l.highest >= l.low-touching && l.high >= l.low-touching }

// sweep carries layers along a leg that begins at a place along the way: past its blocks, falling as it goes. What is free lies
// between floor and top.
func sweep(start []*layer, at, length, fall, floor, top float64, blocks []block) []*layer {
	stops := make([]float64, 0, 2*len(blocks)+2)
	for _, b := range blocks {
		stops = append(stops, min(max(b.from, 0), length), min(max(b.to, 0), length))
	}
	stops = append(stops, 0, length)
	slices.Sort(stops)
	stops = slices.Compact(stops)
	now := start
	for i := range max(1, len(stops)-1) {
		from, to := stops[i], stops[min(i+1, len(stops)-1)]
		if now = cross(now, at, from, to, fall, freeAt(floor, top, from, to, blocks)); len(now) == 0 {
			return nil
		}
	}
	return now
}

// freeAt are the ranges of heights that are free over a stretch of a leg, from below: pairs of low and high.
func freeAt(floor, top, from, to float64, blocks []block) [][2]float64 {
	free := [][2]float64{{floor, top}}
	for _, b := range blocks {
		if b.from >= to && to > from || b.to <= from && to > from || b.from > to || b.to < from {
			continue
		}
		var left [][2]float64
		for _, r := range free {
			if b.high <= r[0] || b.low >= r[1] {
				left = append(left, r)
				continue
			}
			if b.low >= r[0] {
				left = append(left, [2]float64{r[0], b.low})
			}
			if b.high <= r[1] {
				left = append(left, [2]float64{b.high, r[1]})
			}
		}
		free = left
	}
	return free
}

// cross carries layers over a stretch with the same free ranges all along.
func cross(before []*layer, at, from, to, fall float64, free [][2]float64) (after []*layer) {
	for _, r := range free {
		l := layer{low: r[0], high: r[1], highest: math.Inf(-1), from: at + from, to: at + to}
		for _, b := range before {
			if b.highest < r[0]-touching || b.low > r[1]+touching {
				continue
			}
			highest := min(b.highest, r[1])
			if math.IsInf(fall, -1) {
				highest = r[1] // it may rise again
			} else {
				highest -= fall * (to - from)
			}
			if highest > l.highest {
				l.highest, l.before = highest, b
			}
		}
		if l.before != nil && l.holds() {
			after = append(after, &l)
		}
	}
	return after
}

// blocks are the heights that a leg can't have, which may be nearer to things than it should by some slack; open is false where
// something can be passed neither above nor below.
func (s *search) blocks(a, b geometry.Point, slack float64) (list []block, open bool) {
	low := geometry.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)}
	high := geometry.Point{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
	if s.shut < len(s.parts) && !s.parts[s.shut].misses(low, high) { // neighbours of what it shuts out it mostly shuts out too
		if _, _, open := s.block(&s.parts[s.shut], a, b, slack); !open {
			return nil, false
		}
	}
	for i := range s.parts {
		p := &s.parts[i]
		if p.misses(low, high) {
			continue
		}
		over, near, open := s.block(p, a, b, slack)
		if !open {
			s.shut = i
			return nil, false
		}
		if near {
			list = append(list, over)
		}
	}
	return list, true
}

// block is what a part keeps a leg from, if it is near; open is false where it can be passed neither above nor below.
func (s *search) block(p *part, a, b geometry.Point, slack float64) (over block, near, open bool) {
	off2 := p.offMiddle2(a, b)
	if off2 >= p.outer*p.outer {
		return over, false, true
	}
	if inner := p.inner - slack; p.whole && off2 < inner*inner {
		return over, true, false
	}
	gap, nearest := p.gap(a, b)
	if gap >= p.need-slack {
		return over, false, true
	}
	reach := p.reach(gap)
	over.low, over.high = p.low-reach, p.high+reach
	if p.whole || over.low < s.q.Min.Z && over.high > s.top() {
		return over, true, false
	}
	length := b.Sub(a).Norm()
	from, to := p.span(a, b, nearest)
	over.from, over.to = from*length, to*length
	return over, true, true
}

// top is the greatest height that a way may have.
func (s *search) top() float64 { return math.Max(s.q.Max.Z, s.q.From.Z) }
