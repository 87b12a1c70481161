package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// bend is a run that is little but one bend about a middle, from one angle on, degrees.
func bend(middle geometry.Point, radius, from, turn float64) geometry.Run {
	on := func(deg float64) geometry.Point { return middle.Add(geometry.Point{X: radius}.Turn(deg)) }
	corner := middle.Add(geometry.Point{X: radius / math.Cos(turn/2*math.Pi/180)}.Turn(from + turn/2))
	first, last := corner.Add(on(from).Sub(corner).Scale(1.02)), corner.Add(on(from+turn).Sub(corner).Scale(1.02))
	return geometry.Rounded([]geometry.Point3{first.At(-50), corner.At(-50), last.At(-50)}, radius)
}

// Round a thing that a bend goes about there is more than one place where it comes near: all its corners may be. The nearest of
// them all counts, as places all along the bend have it.
func TestABendRoundAThingWithSeveralCornersNearIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		middle := geometry.Point{X: 1200, Y: rapid.Float64Range(-300, 300).Draw(t, "y")}
		radius := rapid.Float64Range(40, 200).Draw(t, "radius")
		from, turn := rapid.Float64Range(-180, 180).Draw(t, "from"), rapid.Float64Range(60, 150).Draw(t, "turn")
		run := bend(middle, radius, from, turn)
		// A thin thing from one corner near the arc to another.
		share := rapid.Float64Range(0.1, 0.4).Draw(t, "first corner")
		a := middle.Add(geometry.Point{X: radius - rapid.Float64Range(2, 6).Draw(t, "its gap")}.Turn(from + share*turn))
		b := middle.Add(geometry.Point{X: radius - rapid.Float64Range(2, 6).Draw(t, "other gap")}.Turn(from + (1-share/2)*turn))
		prism := geometry.Prism{Footprint: geometry.NewLine([]geometry.Point{a, b}, 0.5), Low: -80, High: 0}
		got := gapRounded(prism, run, 0, run.Length()).Gap
		least := math.Inf(1)
		const samples = 16000 // 0.03 mm apart at the most: seen from 1.7 mm off, less than 1e-4 longer
		for i := range samples + 1 {
			least = min(least, prism.Footprint.GapOnly(run.At(run.Length()*float64(i)/samples).Plan()))
		}
		require.LessOrEqual(t, got, max(0, least)+1e-9)
		require.InDelta(t, max(0, least), got, 1e-3)
	})
}

// Corner to corner, less than a mm apart: worked by hand, 3 : 4 : 5.
func TestCornersThatAllButTouch(t *testing.T) {
	one := geometry.NewRectangle(geometry.Point{X: 100, Y: 100}, geometry.Point{X: 200, Y: 150}, 0)
	for _, by := range []float64{1, 0.1, 0.001} {
		other := geometry.NewRectangle(geometry.Point{X: 200 + 0.3*by, Y: 150 + 0.4*by}, geometry.Point{X: 300, Y: 300}, 0)
		s := geometry.Between(one, other)
		assert.InDelta(t, 0.5*by, s.Gap, 1e-9)
		assert.InDelta(t, 0, s.A.Sub(geometry.Point{X: 200, Y: 150}).Norm(), 1e-9)
		assert.InDelta(t, 0, s.N.Sub(geometry.Point{X: 0.6, Y: 0.8}).Norm(), 1e-6)
	}
}
