package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

func rect(x0, y0, x1, y1, turn float64) geometry.Footprint {
	return geometry.NewRectangle(pt{X: x0, Y: y0}, pt{X: x1, Y: y1}, turn)
}

func TestCornersRunAnticlockwiseFromFrontLeft(t *testing.T) {
	f := rect(0, 0, 400, 100, 0)
	assert.Equal(t, [4]pt{{X: 400, Y: 100}, {Y: 100}, {}, {X: 400}}, f.Corners())
	quarter := rect(0, 0, 400, 100, 90)
	assert.Equal(t, [4]pt{{X: 150, Y: 250}, {X: 150, Y: -150}, {X: 250, Y: -150}, {X: 250, Y: 250}}, quarter.Corners())
	low, high := quarter.Bounds()
	assert.Equal(t, [2]pt{{X: 150, Y: -150}, {X: 250, Y: 250}}, [2]pt{low, high}, "a quarter turn stays exact")
	low, high = geometry.NewLine([]pt{{X: 1, Y: 2}, {X: 11, Y: -3}}, 4).Bounds()
	assert.Equal(t, [2]pt{{X: -3, Y: -7}, {X: 15, Y: 6}}, [2]pt{low, high})
}

// Plane geometry by hand: 3-4-5 triangles and plain differences.
func TestGapCases(t *testing.T) {
	member := rect(652, -850, 736, 850, 0)
	pipe := geometry.NewLine([]pt{{}, {X: 100}, {X: 100, Y: 100}}, 10)
	for _, c := range []struct {
		name    string
		f       geometry.Footprint
		p       pt
		gap     float64
		nearest pt
	}{
		{"in front of a crossmember", member, pt{X: 800, Y: 240}, 64, pt{X: 736, Y: 240}},
		{"off its corner", member, pt{X: 739, Y: 854}, 5, pt{X: 736, Y: 850}},
		{"on it, nearer the front", member, pt{X: 700, Y: 0}, -36, pt{X: 736}},
		{"on its edge", member, pt{X: 736, Y: 10}, 0, pt{X: 736, Y: 10}},
		{"beside a round", geometry.NewRound(pt{X: 10}, 20), pt{X: 40, Y: 40}, 30, pt{X: 22, Y: 16}},
		{"in the middle of a round", geometry.NewRound(pt{}, 20), pt{}, -20, pt{X: 20}},
		{"beside a pipe", pipe, pt{X: 50, Y: -25}, 15, pt{X: 50, Y: -10}},
		{"at a pipe's bend, out over the outside", pipe, pt{X: 98}, -10, pt{X: 98, Y: -10}},
		{"a line of one point", geometry.NewLine([]pt{{X: 3}}, 2), pt{X: 8}, 3, pt{X: 5}},
		{"in a line of one point", geometry.NewLine([]pt{{X: 3}}, 2), pt{X: 3}, -2, pt{X: 5}},
		{"on a line without width", geometry.NewLine([]pt{{}, {X: 9}}, 0), pt{X: 4}, 0, pt{X: 4}},
		{"a rectangle without sides", rect(5, 5, 5, 5, 30), pt{X: 8, Y: 9}, 5, pt{X: 5, Y: 5}},
	} {
		t.Run(c.name, func(t *testing.T) {
			gap, nearest := c.f.Gap(c.p)
			assert.InDelta(t, c.gap, gap, 1e-12)
			assert.InDelta(t, c.gap, c.f.GapOnly(c.p), 1e-12)
			assert.InDelta(t, 0, nearest.Sub(c.nearest).Norm(), 1e-12, "nearest %v", nearest)
			assert.Equal(t, c.gap <= 0, c.f.Contains(c.p))
		})
	}
}

// A wide line that doubles back: on the path the way out of the nearest leg ends inside the other.
func TestWayOutOfADoubledLine(t *testing.T) {
	f := geometry.NewLine([]pt{{}, {X: 200}, {X: 200, Y: 30}, {Y: 30}}, 20)
	gap, nearest := f.Gap(pt{X: 100, Y: 12}) // out over y = -20, not up through the second leg
	assert.InDelta(t, -32, gap, 1e-12)
	assert.InDelta(t, 0, nearest.Sub(pt{X: 100, Y: -20}).Norm(), 1e-12)
	gap, _ = f.Gap(pt{X: 0, Y: 15}) // between the two round ends: their circles meet at x = -sqrt(20^2 - 15^2)
	assert.InDelta(t, -math.Sqrt(400-225), gap, 1e-12)
}

func TestGapCircleDirections(t *testing.T) {
	member := rect(652, -850, 736, 850, 0)
	for _, c := range []struct {
		name string
		x    float64
		want geometry.Separation
	}{
		{"clear", 1210, geometry.Separation{Gap: 410.5, A: pt{X: 1146.5}, B: pt{X: 736}, N: pt{X: -1}}},
		{"over the edge", 776, geometry.Separation{Gap: -23.5, A: pt{X: 712.5}, B: pt{X: 736}, N: pt{X: 1}}},
		{"touching", 799.5, geometry.Separation{Gap: 0, A: pt{X: 736}, B: pt{X: 736}, N: pt{X: 1}}},
		{"centre on the edge", 736, geometry.Separation{Gap: -63.5, A: pt{X: 672.5}, B: pt{X: 736}, N: pt{X: 1}}},
		{"centre inside", 716, geometry.Separation{Gap: -83.5, A: pt{X: 652.5}, B: pt{X: 736}, N: pt{X: 1}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			assertSame(t, c.want, member.GapCircle(pt{X: c.x}, 63.5))
		})
	}
	for _, f := range []geometry.Footprint{geometry.NewRound(pt{}, 0), geometry.NewRound(pt{}, 5), rect(0, 0, 0, 0, 0),
		geometry.NewLine([]pt{{}}, 0), geometry.NewLine([]pt{{}, {X: 5}}, 0)} {
		s := f.GapCircle(pt{}, 0)
		require.InDelta(t, 1, s.N.Norm(), 1e-12, "a direction even where there is none")
	}
	for _, way := range []pt{{X: 1}, {Y: 1}, {X: 1, Y: 1}, {X: 3, Y: -4}, {X: -5, Y: 2}} { // off a line without width: across it
		line := geometry.NewLine([]pt{{}, way.Scale(100)}, 0)
		s := line.GapCircle(way.Scale(40), 0)
		require.InDelta(t, 0, s.N.Dot(way), 1e-9, "%v", way)
	}
}

func assertSame(t *testing.T, want, got geometry.Separation) {
	t.Helper()
	assert.InDelta(t, want.Gap, got.Gap, 1e-12)
	assert.InDelta(t, 0, want.A.Sub(got.A).Norm(), 1e-12, "A %v", got.A)
	assert.InDelta(t, 0, want.B.Sub(got.B).Norm(), 1e-12, "B %v", got.B)
	assert.InDelta(t, 0, want.N.Sub(got.N).Norm(), 1e-12, "N %v", got.N)
}

func TestInsideTheFloor(t *testing.T) {
	low, high := pt{X: 40, Y: -890}, pt{X: 3240, Y: 890}
	s := geometry.NewRound(pt{X: 1210, Y: 240}, 63.5).Inside(low, high)
	assertSame(t, geometry.Separation{Gap: 586.5, A: pt{X: 1210, Y: 303.5}, B: pt{X: 1210, Y: 890}, N: pt{Y: 1}}, s)
	s = geometry.NewRound(pt{X: 43, Y: 0}, 63.5).Inside(low, high)
	assertSame(t, geometry.Separation{Gap: -60.5, A: pt{X: -20.5}, B: pt{X: 40}, N: pt{X: 1}}, s)
	s = geometry.NewRound(pt{X: 37, Y: 894}, 10).Inside(low, high)
	assert.InDelta(t, -14, s.Gap, 1e-12, "centre off a corner of the floor: 3 beyond one edge, 4 beyond the other")
	s = rect(100, 700, 300, 880, 0).Inside(low, high)
	assert.InDelta(t, 10, s.Gap, 1e-12)
	s = rect(0, 0, 200, 100, 90).Inside(low, high)
	assert.InDelta(t, 10, s.Gap, 1e-12, "turned: from x = 50")
	s = rect(-20, 0, 200, 100, 0).Inside(low, high)
	assert.InDelta(t, -60, s.Gap, 1e-12)
	assert.InDelta(t, 0, s.N.Sub(pt{X: 1}).Norm(), 1e-12, "back in is forward")
}

// By hand: plain differences and 3-4-5 triangles.
func TestBoxGap(t *testing.T) {
	body := geometry.Prism{Footprint: rect(0, 0, 100, 100, 0), Low: 0, High: 50}
	for _, c := range []struct {
		name  string
		other geometry.Prism
		gap   float64
		n     pt3
	}{
		{"beside", geometry.Prism{Footprint: rect(130, 0, 200, 100, 0), Low: 0, High: 400}, 30, pt3{1, 0, 0}},
		{"beside and above", geometry.Prism{Footprint: rect(130, 0, 200, 100, 0), Low: 90, High: 400}, 50, pt3{.6, 0, .8}},
		{"above", geometry.Prism{Footprint: rect(20, 0, 200, 100, 0), Low: 80, High: 400}, 30, pt3{0, 0, 1}},
		{"below", geometry.Prism{Footprint: rect(20, 0, 200, 100, 0), Low: -80, High: -5}, 5, pt3{0, 0, -1}},
		{"standing on it", geometry.Prism{Footprint: rect(20, 0, 200, 100, 0), Low: 50, High: 80}, 0, pt3{0, 0, 1}},
		{"overlapping", geometry.Prism{Footprint: rect(90, -20, 200, 120, 0), Low: 10, High: 80}, -10, pt3{-1, 0, 0}},
		{"touching", geometry.Prism{Footprint: rect(100, -20, 200, 120, 0), Low: 10, High: 80}, 0, pt3{-1, 0, 0}},
		{"touching in plan only", geometry.Prism{Footprint: rect(100, -20, 200, 120, 0), Low: 60, High: 80}, 10, pt3{0, 0, 1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := geometry.BoxGap(body, c.other)
			assert.InDelta(t, c.gap, s.Gap, 1e-12)
			assert.InDelta(t, 0, s.N.Sub(c.n).Norm(), 1e-12, "%v", s.N)
			assert.InDelta(t, math.Abs(c.gap), s.B.Sub(s.A).Norm(), 1e-12)
		})
	}
}
