package vector

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// A round is drawn by chords that leave it by no more than they may, and by no more of them than that takes.
func TestRoundsAreTrueToTheTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		off, radius := rapid.Float64Range(0.005, 1).Draw(t, "off"), rapid.Float64Range(1, 400).Draw(t, "radius")
		f := geometry.NewRound(geometry.Point{X: 1210, Y: 240}, radius)
		points := outlineOf(&f, off)
		widest := 0.0
		for i, p := range points {
			next := points[(i+1)%len(points)]
			assert.InDelta(t, radius, p.Sub(f.Middle).Norm(), 1e-9)
			widest = max(widest, radius-p.Add(next).Scale(0.5).Sub(f.Middle).Norm())
		}
		assert.LessOrEqual(t, widest, off+1e-9)
		if n := float64(len(points)); n > 8 {
			fewer := radius * (1 - math.Cos(math.Pi/(n-2)))
			assert.Greater(t, fewer, off-1e-9, "one chord less would be off by more")
		}
	})
}

// A pipe is the same seen from its other end, and points said twice change nothing.
func TestAPipeHasNoDirection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path := make([]geometry.Point, rapid.IntRange(2, 5).Draw(t, "points"))
		for i := range path {
			path[i] = geometry.Point{X: rapid.Float64Range(0, 2000).Draw(t, "x"), Y: rapid.Float64Range(-800, 800).Draw(t, "y")}
		}
		var back, twice []geometry.Point
		for i, p := range path {
			back = append(back, path[len(path)-1-i])
			twice = append(twice, p, p)
		}
		radius := rapid.Float64Range(3, 60).Draw(t, "radius")
		there := tubeOf(path, radius, 0.05)
		require.Equal(t, there, tubeOf(twice, radius, 0.05))
		require.InDelta(t, signed(there), signed(tubeOf(back, radius, 0.05)), 1e-3)
		require.Positive(t, signed(there), "it is gone round anticlockwise, but where it crosses itself")
	})
}

// signed is the area within an outline, mm², what is gone round twice counted twice, clockwise negative.
func signed(outline []geometry.Point) (area float64) {
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		area += (p.X*q.Y - q.X*p.Y) / 2
	}
	return area
}

// By hand: a straight pipe of 100 by 20 with its two round ends; one with its ends in one place is a round.
func TestAStraightPipe(t *testing.T) {
	straight := tubeOf([]geometry.Point{{}, {X: 100}}, 10, 0.001)
	assert.InDelta(t, 100*20+math.Pi*100, signed(straight), 0.1)
	round := tubeOf([]geometry.Point{{X: 5}, {X: 5}}, 10, 0.001)
	assert.InDelta(t, math.Pi*100, signed(round), 0.1)
}

// Lines of a pattern are where they are on the whole board, so that they meet those of a neighbour: level ones every spacing from its
// top, slanted ones through its corner.
func TestPatternsOfNeighboursMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := geometry.Point{X: rapid.Float64Range(0, 200).Draw(t, "x"), Y: rapid.Float64Range(0, 200).Draw(t, "y")}
		angle, spacing := rapid.SampledFrom([]float64{0, 45, -45, 30}).Draw(t, "angle"), rapid.Float64Range(0.5, 4).Draw(t, "spacing")
		f := geometry.NewRectangle(at, at.Add(geometry.Point{X: 30, Y: 20}), 0)
		corners := f.Corners()
		for _, piece := range hatched(corners[:], angle, spacing) {
			for _, p := range piece {
				off := p.Turn(angle).Y / spacing
				require.InDelta(t, math.Round(off), off, 1e-6)
				require.LessOrEqual(t, f.GapOnly(p), 1e-6, "within the outline")
			}
		}
	})
}

// By hand: a level line through a U is within each of its arms, through its foot once; an outline gone round twice is not bare inside.
func TestPatternsOfBentOutlines(t *testing.T) {
	u := []geometry.Point{{}, {X: 30}, {X: 30, Y: 30}, {X: 20, Y: 30}, {X: 20, Y: 10}, {X: 10, Y: 10}, {X: 10, Y: 30}, {Y: 30}}
	assert.Equal(t, [][2]float64{{0, 10}, {20, 30}}, crossings(u, 20))
	assert.Equal(t, [][2]float64{{0, 30}}, crossings(u, 5))
	assert.Empty(t, crossings(u, 31))
	square := []geometry.Point{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}
	assert.Equal(t, [][2]float64{{0, 10}}, crossings(append(square, square...), 5))
	assert.Len(t, hatched(square, 0, 2), 5, "at 0, 2, 4, 6 and 8")
}

// Boxes that share no more than an edge do not meet, whichever is asked; one that holds another meets it.
func TestBoxesThatMeet(t *testing.T) {
	a := Box{Left: 10, Top: 10, Width: 20, Height: 5}
	for _, c := range []struct {
		b           Box
		meets, held bool
	}{
		{Box{30, 10, 5, 5}, false, false}, {Box{10, 15, 5, 5}, false, false}, {Box{29.9, 14.9, 5, 5}, true, false},
		{Box{12, 11, 3, 3}, true, true}, {a, true, true}, {Box{9, 9, 30, 30}, true, false}, {Box{-5, 10, 10, 5}, false, false},
	} {
		assert.Equal(t, c.meets, a.meets(c.b), "%v", c.b)
		assert.Equal(t, c.meets, c.b.meets(a), "%v", c.b)
		assert.Equal(t, c.held, a.holds(c.b), "%v", c.b)
	}
	assert.Equal(t, geometry.Point{X: 20, Y: 12.5}, a.middle())
}

func TestNumbersOfAFile(t *testing.T) {
	for mm, want := range map[float64]string{0: "0", -0.0004: "0", 1: "1", 0.1 + 0.2: "0.3", 1220.3: "1220.3", -7.0006: "-7.001", 100: "100", 12.3456: "12.346"} {
		assert.Equal(t, want, num(mm))
	}
}

// A pipe that folds back on itself is round where it turns, whichever way it runs and however short the piece that goes back.
func TestAPipeThatFoldsBackIsRoundThere(t *testing.T) {
	for _, back := range []float64{0.5, 5, 60} {
		for turn := 0.0; turn < 360; turn += 15 {
			way := geometry.Point{X: 1}.Turn(turn)
			path := []geometry.Point{{}, way.Scale(100), way.Scale(100 - back)}
			for _, p := range [][]geometry.Point{path, {path[2], path[1], path[0]}} {
				outline := tubeOf(p, 6, 0.01)
				for _, off := range []geometry.Point{{X: 105}, {X: 104, Y: 4}, {X: 104, Y: -4}, {X: 50, Y: 5.9}, {X: -5.9}, {X: 100}} {
					require.NotZero(t, winding(outline, off.Turn(turn)), "back %g, at %g degrees: %v", back, turn, off)
				}
				require.Zero(t, winding(outline, geometry.Point{X: 106.1}.Turn(turn)))
			}
		}
	}
}
