package vector

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// once is a round's outline without the point at which it closes.
func once(f *geometry.Footprint, off float64) []geometry.Point {
	outline := outlineOf(f, off)
	return outline[:len(outline)-1]
}

// lens is what two discs have in common, in closed form (E. Weisstein, Circle-Circle Intersection, formula 14; from memory).
func lens(r, q, apart float64) float64 {
	switch {
	case apart >= r+q:
		return 0
	case apart <= math.Abs(r-q):
		return math.Pi * min(r, q) * min(r, q)
	}
	a := math.Acos((apart*apart + r*r - q*q) / (2 * apart * r))
	b := math.Acos((apart*apart + q*q - r*r) / (2 * apart * q))
	return r*r*a + q*q*b - math.Sqrt((-apart+r+q)*(apart+r-q)*(apart-r+q)*(apart+r+q))/2
}

// What of a disc lies in the ring is as large as the closed form of two discs says, on whichever side it lies and whichever way round its
// outline goes.
func TestWhatOfADiscLiesInTheRing(t *testing.T) {
	const off = 0.001
	rapid.Check(t, func(t *rapid.T) {
		r, q := rapid.Float64Range(5, 40).Draw(t, "ring"), rapid.Float64Range(5, 40).Draw(t, "disc")
		apart := rapid.Float64Range(0, 90).Draw(t, "apart")
		way := geometry.Point{X: apart}.Turn(rapid.Float64Range(0, 360).Draw(t, "way"))
		ring, disc := geometry.NewRound(geometry.Point{X: 100, Y: 50}, r), geometry.NewRound(geometry.Point{X: 100, Y: 50}.Add(way), q)
		outline, convex := once(&disc, off), once(&ring, off)
		if rapid.Bool().Draw(t, "the other way round") {
			for i, k := 0, len(outline)-1; i < k; i, k = i+1, k-1 {
				outline[i], outline[k] = outline[k], outline[i]
			}
		}
		common := clipped(outline, convex)
		require.InDelta(t, lens(r, q, apart), math.Abs(area(common)), 2*math.Pi*(r+q)*off)
		for _, p := range common {
			require.LessOrEqual(t, ring.GapOnly(p), 1e-9)
			require.LessOrEqual(t, disc.GapOnly(p), 1e-9)
		}
	})
}

// What of a rectangle lies in the ring is what sampling says: as large a share of it as of places strewn evenly over it.
func TestWhatOfARectangleLiesInTheRing(t *testing.T) {
	const side = 120
	rapid.Check(t, func(t *rapid.T) {
		half := geometry.Point{X: rapid.Float64Range(1, 60).Draw(t, "half x"), Y: rapid.Float64Range(1, 60).Draw(t, "half y")}
		at := geometry.Point{X: rapid.Float64Range(-80, 80).Draw(t, "x"), Y: rapid.Float64Range(-80, 80).Draw(t, "y")}
		box := geometry.NewRectangle(at.Sub(half), at.Add(half), rapid.Float64Range(-180, 180).Draw(t, "turn"))
		ring := geometry.NewRound(geometry.Point{}, rapid.Float64Range(5, 60).Draw(t, "ring"))
		c, in := box.Corners(), 0
		for i := range side {
			for k := range side {
				along, up := c[3].Sub(c[2]).Scale((float64(i)+0.5)/side), c[1].Sub(c[2]).Scale((float64(k)+0.5)/side)
				if ring.Contains(c[2].Add(along).Add(up)) {
					in++
				}
			}
		}
		whole := 4 * half.X * half.Y
		want := whole * float64(in) / side / side
		require.InDelta(t, want, math.Abs(area(clipped(outlineOf(&box, 0.01), once(&ring, 0.01)))), 0.02*whole+2*math.Pi*ring.Radius*0.01)
	})
}

// Areas by the shoelace are the published ones: JTS, geom/AreaLengthTest, a square of 20 with a square hole of 10 in it; what goes round
// the other way counts the other way.
func TestAreasByTheShoelace(t *testing.T) {
	square := func(low, high float64) []geometry.Point {
		return []geometry.Point{{X: low, Y: low}, {X: high, Y: low}, {X: high, Y: high}, {X: low, Y: high}}
	}
	outer, hole := square(20, 40), square(25, 35)
	require.InDelta(t, 300, area(outer)-area(hole), 1e-9)
	require.InDelta(t, -400, area([]geometry.Point{outer[3], outer[2], outer[1], outer[0]}), 1e-9)
	require.Zero(t, area(outer[:2]), "a line there and back")
}

// An outline of all within a radius of a convex path is as large as Steiner's formula says: twice the radius times the length, and a disc.
// A path that turns the same way all along, by less than half a turn in all, covers nothing twice but for its inner corners.
func TestATubesOutlineIsAsLargeAsSteinerSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		radius := rapid.Float64Range(1, 20).Draw(t, "radius")
		path, heading := []geometry.Point{{X: 10, Y: -5}}, rapid.Float64Range(0, 360).Draw(t, "heading")
		length, lost := 0.0, 0.0
		for i := range rapid.IntRange(1, 4).Draw(t, "legs") {
			if i > 0 {
				turn := rapid.Float64Range(0, 40).Draw(t, "turn")
				heading += turn
				half := turn / 2 * math.Pi / 180
				lost += radius * radius * (math.Tan(half) - half) // the inner sides overlap, the outer corner is round
			}
			leg := rapid.Float64Range(40, 200).Draw(t, "length")
			length += leg
			path = append(path, path[len(path)-1].Add(geometry.Point{X: leg}.Turn(heading)))
		}
		f := geometry.NewLine(path, radius)
		want := 2*radius*length + math.Pi*radius*radius - lost
		require.InDelta(t, want, math.Abs(area(outlineOf(&f, 0.001))), 0.001*(2*length+2*math.Pi*radius)+1e-6)
	})
}

// The ring has no side of rounding: wherever it lies and however large it is, all of a thing that covers it lies in it.
func TestAThingThatCoversTheRingIsInAllOfIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		radius := rapid.Float64Range(1, 60).Draw(t, "radius")
		at := geometry.Point{X: rapid.Float64Range(0, 200).Draw(t, "x"), Y: rapid.Float64Range(0, 200).Draw(t, "y")}
		d := drawing{
			frame: Frame{Box: Box{Width: 200, Height: 200}, Scale: 1, Middle: geometry.Point{X: 100, Y: -100}},
			look:  Look{Screen: &Screen{Ring: 1, Width: 1}},
		}
		d.parts = []part{{Item: &scene.Item{Role: scene.Cut}, Seen: scene.Seen{Area: geometry.NewRound(d.frame.Plane(at), radius)}}}
		all := []geometry.Point{{X: -500, Y: -500}, {X: 700, Y: -500}, {X: 700, Y: 700}, {X: -500, Y: 700}}
		require.InDelta(t, math.Pi*radius*radius, math.Abs(area(clipped(all, d.circle()))), 0.1*radius)
	})
}
