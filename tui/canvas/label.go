package canvas

import (
	"cmp"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/words"
)

// inkOf is the ink of an item's letters and of its spot.
func inkOf(it *scene.Item) Ink {
	ink := Ink{Role: it.Role, Tone: Bold, Selected: it.Selected}
	if tank(it) {
		ink.Role = scene.Bumper
	}
	if !it.Role.Pen().Steady {
		ink.State = it.State
	}
	if it.Selected {
		ink.Tone = Inverse
	}
	return ink
}

// tank tells whether an item is what holds something, and no pipe: neither its name nor its lines have the colour of pipes.
func tank(it *scene.Item) bool {
	return it.Role == scene.Lines && it.Primitive == scene.Area && it.Solid.Prism.Footprint.Shape != geometry.Line
}

// naming is an item that may have its name written.
type naming struct {
	it   *part
	rank scene.Rank
	at   int     // which of the items
	off  float64 // from the cut, mm
	must bool    // it has its name wherever there is a place for it, others only where that hides nothing
	way  passage // of its leader
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
	for _, cell := range p.look.Marked {
		if col, row := cell[0], cell[1]; col >= 0 && col < p.canvas.Width && row >= 0 && row < p.canvas.Height {
			p.taken.add(row*p.canvas.Width + col)
		}
	}
	p.weighed()
	p.sayBelow()
	p.rearBeyond()
	p.nameAll(p.namings())
	p.beyond()
	if p.look.Codes {
		p.codes()
	}
}

// fewRows is on how many rows there is little room beside the ring: what is in its way is named first there.
const fewRows = 12

// mostGuides is how many of a kind of what carries must have their names, the nearest to the cut: more than a van has of them would be a list.
const mostGuides = 8

// namings are the items with a name in the order in which they get it. Of each kind the one nearest to the cut must have its
// name, and all that carries.
func (p *painter) namings() []naming {
	names := make([]naming, 0, len(p.parts))
	for i := range p.parts {
		if it := &p.parts[i]; p.nameable(it) {
			names = append(names, naming{it: it, rank: p.rank(it), at: i, off: p.fromCut(it)})
		}
	}
	slices.SortFunc(names, func(a, b naming) int { // what lies along a line has more places for its name than an area
		return cmp.Or(cmp.Compare(b.rank, a.rank), cmp.Compare(b.before(), a.before()), cmp.Compare(a.long(), b.long()), cmp.Compare(a.off, b.off), a.at-b.at)
	})
	named := map[string]int{}
	first, others := make([]naming, 0, len(names)), []naming(nil)
	for _, n := range names {
		code := n.it.Code
		if n.must = n.rank > scene.RankAside && (code == "" || n.it.Selected || named[code] == 0 || bears(n.it) && named[code] < mostGuides); n.must {
			first = append(first, n)
		} else {
			others = append(others, n)
		}
		if !n.it.Selected { // what is picked out is named beside the nearest of its kind
			named[code]++
		}
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
	return leaves(it) || it.Role.Pen().RunsEnd
}

// end tells whether a name is of a run's end, beside which it stands where it can.
func (n *naming) end() bool { return n.it.Role.Pen().RunsEnd }

// bears tells whether a part is of what all else hangs from, rails and crossmembers: each has its name in every picture that has it.
func bears(it *part) bool {
	return it.Role.Pen().Carries && it.Primitive == scene.Area
}

// guides tells whether people find their way by a part, and by its name: what all hangs from, and the van's exhaust, which must not be taken for the
// heater's.
func guides(it *part) bool {
	return bears(it) || it.Role == scene.Hot && !it.Aside
}

// before is more for what is named before others of its rank: an intake that is named along its way comes where its mouth would.
func (n *naming) before() uint8 {
	if n.it.Role == scene.Intake && leaves(n.it) {
		return scene.Mouth.Pen().Before
	}
	return n.it.Before()
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
	if it.Label == "" && it.Measure == nil || it.Role.Pen().Stacked || !p.seen(it) {
		return false
	}
	switch {
	case it.Role == scene.Cut:
		return !p.circle.named
	case it.Role.Pen().EndNamed:
		return !leaves(it) || p.exitOf(it) != nil // else its name stands at its end
	case it.Role == scene.Hole:
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

// label writes an item's name or figure, and the warning behind it, in the best of its forms at the best of the places it could stand.
func (p *painter) label(n *naming) (said, choice) {
	var text label
	var how said
	var best choice
	least, form := tooDear, 0 // what the best costs, with what its form does
	for i, f := range p.forms(n) {
		if best.found && (least <= f.dear || f.last) {
			break
		}
		one := p.seated(n, &f.label, least-f.dear)
		if one.found && one.cost+f.dear < least {
			text, how, best, least, form = f.label, f.said, one, one.cost+f.dear, i
		}
	}
	if !best.found {
		return unsaid, best
	}
	p.put(text, best.seat)
	p.note(n.it, form, best)
	best.cost = least
	return how, best
}

// seated is the best of the places of a text of a name, none that costs as much as another form does.
func (p *painter) seated(n *naming, text *label, dearer int) choice {
	it := n.it
	best := choice{cost: min(text.most(), dearer)}
	p.seats = p.seatsOf(p.seats[:0], it, text.length())
	p.choose(&best, text, p.seats)
	if n.must && best.cost > leastLeader && !(n.end() && best.found && best.cost < hidesMain) {
		for _, cell := range p.ledTo(it) {
			p.leading(&best, text, cell)
		}
	}
	if n.end() && !best.found { // better somewhere about than not at all
		p.seats = p.roundAbout(p.seats[:0], it.Line[0])
		for i := range p.seats {
			p.seats[i].about = true
		}
		p.choose(&best, text, p.seats)
	}
	if text.over && !best.found && text.of == it && it.Area.Shape != geometry.Line && (text.urgent || !p.buries(it, text.length())) {
		// better over its edge than without a name
		p.seats = p.seatsIn(p.seats[:0], &it.Area, 0)
		p.choose(&best, text, p.seats)
	}
	return best
}

// buries tells whether a text over a part would hide nearly all of it: what it names would not be seen.
func (p *painter) buries(it *part, length int) bool {
	low, high := it.Area.Bounds()
	wide, tall := p.CellSize()
	return high.X-low.X < float64(length)*wide && high.Y-low.Y < 2*tall
}

// seatsOf adds the places close by where an item's name could stand.
func (p *painter) seatsOf(seats []seat, it *part, length int) []seat {
	switch {
	case it.Primitive == scene.Spot:
		seats = p.beside(seats, it.Line[0], 1)
		if it.Role.Pen().RunsEnd {
			seats = p.overAndUnder(seats, it.Line[0], length)
		}
		if of := p.inWay(it); it.Role == scene.Conflict && of != nil && p.thin(of) {
			seats = p.alongside(seats, of.Area.Path)
		}
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
		seats = p.seatsIn(seats, &it.Area, length)
		if bears(it) {
			seats = p.onBeam(seats, &it.Area, length)
		}
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
			p.seats = p.seatsIn(p.seats[:0], &it.Area, 0)
		}
		p.write(text, p.seats)
	}
}
