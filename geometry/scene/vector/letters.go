package vector

import (
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// face is a font and what its letters are measured with.
type face struct {
	font *sfnt.Font
	mu   sync.Mutex
	buf  sfnt.Buffer
}

// faces are the regular and the bold letters.
var faces = sync.OnceValue(func() [2]*face {
	return [2]*face{{font: parsed(goregular.TTF)}, {font: parsed(gobold.TTF)}}
})

// parsed reads a font that is part of the program.
func parsed(ttf []byte) *sfnt.Font {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("the program's own font can't be read: " + err.Error())
	}
	return f
}

func faceOf(bold bool) *face {
	if bold {
		return faces()[1]
	}
	return faces()[0]
}

// unit is how many parts of an em letters are measured in.
const unit = 1000

// WidthOf returns how wide a text is, mm.
func WidthOf(t Text) float64 {
	f := faceOf(t.Bold)
	f.mu.Lock()
	defer f.mu.Unlock()
	var width fixed.Int26_6
	for _, r := range t.Words {
		glyph, err := f.font.GlyphIndex(&f.buf, r)
		if err != nil {
			continue
		}
		if advance, err := f.font.GlyphAdvance(&f.buf, glyph, fixed.I(unit), font.HintingNone); err == nil {
			width += advance
		}
	}
	return float64(width) / 64 / unit * t.Size
}

// What of an em letters reach above their baseline, and below it: figures and capitals of the program's font, rounded up.
const (
	ascent  = 0.75
	descent = 0.22
)

// BoxOf returns the box that a text fills where it is written.
func BoxOf(x, y float64, t Text) Box {
	w := WidthOf(t)
	switch t.Align {
	case ByMiddle:
		x -= w / 2
	case ByEnd:
		x -= w
	}
	return Box{Left: x, Top: y - ascent*t.Size, Width: w, Height: (ascent + descent) * t.Size}
}

// lackedBox stands for a letter that the program's font lacks: a font's own sign for that is easily taken for nothing.
const lackedBox = '□'

// Legible returns a text with a box in the place of each letter that the program's font lacks.
func Legible(text string) string {
	f := faceOf(false)
	f.mu.Lock()
	defer f.mu.Unlock()
	return strings.Map(func(r rune) rune {
		if glyph, err := f.font.GlyphIndex(&f.buf, r); err != nil || glyph == 0 {
			return lackedBox
		}
		return r
	}, text)
}
