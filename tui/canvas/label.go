package canvas

import (
	"cmp"
	"slices"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/words"
)

// inkOf is the ink of an item's letters and of its spot.
func inkOf(it *scene.Item) Ink {
	ink := Ink{Role: it.Role, Tone: Bold, Selected: it.Selected}
	if !it.Role.Pen().Steady {
		ink.State = it.State
	}
	if it.Selected {
		ink.Tone = Inverse
	}
	return ink
}

// naming is an item that may have its name written.
type naming struct {
	it   *part
	rank scene.Rank
	at   int     // which of the items
	off  float64 // from the cut, mm
	must bool    // it has its name wherever there is a place for it, others only where that hides nothing
}

// cellsALabel is how many cells of the picture there are to each name: with more, a picture is read and not looked at.
const cellsALabel = 110

// labels writes what things are called, the most important first.
func (p *painter) labels() {
	p.rivals.lay(p)
	p.inRing()
	for _, at := range p.look.Signs {
		if col, row, ok := p.CellOf(at); ok {
			p.taken.add(row*p.canvas.Width + col)
		}
	}
	p.weighed()
	p.rearBeyond()
	p.nameAll(p.namings())
	p.beyond()
	if p.look.Codes {
		p.codes()
	}
}

// fewRows is on how many rows there is little room beside the ring: what is in its way is named first there.
const fewRows = 12

// namings are the items with a name in the order in which they get it. Of each kind the one nearest to the cut must have its
// name.
func (p *painter) namings() []naming {
	names := make([]naming, 0, len(p.parts))
	for i := range p.parts {
		if it := &p.parts[i]; p.nameable(it) {
			names = append(names, naming{it: it, rank: p.rank(it), at: i, off: p.fromCut(it)})
		}
	}
	slices.SortFunc(names, func(a, b naming) int { // what lies along a line has more places for its name than an area
		return cmp.Or(cmp.Compare(b.rank, a.rank), cmp.Compare(a.later(), b.later()), cmp.Compare(a.long(), b.long()), cmp.Compare(a.off, b.off), a.at-b.at)
	})
	named := map[string]bool{}
	first, others := make([]naming, 0, len(names)), []naming(nil)
	for _, n := range names {
		code := n.it.Code
		if n.must = n.rank > scene.RankAside && (code == "" || n.it.Selected || n.it.Role == scene.Rail || !named[code]); n.must {
			first = append(first, n)
		} else {
			others = append(others, n)
		}
		named[code] = true
	}
	return append(first, others...)
}

// rank is that of an item's name in this picture: the look's, but for two that depend on what of them is seen, and come after what is
// in the way.
func (p *painter) rank(it *part) scene.Rank {
	if it.Role == scene.Intake && leaves(it) || it.Role == scene.Cut && p.Rows < fewRows {
		return scene.RankFoul
	}
	return it.Rank()
}

// heaters is what a name of a run has in it, as the van has an exhaust of its own; where there is no room for that, the end is named without.
const heaters = "heater's "

// ending tells whether a name says where gas comes out or air goes in, which every picture says.
func ending(it *part) bool {
	return leaves(it) || it.Role == scene.Outlet || it.Role == scene.Mouth
}

// end tells whether a name is of a run's end, beside which it stands where it can.
func (n *naming) end() bool { return n.it.Role == scene.Outlet || n.it.Role == scene.Mouth }

// bears tells whether a part is of what all else hangs from, rails and crossmembers: one of each has its name in every picture.
func bears(it *part) bool {
	return (it.Role == scene.Rail || it.Role == scene.Steel) && it.Primitive == scene.Area
}

// later is less for what is named before others of its rank: where gas comes out, where air goes in, rails.
func (n *naming) later() int {
	switch {
	case n.it.Role == scene.Outlet || n.it.Role == scene.Exhaust:
		return 0
	case ending(n.it):
		return 1
	case n.it.Role == scene.Rail:
		return 2
	}
	return 3
}

// long is 1 for what lies along a line.
func (n *naming) long() int {
	if n.it.Line != nil || n.it.Area.Shape == geometry.Line {
		return 1
	}
	return 0
}

// fromCut is how far an item is from the cut; without one all are as far.
func (p *painter) fromCut(it *part) float64 {
	if p.circle.item == nil || it.Primitive != scene.Area || it.Line != nil {
		return 0
	}
	return it.Area.GapOnly(p.circle.item.Solid.Prism.Footprint.Middle)
}

// nameable tells whether an item that is drawn at this scale has a name or a figure.
func (p *painter) nameable(it *part) bool {
	if it.Label == "" && it.Measure == nil {
		return false
	}
	switch it.Role {
	case scene.Bumper, scene.Nose:
		return false
	case scene.Cut:
		return !p.circle.named
	case scene.Exhaust, scene.Intake:
		return !leaves(it) || p.exitOf(it) != nil // else its name stands at its end
	case scene.Hole:
		return !p.tiny(it) && it.Warning() != ""
	}
	return !p.tiny(it)
}

// said is how much of a name was written.
type said uint8

const (
	unsaid said = iota
	short       // without its figure
	whole
)

// when is how much that is, if it was written at all.
func (s said) when(written bool) said {
	if written {
		return s
	}
	return unsaid
}

// label writes an item's name or figure, and the warning behind it, at the best of the places it could stand.
func (p *painter) label(n *naming) (said, choice) {
	it := n.it
	text := label{name: p.text(it.Item), ink: inkOf(it.Item), over: n.must, guides: n.must && bears(it), urgent: n.rank >= scene.RankFoul, always: ending(it)}
	if text.names = it; it.Role == scene.Conflict {
		text.names = p.inWay(it)
	}
	if of := text.names; of != nil && of.Primitive == scene.Area && !p.thin(of) {
		text.of = of
	}
	out := p.exitOf(it)
	if out != nil {
		text.name += " " + string(arrows[out.arrow])
	}
	if it.Role != scene.Conflict && it.Role != scene.Cut {
		text.tail = it.Warning()
	}
	if !n.must && !it.Selected {
		text.ink.Tone = Word
	}
	text.tailInk = Ink{Role: it.Role, State: it.State, Tone: text.ink.Tone, Selected: it.Selected}
	best := p.seated(n, &text)
	if m := it.Measure; m != nil && m.Bare && m.Spare && it.Label != "" {
		full := text
		full.name = named(it.Item, words.Measure(withUnit(*m), p.look.Units))
		if one := p.seated(n, &full); one.found && (!best.found || one.cost < best.cost+unitWorth) {
			best, text = one, full
		}
	}
	if out != nil {
		best = p.withEnd(n, out, &text, best)
	}
	if best.found {
		p.put(text, best.seat)
		return whole, best
	}
	if bare := strings.Replace(text.name, heaters, "", 1); ending(it) && bare != text.name {
		text.name = bare
		best = p.seated(n, &text)
		written := p.settle(text, best)
		best.cost += mostHidden // of two orders of names the one is better that has it whole
		return whole.when(written), best
	}
	if it.Measure == nil || it.Label == "" || !n.must {
		return unsaid, best
	}
	text.name, text.tail = clean(it.Label), it.Warning() // its figure stands in a list, too
	best = p.seated(n, &text)
	written := p.settle(text, best)
	best.cost += mostHidden
	return short.when(written), best
}

// withEnd has a name say how far beyond the picture the end of its run is, where there is room for that.
func (p *painter) withEnd(n *naming, out *exit, text *label, best choice) choice {
	path := n.it.Area.Path
	mm := coarse(path[len(path)-1].Sub(out.at).Norm(), p.look.Units)
	full, ends := *text, " "
	if n.it.Role == scene.Exhaust {
		ends = " ends "
	}
	full.name = p.text(n.it.Item) + ends + words.Measure(scene.Measure{Value: mm, Unit: scene.MM}, p.look.Units) + " farther " + string(arrows[out.arrow])
	if one := p.seated(n, &full); one.found && one.cost < mostGuide && (!best.found || one.cost < best.cost+endWorth) {
		*text = full
		return one
	}
	return best
}

// unitWorth is what the unit of a figure is worth in what a name hides, endWorth how far off an end is.
const (
	unitWorth = 20
	endWorth  = 60
)

// seated is the best of the places of a text of a name.
func (p *painter) seated(n *naming, text *label) choice {
	it := n.it
	best := choice{cost: text.most()}
	p.seats = p.seatsOf(p.seats[:0], it, text.length())
	p.choose(&best, text, p.seats)
	if n.must && best.cost > leastLeader && !(n.end() && best.found && best.cost < hidesMain) {
		for _, at := range p.anchors(it) {
			p.leading(&best, text, at)
		}
	}
	if n.end() && !best.found { // better somewhere about than not at all
		p.seats = p.roundAbout(p.seats[:0], it.Line[0])
		p.choose(&best, text, p.seats)
	}
	if text.over && !best.found && text.of == it && it.Area.Shape != geometry.Line { // better over its edge than without a name
		p.seats = p.within2(p.seats[:0], &it.Area, 0)
		p.choose(&best, text, p.seats)
	}
	return best
}

// seatsOf adds the places close by where an item's name could stand.
func (p *painter) seatsOf(seats []seat, it *part, length int) []seat {
	switch {
	case ending(it) && it.Primitive == scene.Spot:
		seats = p.beside(seats, it.Line[0], 1)
	case it.Primitive == scene.Spot:
		seats = p.beside(seats, it.Line[0], 1)
	case it.Role == scene.Cut:
		return p.atRing(seats)
	case p.exitOf(it) != nil:
		return p.atExit(seats, it, p.exitOf(it).at)
	case it.Line != nil:
		seats = p.alongside(seats, it.Line)
	case it.Area.Shape == geometry.Line:
		seats = p.inLine(seats, &it.Area, length)
		seats = p.alongside(seats, it.Area.Path)
	default:
		seats = p.within2(seats, &it.Area, length)
		if it.Primitive != scene.Area {
			seats = p.around(seats, &it.Area)
		}
	}
	return seats
}

// text is what is written at an item: its name, its figure in the units of whoever looks, or both.
func (p *painter) text(it *scene.Item) string {
	if it.Measure == nil {
		return clean(it.Label)
	}
	return named(it, words.Measure(*it.Measure, p.look.Units))
}

// named is a figure behind the name of an item that has one.
func named(it *scene.Item, figure string) string {
	if name := clean(it.Label); name != "" {
		return name + " " + figure
	}
	return figure
}

// withUnit is a figure with its unit, for where there is room for that; one without a name stays bare.
func withUnit(m scene.Measure) scene.Measure {
	m.Bare = false
	return m
}

// codes writes the letters of kinds on whatever has room for them.
func (p *painter) codes() {
	for i := range p.parts {
		it := &p.parts[i]
		if it.Code == "" || it.Primitive != scene.Area {
			continue
		}
		text := label{name: it.Code, ink: inkOf(it.Item), of: it, tail: it.Warning(), over: true}
		text.tailInk = text.ink
		if it.Area.Shape == geometry.Line {
			p.seats = p.inLine(p.seats[:0], &it.Area, 0)
		} else {
			p.seats = p.within2(p.seats[:0], &it.Area, 0)
		}
		p.write(text, p.seats)
	}
}
