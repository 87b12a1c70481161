package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// What of a tube is below a height, against points strewn over its surface: none of those below is nearer in plan, and one is
// nearly as near.
func TestWhatOfATubeIsBelowAHeight(t *testing.T) {
	r := seeded(t, 17)
	const rings, round = 700, 48
	seen := 0
	for range 200 {
		var path []pt3
		for i := range 4 {
			path = append(path, pt3{float64(i) * 150, 300 * r.Float64(), -120 * r.Float64()})
		}
		run, thick, z := geometry.Rounded(path, 50), 5+30*r.Float64(), -120*r.Float64()
		shape := randomFootprint(r, 150).Moved(0, geometry.Point{X: 500 * r.Float64(), Y: 600*r.Float64() - 150})
		if shape.Shape == geometry.Line {
			shape = geometry.NewLine(shape.Path[:2], shape.Radius) // how deep a place is in several legs is said otherwise
		}
		var tube geometry.Tube
		tube.AddRun(&run, 0, run.Length(), thick)
		axis := []pt3{{100 + 300*r.Float64(), 300 * r.Float64(), -120 * r.Float64()}, {100 + 300*r.Float64(), 300 * r.Float64(), -120 * r.Float64()}}
		tube.AddPath(axis, thick) // the muffler, wherever
		least := math.Inf(1)
		for i := range rings {
			share := float64(i) / (rings - 1)
			for _, p := range []pt3{run.At(run.Length() * share), (geometry.Segment3{A: axis[0], B: axis[1]}).At(share)} {
				for up := range round {
					if h := thick * math.Sin(math.Pi*(float64(up)/(round-1)-0.5)); p.Z+h < z {
						least = min(least, shape.GapOnly(p.Plan())-math.Sqrt(max(0, thick*thick-h*h)))
					}
				}
			}
		}
		got, ok := tube.GapBelow(z, &shape)
		if !ok {
			assert.True(t, math.IsInf(least, 1))
			continue
		}
		seen++
		assert.LessOrEqual(t, got.Gap, least+0.011)
		if !math.IsInf(least, 1) {
			assert.InDelta(t, least, got.Gap, 4, "strewn as finely as that")
		}
		if got.Gap > 0 {
			assert.InDelta(t, got.Gap, got.B.Sub(got.A).Norm(), 1e-9)
		}
	}
	require.Greater(t, seen, 100)
}

// By hand: a level pipe of radius 13, its middle 5 above the height, is 12 to either side below it.
func TestAPipeThatDipsBelowByAPart(t *testing.T) {
	var tube geometry.Tube
	tube.AddPath([]pt3{{0, 0, -95}, {500, 0, -95}}, 13)
	disc := geometry.NewRound(geometry.Point{X: 200, Y: 100}, 40)
	s, ok := tube.GapBelow(-100, &disc)
	require.True(t, ok)
	assert.InDelta(t, 100-40-12, s.Gap, 1e-9)
	_, ok = tube.GapBelow(-108, &disc)
	assert.False(t, ok, "its lowest line touches that height, and nothing is below")

	// Falling 1 in 10 towards the disc from above it: below -100 it is from where its underside gets there.
	var falling geometry.Tube
	falling.AddPath([]pt3{{0, 0, -60}, {200, 0, -80}}, 13)
	_, ok = falling.GapBelow(-100, &disc)
	assert.False(t, ok)
	falling.AddPath([]pt3{{200, 0, -80}, {500, 0, -110}}, 13)
	far := geometry.NewRectangle(geometry.Point{X: 600, Y: -10}, geometry.Point{X: 700, Y: 10}, 0)
	s, ok = falling.GapBelow(-100, &far)
	require.True(t, ok)
	assert.InDelta(t, 100-13, s.Gap, 1e-9, "from its end, whose middle is below")

	line := geometry.NewLine([]geometry.Point{{X: 100, Y: 60}, {X: 300, Y: 60}, {X: 300, Y: 400}}, 10)
	s, ok = tube.GapBelow(-90, &line)
	require.True(t, ok)
	assert.InDelta(t, 60-10-13, s.Gap, 1e-9, "a line by its legs")
}
