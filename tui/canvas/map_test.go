package canvas

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
)

func drawMap(t *rapid.T) Map {
	camera := desk.Camera{Scale: rapid.SampledFrom([]float64{0, 0.25, 1, 7.3, 36, 200}).Draw(t, "scale")}
	camera.Middle = pt(rapid.Float64Range(-500, 4000).Draw(t, "x"), rapid.Float64Range(-1500, 1500).Draw(t, "y"))
	view := scene.View(rapid.IntRange(0, 1).Draw(t, "view"))
	return NewMap(van(view), rapid.IntRange(40, 250).Draw(t, "w"), rapid.IntRange(6, 80).Draw(t, "h"), camera, survey.Millimetres)
}

func TestCellsAndPlacesGoThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMap(t)
		col := m.Left + rapid.IntRange(0, m.Cols-1).Draw(t, "col")
		row := m.Top + rapid.IntRange(0, m.Rows-1).Draw(t, "row")
		p, ok := m.Point(col, row)
		require.True(t, ok)
		c, r, ok := m.Cell(p)
		require.True(t, ok)
		assert.Equal(t, [2]int{col, row}, [2]int{c, r})

		wide, high := m.CellSize()
		q := p.Add(pt(rapid.Float64Range(-0.49, 0.49).Draw(t, "dx")*wide, rapid.Float64Range(-0.49, 0.49).Draw(t, "dy")*high))
		c, r, _ = m.Cell(q)
		assert.Equal(t, [2]int{col, row}, [2]int{c, r})
	})
}

func TestAWholeSceneFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := van(scene.View(rapid.IntRange(0, 1).Draw(t, "view")))
		m := NewMap(s, rapid.IntRange(40, 250).Draw(t, "w"), rapid.IntRange(6, 80).Draw(t, "h"), desk.Camera{}, survey.Millimetres)
		inside := 1e-6 * m.Scale
		for _, corner := range [][2]float64{{s.Min.X, s.Min.Y}, {s.Max.X, s.Max.Y}, {s.Min.X, s.Max.Y}, {s.Max.X, s.Min.Y}} {
			p := pt(corner[0], corner[1])
			p.X += math.Copysign(inside, s.Max.Add(s.Min).X/2-p.X)
			p.Y += math.Copysign(inside, s.Max.Add(s.Min).Y/2-p.Y)
			_, _, ok := m.Cell(p)
			assert.True(t, ok, "%v", p)
		}
	})
}

func TestOutsideThePictureIsNoPlace(t *testing.T) {
	m := NewMap(van(scene.Below), 60, 17, desk.Camera{}, survey.Millimetres)
	for _, at := range [][2]int{{0, 5}, {m.Left - 1, 5}, {10, 0}, {10, 15}, {10, 16}, {60, 5}, {-1, -1}} {
		_, ok := m.Point(at[0], at[1])
		assert.False(t, ok, "%v", at)
	}
}

func TestFitShowsTheBoxInTheMiddleOfItsCamera(t *testing.T) {
	camera := Fit(scene.Above, []geometry.Point3{pt(1000, 100).At(-95), pt(1400, 400).At(0)}, 100, 100, 27, survey.Millimetres)
	m := NewMap(van(scene.Above), 100, 27, camera, survey.Millimetres)
	for _, p := range [][2]float64{{901, 1}, {1499, 499}, {1210, 240}} {
		_, _, ok := m.Cell(pt(p[0], p[1]))
		assert.True(t, ok, "%v", p)
	}
	assert.Less(t, m.Scale, 10.0)
}

// A disc must be as wide as high in dots: a terminal's cell is twice as high as wide.
func TestARoundIsRound(t *testing.T) {
	b := newBitmap(320, 188)
	b.disc(vec{160, 94}, 50)
	left, right, top, bottom := 320, -1, 188, -1
	for y := range b.h {
		for x := range b.w {
			if b.words[y*b.stride+x>>6]>>(x&63)&1 == 1 {
				left, right, top, bottom = min(left, x), max(right, x), min(top, y), max(bottom, y)
			}
		}
	}
	assert.Equal(t, right-left, bottom-top)
	assert.Equal(t, 100, right-left+1)
}
