package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// By school geometry: beside a leg a place is as far from it as it lies aside; before its beginning and past its end as far as the
// hypotenuse of that and of how far before or past it is. So at the ends themselves, where both say the same.
func TestPlacesBesideBeforeAndPastALeg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := pt{X: rapid.Float64Range(-3000, 3000).Draw(t, "x"), Y: rapid.Float64Range(-3000, 3000).Draw(t, "y")}
		length, turn := rapid.Float64Range(1, 2000).Draw(t, "length"), rapid.Float64Range(-180, 180).Draw(t, "turn")
		radius := rapid.Float64Range(0, 50).Draw(t, "radius")
		leg := geometry.NewLine([]pt{a, a.Add(pt{X: length}.Turn(turn))}, radius)
		share := rapid.SampledFrom([]float64{-1, -1e-9, 0, 1e-9, 0.3, 0.5, 1 - 1e-9, 1, 1 + 1e-9, 2}).Draw(t, "share")
		aside := radius + rapid.Float64Range(0, 500).Draw(t, "aside")
		p := a.Add(pt{X: share * length, Y: aside}.Turn(turn))
		beyond := max(0, -share, share-1) * length
		require.InDelta(t, math.Hypot(beyond, aside)-radius, leg.GapOnly(p), 1e-8)
	})
}
