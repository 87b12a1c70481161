package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// No place on a fine grid may beat it, and the place given must have the margin given.
func TestRoomiestAgainstEveryPlace(t *testing.T) {
	r := seeded(t, 4)
	for range rounds(30) {
		l := mixed(r, r.IntN(100))
		m := NewMargins(l)
		got := m.Roomiest(0.01)
		require.True(t, m.onFloor(got.At))
		require.InDelta(t, slowly(l, got.At), got.Margin, 1e-9)
		require.InDelta(t, got.Margin, m.only(got.Limit, got.At), 1e-9)
		best, step := math.Inf(-1), 10.0
		for x := l.Min.X; x <= l.Max.X; x += step {
			for y := l.Min.Y; y <= l.Max.Y; y += step {
				best = above(best, l, pt(x, y))
			}
		}
		require.GreaterOrEqual(t, got.Margin, best-0.01)
		require.LessOrEqual(t, got.Margin, best+step/math.Sqrt2+1e-9)
	}
}

// Of places as near as is asked none of a fine grid is worth more, with what its distance takes off.
func TestBestAgainstEveryPlaceAsFarAsTheAimAllows(t *testing.T) {
	r := seeded(t, 15)
	for range 30 {
		l := mixed(r, r.IntN(40))
		m := NewMargins(l)
		aim := Aim{From: pt(r.Float64()*3600-200, r.Float64()*2200-1100), Within: r.Float64() * 500, Enough: r.Float64() * 60, PerAway: r.Float64()}
		if r.IntN(3) == 0 {
			aim.Enough, aim.PerAway = math.Inf(1), 0
		}
		worth := func(p geometry.Point) float64 {
			return min(slowly(l, p), aim.Enough) - aim.PerAway*p.Sub(aim.From).Norm()
		}
		got, ok := m.Best(aim, 0.05)
		best, at := math.Inf(-1), pt(0, 0)
		const step = 10
		for x := -aim.Within; x <= aim.Within; x += step {
			for y := -aim.Within; y <= aim.Within; y += step {
				p := aim.From.Add(pt(x, y))
				if pt(x, y).Norm() <= aim.Within && m.onFloor(p) && worth(p) > best {
					best, at = worth(p), p
				}
			}
		}
		if math.IsInf(best, -1) {
			continue
		}
		require.True(t, ok)
		require.True(t, m.onFloor(got.At))
		require.LessOrEqual(t, got.At.Sub(aim.From).Norm(), aim.Within+1e-9)
		require.InDelta(t, slowly(l, got.At), got.Margin, 1e-9)
		require.GreaterOrEqual(t, worth(got.At), best-0.05, "%v is worth more", at)

		margin := slowly(l, at)
		held, holds := m.Holds(aim.From, aim.Within, margin-1, 0.05)
		require.True(t, holds, "%v holds it", at)
		require.Greater(t, slowly(l, held.At), margin-1)
		roomiest, _ := m.Best(Aim{From: aim.From, Within: aim.Within, Enough: math.Inf(1)}, 0.01)
		_, holds = m.Holds(aim.From, aim.Within, roomiest.Margin+0.02, 0.05)
		require.False(t, holds)
	}
}

func TestNoPlaceOutOfReachOfTheFloor(t *testing.T) {
	m := NewMargins(Limits{Max: pt(100, 100)})
	_, ok := m.Best(Aim{From: pt(-50, 0), Within: 49, Enough: 1}, 0.01)
	require.False(t, ok)
	_, ok = m.Holds(pt(-50, 0), 49, -10, 0.01)
	require.False(t, ok)
}
