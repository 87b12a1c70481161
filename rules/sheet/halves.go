package sheet

import "cmp"

// Halves lays a part in two columns, the fold between them, that come out about as high as each other.
type Halves struct{ Part }

// halves are two columns while something goes on in them.
type halves struct {
	left, wide float64 // of both together
	from, end  float64 // where they begin on this page, and where the first ends
	second     bool    // the second is being laid
	over       int     // how much of what is put anew stands over both
	rest       float64 // how high all would be that is not laid yet, in one column
	slack      float64 // how much higher columns may come out than half of that
}

// gutter is between two columns, mm.
const gutter = 8

func (p Halves) lay(f *flow) {
	h := &halves{left: f.left, wide: f.wide, over: len(f.again), slack: p.slack()}
	h.rest = f.measured(p.Part, h.half())
	if f.endless || f.halves != nil {
		p.Part.lay(f)
		return
	}
	f.need(p.least(f))
	f.halves = h
	h.begin(f)
	p.Part.lay(f)
	below := f.y
	if h.second {
		below = max(below, h.end)
	}
	f.halves, f.left, f.wide, f.y = nil, h.left, h.wide, below
}

// least is how much of a page there must be for the columns to begin there, mm.
func (p Halves) least(f *flow) float64 {
	const most = 30
	return min(most, f.measured(p.Part, (f.wide-gutter)/2)/2+p.slack())
}

// slack is how much higher columns may come out than half of all, mm: heads come twice, and rows are not broken; a text is, between lines.
func (p Halves) slack() float64 {
	if text, ok := p.Part.(Text); ok {
		return leading * cmp.Or(text.Size, body)
	}
	return 8
}

func (h *halves) half() float64 { return (h.wide - gutter) / 2 }

// begin begins the first column of a page.
func (h *halves) begin(f *flow) {
	f.left, f.wide = h.left, h.half()
	h.second, h.from = false, f.y
	h.end = min(f.foot(), f.y+h.rest/2+h.slack)
	h.rest -= 2 * (f.foot() - f.y) // what this page holds
}

// beginSecond begins the second column of a page.
func (h *halves) beginSecond(f *flow) {
	f.left, f.y, h.second = h.left+h.half()+gutter, h.from, true
}
