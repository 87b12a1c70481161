package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

type (
	pt  = geometry.Point
	pt3 = geometry.Point3
)

// flatPath makes a path at height 0 from x, y pairs.
func flatPath(xy ...float64) (path []pt3) {
	for i := 0; i < len(xy); i += 2 {
		path = append(path, pt3{X: xy[i], Y: xy[i+1]})
	}
	return path
}

// ring is flatPath closed.
func ring(xy ...float64) []pt3 { return flatPath(append(xy, xy[0], xy[1])...) }

// Distances of outlines, source: GEOS tests/xmltester/tests/general/TestDistance.xml and JTS BaseDistanceTest.java,
// LineSegmentTest.java. Polygons that are apart are as far apart as their rings.
func TestPublishedPlanDistances(t *testing.T) {
	holed := ring(40, 320, 200, 380, 320, 80, 40, 40)
	hole := ring(180, 280, 80, 280, 100, 100, 220, 140)
	body := ring(76, 185, 125, 283, 331, 276, 324, 122, 177, 70, 184, 155, 69, 123)
	bodyHole := ring(267, 237, 148, 248, 135, 185, 223, 189, 251, 151, 286, 183)
	inBodyHole := flatPath(153, 204, 185, 224, 209, 207, 238, 222, 254, 186)
	for _, c := range []struct {
		name string
		a, b []pt3
		want float64
		at   []pt3 // nil where none is published
	}{
		{"two polygons", ring(100, 320, 60, 120, 240, 180, 200, 260), ring(420, 320, 280, 260, 400, 100), 71.55417527999327, nil},
		{"polygon and point", ring(200, 180, 60, 140, 60, 260), flatPath(140, 280), 57.05597791103589,
			flatPath(111.6923076923077, 230.46153846153845, 140, 280)},
		{"two segments", flatPath(100, 100, 200, 200), flatPath(150, 121, 200, 0), 20.506096654409877,
			flatPath(135.5, 135.5, 150, 121)},
		{"collinear", flatPath(0, 0, 9.9, 1.4), flatPath(11.88, 1.68, 21.78, 3.08), 1.9996999774966246, nil},
		{"polygon in a hole, to the hole", hole, ring(160, 240, 120, 240, 120, 160, 160, 140), 18.973665961010276, nil},
		{"line in a hole, to the hole", bodyHole, inBodyHole, 13.788860460124573,
			flatPath(139.4956500724988, 206.78661188980183, 153, 204)},
		{"square and point", ring(100, 100, 200, 100, 200, 200, 100, 200), flatPath(10, 10), 127.27922061357856,
			flatPath(100, 100, 10, 10)},
		{"two points", flatPath(10, 10), flatPath(3, 6), 8.06225774829855, nil},
		{"beyond a segment's end", flatPath(0, 0, 1, 0), flatPath(2, 0), 1, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := geometry.BetweenPaths(c.a, c.b)
			assert.InDelta(t, c.want, s.Gap, 1e-12)
			if c.at != nil {
				assertNear(t, c.at[0], s.A, 1e-9)
				assertNear(t, c.at[1], s.B, 1e-9)
			}
			line := geometry.Between(planLine(c.a), planLine(c.b))
			assert.InDelta(t, c.want, line.Gap, 1e-12, "as lines without width")
		})
	}
	outer := geometry.BetweenPaths(holed, ring(160, 240, 120, 240, 120, 160, 160, 140))
	assert.Greater(t, outer.Gap, 18.97366596, "the hole is nearer than the outer ring")
	assert.Greater(t, geometry.BetweenPaths(body, inBodyHole).Gap, 13.788860460124573)
}

// Source: GEOS TestWithinDistance.xml: within 18, not within 17; within 72, not within 71.
func TestPublishedThresholds(t *testing.T) {
	a, b := flatPath(40, 300, 240, 260, 60, 160, 140, 60), flatPath(140, 360, 260, 280, 240, 120, 120, 160)
	assert.Greater(t, geometry.BetweenPaths(a, b).Gap, 17.0)
	assert.LessOrEqual(t, geometry.BetweenPaths(a, b).Gap, 18.0)
}

// Source: JTS Distance3DOpTest.java (tolerance there 1e-5).
func TestPublishedDistancesInSpace(t *testing.T) {
	for _, c := range []struct {
		name string
		a, b []pt3
		want float64
	}{
		{"skew", []pt3{{10, 10, 0}, {20, 20, 0}}, []pt3{{10, 20, 10}, {20, 30, 10}}, 12.24744871391589},
		{"segment and point", []pt3{{10, 10, 10}, {20, 20, 20}}, []pt3{{11, 11, 10}}, 0.816496580927726},
		{"parallel", []pt3{{10, 10, 0}, {20, 10, 0}}, []pt3{{10, 20, 10}, {20, 20, 10}}, 14.142135623730951},
		{"one above the other", []pt3{{0, 0, 0}, {10, 10, 0}}, []pt3{{10, 0, 1}, {0, 10, 1}}, 1},
		{"cross", []pt3{{20, 10, 20}, {10, 20, 20}}, []pt3{{10, 10, 20}, {20, 20, 20}}, 0},
		{"polylines", []pt3{{10, 10, 20}, {20, 20, 30}, {20, 20, 1}, {30, 30, 5}},
			[]pt3{{1, 80, 10}, {0, 39, 5}, {39, 0, 5}, {80, 1, 20}}, 0.7071067811865476},
		{"polyline near a bend", []pt3{{0, 1, 2}, {1, 1, 1}, {1, 0, 2}},
			[]pt3{{0, 0, .1}, {.5, .5, 0}, {1, 1, 0}, {1.5, 1.5, 0}, {2, 2, 0}}, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.InDelta(t, c.want, geometry.BetweenPaths(c.a, c.b).Gap, 1e-12)
			run := geometry.Rounded(c.a, 0)
			assert.InDelta(t, c.want, gapPath(run, c.b, 0, run.Length()).Gap, 1e-12, "as a run that is not rounded")
		})
	}
}

// Source: the panel cases of JTS Distance3DOpTest.java: a sheet without thickness, with and without a hole.
func TestPublishedPanel(t *testing.T) {
	sheet := func(x0, y0, x1, y1 float64) geometry.Prism {
		return geometry.Prism{Footprint: geometry.NewRectangle(pt{X: x0, Y: y0}, pt{X: x1, Y: y1}, 0)}
	}
	whole := []geometry.Prism{sheet(100, 100, 200, 200)}
	holed := []geometry.Prism{ // a square hole 120..180
		sheet(100, 100, 200, 120), sheet(100, 180, 200, 200), sheet(100, 120, 120, 180), sheet(180, 120, 200, 180),
	}
	for _, c := range []struct {
		name  string
		panel []geometry.Prism
		path  []pt3
		want  float64
	}{
		{"through the hole", holed, []pt3{{150, 150, 10}, {150, 150, -10}}, 30},
		{"over the hole", holed, []pt3{{130, 130, 10}, {150, 150, 100}}, 14.14213562373095},
		{"through the metal", holed, []pt3{{110, 110, 10}, {110, 110, -10}}, 0},
		{"point above", whole, []pt3{{150, 150, 10}}, 10},
		{"point below", whole, []pt3{{150, 150, -10}}, 10},
		{"off a corner", whole, []pt3{{200, 200, 10}, {260, 260, 100}}, 10},
	} {
		t.Run(c.name, func(t *testing.T) {
			least := math.Inf(1)
			for _, p := range c.panel {
				least = min(least, p.GapRun(c.path).Gap)
			}
			assert.InDelta(t, c.want, least, 1e-12)
		})
	}
}

// Source: JTS AreaLengthTest.java; Pythagorean quadruples.
func TestPublishedLengths(t *testing.T) {
	assert.InDelta(t, 145.6021977, lengthOf(flatPath(220, 140, 180, 280)), 1e-7)
	assert.InDelta(t, 120, lengthOf(ring(20, 20, 40, 20, 40, 40, 20, 40))+
		lengthOf(ring(25, 25, 35, 25, 35, 35, 25, 35)), 1e-12)
	for _, q := range [][4]float64{{2, 3, 6, 7}, {1, 4, 8, 9}, {4, 4, 7, 9}} {
		assert.InDelta(t, q[3], lengthOf([]pt3{{}, {q[0], q[1], q[2]}}), 1e-12)
	}
}

func planLine(path []pt3) geometry.Footprint {
	var plan []pt
	for _, p := range path {
		plan = append(plan, p.Plan())
	}
	return geometry.NewLine(plan, 0)
}

func assertNear(t *testing.T, want, got pt3, tolerance float64) {
	t.Helper()
	require.InDelta(t, 0, want.Sub(got).Norm(), tolerance, "want %v, got %v", want, got)
}

// lengthOf is the length of a run that is rounded nowhere.
func lengthOf(path []pt3) float64 { return geometry.Rounded(path, 0).Length() }
