package scene_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// By hand: what has an edge only is a line all round it, closed; of a line it is the line itself, as it has no width.
func TestEdges(t *testing.T) {
	below := scene.Below.Projection()
	edgeOf := func(f geometry.Footprint) []geometry.Point {
		seen, ok := below.Seen(&scene.Item{Primitive: scene.Edge, Solid: scene.Upright(f, -20, -20)}, 0.1)
		require.True(t, ok)
		return seen.Line
	}
	door := []geometry.Point{{X: 1900, Y: -890}, {X: 3000, Y: -890}}
	assert.Equal(t, door, edgeOf(geometry.NewLine(door, 0)))
	around := edgeOf(geometry.NewRectangle(geometry.Point{X: 10, Y: 20}, geometry.Point{X: 40, Y: 60}, 0))
	require.Len(t, around, 5)
	assert.Equal(t, around[0], around[4])
	length := 0.0
	for i := range 4 {
		length += around[i+1].Sub(around[i]).Norm()
	}
	assert.InDelta(t, 2*(30+40), length, 1e-9)
}

// A line of one place is that place, seen from anywhere.
func TestALineOfOnePlace(t *testing.T) {
	at := geometry.Point3{X: 1210, Y: 240, Z: -60}
	for name, p := range every() {
		f, ok := p.Seen(&scene.Item{Primitive: scene.Stroke, Path: scene.Straight(at)}, 0.1)
		require.True(t, ok, name)
		for _, q := range f.Line {
			near(t, p.Point(at), q)
		}
		low, high := f.Bounds()
		assert.Equal(t, low, high, name)
	}
}

// From the side a thing that stands upright is as wide as its shadow, and as high as it is, however it lies in plan.
func TestUprightThingsFromTheSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		foot := drawFootprint(t)
		low, high := rapid.Float64Range(-400, -1).Draw(t, "low"), rapid.Float64Range(0, 400).Draw(t, "high")
		for _, c := range []struct {
			view  scene.Projection
			along geometry.Point
		}{{scene.FromRight.Projection(), geometry.Point{X: 1}}, {scene.FromLeft.Projection(), geometry.Point{X: -1}}, {scene.FromBehind.Projection(), geometry.Point{Y: -1}}} {
			f, ok := c.view.Seen(&scene.Item{Solid: scene.Upright(foot, low, high)}, 0.1)
			require.True(t, ok)
			a, b := f.Bounds()
			require.InDelta(t, low, a.Y, 1e-9)
			require.InDelta(t, high, b.Y, 1e-9)
			min, max := foot.Bounds()
			from, to := min.Dot(c.along), max.Dot(c.along)
			require.InDelta(t, math.Min(from, to), a.X, 1e-6)
			require.InDelta(t, math.Max(from, to), b.X, 1e-6)
		}
	})
}

// A barrel is as long as it is seen, and as wide as it is round, whichever way it lies; its ends are square.
func TestABarrelAnyWay(t *testing.T) {
	below := scene.Below.Projection()
	rapid.Check(t, func(t *rapid.T) {
		from, to := drawPoint3(t), drawPoint3(t)
		radius := rapid.Float64Range(10, 400).Draw(t, "radius")
		f, ok := below.Seen(&scene.Item{Solid: scene.Barrel(from, to, radius)}, 0.1)
		require.True(t, ok)
		length := to.Plan().Sub(from.Plan()).Norm()
		if length < 1 {
			require.Equal(t, geometry.Round, f.Area.Shape)
			return
		}
		require.InDelta(t, length/2, f.Area.Half.X, 1e-6)
		require.InDelta(t, radius, f.Area.Half.Y, 1e-6)
		way := to.Plan().Sub(from.Plan()).Scale(1 / length)
		for _, end := range []geometry.Point{from.Plan(), to.Plan()} {
			require.InDelta(t, 0, f.Area.GapOnly(end), 1e-6, "its axis ends in its ends")
		}
		beyond := to.Plan().Add(way.Scale(7))
		require.InDelta(t, 7, f.Area.GapOnly(beyond), 1e-6, "no rounder than that")
	})
}

// Whatever is possible, more room is never a lower grade, and what is surely left never more than what is possible.
func TestMoreRoomIsNoLowerGrade(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		possible, guard := rapid.Float64Range(-100, 200).Draw(t, "possible"), rapid.Float64Range(0, 20).Draw(t, "guard")
		more := rapid.Float64Range(0, 100).Draw(t, "more")
		here, there := scene.GradeOf(possible, possible-guard), scene.GradeOf(possible+more, possible+more-guard)
		require.LessOrEqual(t, here, there)
		require.NotEqual(t, scene.Unknown, here, "a place of the floor has a grade")
		require.Equal(t, possible <= 0, here == scene.NoRoom)
		require.GreaterOrEqual(t, scene.GradeOf(possible, possible), here, "what is surer is no worse")
	})
}
