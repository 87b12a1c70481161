package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// views are affine: from below, from the side, and along a line aslant.
var views = map[string]func(p geometry.Point3) geometry.Point{
	"plan":   geometry.Point3.Plan,
	"side":   func(p geometry.Point3) geometry.Point { return geometry.Point{X: p.X, Y: p.Z} },
	"aslant": func(p geometry.Point3) geometry.Point { return geometry.Point{X: p.X + p.Z/2 + 7, Y: p.Y - p.Z/3} },
}

// A quarter bend of radius 60 between two legs: beside a leg it is the foot of the perpendicular, inside the bend the middle of the arc.
func TestThePlaceSeenNearestByHand(t *testing.T) {
	run := geometry.Rounded([]geometry.Point3{{}, {X: 300}, {X: 300, Y: 200}}, 60)
	for _, c := range []struct {
		at         geometry.Point
		along, off float64
	}{
		{geometry.Point{X: 100, Y: 30}, 100, 30},
		{geometry.Point{X: -50, Y: -50}, 0, 50 * math.Sqrt2},
		{geometry.Point{X: 310, Y: 150}, 240 + 30*math.Pi + 90, 10},
		{geometry.Point{X: 300, Y: 0}, 240 + 15*math.Pi, 60 * (math.Sqrt2 - 1)},
		{geometry.Point{X: 240, Y: 60 - 59.5}, 240, 0.5},
	} {
		along, off := run.AlongSeen(c.at, geometry.Point3.Plan)
		assert.InDelta(t, c.along, along, 1e-6, "%v", c.at)
		assert.InDelta(t, c.off, off, 1e-9, "%v", c.at)
	}
	along, off := geometry.Rounded([]geometry.Point3{{X: 3}}, 60).AlongSeen(geometry.Point{X: 3, Y: 4}, geometry.Point3.Plan)
	assert.Zero(t, along)
	assert.Equal(t, 4.0, off)
}

// Oracle: walking along the run in steps of a mm, then of a thousandth round the best, finds nothing nearer, and what is named lies there.
func TestNoPlaceIsSeenNearer(t *testing.T) {
	for name, see := range views {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(rt *rapid.T) {
				coordinate := rapid.Float64Range(-300, 300)
				path := make([]geometry.Point3, rapid.IntRange(1, 5).Draw(rt, "points"))
				for i := range path {
					path[i] = geometry.Point3{X: coordinate.Draw(rt, "x"), Y: coordinate.Draw(rt, "y"), Z: coordinate.Draw(rt, "z")}
				}
				run := geometry.Rounded(path, rapid.Float64Range(0, 120).Draw(rt, "bend"))
				at := geometry.Point{X: coordinate.Draw(rt, "at x"), Y: coordinate.Draw(rt, "at y")}
				along, off := run.AlongSeen(at, see)
				assert.GreaterOrEqual(rt, along, 0.0)
				assert.LessOrEqual(rt, along, run.Length()+1e-9)
				assert.InDelta(rt, off, see(run.At(along)).Sub(at).Norm(), 1e-6)
				walked := func(from, to, step float64) (best, least float64) {
					least = math.Inf(1)
					for s := max(0, from); s <= min(to, run.Length()); s += step {
						if d := see(run.At(s)).Sub(at).Norm(); d < least {
							best, least = s, d
						}
					}
					return best, least
				}
				best, _ := walked(0, run.Length(), 1)
				_, least := walked(best-1, best+1, 0.001)
				assert.LessOrEqual(rt, off, least+1e-9)
			})
		})
	}
}

// What lies between two places along a run is as long as they are apart, and begins and ends there.
func TestPiecesBetweenTwoPlaces(t *testing.T) {
	run := geometry.Rounded([]geometry.Point3{{}, {X: 300}, {X: 300, Y: 200}}, 60)
	pieces := run.PiecesOn(200, 300)
	length := 0.0
	for _, p := range pieces {
		length += p.Length()
	}
	assert.Len(t, pieces, 2)
	assert.InDelta(t, 100, length, 1e-9)
	assert.InDelta(t, 0, pieces[0].A.Sub(run.At(200)).Norm(), 1e-9)
	assert.InDelta(t, 0, pieces[1].B.Sub(run.At(300)).Norm(), 1e-9)
	assert.InDelta(t, 60*math.Pi/2, run.PiecesOn(0, run.Length())[1].Length(), 1e-9)
	assert.Empty(t, run.PiecesOn(200, 200))
}
