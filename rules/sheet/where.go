package sheet

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
)

// Where says on which page each section begins, for whoever has the sheet alone. The pages are known once all is laid: it is written then.
type Where struct {
	Said string // what stands before that, in the same letters
}

// begun is where a section begins.
type begun struct {
	heading    string
	page, ends int // from 1
}

func (w Where) lay(f *flow) {
	if w.Said != "" {
		Text{Words: w.Said, Size: small}.lay(f)
	}
	if f.sheet == nil {
		return
	}
	style := vector.Text{Size: small, Colour: vector.Ink}
	most := 88 // no figures are wider
	if f.sheet.many {
		most = 8888
	}
	var widest []begun
	for _, s := range f.sheet.Sections {
		if len(s.Parts) > 0 {
			widest = append(widest, begun{s.Heading, most, most})
		}
	}
	rows := len(wrapped(whereWords(widest), style, f.wide))
	f.need(float64(rows) * leading * small)
	left, wide, y := f.left, f.wide, f.y
	f.draw(func(b vector.Board) {
		for i, row := range wrapped(whereWords(f.begun), style, wide) {
			style.Words = printable(row)
			b.Write(geometry.Point{X: left, Y: y + small + float64(i)*leading*small}, style)
		}
	})
	f.y += float64(rows) * leading * small
}

// First says on which page a section is that is read before anything is done, over a part.
type First struct {
	Heading, Words string
	Part
}

func (p First) lay(f *flow) {
	style := vector.Text{Size: body, Bold: true, Colour: vector.Ink}
	f.need(leading * body)
	at := geometry.Point{X: f.left, Y: f.y + body}
	f.draw(func(b vector.Board) {
		for _, s := range f.begun {
			if s.heading == p.Heading {
				style.Words = fmt.Sprintf("%s: page %d", p.Words, s.page)
				b.Write(at, style)
			}
		}
	})
	f.y += leading * body
	p.Part.lay(f)
}

// whereWords are the sections with their pages in a sentence: "Underneath 2; The runs 3."
func whereWords(all []begun) string {
	texts := make([]string, len(all))
	for i, s := range all {
		texts[i] = fmt.Sprintf("%s\u00a0%d", strings.ReplaceAll(shortly(s.heading), " ", "\u00a0"), s.page)
	}
	return "On which page: " + strings.Join(texts, "; ") + "."
}

// shortly is a heading as far as it names its section: "Cut list" of "Cut list: what the runs are cut to".
func shortly(heading string) string {
	if end := strings.IndexAny(heading, ":,"); end >= 0 {
		return heading[:end]
	}
	return heading
}
