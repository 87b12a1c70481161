package vector_test

import (
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
)

// perMM is how many pixels of these pictures are a mm.
const perMM = 4

func pixels(wide, high float64) *vector.Pixels {
	return vector.NewPixels(int(wide*perMM), int(high*perMM), perMM)
}

// inked is the area that is covered, mm².
func inked(b *vector.Pixels) (area float64) {
	for i := 3; i < len(b.Picture.Pix); i += 4 {
		area += float64(b.Picture.Pix[i]) / 255
	}
	return area / perMM / perMM
}

// Every pixel whose middle is more than a pixel's diagonal off an outline is covered, or bare, as that middle is in it or not.
func TestAFaceCoversWhatItsOutlineHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outline := drawLine(t, 3)
		for i := range outline {
			outline[i] = outline[i].Scale(0.25)
		}
		b := pixels(40, 30)
		b.Face(outline, vector.Ink)
		edge := geometry.NewLine(append(outline[:len(outline):len(outline)], outline[0]), 0)
		for range 60 {
			x, y := rapid.IntRange(0, 40*perMM-1).Draw(t, "column"), rapid.IntRange(0, 30*perMM-1).Draw(t, "row")
			middle := geometry.Point{X: float64(x) + 0.5, Y: float64(y) + 0.5}.Scale(1.0 / perMM)
			if edge.GapOnly(middle) < 0.75/perMM {
				continue
			}
			covered := b.Picture.RGBAAt(x, y).A
			require.Equal(t, winds(outline, middle), covered > 127, "%v: %d", middle, covered)
			require.Contains(t, []uint8{0, 255}, covered, "%v", middle)
		}
	})
}

// A line covers its length by its width and its two round ends; one thinner than a pixel is a pixel wide, so that it is seen.
func TestALineCoversItsWidth(t *testing.T) {
	const pi = 3.141592653589793
	for width, seen := range map[float64]float64{3: 3, 1: 1, 0.25: 0.25, 0.05: 1.0 / perMM} {
		b := pixels(60, 40)
		b.Line([]geometry.Point{{X: 10, Y: 8}, {X: 50, Y: 29}}, vector.Stroke{Width: width, Colour: vector.Ink})
		want := geometry.Point{X: 40, Y: 21}.Norm()*seen + pi*seen*seen/4
		assert.InEpsilon(t, want, inked(b), 0.03, "%v", width)
	}
}

// Of a dashed line as much is covered as its dashes say, each with its round ends.
func TestDashesCoverTheirShare(t *testing.T) {
	b := pixels(120, 10)
	b.Line([]geometry.Point{{X: 5, Y: 5}, {X: 113, Y: 5}}, vector.Stroke{Width: 0.5, Dashes: []float64{6, 3}, Colour: vector.Ink})
	for mm, want := range map[float64]bool{6: true, 10: true, 12.5: false, 15: true, 19: true, 21.5: false, 104.5: true, 111.5: false} {
		assert.Equal(t, want, b.Picture.RGBAAt(int(mm*perMM), 5*perMM).A > 127, "%v mm", mm)
	}
}

// Nothing is drawn outside the boxes one is in, whichever of them; afterwards the whole board is there again.
func TestNothingIsDrawnOutsideItsBox(t *testing.T) {
	b := pixels(40, 40)
	all := []geometry.Point{{X: -50, Y: -50}, {X: 90, Y: -50}, {X: 90, Y: 90}, {X: -50, Y: 90}}
	b.Windowed(vector.Box{Left: 5, Top: 5, Width: 20, Height: 30}, func() {
		b.Windowed(vector.Box{Left: 15, Top: 0, Width: 20, Height: 12}, func() {
			b.Face(all, vector.Ink)
			b.Write(geometry.Point{X: 0, Y: 30}, vector.Text{Words: "far out of both of them", Size: 4, Colour: vector.Ink, Rim: vector.White})
		})
	})
	assert.InDelta(t, 10*7, inked(b), 1e-6)
	assert.Equal(t, uint8(255), b.Picture.RGBAAt(16*perMM, 6*perMM).A)
	b.Face(all, vector.Ink)
	assert.InDelta(t, 40*40, inked(b), 1e-6)
}

// What has no area, lies off the board or has one place only is no fault.
func TestNothingToDrawIsNothingDrawn(t *testing.T) {
	b := pixels(20, 20)
	b.Face(nil, vector.Ink)
	b.Face([]geometry.Point{{X: 1, Y: 1}, {X: 9, Y: 9}}, vector.Ink)
	b.Face([]geometry.Point{{X: 1e9, Y: 1}, {X: 2e9, Y: 9}, {X: 1e9, Y: 9}}, vector.Ink)
	b.Line([]geometry.Point{{X: -900, Y: -900}, {X: -800, Y: -800}}, vector.Stroke{Width: 2, Colour: vector.Ink})
	b.Write(geometry.Point{X: 5, Y: 5}, vector.Text{Size: 3, Colour: vector.Ink})
	assert.Zero(t, inked(b))
	b.Line([]geometry.Point{{X: 10, Y: 10}, {X: 10, Y: 10}}, vector.Stroke{Width: 4, Colour: vector.Ink})
	assert.InEpsilon(t, 3.14159*4, inked(b), 0.03, "a round as wide as the line")
}

// extent is the box of what is covered by an ink, mm.
func extent(b *vector.Pixels, is func(color.RGBA) bool) (box vector.Box, any bool) {
	low, high := [2]int{1 << 30, 1 << 30}, [2]int{-1, -1}
	bounds := b.Picture.Bounds()
	for y := range bounds.Dy() {
		for x := range bounds.Dx() {
			if is(b.Picture.RGBAAt(x, y)) {
				low, high = [2]int{min(low[0], x), min(low[1], y)}, [2]int{max(high[0], x+1), max(high[1], y+1)}
			}
		}
	}
	if high[0] < 0 {
		return box, false
	}
	return vector.Box{
		Left: float64(low[0]) / perMM, Top: float64(low[1]) / perMM,
		Width: float64(high[0]-low[0]) / perMM, Height: float64(high[1]-low[1]) / perMM,
	}, true
}

func dark(c color.RGBA) bool { return c.A > 127 && c.R < 128 }

// Letters stand in the box that was reckoned for them, to a pixel, however they are held; and they fill its width.
func TestLettersStandInTheirBox(t *testing.T) {
	for _, bold := range []bool{false, true} {
		for _, align := range []vector.Align{vector.ByStart, vector.ByMiddle, vector.ByEnd} {
			const left = 60
			text := vector.Text{Words: "Hg 1220.3 mm pH", Size: 5, Align: align, Bold: bold, Colour: vector.Ink}
			b := pixels(120, 20)
			b.Write(geometry.Point{X: left, Y: 12}, text)
			want := vector.BoxOf(left, 12, text)
			got, any := extent(b, dark)
			require.True(t, any)
			const slack = 1.0 / perMM
			assert.GreaterOrEqual(t, got.Left, want.Left-slack)
			assert.LessOrEqual(t, got.Left+got.Width, want.Left+want.Width+slack)
			assert.GreaterOrEqual(t, got.Top, want.Top-slack)
			assert.LessOrEqual(t, got.Top+got.Height, want.Top+want.Height+slack)
			assert.Greater(t, got.Width, 0.95*want.Width)
			assert.Greater(t, got.Height, 0.9*want.Height, "capitals and what reaches below")
		}
	}
}

// A text that reads upwards is the same text a quarter turn round its place: as much ink, and where the turn takes it.
func TestATurnedTextReadsUpwards(t *testing.T) {
	text := vector.Text{Words: "left 693.0", Size: 5, Colour: vector.Ink}
	level, upright := pixels(60, 60), pixels(60, 60)
	at := geometry.Point{X: 20, Y: 50}
	level.Write(at, text)
	text.Turned = true
	upright.Write(at, text)
	assert.InEpsilon(t, inked(level), inked(upright), 1e-9)
	flat, _ := extent(level, dark)
	tall, any := extent(upright, dark)
	require.True(t, any)
	const slack = 1.5 / perMM
	assert.InDelta(t, flat.Width, tall.Height, slack)
	assert.InDelta(t, flat.Height, tall.Width, slack)
	assert.InDelta(t, at.X-(at.Y-flat.Top), tall.Left, slack, "what was above its line is left of it")
	assert.InDelta(t, at.Y-(flat.Left-at.X), tall.Top+tall.Height, slack, "it begins at its foot")
}

// On black, letters with a rim are read: all round them is the rim's colour.
func TestARimIsAllRoundTheLetters(t *testing.T) {
	all := []geometry.Point{{}, {X: 60}, {X: 60, Y: 30}, {Y: 30}}
	blue := color.NRGBA{B: 255, A: 255}
	text := vector.Text{Words: "1076", Size: 8, Colour: blue, Rim: vector.White}
	b := pixels(60, 30)
	b.Face(all, vector.Ink)
	b.Write(geometry.Point{X: 10, Y: 20}, text)
	letters, any := extent(b, func(c color.RGBA) bool { return c.B > 200 && c.R < 60 })
	require.True(t, any)
	rim, any := extent(b, func(c color.RGBA) bool { return c.R > 200 })
	require.True(t, any)
	assert.Less(t, rim.Left, letters.Left-0.5)
	assert.Less(t, rim.Top, letters.Top-0.5)
	assert.Greater(t, rim.Left+rim.Width, letters.Left+letters.Width+0.5)
	for y := range 30 * perMM { // no letter touches the black
		for x := range 60*perMM - 1 {
			here, next := b.Picture.RGBAAt(x, y), b.Picture.RGBAAt(x+1, y)
			blueHere, blackNext := here.B > 200 && here.R < 60, next.R < 10 && next.B < 10
			require.False(t, blueHere && blackNext, "%d, %d", x, y)
		}
	}
}
