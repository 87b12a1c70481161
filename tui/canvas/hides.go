package canvas

import (
	"math/bits"
	"slices"

	"bench.example/undermark/geometry/scene"
)

// mostHidden is what a name that may hide something hides at the most, by what hides counts; one that is urgent more, and one that stands in
// every picture as much as there is.
const (
	mostHidden = 160
	mostGuide  = 300
	mostUrgent = 800
	mostEnding = 20000
)

// choice is the best seat so far: found tells whether there is one, and cost is what it hides or, without one, may hide.
type choice struct {
	seat
	cost  int
	found bool
}

// beatenBy tells whether a seat so far off can be a better choice.
func (c *choice) beatenBy(off int) bool { return off < c.cost || off == c.cost && !c.found }

// most is what a label may hide at the most.
func (l label) most() int {
	switch {
	case l.always:
		return mostEnding
	case l.urgent:
		return mostUrgent
	case l.guides:
		return mostGuide
	case l.over:
		return mostHidden
	}
	return 0
}

// write puts a label on the seat where it hides least, the earlier of equals, and says whether there was one.
func (p *painter) write(l label, seats []seat) bool {
	best := choice{cost: l.most()}
	p.choose(&best, &l, seats)
	return p.settle(l, best)
}

// settle puts a label where it was found to hide least.
func (p *painter) settle(l label, best choice) bool {
	if best.found {
		p.put(l, best.seat)
	}
	return best.found
}

// choose looks for a better seat among more of them.
func (p *painter) choose(best *choice, l *label, seats []seat) {
	length := l.length()
	for _, s := range seats {
		if !best.beatenBy(s.off) {
			continue
		}
		of := l.of
		if !s.inside {
			of = nil // beside a thing its name does not stand on it
		}
		cost, ok := p.hides(s.start(length), s.row, length, of, l.line(), best.cost-s.off)
		if cost += s.off; ok && p.captions(l.line(), s, length) {
			cost += asCaption
		}
		if ok && (p.lies(l.names, s, length) || p.besideEnd(s, length)) {
			cost += asName
		}
		if ok {
			cost += p.ways.across(s.start(length), s.row, length)
		}
		better := ok && (cost < best.cost || cost == best.cost && !best.found)
		if better && (s.inside || !p.clips(l.of, s.start(length), s.row, length)) && !p.mistaken(l.names, s, length) && !p.astray(l.names, s, length) {
			*best = choice{s, cost, true}
		}
	}
}

// besideEnd tells whether a text on a seat would begin or end close beside the end of another's leader: what that goes to would be called so.
func (p *painter) besideEnd(s seat, length int) bool {
	return slices.ContainsFunc(p.canvas.Texts, func(t Text) bool {
		return t.led && t.of[1] == s.row && t.of[0] >= s.start(length)-apart && t.of[0] < s.start(length)+length+apart
	})
}

// astray tells whether a text on a seat beside a face has nothing of that next to it, as other names hide it: it would point at nothing.
func (p *painter) astray(of *part, s seat, length int) bool {
	if of == nil || s.inside || s.led || !p.look.Faces || of.Primitive != scene.Area || p.thin(of) || !faced(of.Role) || leaves(of) {
		return false
	}
	for row := max(s.row-1, p.Top); row <= min(s.row+1, p.Top+p.Rows-1); row++ {
		for col := max(s.start(length)-2, p.Left); col < min(s.start(length)+length+2, p.Left+p.Cols); col++ {
			cell := p.canvas.At(col, row)
			if !p.taken.has(row*p.canvas.Width+col) && (cell.Ground.Role == of.Role || cell.Ink.Face.Role == of.Role) {
				return false
			}
		}
	}
	return true
}

// back lays bare floor behind a word that would be read on one of the faces behind it and not on another, as letters in two
// colours are two words, and behind one that is not the name of the face it stands on.
func (p *painter) back(col, row, length int, ink Ink, of *part) {
	cells := p.canvas.Cells[row*p.canvas.Width+col:][:length]
	mixed := func(c Cell) bool {
		return c.Ground != cells[0].Ground || of == nil && c.Ground.Set || of != nil && c.Ground.Role != of.Role
	}
	dim := func(c Cell) bool { return !legible(ink, c.Ground) }
	if !p.look.Faces || !slices.ContainsFunc(cells, mixed) || !slices.ContainsFunc(cells, dim) {
		return
	}
	for i := range cells {
		cells[i].Ground = Ground{Role: scene.Floor, Set: true}
	}
}

// What a name costs that would be read as another line's, and one that lies on the face of another thing, or beside where a leader goes to one.
const (
	asCaption = 500
	asName    = 240
)

// What a character of a name costs where it hides something: a line most, and the face of another thing a little.
const (
	hidesBand  = 250 // of the exhaust, which is one line, unbroken
	hidesFoul  = 900 // of a line that is in the way, whose course one follows
	hidesOwn   = 500 // of that, by its own name
	hidesMain  = 60
	hidesPipe  = 130 // of the heater's air or fuel, as wide as it is
	hidesLine  = 7
	hidesDots  = 4
	hidesFace  = 24 // it would be taken for that thing's name
	hidesSolid = 45 // of what is steel, a tank or hot: one looks at that, and would read the name as its
	hidesRoom  = 5  // where the cut can go: that is what one looks for
	hidesMoves = 16 // of what moves or comes off
	hidesLoose = 3  // of the van's ends
)

// hides adds up what a text would hide; ok is false where it can't stand, or hides more than most.
func (p *painter) hides(col, row, length int, of *part, own uint16, most int) (cost int, ok bool) {
	if col < p.Left || col+length > p.Left+p.Cols || row < p.Top || row >= p.Top+p.Rows {
		return 0, false
	}
	at := row*p.canvas.Width + col
	if p.taken.any(at-1, min(at+length+1, (row+1)*p.canvas.Width)) { // two words side by side would be read as one
		return 0, false
	}
	cost = int(p.sums[at+length] - p.sums[at])
	for i := at; i < at+length && own != 0 && cost >= hidesFoul; i++ {
		if line := &p.strokes.cells[i]; line.of == own && line.foul && line.arms != 0 {
			cost -= hidesFoul - hidesOwn
		}
	}
	if cost > 0 && of != nil {
		for i := range length {
			cell := &p.canvas.Cells[at+i]
			if cell.Ground.Role == of.Role && p.covers(of, col+i, row) || bears(of) && (cell.Ground.Role == of.Role || cell.Ink.Face.Role == of.Role && cell.Ink.Face.Set) && p.near(of, col+i, row) {
				cost -= p.onOwn(at + i)
			}
		}
	}
	return cost, cost <= most
}

// onOwn is how much less a character costs in a cell of the own face of what it names: that costs nothing, and a thin line along it
// little, unless that is one that matters.
func (p *painter) onOwn(i int) int {
	switch line := &p.strokes.cells[i]; {
	case line.arms == 0:
		return int(p.costs[i])
	case p.costs[i] < hidesMain:
		return int(p.costs[i]) - hidesLoose
	}
	return 0
}

// clips tells whether a text would stand on what it is of.
func (p *painter) clips(of *part, col, row, length int) bool {
	if of == nil {
		return false
	}
	if box := p.box(col, row, length); boxGap(&box, &of.Area) > 0 {
		return false // without looking cell by cell
	}
	for i := range length {
		if p.covers(of, col+i, row) {
			return true
		}
	}
	return false
}

// covers tells whether an area lies under the middle of a cell.
func (p *painter) covers(it *part, col, row int) bool {
	at, _ := p.point(col, row)
	return it.Area.Contains(at)
}

// near tells whether an area lies in a row of cells under a cell of it, though it may be thinner than that.
func (p *painter) near(it *part, col, row int) bool {
	at, _ := p.point(col, row)
	_, tall := p.CellSize()
	return it.Area.GapOnly(at) < tall/2
}

// captions tells whether a text on a seat would be read as the name of a line along its row that is of another thing: that ends at it, or that it hides.
func (p *painter) captions(own uint16, s seat, length int) bool {
	at := s.row*p.canvas.Width + s.start(length)
	for i := max(at-1, s.row*p.canvas.Width); i < min(at+length+1, (s.row+1)*p.canvas.Width); i++ {
		line := &p.strokes.cells[i]
		if line.of == own && own != 0 || line.ink.Role.Pen().Quiet {
			continue
		}
		toward := uint8(east | west)
		switch i {
		case at - 1:
			toward = east
		case at + length:
			toward = west
		}
		if line.arms&toward != 0 {
			return true
		}
	}
	return false
}

// lies tells whether most of a text lies on the face of another thing: it would be read as the name of that. The cut's, next to its ring, would not,
// nor that of a run's end or of what is beyond the picture, which has an arrow or a sign.
func (p *painter) lies(names *part, s seat, length int) bool {
	if names == nil || names.Role == scene.Cut || ending(names) {
		return false
	}
	on := 0
	for col := s.start(length); col < s.start(length)+length; col++ {
		if ground := p.mostly(col, s.row); ground.Set && ground.Role != scene.Floor && !ground.Role.Pen().Stacked && (ground.Role != names.Role || !p.near(names, col, s.row)) {
			on++
		}
	}
	return 2*on > length
}

// mostly is the face that most of a cell of the canvas shows, and rather than bare floor one that half of it shows.
func (p *painter) mostly(col, row int) Ground {
	of := p.faces.of[p.flip(row-p.Top)*p.Cols+col-p.Left]
	if of == of&0xFF*everyDot {
		return p.faces.table[uint8(of)]
	}
	most, other, dots := p.faces.mixed(of)
	if most.Role == scene.Floor && 2*bits.OnesCount8(dots) >= dotsAcross*dotsDown {
		return other
	}
	return most
}

// weighed works out what a character would hide in each cell of the picture.
func (p *painter) weighed() {
	for row := p.Top; row < p.Top+p.Rows; row++ {
		for col := p.Left; col < p.Left+p.Cols; col++ {
			i := row*p.canvas.Width + col
			p.costs[i] = p.cost(i, p.flip(row-p.Top), col-p.Left)
		}
	}
	for i, cost := range p.costs {
		p.sums[i+1] = p.sums[i] + int32(cost)
	}
}

// cost is what a character hides in a cell of the canvas, which is in this row and column of the plane.
func (p *painter) cost(i, row, col int) uint16 {
	ground, line, front := &p.canvas.Cells[i].Ground, &p.strokes.cells[i], p.fronts[row*p.Cols+col]
	face, behind := &p.canvas.Cells[i].Ink.Face, ground.Role.Pen()
	switch {
	case line.ink.Role == scene.Exhaust && line.arms != 0, behind.Unparted, face.Set && face.Role.Pen().Unparted,
		p.inks[row*p.Cols+col].Role.Pen().Unparted && p.dots.octet(col, row) != 0:
		return hidesBand
	case line.arms != 0 && line.foul:
		return hidesFoul
	case line.arms != 0 && line.ink.Role == scene.Intake:
		return hidesMain
	case pipe(ground.Role) && ground.Set, pipe(face.Role) && face.Set:
		return hidesPipe
	case line.arms != 0:
		return hidesLine + uint16(line.front)
	case ground.Set && behind.Sought:
		return hidesSolid
	case face.Set && face.Role.Pen().Sought:
		return hidesFace // of its edge
	case front > 0 && p.dots.octet(col, row) != 0:
		return hidesDots
	case ground.Role == scene.Movable:
		return hidesMoves
	case ground.Role == scene.Nose:
		return hidesLoose
	case ground.Role == scene.Floor && faceOfRoom(ground.Grade):
		return hidesRoom
	case ground.Set && ground.Role != scene.Floor || front > 0 && ground.Role != scene.Floor:
		return hidesFace
	}
	return 0
}

// pipe tells whether a face is one of the heater's runs that is no band from end to end.
func pipe(r scene.Role) bool { return r == scene.Intake || r == scene.Fuel }
