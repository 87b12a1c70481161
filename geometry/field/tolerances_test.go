package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// A strip that two readings closed by missing each other is passed, one as wide as steel could be is not.
func TestHowWideAClosedStripStopsASlide(t *testing.T) {
	for width, passed := range map[float64]bool{0.045: true, 0.049: true, 0.052: false, 0.06: false, 1: false} {
		m := NewMargins(Limits{Max: pt(1000, 500), Obstacles: []Obstacle{box(600, -10, 600+width, 510)}})
		got := m.Slide(pt(430, 210), pt(300, 0))
		if passed {
			assert.InDelta(t, 730, got.X, 1e-9, "%v wide", width)
			continue
		}
		assert.InDelta(t, 600, got.X, 10*skin, "%v wide", width)
		assert.LessOrEqual(t, got.X, 600.)
	}
}

// An opening that takes a circle of a few thousandths is found, wherever its middle is.
func TestTheSmallestOpeningThatIsFound(t *testing.T) {
	r := seeded(t, 12)
	for range 40 {
		at, half := pt(100+800*r.Float64(), 100+300*r.Float64()), 0.003
		m := NewMargins(Limits{Max: pt(1000, 500), Obstacles: []Obstacle{
			box(-10, -10, at.X-half, 510), box(at.X+half, -10, 1010, 510),
			box(-10, -10, 1010, at.Y-half), box(-10, at.Y+half, 1010, 510),
		}})
		place, ok := m.Nearest(pt(r.Float64()*1000, r.Float64()*500))
		require.True(t, ok)
		require.InDelta(t, 0, place.At.Sub(at).Norm(), half*math.Sqrt2+1e-9)
	}
}

// Out of a round thing is straight from its middle, out of a corner straight from the corner, however small the thing is.
func TestTheWayOutOfSmallThings(t *testing.T) {
	r := seeded(t, 13)
	for range 500 {
		middle, radius := pt(900*r.Float64(), 400*r.Float64()), 1+3*r.Float64()
		m := NewMargins(Limits{Max: pt(1000, 500), EdgeNeed: math.Inf(-1), Obstacles: []Obstacle{
			{Footprint: geometry.NewRound(middle, radius), Need: 2}, // part 0
		}})
		way := pt(1, 0).Turn(r.Float64() * 360)
		require.InDelta(t, 0, m.outward(0, middle.Add(way.Scale(0.5+5*r.Float64()))).Sub(way).Norm(), 1e-5)
		corner := NewMargins(Limits{Max: pt(1000, 500), EdgeNeed: math.Inf(-1), Obstacles: []Obstacle{
			{Footprint: geometry.NewRectangle(middle, middle.Sub(pt(2, 2)), 0)},
		}})
		out := pt(math.Abs(way.X)+0.1, math.Abs(way.Y)+0.1)
		require.InDelta(t, 0, corner.outward(0, middle.Add(out)).Sub(out.Scale(1/out.Norm())).Norm(), 1e-5)
	}
}

// What decides only how long it takes changes no answer: open areas from maps of different steps and by more workers, and
// lists of different lengths, agree.
func TestStepsAndWorkersChangeNoBestPlace(t *testing.T) {
	r := seeded(t, 14)
	for range rounds(20) {
		l := crowded(r, 1+r.IntN(30), func() float64 { return 50 * r.Float64() })
		m := NewMargins(l)
		best := m.Roomiest(finest)
		for _, step := range []float64{5, 13, 40} {
			areas := m.Map(step, 1+r.IntN(3)).Areas()
			if best.Margin < 0.1 {
				continue // what is narrower than a 64th of a step may be missed
			}
			require.NotEmpty(t, areas)
			require.InDelta(t, best.Margin, areas[0].Best.Margin, 2*finest)
		}
	}
}

// A cell whose corners fall short of their bound by less than 32 bits of a margin tell is looked into all the same.
func TestACellIsNotOpenByRounding(t *testing.T) {
	tried := 0
	for step := 2.0; step < 400; step *= 1.13 {
		corner := step*math.Phi/2 - 1e-9 // two of them are less than what says that all between is open
		for _, sign := range []float64{1, -1} {
			v := float32(sign * corner)
			b := &patch{values: []float32{v, v, v, v}, stride: 2, cols: 2, rows: 2, step: step}
			require.Equal(t, []int{0}, b.borders(), "%v", step)
			if math.Abs(float64(v)) > step*math.Phi/2 {
				tried++
			}
		}
	}
	assert.Greater(t, tried, 10, "rounded to the wrong side")
}

// A floor that ends at a node but for rounding has its last node there, and one that ends a hair beyond it has one more.
func TestHowFarBeyondANodeAFloorEnds(t *testing.T) {
	for beyond, more := range map[float64]int{0: 0, 0.5e-9: 0, 0.9e-9: 0, 2e-9: 1, 5e-9: 1, 0.5: 1} {
		m := NewMargins(Limits{Min: pt(-beyond, -2-beyond), Max: pt(3+beyond, 4+beyond)})
		cols, rows := m.Map(1, 1).Size()
		assert.Equal(t, [2]int{4 + 2*more, 7 + 2*more}, [2]int{cols, rows}, "%v mm", beyond)
	}
}

// A way is open across what only rounding closes, and across nothing as wide as what is looked for.
func TestHowWideAClosedStripClosesAWay(t *testing.T) {
	r := seeded(t, 15)
	for range 200 {
		at := 500 + 200*r.Float64()
		passes := func(width float64) bool {
			m := NewMargins(Limits{Max: pt(1000, 500), Obstacles: []Obstacle{box(at, -10, at+width, 510)}})
			return m.passable(pt(430, 210), pt(730, 210), m.all)
		}
		require.True(t, passes(1e-6), "at %v", at)
		require.False(t, passes(0.011), "at %v", at)
	}
}

// A place that slides against what is closed is kept a few millionths of a mm off it.
func TestHowNearAWallASlideEnds(t *testing.T) {
	r := seeded(t, 16)
	for range 200 {
		at := 500 + 200*r.Float64()
		m := NewMargins(Limits{Max: pt(1000, 500), Obstacles: []Obstacle{box(at, -10, at+50, 510)}})
		off := at - m.Slide(pt(430, 210), pt(400, 30*r.Float64())).X
		require.Greater(t, off, 2e-6, "rounding may close it")
		require.Less(t, off, 2e-5, "somebody may see it")
	}
}
