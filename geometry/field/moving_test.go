package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

func TestNearestByHand(t *testing.T) {
	round := geometry.NewRound(pt(500, 250), 100)
	for _, c := range []struct {
		name      string
		obstacles []Obstacle
		from      geometry.Point
		want      float64 // distance; negative: none
	}{
		{"open already", nil, pt(500, 250), 0},
		{"beside the floor", nil, pt(-30, 250), 40},
		{"off its corner", nil, pt(-20, -30), 50},
		{"middle of a round, all ways alike", []Obstacle{{round, 20}}, pt(500, 250), 120},
		{"in a round", []Obstacle{{round, 20}}, pt(500, 290), 80},
		{"way out blocked by a wall", []Obstacle{{round, 20}, box(480, 290, 1010, 510), box(-10, 290, 480, 510)}, pt(500, 290), outOf(pt(500, 290))},
		{"nothing open", []Obstacle{box(-10, -10, 1010, 510)}, pt(500, 250), -1},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := Limits{Max: pt(1000, 500), EdgeNeed: 10, Obstacles: c.obstacles}
			got, ok := NewMargins(l).Nearest(c.from)
			require.Equal(t, c.want >= 0, ok)
			if ok {
				assert.InDelta(t, c.want, got.At.Sub(c.from).Norm(), 0.01)
				assert.GreaterOrEqual(t, slowly(l, got.At), 0.0)
			}
		})
	}
}

// outOf is the distance from a place below the line y = 290 to where the circle of 120 about (500, 250) meets that line.
func outOf(p geometry.Point) float64 { return pt(500+math.Sqrt(120*120-40*40), 290).Sub(p).Norm() }

func TestNearestAgainstEveryPlace(t *testing.T) {
	r := seeded(t, 6)
	found := 0
	for range rounds(300) {
		l := tight(r)
		from := pt(r.Float64()*200-25, r.Float64()*150-25)
		got, ok := NewMargins(l).Nearest(from)
		far := math.Inf(1)
		for x := 0.0; x <= l.Max.X; x++ {
			for y := 0.0; y <= l.Max.Y; y++ {
				if p := pt(x, y); slowly(l, p) >= 0 {
					far = min(far, p.Sub(from).Norm())
				}
			}
		}
		if !ok {
			require.True(t, math.IsInf(far, 1))
			continue
		}
		found++
		require.GreaterOrEqual(t, slowly(l, got.At), -1e-9)
		require.LessOrEqual(t, got.At.Sub(from).Norm(), far+0.01)
		require.GreaterOrEqual(t, got.At.Sub(from).Norm(), -slowly(l, from)-1e-9, "a margin grows no faster than the place moves")
	}
	require.Greater(t, found, rounds(200))
}

func TestSlideByHand(t *testing.T) {
	l := Limits{Max: pt(1000, 500), EdgeNeed: 10, Obstacles: []Obstacle{
		{Footprint: geometry.NewRectangle(pt(600, 100), pt(700, 600), 0), Need: 20},
		{Footprint: geometry.NewRound(pt(300, 250), 30), Need: 20},
		{Footprint: geometry.NewRectangle(pt(800, 150), pt(900, 250), 45), Need: 10},
	}}
	for _, c := range []struct {
		name           string
		at, step, want geometry.Point
	}{
		{"free", pt(100, 100), pt(30, -20), pt(130, 80)},
		{"no step", pt(100, 100), pt(0, 0), pt(100, 100)},
		{"straight at a wall", pt(500, 300), pt(100, 0), pt(580, 300)},
		{"slantwise at a wall", pt(560, 300), pt(50, 40), pt(580, 340)},
		{"along a wall it touches", pt(580, 300), pt(0, 70), pt(580, 370)},
		{"away from a wall it touches", pt(580, 300), pt(-10, 0), pt(570, 300)},
		{"into the corner of wall and edge", pt(560, 480), pt(100, 100), pt(580, 490)},
		{"straight at a round", pt(200, 250), pt(100, 0), pt(250, 250)},
		{"down along a turned side", pt(800, 290), pt(0, -60), pt(797.5736, 232.4264)},
		{"from where it is closed", pt(300, 250), pt(500, 0), pt(300, 250)},
		{"from off the floor", pt(-5, 250), pt(50, 0), pt(-5, 250)},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := NewMargins(l).Slide(c.at, c.step)
			assert.InDelta(t, c.want.X, got.X, 0.01)
			assert.InDelta(t, c.want.Y, got.Y, 0.01)
		})
	}
}

func TestSlideStaysOpenAndGoesNoFartherThanTheStep(t *testing.T) {
	r := seeded(t, 7)
	moved := 0
	for range rounds(300) {
		l := tight(r)
		m := NewMargins(l)
		start, ok := m.Nearest(pt(r.Float64()*150, r.Float64()*100))
		if !ok {
			continue
		}
		p := start.At
		for range 30 {
			step := pt(r.NormFloat64()*8, r.NormFloat64()*8)
			q := m.Slide(p, step)
			require.GreaterOrEqual(t, slowly(l, q), -1e-9)
			require.LessOrEqual(t, q.Sub(p).Norm(), step.Norm()+0.001)
			require.GreaterOrEqual(t, q.Sub(p).Dot(step), -0.001*step.Norm(), "never backwards")
			if m.open(p.Add(step)) && m.passable(p, p.Add(step), m.all) {
				require.InDelta(t, 0, q.Sub(p).Sub(step).Norm(), 1e-9)
			}
			if q != p {
				moved++
			}
			p = q
		}
	}
	require.Greater(t, moved, rounds(3000))
}
