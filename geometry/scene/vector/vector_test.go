package vector_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/color"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
)

// kept is a board that keeps what is drawn on it.
type kept struct {
	faces  [][]geometry.Point
	lines  [][]geometry.Point
	widths []float64
	texts  []vector.Text
	boxes  []vector.Box // of the texts
}

func (k *kept) Face(outline []geometry.Point, _ color.NRGBA) { k.faces = append(k.faces, outline) }
func (k *kept) Line(points []geometry.Point, s vector.Stroke) {
	k.lines, k.widths = append(k.lines, points), append(k.widths, s.Width)
}
func (k *kept) Write(at geometry.Point, t vector.Text) {
	k.texts, k.boxes = append(k.texts, t), append(k.boxes, vector.BoxOf(at.X, at.Y, t))
}
func (k *kept) Windowed(_ vector.Box, draw func()) { draw() }

func figure(m scene.Measure) string { return "7 mm" }

var look = vector.Black(3, figure, strings.ToLower)

// page is where the tests draw, mm.
var page = vector.Box{Left: 20, Top: 15, Width: 240, Height: 160}

func sceneOf(items ...scene.Item) scene.Scene {
	for i := range items {
		items[i].Ref = -1
	}
	return scene.Scene{
		Projection: scene.Below.Projection(), Min: geometry.Point{X: -100, Y: -900}, Max: geometry.Point{X: 3100, Y: 900}, Items: items,
	}
}

func upright(role scene.Role, form scene.Primitive, f geometry.Footprint) scene.Item {
	return scene.Item{Role: role, Primitive: form, Solid: scene.Upright(f, -50, 0)}
}

func TestAPlaceIsWhereItIsDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, view := range []scene.View{scene.Below, scene.Above} {
			s := scene.Scene{Projection: view.Projection()}
			middle := geometry.Point{X: rapid.Float64Range(-3000, 3000).Draw(t, "x"), Y: rapid.Float64Range(-900, 900).Draw(t, "y")}
			f := vector.At(&s, page, middle, rapid.Float64Range(0.1, 40).Draw(t, "scale"))
			p := geometry.Point{X: rapid.Float64Range(-3000, 3000).Draw(t, "px"), Y: rapid.Float64Range(-900, 900).Draw(t, "py")}
			back := f.Plane(f.Place(p))
			assert.InDelta(t, p.X, back.X, 1e-9)
			assert.InDelta(t, p.Y, back.Y, 1e-9)
		}
	})
}

// From below left is down the board, from above it is up.
func TestLeftIsDownFromBelow(t *testing.T) {
	left := geometry.Point{Y: 100}
	for view, down := range map[scene.View]bool{scene.Below: true, scene.Above: false} {
		s := scene.Scene{Projection: view.Projection()}
		f := vector.At(&s, page, geometry.Point{}, 10)
		assert.Equal(t, down, f.Place(left).Y > f.Place(geometry.Point{}).Y, s.Projection.From)
	}
}

func TestAWholeSceneFitsItsBox(t *testing.T) {
	s := sceneOf()
	f := vector.Fit(&s, page)
	for _, p := range []geometry.Point{s.Min, s.Max} {
		q := f.Place(p)
		assert.True(t, q.X >= page.Left-1e-9 && q.X <= page.Left+page.Width+1e-9 && q.Y >= page.Top-1e-9 && q.Y <= page.Top+page.Height+1e-9, "%v", q)
	}
	assert.InDelta(t, 3200/240.0, f.Scale, 1e-12, "the width decides")
}

// A pipe's outline is nowhere farther from its centreline than its radius, nor nearer but at corners too tight for it, and it
// covers what the footprint does.
func TestAnOutlineIsItsFootprints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.SampledFrom([]geometry.Shape{geometry.Rectangle, geometry.Round, geometry.Line}).Draw(t, "shape")
		at := func(name string) geometry.Point {
			return geometry.Point{X: rapid.Float64Range(0, 2000).Draw(t, name+" x"), Y: rapid.Float64Range(-800, 800).Draw(t, name+" y")}
		}
		var f geometry.Footprint
		switch shape {
		case geometry.Rectangle:
			f = geometry.NewRectangle(at("a"), at("b"), rapid.Float64Range(-90, 90).Draw(t, "turn"))
		case geometry.Round:
			f = geometry.NewRound(at("a"), rapid.Float64Range(5, 300).Draw(t, "radius"))
		default:
			f = geometry.NewLine([]geometry.Point{at("a"), at("b"), at("c")}, rapid.Float64Range(3, 60).Draw(t, "radius"))
		}
		var k kept
		s := sceneOf(upright(scene.Steel, scene.Area, f))
		frame := vector.Fit(&s, page)
		vector.Draw(&k, &s, frame, look)
		require.NotEmpty(t, k.faces)
		p := at("p")
		gap := f.GapOnly(p)
		if math.Abs(gap) < 0.05*frame.Scale {
			t.Skip("too near to the outline to tell")
		}
		assert.Equal(t, gap < 0, winds(k.faces[0], frame.Place(p)), "%v is %g off", p, gap)
	})
}

// winds tells by the winding number whether a place lies within an outline: another way than the hatching's.
func winds(outline []geometry.Point, p geometry.Point) bool {
	turn := 0.0
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		a, b = a.Sub(p), b.Sub(p)
		turn += math.Atan2(a.X*b.Y-a.Y*b.X, a.X*b.X+a.Y*b.Y)
	}
	return math.Abs(math.Round(turn/(2*math.Pi))) > 0
}

// The hatching of a rectangle fills its area: the lines' length by their spacing.
func TestHatchingFillsItsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Float64Range(300, 2000).Draw(t, "w"), rapid.Float64Range(300, 1000).Draw(t, "h")
		f := geometry.NewRectangle(geometry.Point{}, geometry.Point{X: w, Y: h}, rapid.Float64Range(-90, 90).Draw(t, "turn"))
		var k kept
		s := sceneOf(upright(scene.Steel, scene.Area, f))
		frame := vector.Fit(&s, page)
		vector.Draw(&k, &s, frame, look)
		const spacing = 1.6
		length := 0.0
		for _, line := range k.lines {
			if len(line) == 2 {
				length += line[1].Sub(line[0]).Norm()
				assert.True(t, winds(k.faces[0], line[0].Add(line[1]).Scale(0.5)))
			}
		}
		area := w * h / (frame.Scale * frame.Scale)
		assert.InDelta(t, area, length*spacing, spacing*(w+h)/frame.Scale, "%g", area)
	})
}

func TestNoTwoWordsOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var items []scene.Item
		for range rapid.IntRange(1, 40).Draw(t, "things") {
			a := geometry.Point{X: rapid.Float64Range(0, 3000).Draw(t, "x"), Y: rapid.Float64Range(-900, 900).Draw(t, "y")}
			it := upright(scene.Steel, scene.Area, geometry.NewRectangle(a, a.Add(geometry.Point{X: 200, Y: 40}), 0))
			it.Label = rapid.StringMatching(`[a-z]{3,9} [a-z]{2,6}`).Draw(t, "name")
			if rapid.Bool().Draw(t, "spot") {
				it = scene.Item{Role: scene.Tie, Primitive: scene.Spot, At: a.At(0), Label: it.Label}
			}
			items = append(items, it)
		}
		var k kept
		s := sceneOf(items...)
		vector.Draw(&k, &s, vector.Fit(&s, page), look)
		require.NotEmpty(t, k.texts)
		for i, a := range k.boxes {
			for _, b := range k.boxes[:i] {
				apart := a.Left >= b.Left+b.Width || b.Left >= a.Left+a.Width || a.Top >= b.Top+b.Height || b.Top >= a.Top+a.Height
				assert.True(t, apart, "%v %v", a, b)
			}
		}
	})
}

// A file of each kind: drawn twice it is the same, and other programs' readers take it.
func TestFilesAreWhole(t *testing.T) {
	f := geometry.NewLine([]geometry.Point{{X: 100}, {X: 900, Y: 300}}, 30)
	s := sceneOf(upright(scene.Hot, scene.Area, f), scene.Item{Role: scene.Tie, Primitive: scene.Spot, At: geometry.Point3{X: 500}, Label: `bolt <1> & "2"`})
	draw := func(b vector.Board) {
		frame := vector.Fit(&s, page)
		vector.Draw(b, &s, frame, look)
		vector.Rulers(b, &s, frame, look, func(w scene.Way) string { return string(w) })
		b.Write(geometry.Point{X: 8, Y: 100}, vector.Text{Words: "upwards", Size: 3, Turned: true, Colour: vector.Ink})
	}
	svg := func() []byte {
		b := vector.NewSVG(297, 210)
		draw(b)
		return b.Bytes()
	}
	pdf := func() []byte {
		b := vector.NewPDF("a page")
		b.Page(297, 210)
		draw(b)
		data, err := b.Bytes()
		require.NoError(t, err)
		return data
	}
	assert.Equal(t, svg(), svg())
	assert.Equal(t, pdf(), pdf())
	assert.True(t, bytes.HasPrefix(pdf(), []byte("%PDF-1.")))
	for d := xml.NewDecoder(bytes.NewReader(svg())); ; {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
	}
	assert.Contains(t, string(svg()), `width="297mm"`)
	assert.Contains(t, string(svg()), "bolt &lt;1&gt; &amp;")
}

// In pixels a circle of 127 mm is 127 mm across, to a fifth of a mm.
func TestPixelsAreTrueToSize(t *testing.T) {
	s := sceneOf(upright(scene.Cut, scene.Outline, geometry.NewRound(geometry.Point{X: 1500}, 63.5)))
	const perMM = 10
	b := vector.NewPixels(150*perMM, 150*perMM, perMM)
	box := vector.Box{Width: 150, Height: 150}
	vector.Draw(b, &s, vector.At(&s, box, geometry.Point{X: 1500}, 1), look)
	width := vector.PaperWidths[scene.Cut.Pen().Weight]
	for _, way := range []struct{ dx, dy int }{{1, 0}, {0, 1}} {
		first, last := -1, 0
		for i := range 150 * perMM {
			x, y := way.dx*i+way.dy*75*perMM, way.dy*i+way.dx*75*perMM
			if c := b.Picture.RGBAAt(x, y); c.A > 127 && c.R < 128 {
				if first < 0 {
					first = i
				}
				last = i
			}
		}
		assert.InDelta(t, 127+width, float64(last+1-first)/perMM, 0.2)
	}
}

func TestTheFontHasWhatIsWritten(t *testing.T) {
	for _, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		font, err := sfnt.Parse(ttf)
		require.NoError(t, err)
		for _, r := range "Ø°±×≤≥µ€−–“”…?!<>" {
			glyph, err := font.GlyphIndex(nil, r)
			require.NoError(t, err)
			assert.NotZero(t, glyph, string(r))
		}
	}
	assert.Greater(t, vector.WidthOf(vector.Text{Words: strings.Repeat("m", 3), Size: 3}), vector.WidthOf(vector.Text{Words: "iii", Size: 3}))
}
