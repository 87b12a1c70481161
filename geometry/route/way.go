package route

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
)

// way turns a label at a goal into corners in space.
func (s *search) way(end *label) (w Way, ok bool) {
	var labels []*label
	for l := end; l != nil; l = l.before {
		labels = append(labels, l)
	}
	slices.Reverse(labels)
	w = Way{Corners: lift(s.corners(labels), end.heights), Length: end.length}
	return w, len(w.Corners) > 1
}

// placed is a corner in plan, and how far along the way it is.
type placed struct {
	at    geometry.Point
	along float64
}

// corners are those of a way in plan: where its legs would meet, or so far out that a bend has room round what it goes round.
func (s *search) corners(labels []*label) (list []placed) {
	list = append(list, placed{s.discs[0].at, 0})
	for i := 1; i < len(labels); i++ {
		l := labels[i]
		d := &s.discs[l.disc]
		if i == len(labels)-1 {
			return append(list, placed{d.at, l.at})
		}
		next := labels[i+1]
		if d.radius == 0 {
			list = append(list, placed{d.at, l.at})
			continue
		}
		list = append(list, s.bends(d, l, next)...)
	}
	return list
}

// bends are the corners of a way round a disc: one, or more where it turns by much.
func (s *search) bends(d *disc, l, next *label) (list []placed) {
	if next.arc < leastTurn {
		return nil // whoever straightens it finds the corner that is needed
	}
	n := 1 + int(next.arc/widestBend)
	each := next.arc / float64(n)
	out := d.radius / math.Cos(each/2)
	if s.q.Bend > d.radius {
		out = d.radius + s.q.Bend*(1/math.Cos(each/2)-1)
	}
	first := l.leg.to.Sub(d.at).Scale(1 / d.radius)
	for k := range n {
		turn := (float64(k) + 0.5) * each
		at := d.at.Add(first.Turn(float64(l.side) * turn * 180 / math.Pi).Scale(out))
		list = append(list, placed{at, l.at + d.radius*turn})
	}
	return list
}

// widestBend is the widest turn that one corner stands for: a corner of a wider one would stand far off.
const widestBend = 100 * math.Pi / 180

// gate is a place along a way with the heights that it may have there.
type gate struct{ at, low, high float64 }

// gates are those of a way up to where a layer begins.
func (l *layer) gates(list []gate) []gate {
	for ; l.before != nil; l = l.before {
		g := gate{l.from, l.low, l.high}
		if l.before.before != nil { // the start is where it is
			g.low, g.high = max(g.low, l.before.low), min(g.high, l.before.high)
		}
		list = append(list, g)
	}
	slices.Reverse(list)
	return list
}

// pull draws a string through gates, from a height at the first to an end: the heights of a shortest way, as places along it, appended to
// string. It falls all the way as it is asked to; then the end has one height.
func pull(string, gates []gate, from float64, end gate, fall float64) []gate {
	if !math.IsInf(fall, -1) {
		settle(gates, end.low, fall)
	}
	at := gate{0, from, from}
	string = append(string, at)
	gates = append(gates, end)
	for through := 0; len(gates) > 0; gates = gates[through:] {
		gates[len(gates)-1] = end.nearest(at.low)
		at, through = furthest(at, gates)
		string = append(string, at)
	}
	return string
}

// nearest is a gate narrowed to its height that is nearest to another.
func (g gate) nearest(height float64) gate {
	height = min(max(height, g.low), g.high)
	return gate{g.at, height, height}
}

// settle narrows gates to the heights from which a way can fall through all of the others, to a height at the last.
func settle(gates []gate, to, fall float64) {
	high := math.Inf(1)
	for i := range gates {
		high = min(high, gates[i].high)
		gates[i].high = high
		if i+1 < len(gates) {
			high -= fall * (gates[i+1].at - gates[i].at)
		}
	}
	low, at := to, gates[len(gates)-1].at
	for i := len(gates) - 1; i >= 0; i-- {
		low = max(low+fall*(at-gates[i].at), gates[i].low)
		gates[i].low, at = low, gates[i].at
	}
}

// furthest is where a string from a place first bends: at the gate that narrows it last before it would miss another, or at its end.
func furthest(at gate, gates []gate) (bend gate, through int) {
	steepest, flattest := math.Inf(-1), math.Inf(1) // of what has passed all gates so far
	lowAt, highAt := 0, 0
	for i, g := range gates {
		run := g.at - at.at
		if run <= touching {
			if to := g.nearest(at.low); i == len(gates)-1 || math.Abs(to.low-at.low) > touching {
				return to, i + 1
			}
			continue
		}
		up, down := (g.high-at.low)/run, (g.low-at.low)/run
		switch {
		case down > flattest:
			g = gates[highAt]
			return gate{g.at, g.high, g.high}, highAt + 1
		case up < steepest:
			g = gates[lowAt]
			return gate{g.at, g.low, g.low}, lowAt + 1
		}
		if down > steepest {
			steepest, lowAt = down, i
		}
		if up < flattest {
			flattest, highAt = up, i
		}
	}
	return gates[len(gates)-1], len(gates)
}

// length is that of a string.
func length(string []gate) (sum float64) {
	for i := 1; i < len(string); i++ {
		sum += math.Hypot(string[i].at-string[i-1].at, string[i].low-string[i-1].low)
	}
	return sum
}

// lift gives corners in plan their heights, and a way further corners where its height bends between them.
func lift(plan []placed, string []gate) (corners []geometry.Point3) {
	heightAt := func(along float64) float64 {
		for i := 1; i < len(string); i++ {
			if a, b := string[i-1], string[i]; along <= b.at && b.at > a.at {
				return a.low + (b.low-a.low)*(along-a.at)/(b.at-a.at)
			}
		}
		return string[len(string)-1].low
	}
	k := 1
	for i, p := range plan {
		if i > 0 {
			before := plan[i-1]
			for ; k < len(string)-1 && string[k].at < p.along-touching; k++ {
				if string[k].at > before.along+touching {
					t := (string[k].at - before.along) / (p.along - before.along)
					corners = append(corners, before.at.Add(p.at.Sub(before.at).Scale(t)).At(string[k].low))
				}
			}
		}
		z := heightAt(p.along)
		switch {
		case i == 0:
			z = string[0].low
		case i == len(plan)-1:
			z = string[len(string)-1].low
		}
		if corner := p.at.At(z); len(corners) == 0 || corner.Sub(corners[len(corners)-1]).Norm() > touching {
			corners = append(corners, corner)
		}
	}
	return corners
}
