package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
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
