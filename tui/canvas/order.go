package canvas

import (
	"cmp"
	"slices"

	"bench.example/undermark/geometry/scene"
)

// farLed is how many rows a leader goes at the most that nobody looks twice at.
const farLed = 5

// tooFar is what each row more counts.
const tooFar = 12

// Other orders of the names are tried, so many at the most, and fewer where there are more names: as many as write mostWritten of them. In a crowd a
// key must not wait for names.
const (
	mostOrders  = 16
	leastOrders = 1
	mostWritten = 640
)

// nameAll writes names in their order. Where one of what is in the way has no place, or none with its figure, such go before all others if
// that is better in all; so does each that has a leader across the picture. A guide without a place goes before more and more of them.
func (p *painter) nameAll(names []naming) {
	defer p.ways.end()
	p.before.keep(p)
	p.stood.begin(p)
	if p.asBefore(names) {
		return
	}
	p.before.back(p)
	clear(p.stood.at)
	p.ways.lay(p, names)
	best := p.inOrder(names, 0, &try{}, nil)
	tries := best.tries(nil, names)
	most := max(min(mostOrders, mostWritten/max(len(names), 1)), leastOrders)
	for n := 0; n < min(len(tries), most); n++ {
		other := tries[n].sooner()
		p.after.keep(p)
		p.before.back(p)
		were := p.stood.at
		p.stood.at = map[nameKey]standing{}
		again := p.inOrder(other, 0, &tries[n], &best)
		if !again.betterThan(&best) {
			p.after.back(p)
			p.stood.at = were
			continue
		}
		best = again
		tries = again.tries(tries, other)
	}
	p.stood.lost = len(best.lost)
}

// betterThan tells whether an order is better than another.
func (o *order) betterThan(other *order) bool {
	return cmp.Or(cmp.Compare(o.gone, other.gone), cmp.Compare(o.unnamed, other.unnamed), cmp.Compare(o.lacks, other.lacks), cmp.Compare(o.cost, other.cost)) < 0
}

// order is what came of writing names in an order.
type order struct {
	lost      []*part // those of what is in the way that have no place, or none with their figure
	gone      int     // how many of those have no place, and what is picked out
	unnamed   int     // how many other things that are foul have none
	lacks     int     // how many of what is in the way have none with their figure, how many guides have none, and how many ends one that nothing leads to
	placeless []*part // those guides
	far       []*part // those with a leader across the picture, and those ends
	cost      int     // what all of them hide, and how far off they are
}

// inOrder writes names in their order, where so many are written. It gives up as soon as what comes of it can't be better than another
// order any more, nil for none: what is lost and what it costs only grow.
func (p *painter) inOrder(names []naming, written int, seek *try, other *order) (o order) {
	marked := slices.ContainsFunc(names, func(n naming) bool { return n.it.Role == scene.Conflict }) // what is foul is named by its marks
	const without = 2 * mostHidden                                                                   // what a name that has no place counts
	room := max(p.Cols*p.Rows/cellsALabel, 6) - written
	p.ways.begin(names, seek)
	for i := range names {
		if other != nil && !o.betterThan(other) {
			return o
		}
		n := &names[i]
		p.ways.pass(n.it)
		guide := n.must && guides(n.it)
		if room <= 0 && !ending(n.it) && !guide {
			continue
		}
		said, at := p.label(n)
		if said != unsaid && !guide {
			room--
		}
		switch {
		case said == whole || !n.must:
		case n.it.Role == scene.Conflict || ending(n.it):
			if o.lost = append(o.lost, n.it); said == unsaid {
				o.gone++
			} else {
				o.lacks++
			}
		case n.it.Selected && said == unsaid:
			o.gone++
		case n.rank == scene.RankFoul && !marked:
			o.unnamed++
		case n.rank >= scene.RankFoul && said == unsaid:
			o.lacks += 2 // more than a guide
		}
		switch {
		case said != unsaid:
			switch {
			case at.about:
				o.lacks, o.far = o.lacks+1, append(o.far, n.it)
			case at.led && n.it.Role == scene.Conflict:
				o.far = append(o.far, n.it) // best beside what is in the way
			}
			o.cost += at.cost
		case n.must:
			if o.cost += without; guide {
				o.lacks++
				o.placeless = append(o.placeless, n.it)
			}
		}
		if far := abs(at.row-at.of[1]) - farLed; said != unsaid && at.led && far > 0 {
			o.far = append(o.far, n.it)
			o.cost += far * tooFar
		}
	}
	return o
}

// writing is what of a picture changes while names are written.
type writing struct {
	cells []Cell
	taken []uint64
	texts []Text
}

// keep takes what is written so far, and back goes back to that.
func (w *writing) keep(p *painter) {
	w.cells = append(w.cells[:0], p.canvas.Cells...)
	w.taken = append(w.taken[:0], p.taken.words...)
	w.texts = append(w.texts[:0], p.canvas.Texts...)
}

func (w *writing) back(p *painter) {
	copy(p.canvas.Cells, w.cells)
	copy(p.taken.words, w.taken)
	p.canvas.Texts = append(p.canvas.Texts[:0], w.texts...)
}
