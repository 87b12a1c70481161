package canvas

import (
	"math"
	"strings"
	"unicode/utf8"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/words"
)

// RingCells is how many columns the ring round the cut has at least, however far away it is; it has half as many rows. Fewer would be no ring,
// more would hide what the cut is among. What is in its way is red in it; without colours it has room for a sign.
const RingCells = 6

// ringHalf is half of how wide the stroke of the ring is, in dots. Its outer edge is that of the cut: that is what the eye measures.
const ringHalf = 1

// leastCut is the radius, in dots, of the smallest cut whose ring is drawn as large as it is; leastRing that of its ring, to the middle of its stroke.
const (
	leastCut  = RingCells * dotsAcross / 2
	leastRing = leastCut - ringHalf
)

// RingReach is how far from its middle the ring of a cut of a radius reaches in a picture of a scale, mm: where that is far away it is drawn larger.
func RingReach(radius, scale float64) float64 { return max(radius, leastCut*scale) }

// asLarge tells whether the ring of a cut of a radius in dots is drawn as large as that is, to what the eye takes for that.
func asLarge(radius float64) bool { return radius > 0.95*leastCut }

// ring is the cut as it is drawn: never smaller than can be seen, and then in whole cells.
type ring struct {
	item   *scene.Item
	middle vec     // in dots
	radius float64 // to the middle of its stroke
	shown  bool
	named  bool // the name of the cut stands in it
}

// shallow is how many rows a picture has at most in which a ring may be too large: one that is drawn more than mostTimes its size there would hide
// what it is among, and one sign stands for the cut. In fewer rows than the smallest ring has it could not be whole.
const (
	shallow   = 5
	mostTimes = 10
)

// tooLarge tells whether the smallest ring round a cut of a radius, mm, would hide what it is among.
func (m *Map) tooLarge(radius float64) bool {
	larger := leastCut * m.Scale / radius
	return larger > 1 && (m.Rows < RingCells/2 || m.Rows <= shallow && larger > mostTimes)
}

// HasRing tells whether a cut of a radius, mm, is drawn as a ring in the picture, and not as a sign.
func (m *Map) HasRing(radius float64) bool { return !m.tooLarge(radius) }

// ringOf is the ring of the cut; seen edge on it has none.
func (p *painter) ringOf() ring {
	for i := range p.parts {
		it := &p.parts[i]
		if it.Role != scene.Cut || it.Line != nil || it.Area.Shape != geometry.Round {
			continue
		}
		if p.tooLarge(it.Area.Radius) {
			return ring{}
		}
		r := ring{item: it.Item, middle: p.dot(it.Area.Middle), radius: it.Area.Radius/p.Scale - ringHalf, shown: true}
		if r.radius < leastRing+snapped {
			r.radius, r.middle = leastRing, wholeBlocks(r.middle, leastRing)
		}
		return r
	}
	return ring{}
}

// snapped is how many dots larger than the smallest a ring is drawn as that, as other sizes would be ragged.
const snapped = 0.5

// wholeBlocks is a ring's middle, in dots, moved so that one of a radius fills whole columns, and whole quarters of cells up and down, by which it is drawn.
func wholeBlocks(middle vec, radius float64) vec {
	fill := func(at, dots float64) float64 {
		if math.Mod(2*(radius+1)/dots, 2) == 0 { // as many to either side
			return math.Round(at/dots) * dots
		}
		return (math.Floor(at/dots) + 0.5) * dots
	}
	return vec{fill(middle.x, dotsAcross), fill(middle.y, dotsDown/2)}
}

// Enlarged tells whether the ring round a cut of a radius, mm, is drawn larger than the cut is, as one to scale would not be seen.
func (c *Canvas) Enlarged(radius float64) bool {
	return c.ring > 0 && !asLarge(radius/c.Scale)
}

// off is how far a place is from the middle of the ring, in dots.
func (r *ring) off(at vec) float64 { return math.Hypot(at.x-r.middle.x, at.y-r.middle.y) }

// draw sets the dots of the ring: two wide, one to either side of its line.
func (r *ring) draw(b *bitmap) {
	const half = ringHalf
	for y := floor(r.middle.y - r.radius - half); float64(y) <= r.middle.y+r.radius+half; y++ {
		for x := floor(r.middle.x - r.radius - half); float64(x) <= r.middle.x+r.radius+half; x++ {
			off := math.Hypot(float64(x)+0.5-r.middle.x, float64(y)+0.5-r.middle.y)
			if math.Abs(off-r.radius) <= half {
				b.set(x, y)
			}
		}
	}
}

// ring writes the ring over everything that is painted: whole, and the brightest there is.
func (p *painter) ring() {
	if !p.circle.shown {
		return
	}
	p.mask.reset()
	p.circle.draw(&p.mask)
	for row := p.mask.top / dotsDown; row*dotsDown < p.mask.bottom; row++ {
		p.mask.cells(row, func(col int) {
			dots := p.mask.octet(col, row)
			if p.over {
				dots = turnedOver(dots)
			}
			at := (p.flip(row)+p.Top)*p.canvas.Width + p.Left + col
			p.canvas.Cells[at].Rune = blockTable().plain[dots].char
			p.canvas.Cells[at].Ink = Ink{Role: scene.Cut, Tone: Bold, Selected: p.circle.item.Selected}
			p.taken.add(at)
		})
	}
}

// onRing tells whether the ring is drawn in a cell of the canvas.
func (p *painter) onRing(col, row int) bool {
	cell := p.canvas.At(col, row)
	return cell.Ink.Role == scene.Cut && cell.Rune != ' ' && p.taken.has(row*p.canvas.Width+col)
}

// ringed tells whether a cell of the canvas lies within the ring.
func (p *painter) ringed(col, row int) bool {
	if !p.circle.shown {
		return false
	}
	x := (float64(col-p.Left) + 0.5) * dotsAcross
	y := (float64(p.flip(row-p.Top)) + 0.5) * dotsDown
	aside, away, most := x-p.circle.middle.x, y-p.circle.middle.y, p.circle.radius+ringHalf
	return abs(aside) <= most && abs(away) <= most && math.Hypot(aside, away) <= most
}

// leastNamed is the radius of a ring, in dots, from which on there is room for its name.
const leastNamed = 8

// inRing writes the name of the cut in its ring, with how large that is where there is room, below the middle or above it, where nothing else is there.
func (p *painter) inRing() {
	col, row, ok := p.circle.cell(p)
	if !ok || p.circle.radius < leastNamed {
		return
	}
	for _, name := range p.cutNames(p.circle.item) {
		if p.circle.named = p.wordInRing(name.text, col, row+1, row-1); !p.circle.named {
			continue
		}
		if scaled := strings.TrimPrefix(toScale, ", "); p.times() == "" && !strings.HasSuffix(name.text, scaled) {
			p.wordInRing(scaled, col, row-1, row+2, row-2, row+3)
		}
		return
	}
}

// wordInRing writes a few words about a column of the ring in the first of some rows where nothing else is there.
func (p *painter) wordInRing(text string, col int, rows ...int) bool {
	length := utf8.RuneCountInString(text)
	for _, row := range rows {
		if from := col - (length-1)/2; p.freeInRing(from, row, length) {
			p.canvas.Write(Text{Col: from, Row: row, Name: text, Ink: inkOf(p.circle.item)})
			return true
		}
	}
	return false
}

// freeInRing tells whether so many cells lie within the ring and hold nothing.
func (p *painter) freeInRing(col, row, length int) bool {
	if row < p.Top || row >= p.Top+p.Rows {
		return false
	}
	for c := col; c < col+length; c++ {
		if c < p.Left || c >= p.Left+p.Cols || !p.ringed(c, row) || p.canvas.At(c, row).Rune != ' ' {
			return false
		}
	}
	return true
}

// cutName is one way to write the cut's name, and what that costs for what it lacks.
type cutName struct {
	text string
	dear int
}

// toScale is said of a ring that is as large as the cut, as it may be drawn larger.
const toScale = ", to scale"

// cutNames are what the cut is called with how far it is across and that its ring is as large, in fewer and fewer letters.
func (p *painter) cutNames(it *scene.Item) []cutName {
	name := clean(it.Label)
	across := scene.Measure{Value: 2 * it.Solid.Prism.Footprint.Radius, Unit: scene.MM}
	bare := across
	bare.Bare = true
	with, without := name+" "+words.Measure(across, p.look.Units), name+" "+words.Measure(bare, p.look.Units)
	if !p.circle.shown || p.times() != "" {
		return []cutName{{with, 0}, {without, 1}, {name, endWorth}}
	}
	return []cutName{
		{with + toScale, 0}, {without + toScale, 1}, {with, scaleWorth}, {without, scaleWorth + 1}, {name, figureWorth},
	}
}
