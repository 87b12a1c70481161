package sheet

import (
	"strings"

	"bench.example/undermark/geometry/scene/vector"
)

// Beside is two parts beside each other, the fold between them. Where a page does not hold the higher of them they come one after the other.
type Beside struct {
	Left, Right Part
	RightWide   float64 // how wide the right one is, mm; 0 for as wide as the left
}

func (p Beside) lay(f *flow) {
	half := (f.wide - gutter) / 2
	right := half
	if p.RightWide > 0 {
		half, right = f.wide-gutter-p.RightWide, p.RightWide
	}
	high := max(f.measured(p.Left, half), f.measured(p.Right, right))
	if high > f.full()*0.8 && !f.endless {
		p.Left.lay(f)
		f.y += gap
		p.Right.lay(f)
		return
	}
	f.need(high)
	left, all, from := f.left, f.wide, f.y
	f.wide = half
	p.Left.lay(f)
	below := f.y
	f.left, f.wide, f.y = left+half+gutter, right, from
	p.Right.lay(f)
	f.left, f.wide, f.y = left, all, max(below, f.y)
}

// Parts are parts below each other.
type Parts []Part

func (all Parts) lay(f *flow) {
	for i, p := range all {
		if i > 0 {
			f.y += gap
		}
		p.lay(f)
	}
}

// Titled is a part under a title in bold, which is never alone at a page's foot.
type Titled struct {
	Title string
	Part
}

func (p Titled) lay(f *flow) {
	title, high := Text{Words: p.Title, Bold: true}, 0.0
	switch part := p.Part.(type) {
	case Ticks:
		high = f.measured(part[:1], f.wide)
	case Halves:
		high = part.least(f)
	default:
		high = min(f.measured(p.Part, f.wide), 5*leading*body)
	}
	f.need(f.measured(title, f.wide) + gap/3 + high)
	title.lay(f)
	f.y += gap / 3
	p.Part.lay(f)
}

// Carried is a part that goes on to the next page where the last one would else hold the last section alone.
type Carried struct{ Part }

func (p Carried) lay(f *flow) {
	if f.sheet != nil && f.sheet.carried && !f.endless {
		f.turn()
	}
	p.Part.lay(f)
}

// Kept is a part that stays together where a page holds it.
type Kept struct{ Part }

func (p Kept) lay(f *flow) {
	if high := f.measured(p.Part, f.wide); high < f.full()-2*second {
		f.need(high)
	}
	p.Part.lay(f)
}

// Facts are words with what they mean behind them; SmallFacts are those in the letters of tables.
type (
	Facts      [][2]string
	SmallFacts [][2]string
)

func (all Facts) lay(f *flow)      { f.facts(all, body) }
func (all SmallFacts) lay(f *flow) { f.facts(all, small) }

// facts writes those that there are in letters of a size.
func (f *flow) facts(all [][2]string, size float64) {
	name := 24.0 * size / body // mm
	room := min(name, f.wide/3)
	style := vector.Text{Size: size}
	for _, fact := range all {
		if fact[1] == "" {
			continue
		}
		for i, row := range wrapped(strings.ReplaceAll(fact[1], "\n", " "), style, f.wide-room) {
			f.need(leading * size)
			if i == 0 {
				f.write(f.left, f.y+size, vector.Text{Words: fact[0], Size: small})
			}
			style.Words = row
			f.write(f.left+room, f.y+size, style)
			f.y += leading * size
		}
	}
}
