package geometry_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// By hand: 300 forward, 400 to the left; a point said twice is no leg.
func TestAPlaceAlongALineByItsShare(t *testing.T) {
	line := []geometry.Point{{X: 100}, {X: 400}, {X: 400}, {X: 400, Y: 400}}
	for share, want := range map[float64]geometry.Point{
		0: {X: 100}, 0.25: {X: 275}, 3.0 / 7: {X: 400}, 0.5: {X: 400, Y: 50}, 1: {X: 400, Y: 400}, 1.5: {X: 400, Y: 400},
	} {
		got := geometry.Along(line, share)
		assert.InDelta(t, 0, got.Sub(want).Norm(), 1e-9, "%v: %v", share, got)
	}
	assert.Equal(t, geometry.Point{X: 7}, geometry.Along([]geometry.Point{{X: 7}}, 0.5), "a point alone")
	assert.Equal(t, geometry.Point{X: 7}, geometry.Along([]geometry.Point{{X: 7}, {X: 7}}, 0.5), "no length")
}

// A run whose bends have no radius goes the same way.
func TestAlongIsWhereARunIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := make([]geometry.Point, rapid.IntRange(2, 6).Draw(t, "points"))
		path := make([]geometry.Point3, len(line))
		for i := range line {
			line[i] = geometry.Point{X: rapid.Float64Range(-100, 3300).Draw(t, "x"), Y: rapid.Float64Range(-900, 900).Draw(t, "y")}
			path[i] = line[i].At(-40)
		}
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		run := geometry.Rounded(path, 0)
		assert.InDelta(t, 0, run.At(share*run.Length()).Plan().Sub(geometry.Along(line, share)).Norm(), 1e-6)
	})
}
