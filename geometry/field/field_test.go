package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

func pt(x, y float64) geometry.Point { return geometry.Point{X: x, Y: y} }

var (
	floorMin, floorMax = pt(40, -890), pt(3240, 890)

	crossmember = geometry.NewRectangle(pt(652, -850), pt(736, 850), 0)
	wheel       = geometry.NewRound(pt(420, 0), 345)
	pipe        = geometry.NewLine([]geometry.Point{pt(300, -480), pt(1500, -480), pt(2400, -590)}, 4)
)

func TestNearNamesWhatTouchesTheSquare(t *testing.T) {
	f := New(floorMin, floorMax, 100, []geometry.Footprint{crossmember, wheel, pipe})
	for _, c := range []struct {
		name string
		at   geometry.Point
		want []int
	}{
		{"crossmember alone", pt(650, 450), []int{0}},
		{"crossmember and spare wheel", pt(690, 20), []int{0, 1}},
		{"pipe crosses the crossmember", pt(690, -480), []int{0, 2}},
		{"the corner of the wheel's box is not the wheel", pt(110, 310), nil},
		{"free floor", pt(1210, 240), nil},
		{"off the floor", pt(-500, 0), nil},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, f.Near(c.at, 0)) })
	}
}

// Points sampled from a shape must lie in squares that know it: an independent, slower look at the touch test.
func TestEverySquareUnderAShapeKnowsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shapes := drawShapes(t)
		f := New(floorMin, floorMax, 100, shapes)
		p := pt(rapid.Float64Range(40, 3240).Draw(t, "x"), rapid.Float64Range(-890, 890).Draw(t, "y"))
		radius := rapid.Float64Range(0, 400).Draw(t, "radius")
		for i, s := range shapes {
			gap, nearest := s.Gap(p)
			if gap <= 0 {
				assert.Contains(t, f.Near(p, 0), i)
			}
			if gap < radius-1e-6 && inFloor(nearest) {
				assert.Contains(t, f.Near(p, radius), i)
			}
		}
	})
}

// The other way round: a square that names a shape is never farther from it than its own half diagonal from its middle.
func TestNoSquareNamesWhatItDoesNotTouch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shapes := drawShapes(t)
		f := New(floorMin, floorMax, 100, shapes)
		for square := range f.touching {
			middle := f.square(square).Middle
			for _, i := range f.Near(middle, 0) {
				assert.LessOrEqual(t, shapes[i].GapOnly(middle), 50*math.Sqrt2+1e-6)
			}
		}
	})
}

func TestPickMeansTheSmallThingOnTheLargeOne(t *testing.T) {
	other := geometry.NewLine([]geometry.Point{pt(300, -440), pt(1500, -440)}, 5)
	f := New(floorMin, floorMax, 100, []geometry.Footprint{crossmember, wheel, pipe, other})
	for _, c := range []struct {
		name string
		at   geometry.Point
		want int
		ok   bool
	}{
		{"pipe near the crossmember's middle", pt(700, -490), 2, true},
		{"nearer of two pipes", pt(1000, -452), 3, true},
		{"inside the wheel", pt(420, 20), 1, true},
		{"bare floor", pt(1210, 240), 0, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, ok := f.Pick(c.at, 30)
			require.Equal(t, c.ok, ok)
			assert.Equal(t, c.want, got)
		})
	}
}

func inFloor(p geometry.Point) bool {
	return p.X > floorMin.X && p.X < floorMax.X && p.Y > floorMin.Y && p.Y < floorMax.Y
}

func drawShapes(t *rapid.T) []geometry.Footprint {
	var shapes []geometry.Footprint
	for range rapid.IntRange(1, 12).Draw(t, "count") {
		shapes = append(shapes, drawShape(t))
	}
	return shapes
}

func drawShape(t *rapid.T) geometry.Footprint {
	point := func(name string) geometry.Point {
		return pt(rapid.Float64Range(-200, 3500).Draw(t, name+" x"), rapid.Float64Range(-1000, 1000).Draw(t, name+" y"))
	}
	switch rapid.IntRange(0, 2).Draw(t, "shape") {
	case 0:
		return geometry.NewRectangle(point("min"), point("max"), rapid.Float64Range(-90, 90).Draw(t, "turn"))
	case 1:
		return geometry.NewRound(point("middle"), rapid.Float64Range(1, 400).Draw(t, "radius"))
	}
	return geometry.NewLine([]geometry.Point{point("a"), point("b"), point("c")}, rapid.Float64Range(1, 60).Draw(t, "radius"))
}

// Half a millisecond is not felt; a new field a key press is fine far beyond that.
func BenchmarkNew60(b *testing.B) {
	var shapes []geometry.Footprint
	for i := range 60 {
		x := float64(i) * 53
		shapes = append(shapes, geometry.NewRectangle(pt(x, -300), pt(x+80, 500), float64(i%3)*20))
	}
	for b.Loop() {
		New(floorMin, floorMax, 100, shapes)
	}
}
