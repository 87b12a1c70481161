package route

import (
	"math"

	"bench.example/undermark/geometry"
)

// look lays a leg; nil where it can't be, or where it is known to lead to nothing better.
func (s *search) look(next step, least float64) *label {
	l := next.after
	d := &s.discs[l.disc]
	n := &s.looked // most come to nothing: only what is kept gets a place of its own
	*n = label{disc: int(next.disc), side: next.side, least: least, before: l}
	if to := &s.discs[n.disc]; to.kind == belowStart {
		n.leg.from, n.leg.to = d.at, to.at
	} else {
		n.leg, _ = tangentOf(d, l.side, to, n.side)
		n.arc, _ = s.arcTo(l, n.leg.along)
	}
	n.turn, n.at, n.slack = l.turn+n.arc, l.at+d.radius*n.arc+n.leg.length, n.leg.length
	if l.before != nil {
		n.slack += (d.radius - s.q.Bend) * math.Tan(n.arc/2)
	}
	if n.layers = s.most(l, n.at-l.at); s.discs[n.disc].kind != aGoal && s.beaten(n) {
		return nil // whatever heights it may have
	}
	if !s.lay(n) {
		return nil
	}
	if s.discs[n.disc].kind == aGoal {
		return s.arrives(n)
	}
	if s.beaten(n) {
		return nil
	}
	s.rise(n)
	s.bound(n)
	own := *n
	s.keep(&own)
	return &own
}

// most is more than the layers that a label can be carried on to, so many mm farther in plan; good until it is asked for again.
func (s *search) most(l *label, farther float64) []*layer {
	s.all = layer{low: s.q.Min.Z, highest: s.highest(l, farther)}
	s.allOf[0] = &s.all
	return s.allOf[:]
}

// highest is how high a label can be carried on at the most.
func (s *search) highest(l *label, farther float64) float64 {
	if s.q.free() {
		return s.top()
	}
	highest := math.Inf(-1)
	for _, k := range l.layers {
		highest = max(highest, k.highest-s.q.Fall*farther)
	}
	return highest
}

// lay gives a label its layers; ok is false where it has none.
func (s *search) lay(n *label) (ok bool) {
	if n.leg.along == (geometry.Point{}) {
		n.layers, n.slack = s.fallen(), math.Inf(1)
		return len(n.layers) > 0
	}
	blocks, open := s.blocks(n.leg.from, n.leg.to, touching)
	if !open {
		return false // most are not
	}
	if layers := s.round(n.before, n); len(layers) > 0 {
		n.layers = s.along(layers, n.before, n, blocks)
		return len(n.layers) > 0
	}
	return false
}

// fallen are the layers straight below the start, room for its bend between.
func (s *search) fallen() []*layer {
	from := s.q.From
	blocks, open := s.blocks(from.Plan(), from.Plan(), touching)
	floor, top := s.q.Min.Z, from.Z-s.q.Bend
	for _, b := range blocks {
		if b.low < from.Z { // what lies below ends the way down
			floor = max(floor, b.high)
		}
	}
	if !open || floor > top {
		return nil
	}
	start := layer{low: from.Z, high: from.Z, highest: from.Z}
	return []*layer{{low: floor, high: top, highest: top, before: &start}}
}

// widestChord is the widest angle of an arc that a chord stands for.
const widestChord = math.Pi / 16

// round carries a label's layers round its disc.
func (s *search) round(l, next *label) []*layer {
	d := &s.discs[l.disc]
	layers, at := l.layers, l.at
	if d.radius == 0 || next.arc < noArc {
		return layers
	}
	chords := 1 + int(next.arc/widestChord)
	from := l.leg.to
	for k := range chords {
		to := next.leg.from
		if k+1 < chords {
			turn := float64(l.side) * next.arc * float64(k+1) / float64(chords) * 180 / math.Pi
			to = d.at.Add(l.leg.to.Sub(d.at).Turn(turn))
		}
		blocks, open := s.blocks(from, to, d.radius*(1-math.Cos(widestChord/2)))
		if !open {
			return nil
		}
		length := d.radius * next.arc / float64(chords)
		if layers = sweep(layers, at, length, s.q.Fall, s.q.Min.Z, s.top(), blocks); len(layers) == 0 {
			return nil
		}
		at, from = at+length, to
	}
	return layers
}

// along carries layers along the leg of a label.
func (s *search) along(layers []*layer, from, n *label, blocks []block) []*layer {
	top := s.q.Max.Z
	if from.before == nil {
		top = s.top()
	}
	after := sweep(layers, n.at-n.leg.length, n.leg.length, s.q.Fall, s.q.Min.Z, top, blocks)
	if from.before == nil && s.discs[n.disc].kind != aGoal && top > s.q.Max.Z {
		after = cross(after, n.at, 0, 0, s.q.Fall, [][2]float64{{s.q.Min.Z, s.q.Max.Z}})
	}
	return after
}

// arrives ends a way at its goal; nil where it can't come to it at a height that the goal has.
func (s *search) arrives(n *label) *label {
	g := s.q.To[s.discs[n.disc].goal]
	for _, l := range n.layers {
		if l.highest < g.Low-touching || l.low > g.High+touching {
			continue
		}
		height := min(max(n.before.height, l.low, g.Low), l.highest, g.High)
		gates := append(l.gates(nil), gate{n.at, max(l.low, g.Low), min(l.high, g.High)})
		n.heights = pull(nil, gates, s.q.From.Z, gate{n.at, height, height}, s.q.Fall)
		n.length = length(n.heights)
		own := *n
		return &own
	}
	return nil
}

// place is where a label's disc and side are kept.
func (l *label) place() int { return 3*l.disc + int(l.side) + 1 }

// beaten tells whether a label that is known leads to all that n leads to, no longer and with no more turning.
func (s *search) beaten(n *label) bool {
	for _, k := range s.known[n.place()] {
		if s.beats(k, n) {
			return true
		}
	}
	return false
}

func (s *search) beats(k, n *label) bool {
	var ahead float64 // by how much more k has to turn than n to go on
	if n.side != either {
		a, b := k.leg.along, n.leg.along
		ahead = float64(n.side) * math.Atan2(a.X*b.Y-a.Y*b.X, a.Dot(b))
	} else if k.leg.along.Dot(n.leg.along) < alike && k.leg.along != n.leg.along {
		return false
	}
	if k.at+ahead*s.discs[n.disc].radius > n.at+touching || s.q.MostTurn > 0 && k.turn+ahead > n.turn+aslant {
		return false
	}
	if s.q.Bend > 0 && k.slack < min(n.slack, roomy*s.q.Bend) {
		return false
	}
	return covers(k.layers, n.layers)
}

// alike is the cosine of the angle between two directions that come to much the same.
var alike = math.Cos(10 * math.Pi / 180)

// roomy is how long, in bend radii, what is left of a leg is when any bend has room: 1.7 times the tangent of half of 120 degrees.
const roomy = 3

// covers tells whether each layer of n lies in one of k.
func covers(k, n []*layer) bool {
	for _, a := range n {
		in := false
		for _, b := range k {
			in = in || b.low <= a.low+touching && b.highest >= a.highest-touching
		}
		if !in {
			return false
		}
	}
	return true
}

// keep remembers a label.
func (s *search) keep(n *label) {
	at := n.place()
	kept := s.known[at][:0]
	for _, k := range s.known[at] {
		if !s.beats(n, k) {
			kept = append(kept, k)
		}
	}
	s.known[at] = append(kept, n)
}
