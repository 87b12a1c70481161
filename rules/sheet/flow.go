package sheet

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules/template"
)

// What a page keeps free, mm. No printer prints to the edge, and holes for a folder are punched 12 mm from it (ISO 838).
const (
	aside  = 16 // on either side, so that the fold lies in the middle of what is printed
	top    = 23 // above what flows: the head stands there
	bottom = 14
)

// Sizes of letters, mm of an em: 2.8 is 8 points.
const (
	small  = 2.4
	body   = 2.8
	large  = 3.3
	second = 4.2 // a section's heading
)

// One width for each meaning, mm (ISO 128-2, line group 0.5): what parts rows, what is drawn and written on, what parts sections.
var (
	hair  = 0.13
	thin  = vector.PaperWidths[scene.Fine]
	thick = vector.PaperWidths[scene.Heavy]
)

// leading is how far apart lines are, of their letters' size.
const leading = 1.3

// flow lays parts under each other, page after page.
type flow struct {
	paper      template.Paper
	pages      []*Page
	y          float64  // where the next thing begins
	left, wide float64  // of the column that is laid
	again      []func() // what is put anew over what goes on on a new page
	endless    bool     // it is laid to be measured: no page ends
	halves     *halves  // the two columns that it goes on in; nil for one
	sheet      *Sheet   // what is laid; nil for a part by itself
	begun      []begun  // where its sections begin
}

func newFlow(paper template.Paper) *flow {
	return &flow{paper: paper, pages: []*Page{{}}, y: top, left: aside, wide: paper.Wide - 2*aside}
}

// end is where what flows ends.
func (f *flow) end() float64 {
	if f.halves != nil && !f.halves.second {
		return f.halves.end
	}
	return f.foot()
}

// foot is where what flows ends on a page.
func (f *flow) foot() float64 { return f.paper.High - bottom }

// full is how high a page's room is.
func (f *flow) full() float64 { return f.foot() - top }

// need goes on on a new page where less than so much is left of this one, unless this one is empty.
func (f *flow) need(high float64) {
	if !f.endless && f.y+high > f.end()+1e-6 && f.y > top {
		f.turn()
	}
}

// turn begins a page, or the second column of this one.
func (f *flow) turn() {
	again := f.again
	if h := f.halves; h != nil && !h.second {
		h.beginSecond(f)
		again = again[h.over:]
	} else {
		f.pages = append(f.pages, &Page{})
		f.y = top
		if h != nil {
			f.left, f.wide = h.left, h.wide
		}
	}
	for i, put := range again {
		if h := f.halves; h != nil && len(again) == len(f.again) && i == h.over {
			h.begin(f)
		}
		put()
	}
}

// over has put stand over what lay lays, on each page that this takes.
func (f *flow) over(put, lay func()) {
	put()
	f.again = append(f.again, put)
	lay()
	f.again = f.again[:len(f.again)-1]
}

// measured is how high a part comes out in a column of a width.
func (f *flow) measured(p Part, width float64) float64 {
	trial := flow{paper: f.paper, pages: []*Page{{}}, wide: width, endless: true, sheet: f.sheet}
	p.lay(&trial)
	return trial.y
}

// draw has something drawn on the page that is being laid.
func (f *flow) draw(mark func(b vector.Board)) {
	page := f.pages[len(f.pages)-1]
	page.marks = append(page.marks, mark)
}

// line draws a line.
func (f *flow) line(width float64, points ...geometry.Point) {
	f.draw(func(b vector.Board) { b.Line(points, vector.Stroke{Width: width, Colour: vector.Ink}) })
}

// level draws a line so long from the column's left, where the next thing begins.
func (f *flow) level(long, width float64) {
	f.line(width, geometry.Point{X: f.left, Y: f.y}, geometry.Point{X: f.left + long, Y: f.y})
}

// write writes a line of text on its baseline.
func (f *flow) write(x, y float64, t vector.Text) {
	t.Words, t.Colour = printable(t.Words), vector.Ink
	f.draw(func(b vector.Board) { b.Write(geometry.Point{X: x, Y: y}, t) })
}

// section lays a section.
func (f *flow) section(s Section) {
	if len(s.Parts) == 0 {
		return
	}
	const before = 4 // mm, above a heading
	if s.Fresh && f.y > top {
		f.turn()
	}
	if f.y > top {
		f.y += before
		f.need(f.begins(s.Parts[0]))
	}
	at := len(f.begun)
	f.begun = append(f.begun, begun{s.Heading, len(f.pages), 0})
	goesOn := false
	f.over(func() {
		f.heading(s.Heading, goesOn)
		goesOn = true
	}, func() {
		for i, p := range s.Parts {
			if i > 0 {
				f.y += gap
			}
			p.lay(f)
		}
	})
	f.begun[at].ends = len(f.pages)
}

// begins is what is to be left of a page for a section to begin there: room for its heading and some lines, or for all of a first part
// that stays together.
func (f *flow) begins(first Part) float64 {
	const heading, lines = 1.1*second + 3, 26 // mm
	if all, ok := first.(Filled); ok {
		first = Kept{all[0](leastHigh)}
	}
	switch first.(type) {
	case Kept, Beside, Picture:
		if high := heading + f.measured(first, f.wide); high < f.full() {
			return high
		}
	}
	return lines
}

// gap is left between parts, mm.
const gap = 3

// heading writes a section's heading over a line, with what says that it began on an earlier page.
func (f *flow) heading(words string, goesOn bool) {
	if words == "" {
		return
	}
	t := vector.Text{Words: words, Size: second, Bold: true}
	more := vector.Text{Words: "goes on", Size: small}
	if room := f.wide - 2 - vector.WidthOf(more); goesOn && vector.WidthOf(t) > room { // all of it stands where it begins
		t.Words = cut(words, t, room)
	}
	f.write(f.left, f.y+second*0.8, t)
	if goesOn {
		f.write(f.left+vector.WidthOf(t)+2, f.y+second*0.8, more)
	}
	f.y += second * 1.1
	f.level(f.wide, thick)
	f.y += 2
}
