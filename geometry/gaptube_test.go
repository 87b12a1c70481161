package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// Between two tubes of straight pieces: the least over every pair of pieces, less both radii there, with places that are as far
// apart as it says.
func TestGapTubeIsTheLeastOverAllPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		paths, radii := [2][]pt3{}, [2]float64{}
		for i := range paths {
			radii[i] = rapid.Float64Range(1, 40).Draw(t, "radius")
			for range rapid.IntRange(1, 5).Draw(t, "points") {
				at := func(name string) float64 { return rapid.Float64Range(-900, 900).Draw(t, name) }
				paths[i] = append(paths[i], pt3{X: at("x"), Y: at("y"), Z: at("z")})
			}
		}
		least := geometry.BetweenPaths(paths[0], paths[1])
		var p, q geometry.Tube
		p.AddPath(paths[0], radii[0])
		q.AddPath(paths[1], radii[1])
		between, radius := p.GapTube(&q)
		require.InDelta(t, least.Gap-radii[0]-radii[1], between.Distance, 1e-9)
		assert.Equal(t, radii[1], radius)
		assert.InDelta(t, least.Gap, between.B.Sub(between.A).Norm(), 1e-9, "the places are where it is")
		assert.False(t, math.IsInf(between.Gap, 0))
	})
}

// A piece that comes no nearer changes nothing, wherever rounding puts the sum of a distance and a radius: here each radius
// makes it cross a power of two.
func TestAPieceThatIsFartherChangesNothing(t *testing.T) {
	for i := range 400 {
		far := 228 + 0.0973*float64(i)
		var p, q geometry.Tube
		p.AddPath([]pt3{{}, {X: 100}}, 13)
		q.AddPath([]pt3{{Y: far}, {X: 100, Y: far}}, 11)
		q.AddPath([]pt3{{Y: 2 * far}, {X: 100, Y: 2 * far}}, 34.9)
		between, radius := p.GapTube(&q)
		assert.InDelta(t, far-24, between.Distance, 1e-9)
		require.InDelta(t, far, between.Gap, 1e-9, "%v", far)
		assert.Equal(t, 11.0, radius)
	}
	var none, some geometry.Tube
	some.AddPath([]pt3{{}}, 5)
	between, _ := some.GapTube(&none)
	assert.True(t, math.IsInf(between.Distance, 1))
	between, _ = none.GapTube(&some)
	assert.True(t, math.IsInf(between.Distance, 1))
}

// Two quarter bends about one axis, 60 and 100 mm from it: 40 apart all along, less the radii.
func TestGapTubeOfBends(t *testing.T) {
	inner := geometry.Rounded([]pt3{{X: 60, Y: -200}, {X: 60, Y: 60}, {X: -200, Y: 60}}, 60)
	outer := geometry.Rounded([]pt3{{X: 100, Y: -200}, {X: 100, Y: 100}, {X: -200, Y: 100}}, 100)
	var p, q geometry.Tube
	p.AddRun(&inner, 0, inner.Length(), 13)
	q.AddRun(&outer, 0, outer.Length(), 14)
	between, _ := p.GapTube(&q)
	assert.InDelta(t, 40-27, between.Distance, 1e-6)
	back, _ := q.GapTube(&p)
	assert.InDelta(t, between.Distance, back.Distance, 1e-6)
}
