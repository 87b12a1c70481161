package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// By hand: what a thing measures across is the smaller size of it, whichever way it lies.
func TestHowThickThingsAre(t *testing.T) {
	for want, f := range map[float64]geometry.Footprint{
		84:  crossmember,
		690: wheel,
		8:   pipe,
		40:  geometry.NewRectangle(pt(0, 0), pt(300, 40), 37),
		50:  geometry.NewRectangle(pt(0, 0), pt(50, 700), 0),
	} {
		assert.Equal(t, want, Thickness(&f))
	}
}

// Without squares, asking every shape: of those in reach none is of a thinner class than the one that is picked, and of its class
// none is nearer.
func TestPickAgainstEveryShape(t *testing.T) {
	picked := 0
	rapid.Check(t, func(t *rapid.T) {
		shapes := drawShapes(t)
		f := New(floorMin, floorMax, 100, shapes)
		p := pt(rapid.Float64Range(40, 3240).Draw(t, "x"), rapid.Float64Range(-890, 890).Draw(t, "y"))
		slack := rapid.Float64Range(0, 150).Draw(t, "slack")
		got, ok := f.Pick(p, slack)
		class := func(i int) int { return int(math.Log2(max(Thickness(&shapes[i]), 1))) }
		reached := false
		for i := range shapes {
			gap, nearest := shapes[i].Gap(p)
			if gap > slack || !inFloor(nearest) && gap > 0 {
				continue
			}
			reached = true
			require.True(t, ok, "shape %d is in reach", i)
			require.LessOrEqual(t, class(got), class(i))
			if class(got) == class(i) {
				require.LessOrEqual(t, max(shapes[got].GapOnly(p), 0), max(gap, 0)+1e-9)
			}
		}
		if ok {
			picked++
			require.LessOrEqual(t, shapes[got].GapOnly(p), slack)
		}
		if reached {
			require.True(t, ok)
		}
	})
	require.Positive(t, picked)
}

// The squares lie on lines through the datum: a floor moved by whole squares names the same things at the same places of it. Nothing
// lies so near to a line that rounding puts it on the other side.
func TestSquaresMoveWithTheFloor(t *testing.T) {
	named := 0
	rapid.Check(t, func(t *rapid.T) {
		between := func(low, high int, name string) float64 {
			return float64(rapid.IntRange(low, high).Draw(t, name)) + 0.25
		}
		point := func(name string) geometry.Point {
			return pt(between(-200, 3500, name+" x"), between(-1000, 1000, name+" y"))
		}
		by := pt(float64(rapid.IntRange(-40, 40).Draw(t, "columns"))*100, float64(rapid.IntRange(-40, 40).Draw(t, "rows"))*100)
		var shapes, moved []geometry.Footprint
		for range rapid.IntRange(1, 12).Draw(t, "count") {
			s := geometry.NewRectangle(point("a"), point("b"), 0)
			if rapid.Bool().Draw(t, "round") {
				s = geometry.NewRound(point("middle"), float64(rapid.IntRange(1, 400).Draw(t, "radius")))
			}
			shapes, moved = append(shapes, s), append(moved, s.Moved(0, by))
		}
		here, there := New(floorMin, floorMax, 100, shapes), New(floorMin.Add(by), floorMax.Add(by), 100, moved)
		p, radius := point("p"), float64(rapid.IntRange(0, 300).Draw(t, "within"))
		got := here.Near(p, radius)
		named += len(got)
		require.Equal(t, got, there.Near(p.Add(by), radius))
	})
	require.Positive(t, named)
}

// What is slid along a wall on one side of the van is slid along its mirror image on the other.
func TestSlidingInAMirror(t *testing.T) {
	r := seeded(t, 34)
	moved := 0
	for range rounds(200) {
		l := tight(r)
		m, n := NewMargins(l), NewMargins(l.mirrored())
		start, ok := m.Nearest(pt(r.Float64()*150, r.Float64()*100))
		if !ok {
			continue
		}
		for range 10 {
			step := pt(r.NormFloat64()*8, r.NormFloat64()*8)
			here, there := m.Slide(start.At, step), n.Slide(pt(start.At.X, -start.At.Y), pt(step.X, -step.Y))
			if here.Sub(start.At).Norm() > 1 {
				moved++
			}
			require.InDelta(t, 0, here.Sub(pt(there.X, -there.Y)).Norm(), 0.01, "%v from %v: %+v", step, start.At, l)
		}
	}
	require.Greater(t, moved, rounds(200))
}
