package vector_test

import (
	"fmt"
	"image/color"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
)

// act is one thing done to a board.
type act struct {
	what   string // face, line or text
	points []geometry.Point
	stroke vector.Stroke
	text   vector.Text
	ink    color.NRGBA
}

// diary is a board that keeps what was done to it in order.
type diary struct{ acts []act }

func (d *diary) Face(outline []geometry.Point, fill color.NRGBA) {
	d.acts = append(d.acts, act{what: "face", points: outline, ink: fill})
}

func (d *diary) Line(points []geometry.Point, s vector.Stroke) {
	d.acts = append(d.acts, act{what: "line", points: points, stroke: s, ink: s.Colour})
}

func (d *diary) Write(at geometry.Point, t vector.Text) {
	d.acts = append(d.acts, act{what: "text", points: []geometry.Point{at}, text: t, ink: t.Colour})
}

func (d *diary) Windowed(_ vector.Box, draw func()) { draw() }

// drawn returns what is done to draw items, whole, on the tests' page.
func drawn(look vector.Look, items ...scene.Item) []act {
	var d diary
	s := sceneOf(items...)
	vector.Draw(&d, &s, vector.Fit(&s, page), look)
	return d.acts
}

// byRole is a look in which each role has a colour of its own.
func byRole(it *scene.Item) vector.Colours {
	ink := color.NRGBA{R: uint8(it.Role), A: 255}
	return vector.Colours{Line: ink, Fill: ink, Words: ink}
}

func coloured() vector.Look {
	l := look
	l.Colours = byRole
	return l
}

func line(role scene.Role, places ...geometry.Point3) scene.Item {
	return scene.Item{Role: role, Primitive: scene.Stroke, Path: scene.Straight(places...)}
}

// What is in front comes last, whatever order things were entered in; faces are under every line.
func TestWhatIsInFrontIsDrawnLast(t *testing.T) {
	roles := []scene.Role{scene.Cut, scene.Steel, scene.Exhaust, scene.Floor, scene.Opening, scene.Dimension}
	rapid.Check(t, func(t *rapid.T) {
		order := rapid.Permutation(roles).Draw(t, "order")
		var items []scene.Item
		for _, role := range order {
			items = append(items, upright(role, scene.Area, geometry.NewRectangle(geometry.Point{X: 900, Y: -200}, geometry.Point{X: 1900, Y: 300}, 0)))
		}
		lastFace, firstEdge, front := -1, -1, -1
		for i, a := range drawn(coloured(), items...) {
			switch {
			case a.what == "face":
				lastFace = i
			case a.what == "line" && len(a.points) == 5 && a.ink != look.Paper: // an outline, and not its rim
				if firstEdge < 0 {
					firstEdge = i
				}
				now := int(scene.Role(a.ink.R).Pen().Front)
				require.GreaterOrEqual(t, now, front)
				front = now
			}
		}
		require.Positive(t, firstEdge)
		require.Less(t, lastFace, firstEdge)
	})
}

// Of lines on paper the wide one is twice as wide as the narrow one, a dash is 12 widths, a gap 3, a dot no longer than the line is
// wide (ISO 128-2): worked by hand for lines of 0.25 mm.
func TestLinesOnPaper(t *testing.T) {
	assert.Equal(t, 2*vector.PaperWidths[scene.Fine], vector.PaperWidths[scene.Heavy])
	pipe := line(scene.Lines, geometry.Point3{X: 100}, geometry.Point3{X: 900})
	unsure := pipe
	unsure.Unsure = true
	above := pipe
	above.Layer = scene.Upon // hidden from below
	for name, c := range map[string]struct {
		item scene.Item
		want []float64
	}{
		"whole":   {pipe, nil},
		"dotted":  {unsure, []float64{0.125, 0.75}},
		"dashed":  {above, []float64{3, 0.75}},
		"dashdot": {line(scene.Pressed, geometry.Point3{X: 100}, geometry.Point3{X: 900}), []float64{6, 0.75, 0.125, 0.75}},
	} {
		acts := drawn(look, c.item)
		last := acts[len(acts)-1]
		assert.Equal(t, 0.25, last.stroke.Width, name)
		assert.Equal(t, c.want, last.stroke.Dashes, name)
		if c.item.Role.Pen().Rim {
			require.Len(t, acts, 2, name)
			assert.Equal(t, vector.Stroke{Width: 0.75, Colour: vector.White}, acts[0].stroke, "a bare rim, whole")
			assert.Equal(t, acts[0].points, last.points)
		}
	}
	picked := pipe
	picked.Selected = true
	acts := drawn(look, picked)
	assert.Equal(t, 0.5, acts[len(acts)-1].stroke.Width)
}

// A dimension has a stroke across either end, square to it, its middle on the end; one without length has none.
func TestADimensionEndsInStrokes(t *testing.T) {
	acts := drawn(look, line(scene.Dimension, geometry.Point3{X: 500, Y: -100}, geometry.Point3{X: 1100, Y: 400}))
	require.Len(t, acts, 4, "a rim, the line and its ends")
	whole := acts[1].points
	for i, end := range acts[2:] {
		a, b := end.points[0], end.points[1]
		assert.InDelta(t, 0, a.Add(b).Scale(0.5).Sub(whole[i]).Norm(), 1e-9)
		assert.InDelta(t, 0, b.Sub(a).Dot(whole[1].Sub(whole[0])), 1e-9)
		assert.InDelta(t, 2.4, b.Sub(a).Norm(), 1e-9)
	}
	assert.Len(t, drawn(look, line(scene.Dimension, geometry.Point3{X: 500}, geometry.Point3{X: 500})), 2)
}

// Each sign is drawn within what is kept free of words for it but for a stroke that leads out of it, and no two are the same.
func TestEverySignIsItsOwn(t *testing.T) {
	const reach = 1.3 * 1.4
	seen := map[string]scene.Sign{}
	for i := range scene.Roles {
		role := scene.Role(i)
		sign := role.Pen().Sign
		acts := drawn(look, scene.Item{Role: role, Primitive: scene.Spot, At: geometry.Point3{X: 1500}})
		if sign == scene.NoSign {
			assert.Empty(t, acts, "role %d", i)
			continue
		}
		require.NotEmpty(t, acts, "role %d", i)
		middle := geometry.Point{X: page.Left + page.Width/2, Y: page.Top + page.Height/2}
		var marks []string
		for _, a := range acts {
			for _, p := range a.points {
				assert.LessOrEqual(t, p.Sub(middle).Norm(), reach+1e-9, "role %d", i)
			}
			box := geometry.NewLine(a.points, 0)
			low, high := box.Bounds()
			marks = append(marks, fmt.Sprintf("%s %d %.2f %.2f", a.what, len(a.points), high.Sub(low), a.stroke.Width))
		}
		key := strings.Join(marks, "; ")
		other, taken := seen[key]
		assert.True(t, !taken || other == sign, "signs %d and %d", sign, other)
		seen[key] = sign
	}
	assert.Len(t, seen, 10)
	off := scene.Item{Role: scene.Tie, Primitive: scene.Spot, At: geometry.Point3{X: 9000}}
	assert.Empty(t, drawn(look, off), "outside the frame")
}

// Figures are written before names, a foul thing's before another's, and where a name has no room its kind's letters are tried.
func TestWordsComeByTheirRank(t *testing.T) {
	thing := func(label, code string, state scene.State) scene.Item {
		it := upright(scene.Steel, scene.Area, geometry.NewRectangle(geometry.Point{X: 1495, Y: -5}, geometry.Point{X: 1505, Y: 5}, 0))
		it.Label, it.Code, it.State = label, code, state
		return it
	}
	figureAt := line(scene.Dimension, geometry.Point3{X: 1480}, geometry.Point3{X: 1520})
	figureAt.Measure = &scene.Measure{Value: 7}
	var texts []string
	for _, a := range drawn(look, thing("Plain One", "", scene.Clear), thing("Foul One", "", scene.Foul), figureAt) {
		if a.what == "text" {
			texts = append(texts, a.text.Words)
		}
	}
	assert.Equal(t, []string{"7 mm", "foul one!", "plain one"}, texts)

	texts = nil
	long := thing(strings.Repeat("a very long name ", 12), "cr", scene.Doubtful)
	for _, a := range drawn(look, long) {
		if a.what == "text" {
			texts = append(texts, a.text.Words)
		}
	}
	assert.Equal(t, []string{"cr?"}, texts, "the name goes nowhere on the page")
}

// Wherever things are, their words are whole within the frame, and what is not seen has none.
func TestWordsStayWithinTheFrame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		middle := geometry.Point{X: rapid.Float64Range(0, 3000).Draw(t, "x"), Y: rapid.Float64Range(-900, 900).Draw(t, "y")}
		thing := upright(scene.Lines, scene.Area, geometry.NewLine([]geometry.Point{{X: 100, Y: -700}, {X: 2900, Y: 600}}, 20))
		thing.Label = "brake pipe"
		spot := scene.Item{Role: scene.Tie, Primitive: scene.Spot, At: geometry.Point3{X: 1000, Y: 200}, Label: "bolt"}
		s := sceneOf(thing, spot)
		frame := vector.At(&s, page, middle, rapid.Float64Range(1, 12).Draw(t, "scale"))
		var k kept
		vector.Draw(&k, &s, frame, look)
		for i, b := range k.boxes {
			require.True(t, b.Left >= page.Left && b.Top >= page.Top && b.Left+b.Width <= page.Left+page.Width && b.Top+b.Height <= page.Top+page.Height)
			at := frame.Place(geometry.Point{X: 1000, Y: 200})
			if k.texts[i].Words == "bolt" {
				aside := geometry.Point{X: b.Left + b.Width/2, Y: b.Top + b.Height/2}.Sub(at).Norm()
				require.LessOrEqual(t, aside, b.Width/2+10, "it stands by its sign")
			}
		}
	})
}

// A colourless look draws nothing, and one without words writes none.
func TestWhatHasNoColourIsNotDrawn(t *testing.T) {
	bare := look
	bare.Colours = func(*scene.Item) vector.Colours { return vector.Colours{} }
	thing := upright(scene.Steel, scene.Area, geometry.NewRound(geometry.Point{X: 1500}, 300))
	thing.Label = "wheel"
	spot := scene.Item{Role: scene.Tie, Primitive: scene.Spot, At: geometry.Point3{X: 1000}, Label: "bolt"}
	assert.Empty(t, drawn(bare, thing, spot))
	bare.Colours = func(*scene.Item) vector.Colours { return vector.Colours{Line: vector.Ink} }
	for _, a := range drawn(bare, thing, spot) {
		assert.NotEqual(t, "text", a.what)
		assert.False(t, a.what == "face" && len(a.points) > 10, "no ground")
	}
}

// Every figure of a ruler stands at its place: below the frame what the tape reads from the bumper, beside it what it reads from the
// centreline, left with a plus; neighbours are a round step apart.
func TestRulersSayWhereTheyAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		view := rapid.SampledFrom([]scene.View{scene.Below, scene.Above}).Draw(t, "view")
		s := scene.Scene{Projection: view.Projection()}
		middle := geometry.Point{X: rapid.Float64Range(-900, 3000).Draw(t, "x"), Y: rapid.Float64Range(-900, 900).Draw(t, "y")}
		frame := vector.At(&s, page, middle, rapid.Float64Range(0.3, 20).Draw(t, "scale"))
		var d diary
		vector.Rulers(&d, &s, frame, look, func(w scene.Way) string { return string(w) })
		var across, up []float64
		for i, a := range d.acts {
			mm, err := strconv.ParseFloat(a.text.Words, 64)
			if a.what != "text" || err != nil {
				continue
			}
			tick := d.acts[i-1].points[0]
			place := frame.Plane(tick)
			if tick.Y == page.Top+page.Height && d.acts[i-1].points[1].Y > tick.Y {
				across = append(across, mm)
				require.InDelta(t, mm, place.X, 1e-6)
				require.NotContains(t, a.text.Words, "+")
			} else {
				up = append(up, mm)
				require.InDelta(t, mm, place.Y, 1e-6)
				require.Equal(t, mm > 0, strings.HasPrefix(a.text.Words, "+"))
			}
			require.NotEqual(t, "-0", a.text.Words)
		}
		for _, figures := range [][]float64{across, up} {
			require.GreaterOrEqual(t, len(figures), 2)
			require.True(t, slices.IsSorted(figures))
			step := figures[1] - figures[0]
			require.GreaterOrEqual(t, step, 25*frame.Scale-1e-6)
			require.LessOrEqual(t, step, 2.5*25*frame.Scale+1e-6)
			digits := strings.TrimRight(strconv.FormatFloat(step, 'f', 0, 64), "0")
			require.Contains(t, []string{"1", "2", "5"}, digits, "%v", step)
		}
	})
}

// The names of the ways stand at the ends they lead to.
func TestRulersNameTheWays(t *testing.T) {
	for view, want := range map[scene.View]string{
		scene.Below: "seen from below; up: right, down: left", scene.Above: "seen from above; up: left, down: right",
	} {
		s := scene.Scene{Projection: view.Projection()}
		var d diary
		vector.Rulers(&d, &s, vector.At(&s, page, geometry.Point{}, 10), look, func(w scene.Way) string { return string(w) })
		texts := map[string]geometry.Point{}
		for _, a := range d.acts {
			if a.what == "text" {
				texts[a.text.Words] = a.points[0]
			}
		}
		assert.Contains(t, texts, want)
		assert.Equal(t, page.Left, texts["< bumper"].X)
		assert.Equal(t, page.Left+page.Width, texts["nose >"].X)
	}
}
