package template

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
)

// Paper is the paper that is printed on, mm.
type Paper struct{ Wide, High float64 }

// Papers are those that printers take, by name: A4 is ISO 216, letter ANSI/ASME Y14.1.
var Papers = map[string]Paper{"a4": {210, 297}, "letter": {215.9, 279.4}}

// What a page keeps free round its part of the template, mm: no printer prints to the edge, and the check bars and words stand there.
const (
	leftOf  = 24
	rightOf = 10
	above   = 36
	below   = 24
)

// lap is how much two pages beside each other both show, mm.
const lap = 20

// Page is one page of a template.
type Page struct {
	*Template
	Paper     Paper
	Row, Col  int
	Rows, All int            // of how many rows, and pages in all of this face
	from      geometry.Point // of the template, at the top left of the page's part
}

// Pages parts a template into pages, row by row. One that fits a page lies in its middle.
func (t *Template) Pages(paper Paper) []Page {
	wide, high := paper.Wide-leftOf-rightOf, paper.High-above-below
	cols, left := parted(t.low.X, t.far.X, wide)
	rows, top := parted(t.low.Y, t.far.Y, high)
	var pages []Page
	for row := range rows {
		for col := range cols {
			from := geometry.Point{X: left + float64(col)*(wide-lap), Y: top + float64(row)*(high-lap)}
			pages = append(pages, Page{t, paper, row, col, rows, rows * cols, from})
		}
	}
	return pages
}

// seamOff is how far from the pilot, which is the template's own zero, no lap of two pages comes, mm: two sheets over each other shift
// a centre punch, and nobody joins pages truer than they are cut.
const seamOff = 30

// parted says how many parts of a size cover what lies from low to high where each two share a lap, none of them near zero, and where the
// first begins: so that all together have it as near to their middle as that leaves.
func parted(low, high, size float64) (parts int, from float64) {
	step := size - lap
	for parts = 1; ; parts++ {
		covered := float64(parts)*step + lap
		middle, best := (low+high)/2-covered/2, math.Inf(1)
		for k := range parts {
			at := float64(k) * step // of the lap before part k; there is none before the first
			for _, try := range []float64{middle, seamOff - at, -seamOff - lap - at} {
				inside := try <= low && try+covered >= high
				if inside && math.Abs(try-middle) < best && seamGap(try, step, parts) >= seamOff-rounding {
					best, from = math.Abs(try-middle), try
				}
			}
		}
		if !math.IsInf(best, 1) {
			return parts, from
		}
	}
}

// rounding is what adding up may be off, mm.
const rounding = 1e-9

// seamGap is how far zero is from the nearest lap of parts that begin at a place, mm; 0 within one.
func seamGap(from, step float64, parts int) float64 {
	gap := math.Inf(1)
	for k := 1; k < parts; k++ {
		at := from + float64(k)*step
		gap = min(gap, max(at, -at-lap, 0))
	}
	return gap
}

// join is a mark that two pages beside each other both have: laid on each other they lie right.
type join struct {
	at   geometry.Point
	name string
}

// joins are the marks in the laps of all pages, two for each lap of two pages.
func (p *Page) joins() (all []join) {
	wide, high := p.Paper.Wide-leftOf-rightOf, p.Paper.High-above-below
	corner := p.from.Sub(geometry.Point{X: float64(p.Col) * (wide - lap), Y: float64(p.Row) * (high - lap)})
	cols := p.All / p.Rows
	for row := range p.Rows {
		for col := range cols {
			at := corner.Add(geometry.Point{X: float64(col) * (wide - lap), Y: float64(row) * (high - lap)})
			add := func(x, y float64) {
				all = append(all, join{at.Add(geometry.Point{X: x, Y: y}), fmt.Sprint("join ", len(all)+1)})
			}
			if col+1 < cols {
				add(wide-lap/2, high/4)
				add(wide-lap/2, high*3/4)
			}
			if row+1 < p.Rows {
				add(wide/4, high-lap/2)
				add(wide*3/4, high-lap/2)
			}
		}
	}
	return all
}
