package canvas

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

// things are the roles of what is strewn about.
var things = []scene.Role{
	scene.Steel, scene.Rail, scene.Rib, scene.Lines, scene.Hot, scene.Pressed, scene.Movable, scene.Fitting, scene.Hole, scene.Muffler, scene.Wheel, scene.Plate,
}

// anyScene draws a van with things strewn about it, as somebody might look at it, and how.
func anyScene(t *rapid.T) (s scene.Scene, w, h int, look Look) {
	s = van(rapid.SampledFrom([]scene.View{scene.Below, scene.Above}).Draw(t, "view"))
	for range rapid.IntRange(0, 30).Draw(t, "things") {
		at := pt(rapid.Float64Range(-200, 3300).Draw(t, "x"), rapid.Float64Range(-1000, 1000).Draw(t, "y"))
		f := box(at.X, at.X+rapid.Float64Range(5, 700).Draw(t, "length"), at.Y, at.Y+rapid.Float64Range(5, 300).Draw(t, "breadth"))
		switch rapid.IntRange(0, 2).Draw(t, "shape") {
		case 1:
			f = geometry.NewRound(at, rapid.Float64Range(5, 200).Draw(t, "radius"))
		case 2:
			f = line(rapid.Float64Range(4, 80).Draw(t, "across"), at, at.Add(pt(300, 20)), at.Add(pt(350, -400)))
		}
		s.Items = append(s.Items, scene.Item{
			Role: rapid.SampledFrom(things).Draw(t, "role"), Code: "X", Label: rapid.SampledFrom([]string{"", "brake pipe", "Büchse"}).Draw(t, "name"),
			Solid: flat(f), State: scene.State(rapid.IntRange(0, 3).Draw(t, "state")), Unsure: rapid.Bool().Draw(t, "unsure"), Selected: rapid.Bool().Draw(t, "selected"),
		})
	}
	if rapid.Bool().Draw(t, "no cut") {
		s.Items = s.Items[:12]
	}
	look = Look{
		Left: "left", Right: "right", Faces: rapid.Bool().Draw(t, "faces"), Codes: rapid.Bool().Draw(t, "codes"),
		Units: rapid.SampledFrom([]survey.Units{survey.Millimetres, survey.Inches}).Draw(t, "units"),
	}
	if rapid.Bool().Draw(t, "near") {
		look.Camera = desk.Camera{Middle: pt(1210, 240), Scale: rapid.Float64Range(1, 30).Draw(t, "scale")}
	}
	w, h = rapid.IntRange(20, 170).Draw(t, "w"), rapid.IntRange(4, 60).Draw(t, "h")
	if rapid.Bool().Draw(t, "shaded") {
		m := NewMap(s, max(w, MinWidth), max(h, MinHeight), look.Camera, look.Units)
		look.Shade = NewShade(m, func(p geometry.Point) scene.Grade { return scene.Grade(int(abs(p.X)/200+abs(p.Y)/90) % scene.Grades) })
	}
	return s, w, h, look
}

// A painter that has painted other pictures paints each as one that has painted none: nothing of them is left, neither on the
// cells nor in what is written out.
func TestAPictureLeavesNothingForTheNext(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var used Painter
		for range rapid.IntRange(2, 5).Draw(t, "pictures") {
			s, w, h, look := anyScene(t)
			got, want := used.Paint(s, w, h, look), Paint(s, w, h, look)
			require.Equal(t, want.Cells, got.Cells)
			colour := desk.Colour(rapid.IntRange(0, 2).Draw(t, "colour"))
			in := looks.Look(rapid.IntRange(0, looks.Count-1).Draw(t, "look"))
			require.Equal(t, want.Encode(colour, in), got.Encode(colour, in))
		}
	})
}

// A picture that is wanted again is the one that was painted, whatever was written on that, and one that differs in anything is not.
func TestAPictureThatIsWantedAgainIsAsItWasPainted(t *testing.T) {
	var p Painter
	s, look := van(scene.Below), plainLook
	for range 2 {
		c := p.Paint(s, 100, 30, look)
		want := Paint(s, 100, 30, look)
		require.Equal(t, want.Cells, c.Cells)
		require.Equal(t, want.Texts, c.Texts)
		c.Write(Text{Col: 3, Row: 3, Name: "somebody's own"})
	}
	painted := p.shown
	p.Paint(van(scene.Below), 100, 30, look)
	assert.Same(t, painted, p.shown, "what is the same is not painted again")
	for _, differ := range []struct {
		in     string
		change func()
	}{
		{"a figure deep inside", func() {
			s = van(scene.Below)
			s.Items[slices.IndexFunc(s.Items, func(it scene.Item) bool { return it.Measure != nil })].Measure.Value++
		}},
		{"the view", func() { s = van(scene.Above) }},
		{"faces", func() { look.Faces = true }},
		{"the shade", func() {
			look.Shade = NewShade(NewMap(s, 100, 30, look.Camera, look.Units), func(geometry.Point) scene.Grade { return scene.MuchRoom })
		}},
		{"a sign", func() { look.Signs = []geometry.Point3{{X: 700}} }},
	} {
		before := p.shown
		differ.change()
		got := p.Paint(s, 100, 30, look)
		assert.NotSame(t, before, p.shown, differ.in)
		assert.Equal(t, Paint(s, 100, 30, look).Cells, got.Cells, differ.in)
	}
	wider := p.Paint(s, 120, 30, look)
	assert.Equal(t, Paint(s, 120, 30, look).Cells, wider.Cells)
}

// Whether any cell of a range is in a set is what asking each would say.
func TestASetOfCellsKnowsItsRanges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const n = 400
		var s cellset
		s.begin(n)
		in := rapid.SliceOfN(rapid.IntRange(0, n-1), 0, 12).Draw(t, "in")
		has := map[int]bool{}
		for _, i := range in {
			s.add(i)
			has[i] = true
		}
		from := rapid.IntRange(0, n).Draw(t, "from")
		to := rapid.IntRange(from, n).Draw(t, "to")
		want := false
		for i := from; i < to; i++ {
			want = want || has[i]
			assert.Equal(t, has[i], s.has(i))
		}
		assert.Equal(t, want, s.any(from, to))
	})
}
