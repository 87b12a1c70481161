package vector

import (
	"image"
	"image/color"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

var (
	redInk  = color.NRGBA{R: 255, A: 255}
	greyInk = color.NRGBA{R: 90, G: 90, B: 90, A: 255}
)

// tried is a board that keeps what is drawn on it.
type tried struct {
	faces []faceDrawn
	lines []lineDrawn
	texts []Text
	at    []geometry.Point
}

type faceDrawn struct {
	outline []geometry.Point
	fill    color.NRGBA
}

type lineDrawn struct {
	points []geometry.Point
	Stroke
}

func (b *tried) Face(outline []geometry.Point, fill color.NRGBA) {
	b.faces = append(b.faces, faceDrawn{outline, fill})
}
func (b *tried) Line(points []geometry.Point, s Stroke) {
	b.lines = append(b.lines, lineDrawn{points, s})
}
func (b *tried) Write(at geometry.Point, t Text) {
	b.texts, b.at = append(b.texts, t), append(b.at, at)
}
func (b *tried) Windowed(_ Box, draw func()) { draw() }
func (b *tried) drawn(s scene.Scene, screen Screen, scale float64) Frame {
	frame := At(&s, Box{Width: 100, Height: 80}, geometry.Point{}, scale)
	Draw(b, &s, frame, Look{
		Paper: White, Letters: 4, Widths: Widths{scene.Fine: 0.3, scene.Heavy: 0.6}, Screen: &screen,
		Colours: func(*scene.Item) Colours { return Colours{Line: Ink, Ground: greyInk} },
	})
	return frame
}

func of(items ...scene.Item) scene.Scene {
	return scene.Scene{Projection: scene.Below.Projection(), Items: items}
}

func solid(role scene.Role, f geometry.Footprint) scene.Item {
	return scene.Item{Role: role, Solid: scene.Upright(f, -50, 0), Ref: -1}
}

func round(radius float64) scene.Item {
	return solid(scene.Cut, geometry.NewRound(geometry.Point{X: 10, Y: -20}, radius))
}

// The ring is as large as the cut to its outer edge, and never smaller than its least; it is the last line, with a bare rim.
func TestTheRingIsNeverTooSmallToSee(t *testing.T) {
	for radius, want := range map[float64]float64{200: 20, 63.5: 6.35, 20: 5} {
		var b tried
		frame := b.drawn(of(round(radius), solid(scene.Rail, geometry.NewRectangle(geometry.Point{X: -90, Y: -9}, geometry.Point{X: 90, Y: 9}, 0))), Screen{Ring: 5, Width: 1}, 10)
		ring := b.lines[len(b.lines)-1]
		for _, p := range ring.points {
			assert.InDelta(t, want, p.Sub(frame.Place(geometry.Point{X: 10, Y: -20})).Norm()+ring.Width/2, off, "radius %g", radius)
		}
		assert.Equal(t, ring.points[0], ring.points[len(ring.points)-1], "closed")
		assert.Equal(t, Stroke{Width: 1, Colour: Ink}, ring.Stroke)
		rim := b.lines[len(b.lines)-2]
		assert.Equal(t, White, rim.Colour)
		assert.Greater(t, rim.Width, ring.Width)
	}
}

// What is drawn as in the way is what lies both in a thing that is foul and in the ring, by looking at places all over.
func TestWhatIsInTheWayLiesInBoth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := func(name string) geometry.Point {
			return geometry.Point{X: rapid.Float64Range(-120, 120).Draw(t, name+" x"), Y: rapid.Float64Range(-120, 120).Draw(t, name+" y")}
		}
		f := geometry.NewRectangle(at("a"), at("b"), rapid.Float64Range(-90, 90).Draw(t, "turn"))
		switch rapid.IntRange(0, 2).Draw(t, "shape") {
		case 1:
			f = geometry.NewRound(at("a"), rapid.Float64Range(5, 90).Draw(t, "radius"))
		case 2:
			f = geometry.NewLine([]geometry.Point{at("a"), at("b"), at("c")}, rapid.Float64Range(6, 30).Draw(t, "radius"))
		}
		thing := solid(scene.Steel, f)
		thing.State, thing.Code = scene.Foul, "C"
		var b tried
		frame := b.drawn(of(thing, round(63.5)), Screen{Width: 1, Conflict: redInk}, 10)
		var outline []geometry.Point
		for _, face := range b.faces {
			if face.fill == redInk {
				require.Nil(t, outline, "one")
				outline = face.outline
			}
		}
		for i := range 40 {
			for j := range 40 {
				p := geometry.Point{X: -120 + 6*float64(i) + 0.1, Y: -120 + 6*float64(j) + 0.1}
				ring, thing := p.Sub(geometry.Point{X: 10, Y: -20}).Norm()-63.5, f.GapOnly(p)
				if math.Abs(ring) < 1 || math.Abs(thing) < 1 {
					continue // at the edge bends are drawn by chords
				}
				require.Equal(t, ring < 0 && thing < 0, winding(outline, frame.Place(p)) != 0, "%v", p)
			}
		}
	})
}

// winding is how often an outline goes round a place.
func winding(outline []geometry.Point, at geometry.Point) (n int) {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		side := (b.X-a.X)*(at.Y-a.Y) - (b.Y-a.Y)*(at.X-a.X)
		switch {
		case a.Y <= at.Y && b.Y > at.Y && side > 0:
			n++
		case b.Y <= at.Y && a.Y > at.Y && side < 0:
			n--
		}
	}
	return n
}

// What is not foul, or of no kind, is never red; nor is anything without a ring.
func TestOnlyWhatIsFoulIsInTheWay(t *testing.T) {
	over := solid(scene.Steel, geometry.NewRectangle(geometry.Point{X: -90, Y: -90}, geometry.Point{X: 90, Y: 90}, 0))
	over.Code = "C"
	doubtful, plain := over, over
	doubtful.State, plain.State, plain.Code = scene.Doubtful, scene.Foul, ""
	foul := over
	foul.State = scene.Foul
	for _, s := range []scene.Scene{of(doubtful, round(60)), of(plain, round(60)), of(foul)} {
		var b tried
		b.drawn(s, Screen{Width: 1, Conflict: redInk}, 10)
		for _, face := range b.faces {
			assert.NotEqual(t, redInk, face.fill)
		}
	}
}

// A pipe too thin for a face is a line along its middle, as wide as it is but never too thin to be seen, broken as its pen says.
func TestAThinPipeIsALine(t *testing.T) {
	path := []geometry.Point{{X: -300, Y: 50}, {X: 300, Y: 80}}
	for radius, want := range map[float64]float64{1: 0.42, 6: 1.2} {
		var b tried
		frame := b.drawn(of(solid(scene.Fuel, geometry.NewLine(path, radius))), Screen{Thin: 2}, 10)
		assert.Empty(t, b.faces)
		last := b.lines[len(b.lines)-1]
		assert.Equal(t, frame.places(path), last.points)
		assert.InDelta(t, want, last.Width, 1e-9)
		assert.NotEmpty(t, last.Dashes, "a fuel line is dotted")
	}
	var b tried
	b.drawn(of(solid(scene.Fuel, geometry.NewLine(path, 40))), Screen{Thin: 2}, 10)
	assert.NotEmpty(t, b.faces, "a thick one has a face")
}

// What lies on the floor comes after the floor's face and before all others.
func TestTheShadeLiesOnTheFloor(t *testing.T) {
	all := geometry.NewRectangle(geometry.Point{X: -400, Y: -300}, geometry.Point{X: 400, Y: 300}, 0)
	var b tried
	faces := -1
	b.drawn(of(solid(scene.Floor, all), solid(scene.Rail, all)), Screen{OnFloor: func() { faces = len(b.faces) }}, 10)
	assert.Equal(t, 1, faces)
	assert.Len(t, b.faces, 2)
}

// Words stand in their boxes, written smaller where they would not fit, and leaders lie under all of them.
func TestWordsStandInTheirBoxes(t *testing.T) {
	words := []Word{
		{Box: Box{Left: 10, Top: 10, Width: 40, Height: 5}, Name: "rail", Tail: "!", Colour: Ink, Ends: redInk},
		{Box: Box{Left: 10, Top: 20, Width: 6, Height: 5}, Name: "a long name", Colour: Ink, Back: greyInk},
		{Box: Box{Left: 10, Top: 30, Width: 40, Height: 5}, Name: "at the end", Align: ByEnd, Colour: Ink, Leader: []geometry.Point{{X: 60, Y: 40}, {X: 60, Y: 32}, {X: 50, Y: 32}}},
		{Box: Box{Left: 70, Top: 30, Width: 2.5, Height: 20}, Name: "NOSE", Down: true, Align: ByMiddle, Colour: Ink},
	}
	var b tried
	b.drawn(of(), Screen{Words: words}, 10)
	require.Len(t, b.texts, 4+4)
	box := func(i int) Box { return BoxOf(b.at[i].X, b.at[i].Y, b.texts[i]) }
	for i, in := range []int{0, 0, 1, 2} {
		assert.True(t, words[in].Box.holds(Box{Left: box(i).Left, Top: box(i).Top + 0.5, Width: box(i).Width - 1e-9, Height: 2}), "%s: %v", b.texts[i].Words, box(i))
	}
	assert.InDelta(t, box(0).right(), box(1).Left, 1e-9, "the warning follows the name")
	assert.Equal(t, redInk, b.texts[1].Colour)
	assert.Less(t, b.texts[2].Size, 4.0)
	assert.InDelta(t, 50, box(3).right(), 1e-9)
	for i, letter := range "NOSE" {
		assert.Equal(t, string(letter), b.texts[4+i].Words)
		assert.InDelta(t, 71.25, box(4+i).middle().X, 1e-9)
		assert.InDelta(t, 32.5+5*float64(i), box(4+i).middle().Y, 0.2)
	}
	assert.Equal(t, words[2].Leader, b.lines[len(b.lines)-1].points)
	assert.Equal(t, words[2].Colour, b.lines[len(b.lines)-1].Stroke.Colour, "a leader has the colour of its word")
	assert.NotEmpty(t, b.lines[len(b.lines)-1].Stroke.Dashes, "and is no pipe")
	assert.Equal(t, greyInk, b.faces[len(b.faces)-1].fill)
}

// On a board whose cells are not as wide as they should be everything lies where it is, and letters keep their form.
func TestAStretchedBoardIsFilled(t *testing.T) {
	for _, across := range []float64{3, 4, 5} {
		b := Stretched(int(100*across), 200, across, 4)
		b.Face(Box{Left: 20, Top: 10, Width: 30, Height: 20}.outline(), redInk)
		for x := range b.Picture.Rect.Dx() {
			for _, y := range []int{30, 60, 130} {
				within := float64(x) >= 20*across && float64(x)+1 <= 50*across && y >= 40 && y < 120
				if within != (b.Picture.RGBAAt(x, y).R == 255) {
					t.Fatalf("%g: %d %d", across, x, y)
				}
			}
		}
		text := Text{Words: "brake pipe", Size: 4, Colour: Ink, Align: ByMiddle}
		words := Stretched(int(100*across), 200, across, 4)
		words.Write(geometry.Point{X: 50, Y: 30}, text)
		seen := image.Rectangle{}
		for y := range 200 {
			for x := range words.Picture.Rect.Dx() {
				if words.Picture.RGBAAt(x, y).A > 0 {
					seen = seen.Union(image.Rect(x, y, x+1, y+1))
				}
			}
		}
		assert.InDelta(t, 50*across, float64(seen.Min.X+seen.Max.X)/2, 1.5)
		assert.LessOrEqual(t, float64(seen.Dx()), WidthOf(text)*min(across, 4)+2)
		assert.GreaterOrEqual(t, float64(seen.Dx()), WidthOf(text)*min(across, 4)-3)
	}
}
