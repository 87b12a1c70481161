package geometry

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a leg comes no nearer than is no nearer than any place of it, and as near as the nearest where that is one of its ends.
func TestALegComesNoNearerThanItsBound(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 15))
	place := func() Point { return Point{400*r.Float64() - 200, 400*r.Float64() - 200} }
	close := 0
	for range 3000 {
		shape := [3]Footprint{
			NewRectangle(place(), place(), 360*r.Float64()), NewRound(place(), 60*r.Float64()), NewLine([]Point{place(), place()}, 30*r.Float64()),
		}[r.IntN(3)]
		a := place()
		b := a.Add(place().Scale(r.Float64()))
		if r.IntN(4) == 0 {
			b = a
		}
		bound, least := shape.leastOf(Segment3{a.At(0), b.At(0)}), shape.GapOnly(a)
		for i := range 200 {
			least = min(least, shape.GapOnly(a.Add(b.Sub(a).Scale(float64(i+1)/200))))
		}
		assert.LessOrEqual(t, bound, least+1e-9, "%v from %v to %v", shape, a, b)
		if bound > least-1 {
			close++
		}
	}
	assert.Greater(t, close, 2000, "a bound that says much")
}

// The nearest place of a leg is found to what distances are good to, also where the gap has a kink there.
func TestTheNearestPlaceOfALegIsFoundSharply(t *testing.T) {
	const length = 2000.0
	r := rand.New(rand.NewPCG(16, 8))
	for i := range 200 {
		at := float64(i % 2)
		if i > 1 {
			at = r.Float64()
		}
		gap := func(t float64) float64 { return length * math.Abs(t-at) }
		assert.InDelta(t, 0, gap(nearestDip(gap, 0, 1, length)), 1e-9, "%v", at)
	}
}
