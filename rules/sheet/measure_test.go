package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules/template"
)

// brokenSlowly is what breaking a text into rows comes to, with every row measured anew: words as long as they fit, and one that no row holds by letters.
func brokenSlowly(text string, style vector.Text, width float64) (rows []string) {
	fits := func(s string) bool { return measured(style, s) <= width+rounding }
	row := ""
	for _, word := range split(text) {
		if row != "" && fits(row+" "+word) {
			row += " " + word
			continue
		}
		if row != "" {
			rows = append(rows, row)
		}
		row = word
		for !fits(row) {
			letters := []rune(row)
			n := len(letters)
			for n > 1 && !fits(string(letters[:n])) {
				n--
			}
			if n == len(letters) {
				break
			}
			rows, row = append(rows, string(letters[:n])), string(letters[n:])
		}
	}
	return append(rows, row)
}

// Texts are broken as they are slowly: no row is wider than its column, each holds as many words as fit, and all letters are there in order.
func TestTextsAreBrokenAsSlowly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, width := wordsOfOthers.Draw(t, "text"), rapid.Float64Range(8, 120).Draw(t, "width")
		style := vector.Text{Size: rapid.SampledFrom([]float64{small, body, large}).Draw(t, "size"), Bold: rapid.Bool().Draw(t, "bold")}
		rows := wrapped(text, style, width)
		if tight(strings.Join(rows, "")) != tight(strings.Join(split(text), "")) {
			t.Fatalf("letters are lost: %q", rows)
		}
		for _, row := range rows {
			if w := measured(style, row); w > width+1e-3 && len([]rune(row)) > 1 {
				t.Fatalf("%q is %g wide in %g", row, w, width)
			}
		}
		if slow := brokenSlowly(text, style, width); !slices.Equal(rows, slow) {
			t.Fatalf("%q\nslowly %q", rows, slow)
		}
	})
}

// What is cut to a width fits it, begins as the text does, and ends with an ellipsis if and only if something is left out.
func TestWhatIsCutFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, width := wordsOfOthers.Draw(t, "text"), rapid.Float64Range(10, 90).Draw(t, "width")
		style := vector.Text{Size: small}
		whole := strings.Join(strings.Fields(printable(text)), " ")
		short := cut(text, style, width)
		switch {
		case measured(style, short) > width+rounding:
			t.Fatalf("%q is %g wide in %g", short, measured(style, short), width)
		case measured(style, whole) <= width && short != whole:
			t.Fatalf("%q fits, and is %q", whole, short)
		case short != whole && (!strings.HasSuffix(short, "…") || !strings.HasPrefix(whole, strings.TrimSuffix(short, "…"))):
			t.Fatalf("%q of %q", short, whole)
		case short != whole && measured(style, strings.TrimSuffix(short, "…"))+measured(style, "MM…") < width-measured(style, " MM"):
			t.Fatalf("%q of %q has room for more in %g", short, whole, width)
		}
	})
}

// Letters count as a list of notes does: each source has its own, however many there are, and the same source the same.
func TestSourcesHaveTheirLetters(t *testing.T) {
	for i, want := range map[int]string{0: "a", 1: "b", 25: "z", 26: "aa", 27: "ab", 51: "az", 52: "ba", 701: "zz", 702: "aaa"} {
		assert.Equal(t, want, letter(i))
	}
	var by sources
	seen := map[string]bool{}
	for i := range 800 {
		l := by.letter(fmt.Sprint("book ", i))
		assert.False(t, seen[l], l)
		seen[l] = true
	}
	assert.Equal(t, "a", by.letter("book 0"), "met again")
	assert.Empty(t, by.letter(""))
	assert.Len(t, by, 800)
	by = sources{"one", "two"}
	assert.Equal(t, "b\u00a0c\u00a0a", by.letters("two; three; one"))
	assert.Equal(t, sources{"one", "two", "three"}, by)
}

// A picture's scale is the smallest round one at which it fits: 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6 or 8 by a power of ten, never a third above what it takes.
func TestScalesAreRound(t *testing.T) {
	for least, want := range map[float64]float64{1: 1, 1.01: 1.25, 9.3: 10, 10: 10, 12.5: 12.5, 12.6: 15, 17: 20, 31: 40, 8.01: 10, 0.9: 1, 0.55: 0.6} {
		assert.InDelta(t, want, roundScale(least), 1e-9, "%g", least)
	}
	rapid.Check(t, func(t *rapid.T) {
		least := math.Exp(rapid.Float64Range(-3, 8).Draw(t, "power"))
		if scale := roundScale(least); scale < least || scale > least*4/3+1e-9 {
			t.Fatalf("1 to %g for 1 to %g", scale, least)
		}
	})
}

// A picture is true to its scale whatever room it has: a square of 400 mm is as wide as it is high on paper, at a round scale, and all of it lies within
// the picture's box and the box within the page.
func TestPicturesAreTrueToScale(t *testing.T) {
	for _, paper := range template.Papers {
		for _, wide := range []float64{40, 85, 178} {
			square := geometry.NewRectangle(geometry.Point{X: 100, Y: -200}, geometry.Point{X: 500, Y: 200}, 0)
			item := scene.Item{Role: scene.Body, Primitive: scene.Outline, Solid: scene.Upright(square, 0, 10)}
			s := scene.Scene{Projection: scene.Above.Projection(), Items: []scene.Item{item}}
			a, b := s.Projection.Point(geometry.Point3{X: 50, Y: -250}), s.Projection.Point(geometry.Point3{X: 550, Y: 250})
			s.Min, s.Max = geometry.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, geometry.Point{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
			f := newFlow(paper)
			f.wide = wide
			Picture{Scene: s, Most: 60, Say: plainWords()}.lay(f)
			p := printedOf(f.pages[0])
			require.Len(t, p.pictures, 1)
			box := p.pictures[0]
			assert.LessOrEqual(t, box.Left+box.Width, aside+wide+1e-6)
			assert.LessOrEqual(t, box.Height, 60*min(1, paper.High/297)+1e-6, "a page shorter than A4 has less room for it")
			assert.InDelta(t, box.Width, box.Height, 1e-6, "what is shown is as wide as it is high")
			scale := 500 / box.Height
			assert.InDelta(t, scale, roundScale(scale-1e-6), 1e-6, "1 to %g", scale)
			low, high := p.lines[0][0], p.lines[0][0] // the square is drawn before what is round it
			for _, at := range p.lines[0] {
				low, high = geometry.Point{X: min(low.X, at.X), Y: min(low.Y, at.Y)}, geometry.Point{X: max(high.X, at.X), Y: max(high.Y, at.Y)}
			}
			assert.InDelta(t, 400/scale, high.X-low.X, 0.02)
			assert.InDelta(t, 400/scale, high.Y-low.Y, 0.02)
			assert.True(t, low.X >= box.Left && high.X <= box.Left+box.Width && low.Y >= box.Top && high.Y <= box.Top+box.Height)
		}
	}
}

// A shorter page has less room for a picture, a higher one no more than is asked for.
func TestAPictureIsLowerOnAShorterPage(t *testing.T) {
	s := scene.Scene{Projection: scene.Above.Projection(), Max: geometry.Point{X: 1000, Y: 1000}}
	for high, scale := range map[float64]float64{297: 10, 594: 10, 279: 12.5} { // of 100 mm there are 93.9
		f := newFlow(template.Paper{Wide: 210, High: high})
		Picture{Scene: s, Most: 100, Say: plainWords()}.lay(f)
		p := printedOf(f.pages[0])
		require.Len(t, p.pictures, 1)
		assert.InDelta(t, 1000/scale, p.pictures[0].Height, 1e-6, "a page of %g mm", high)
	}
}

// What is around a place is shown as far as is asked either way, and across as much more as there is room for: the picture takes all of its column.
func TestAPictureAroundAPlaceTakesItsRoom(t *testing.T) {
	for _, wide := range []float64{60, 85, 178} {
		f := newFlow(template.Papers["a4"])
		f.wide = wide
		s := scene.Scene{Projection: scene.Above.Projection(), Max: geometry.Point{X: 3000, Y: 1800}}
		Picture{Title: "near", Scene: s, Most: 44, Around: &Around{geometry.Point{X: 400, Y: 900}, geometry.Point{X: 150, Y: 150}}, Say: plainWords()}.lay(f)
		p := printedOf(f.pages[0])
		require.Len(t, p.pictures, 1)
		box := p.pictures[0]
		assert.InDelta(t, aside+wide-1, box.Left+box.Width, 1e-6, "up to a millimetre before the column's end")
		assert.LessOrEqual(t, box.Height, 44.0+1e-6)
		scale := 300 / box.Height
		assert.InDelta(t, scale, roundScale(scale-1e-6), 1e-6)
		assert.GreaterOrEqual(t, box.Width*scale, 300-1e-6, "all that is asked is in it")
		assert.Equal(t, "near", p.texts[0].Words)
		assert.Less(t, p.boxes[0].Top+p.boxes[0].Height, box.Top)
		assert.GreaterOrEqual(t, f.y, box.Top+box.Height+2*small, "the ruler's figures stand below it")
	}
}
