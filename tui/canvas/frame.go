package canvas

import (
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
)

var (
	strong = Ink{Role: scene.Floor, Tone: Bold}
	quiet  = Ink{Role: scene.Floor, Tone: Normal}
	rule   = Ink{Role: scene.Floor, Tone: Faint}
	loud   = Ink{Role: scene.Floor, Tone: Inverse}
)

// frame writes everything round the picture.
func (p *painter) frame() {
	p.bottomRuler()
	p.sideRuler()
	p.head()
	p.foot()
}

// head says from where the picture is seen, and which ways of the van run to its sides and to its top.
func (p *painter) head() {
	seen := &p.projection
	title := " SEEN FROM " + strings.ToUpper(seen.From) + " "
	left, right := "◄ "+p.word(seen.Across.Low), p.word(seen.Across.High)+" ►"
	c := &p.canvas
	c.Put(0, 0, title, loud)
	at := utf8.RuneCountInString(title) + 1
	c.Put(at, 0, left, strong)
	from := at + utf8.RuneCountInString(left) + 1
	room := c.Width - from - 1 - utf8.RuneCountInString(right)
	for _, top := range p.tops() {
		if spare := room - utf8.RuneCountInString(top); spare >= 0 {
			c.Put(from+spare/2, 0, top, strong)
			break
		}
	}
	c.Put(c.Width-utf8.RuneCountInString(right), 0, right, strong)
}

// tops says which way is to the top, in fewer and fewer words; without a foot line that has to name the bottom too.
func (p *painter) tops() []string {
	top, bottom := p.projection.Top(), p.projection.Bottom()
	if p.canvas.Height < scant {
		return []string{"▲ " + p.word(top) + " ▼ " + p.word(bottom), "▲" + p.word(top), "▲"}
	}
	return []string{"▲ " + p.named(top), "▲ " + p.word(top), "▲"}
}

// word is what a way of the van is called here.
func (p *painter) word(way scene.Way) string {
	switch way {
	case scene.ToLeft:
		return p.look.Left
	case scene.ToRight:
		return p.look.Right
	}
	return way.Called(p.look.Datum)
}

// named is the word for a way of the van; a side is the van's, as whoever looks has sides too.
func (p *painter) named(way scene.Way) string {
	if way == scene.ToLeft || way == scene.ToRight {
		return "van's " + p.word(way)
	}
	return p.word(way)
}

// foot says which way is to the bottom, whose hand that is, and how long a few cells are.
func (p *painter) foot() {
	c := &p.canvas
	larger := p.times()
	said := larger == "" || p.redInWay() && p.noted(larger+onlyRed) || p.noted(larger)
	if footRows(c.Height) == 1 {
		return
	}
	bar := p.bar()
	room, row := c.Width-utf8.RuneCountInString(bar)-2, p.Top+p.Rows+1
	c.Put(c.Width-utf8.RuneCountInString(bar), row, bar, quiet)
	if !said && row+1 < c.Height && c.Width >= leastNoted {
		c.Put(c.Width-utf8.RuneCountInString(larger), row+1, larger, quiet)
	}
	bottom := "▼ " + p.named(p.projection.Bottom())
	c.Put(0, row, bottom, strong)
	at := utf8.RuneCountInString(bottom)
	if note := "  " + larger; !said && c.Width < leastNoted && at+utf8.RuneCountInString(note) <= room {
		c.Put(at, row, note, quiet)
		return
	}
	for _, hands := range p.projection.Hands {
		hands = strings.ReplaceAll(hands, string(scene.ToBumper), scene.ToBumper.Called(p.look.Datum))
		if at+len(": ")+utf8.RuneCountInString(hands) <= room {
			c.Put(at, row, ": "+hands, quiet)
			return
		}
	}
}

// leastNoted is how many columns a canvas has at least that has room for a note beside what explains the faces.
const leastNoted = 70

// times says how many times as large as the cut the ring is drawn; "" for one that is as large.
func (p *painter) times() string {
	if !p.circle.shown {
		return ""
	}
	own := p.circle.item.Solid.Prism.Footprint.Radius
	if asLarge(own / p.Scale) {
		return ""
	}
	times := (p.circle.radius + ringHalf) * p.Scale / own
	return enlargedRing + " " + survey.Fixed(times, 1) + " times its size"
}

// onlyRed is what is said, where there is room, of a ring that is larger than the cut: it may touch what the cut is clear of.
const onlyRed = ": red is in its way"

// redInWay tells whether anything is drawn red as it is in the way of the cut.
func (p *painter) redInWay() bool {
	return p.look.Faces && slices.ContainsFunc(p.parts, func(it part) bool {
		return it.State == scene.Foul && it.Primitive == scene.Area && it.Code != ""
	})
}

// enlargedRing is what says that the ring is drawn larger than the cut is begins with.
const enlargedRing = "ring drawn"

// noted writes a few words in the picture's last row or in its first, as far to the right as nothing is drawn there.
func (p *painter) noted(text string) bool {
	length := utf8.RuneCountInString(text)
	drawn := func(c Cell) bool { return c.Rune != ' ' || c.Ground.Set }
	for _, row := range p.outerRows() {
		for col := p.Left + p.Cols - length; col > p.Left; col-- {
			if slices.ContainsFunc(p.canvas.Cells[row*p.canvas.Width+col-1:][:length+1], drawn) {
				continue
			}
			p.canvas.Write(Text{Col: col, Row: row, Name: text, Ink: quiet})
			for i := range length {
				p.taken.add(row*p.canvas.Width + col + i)
			}
			return true
		}
	}
	return false
}

// outerRows are the picture's last row and its first, the one before the other beyond which there is more room: names of what lies at that side want
// the rest.
func (p *painter) outerRows() [2]int {
	drawn := func(c Cell) bool { return c.Rune != ' ' || c.Ground.Set }
	free := func(row, step int) (n int) {
		for ; row >= p.Top && row < p.Top+p.Rows; row += step {
			if slices.ContainsFunc(p.canvas.Cells[row*p.canvas.Width+p.Left:][:p.Cols], drawn) {
				break
			}
			n++
		}
		return n
	}
	first, last := p.Top, p.Top+p.Rows-1
	if free(first, 1) > free(last, -1) {
		return [2]int{first, last}
	}
	return [2]int{last, first}
}

// bar returns a scale bar: between its ends it is as many cells as that length is on the rulers.
func (p *painter) bar() string {
	wide, _ := p.CellSize()
	u := p.look.Units.Size()
	length := round(5*wide/u) * u
	cells := max(int(math.Round(length/wide)), 2)
	bar := []rune{'├'}
	for range cells - 1 { // from the middle of one end to that of the other
		bar = append(bar, '─')
	}
	return string(bar) + "┤ " + survey.Exact(length/u) + " " + p.look.Units.Sign()
}

// bottomRuler counts along the plane's across.
func (p *painter) bottomRuler() {
	c, row := &p.canvas, p.Top+p.Rows
	for col := p.Left; col < c.Width; col++ {
		c.Put(col, row, "─", rule)
	}
	c.Put(p.Left-1, row, "└", rule)
	c.Put(0, row, p.look.Units.Sign(), quiet)
	step, last := p.tick(), p.west+float64(p.wide)*p.Scale
	widest := max(len(p.figureAt(&p.projection.Across, first(p.west, step))), len(p.figureAt(&p.projection.Across, last-math.Mod(last, step))))
	if float64(widest+2) > step/p.Scale/dotsAcross {
		step *= 2 // or the numbers would touch the next tick
	}
	for x := first(p.west, step); x < last; x += step {
		number := p.figureAt(&p.projection.Across, x)
		col := floor((x-p.west)/p.Scale/dotsAcross) + p.Left
		if x == 0 && p.look.Datum != "" && p.projection.Lengthwise() {
			number = p.atDatum(number, min(floor(step/p.Scale/dotsAcross), col-p.Left))
		}
		c.Put(col, row, "┴", rule)
		if from := col - utf8.RuneCountInString(number); from >= p.Left { // it ends at its tick
			c.Put(from, row, number, quiet)
		}
	}
}

// leastName is how many columns a name needs to say anything.
const leastName = 4

// atDatum is what a ruler along the van says at 0: the datum's name too, as far as there is room for it in so many columns.
func (p *painter) atDatum(number string, cols int) string {
	room := cols - desk.Width("┴ "+number)
	if name := desk.FirstWords(p.look.Datum, room); room > leastName {
		return name + " " + number
	}
	return number
}

// tick is the distance of the numbers on the ruler below, mm.
func (p *painter) tick() float64 { return tick(p.Scale, p.look.Units) }

// sideRuler counts along the plane's up.
func (p *painter) sideRuler() {
	c := &p.canvas
	for row := p.Top; row < p.Top+p.Rows; row++ {
		c.Put(p.Left-1, row, "│", rule)
	}
	step, low := p.sideTick(), p.north-float64(p.tall)*p.Scale
	for y := first(low, step); y < p.north; y += step {
		_, row, ok := p.Cell(geometry.Point{X: p.west, Y: y})
		if !ok {
			continue
		}
		number := p.figureAt(&p.projection.Up, y)
		if utf8.RuneCountInString(number) >= p.Left {
			continue // farther off than any van is wide
		}
		c.Put(p.Left-1-utf8.RuneCountInString(number), row, number, quiet)
		c.Put(p.Left-1, row, "┤", rule)
	}
}

// sideTick is the distance of the numbers on the ruler at the side, mm: whole rows, and less than on the one below where it would have but one.
func (p *painter) sideTick() float64 {
	wholeRows := func(step float64) bool {
		rows := step / (p.Scale * dotsDown)
		return rows > 0.5 && math.Abs(rows-math.Round(rows)) < 1e-6
	}
	step := p.tick()
	if !wholeRows(step) {
		step *= 2
	}
	for _, share := range [...]float64{1, 2, 2.5, 4, 5} {
		if finer := step / share; wholeRows(finer) && 2*finer <= float64(p.tall)*p.Scale {
			return finer
		}
	}
	return step
}

// figureAt is what a ruler says at a place of its axis, mm.
func (p *painter) figureAt(axis *scene.Axis, at float64) string {
	counted := at * axis.Counts
	number := survey.Exact(math.Round(counted/p.look.Units.Size()*100) / 100)
	if axis.Signed && counted > 0 {
		return "+" + number
	}
	return number
}

// round returns the least of 1, 2, 5, 10, 20, 50... that is at least x.
func round(x float64) float64 {
	if x <= 1 {
		return 1
	}
	ten := math.Pow(10, math.Floor(math.Log10(x)))
	for _, k := range []float64{1, 2, 5} {
		if k*ten >= x-1e-9 {
			return k * ten
		}
	}
	return 10 * ten
}

// first returns the first multiple of step that is not below x.
func first(x, step float64) float64 { return math.Ceil(x/step) * step }
