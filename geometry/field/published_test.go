package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// path returns the points x0 y0, x1 y1, ...
func path(xy ...float64) (points []geometry.Point) {
	for i := 0; i < len(xy); i += 2 {
		points = append(points, pt(xy[i], xy[i+1]))
	}
	return points
}

// polygon keeps the place inside rings, the distance being that to thin lines along them.
type polygon [][]geometry.Point

func (rings polygon) Margin(p geometry.Point) float64 {
	gap, inside := math.Inf(1), false
	for _, ring := range rings {
		line := geometry.NewLine(append(ring, ring[0]), 0)
		gap = min(gap, line.GapOnly(p))
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
				inside = !inside
			}
		}
	}
	if !inside {
		return -gap
	}
	return gap
}

// Source: JTS Topology Suite, MaximumInscribedCircleTest.java; each within twice the tolerance given there.
func TestInscribedCircles(t *testing.T) {
	for _, c := range []struct {
		name      string
		rings     polygon
		tolerance float64
		want      geometry.Point
		radius    float64
	}{
		{"triangle", polygon{path(1, 1, 1, 9, 9, 1)}, 0.001, pt(3.3431457505, 3.3431457505), 2.3431457505},
		{"thin triangle", polygon{path(1, 1, 1, 9, 2, 2)}, 0.001, pt(1.4852813742385702, 2.17157287525381), 0.4852813742385702},
		{"kite", polygon{path(1, 2, 9, 3, 9, 1, 1, 1)}, 0.001, pt(8.06225774829855, 1.9377422517014502), 0.937742251701450},
		{"concave", polygon{path(1, 1, 6, 9, 3.7, 2.5, 9, 1)}, 0.001, pt(2.82, 2.008), 1.008},
		{"quadrilateral", polygon{path(100, 0, 200, 200, 300, 200, 300, 100)}, 0.01,
			pt(238.19660112501052, 138.19660112501052), 61.803398874989476},
		{"hole", polygon{path(100, 0, 200, 200, 300, 200, 300, 100), path(200, 150, 200, 100, 260, 100)}, 0.01,
			pt(257.47, 157.47), 42.529},
	} {
		t.Run(c.name, func(t *testing.T) {
			low, high := geometry.NewLine(c.rings[0], 0).Bounds()
			m := NewMargins(Limits{Min: low, Max: high, EdgeNeed: math.Inf(-1), Constraints: []Constraint{c.rings}})
			got := m.Roomiest(c.tolerance / 100)
			assert.InDelta(t, c.radius, got.Margin, 2*c.tolerance)
			assert.InDelta(t, 0, got.At.Sub(c.want).Norm(), 2*c.tolerance)
			areas := m.Map(high.X/50, 1).Areas()
			require.NotEmpty(t, areas)
			assert.InDelta(t, c.radius, areas[0].Best.Margin, 2*c.tolerance+finest)
		})
	}
}

// Source: JTS Topology Suite, LargestEmptyCircleTest.java; each within twice the tolerance of 0.01 there. Where a circle's
// centre there lies on the hull of the obstacles, the floor here is a strip inside along that side of the hull.
func TestEmptyCircles(t *testing.T) {
	thin := func(xy ...float64) geometry.Footprint { return geometry.NewLine(path(xy...), 0) }
	square := func(x0, y0, x1, y1 float64) geometry.Footprint {
		return geometry.NewRectangle(pt(x0, y0), pt(x1, y1), 0)
	}
	for _, c := range []struct {
		name       string
		obstacles  []geometry.Footprint
		min, max   geometry.Point
		origin     geometry.Point // of the floor, which is turned about it
		turn, edge float64
		want       geometry.Point
		radius     float64
	}{
		{"lines", []geometry.Footprint{thin(50, 100, 150, 50), thin(250, 50, 350, 100), thin(350, 150, 250, 200), thin(50, 150, 150, 200)},
			pt(50, 50), pt(350, 200), pt(0, 0), 0, math.Inf(-1), pt(200, 125), math.Sqrt(8125)},
		{"line and point", []geometry.Footprint{thin(100, 100, 300, 100), thin(250, 200)},
			pt(0, -20), pt(math.Hypot(150, 100), 0), pt(100, 100), math.Atan2(100, 150) * 180 / math.Pi, math.Inf(-1),
			pt(196.49, 164.31), 64.31},
		{"boxes", []geometry.Footprint{square(1, 1, 6, 6), square(4, 7, 6, 9)},
			pt(0, -1), pt(3*math.Sqrt2, 0), pt(1, 6), 45, math.Inf(-1), pt(2.5, 7.5), 1.5},
		{"boundary is an obstacle too", []geometry.Footprint{thin(4, 3), thin(7, 6)},
			pt(1, 1), pt(9, 9), pt(0, 0), 0, 0, pt(4, 6), 3},
		{"boundary given", []geometry.Footprint{thin(2, 2), thin(6, 4), thin(8, 8)},
			pt(1, 1), pt(9, 9), pt(0, 0), 0, math.Inf(-1), pt(1, 9), 7.065},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := Limits{Min: c.min, Max: c.max, EdgeNeed: c.edge}
			for _, f := range c.obstacles {
				back := pt(0, 0).Sub(c.origin).Turn(-c.turn)
				l.Obstacles = append(l.Obstacles, Obstacle{Footprint: f.Moved(-c.turn, back)})
			}
			got := NewMargins(l).Roomiest(0.0001)
			assert.InDelta(t, c.radius, got.Margin, 0.02)
			assert.InDelta(t, 0, got.At.Turn(c.turn).Add(c.origin).Sub(c.want).Norm(), 0.02)
		})
	}
}

// Source: SciPy, ndimage.distance_transform_edt, the example of its documentation: 0 is an obstacle of no size at a node,
// the other numbers are the distances. In rows 2 apart the same.
func TestDistanceTransform(t *testing.T) {
	for _, c := range []struct {
		apart float64
		want  [5][5]float64
	}{
		{1, [5][5]float64{{0, 1, 1.4142, 2.2361, 3}, {0, 0, 1, 2, 2}, {0, 1, 1.4142, 1.4142, 1}, {0, 1, 1.4142, 1, 0}, {0, 1, 1, 0, 0}}},
		{2, [5][5]float64{{0, 1, 2, 2.8284, 3.6056}, {0, 0, 1, 2, 3}, {0, 1, 2, 2.2361, 2}, {0, 1, 2, 1, 0}, {0, 1, 1, 0, 0}}},
	} {
		l := Limits{Max: pt(4, 4*c.apart), EdgeNeed: math.Inf(-1)}
		for row := range 5 {
			for col := range 5 {
				if c.want[row][col] == 0 {
					at := pt(float64(col), float64(row)*c.apart)
					l.Obstacles = append(l.Obstacles, Obstacle{Footprint: geometry.NewRound(at, 0)})
				}
			}
		}
		p := NewMargins(l).Map(1, 1)
		for row := range 5 {
			for col := range 5 {
				assert.InDelta(t, c.want[row][col], p.Margin(col, row*int(c.apart)), 5e-5)
			}
		}
	}
}
