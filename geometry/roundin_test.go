package geometry_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
)

// In the memory of whatever run a run is what it is in its own, and a copy of what it was made of changes nothing.
func TestARunInTheMemoryOfAnotherIsTheSame(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 4))
	var in geometry.Run
	for range 300 {
		path := make([]pt3, 1+r.IntN(20))
		for i := range path {
			path[i] = pt3{math.Round(300 * r.Float64()), math.Round(300 * r.Float64()), math.Round(100 * r.Float64())}
			if i > 0 && r.IntN(6) == 0 {
				path[i] = path[i-1]
			}
		}
		bend := []float64{0, 20, 60}[r.IntN(3)]
		in.Round(path, bend)
		own := geometry.Rounded(path, bend)
		path[0].X++
		assert.Equal(t, own.Length(), in.Length())
		assert.Equal(t, own.Turns(), in.Turns())
		assert.Equal(t, len(own.Legs), len(in.Legs))
		assert.ElementsMatch(t, own.ShortLegs, in.ShortLegs)
		for s := -1.0; s < own.Length()+2; s += 7 {
			assert.Equal(t, own.At(s), in.At(s))
		}
	}
}
