package geometry_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Whoever is told that a tube misses a box, or that its centreline lies in one, finds it so by exact distances; and most of what is so is told.
func TestATubeIsToldFromABox(t *testing.T) {
	const seed = 91
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	at := func() pt3 { return pt3{X: 400 * r.Float64(), Y: 400 * r.Float64(), Z: 400 * r.Float64()} }
	missed, told, inside := 0, 0, 0
	for range 4000 {
		run := geometry.Rounded([]pt3{at(), at(), at()}, 30)
		var tube geometry.Tube
		from := run.Length() * r.Float64() / 2
		tube.AddRun(&run, from, from+run.Length()*r.Float64()/2, 5+20*r.Float64())
		low := at()
		high := low.Add(at().Scale(0.5))
		box := geometry.Prism{Footprint: geometry.NewRectangle(low.Plan(), high.Plan(), 0), Low: low.Z, High: high.Z}
		far := tube.Gap(&box).Distance
		if far > 0 {
			missed++
		}
		if tube.Misses(low, high) {
			told++
			require.GreaterOrEqual(t, far, -1e-9)
		}
		if tube.LiesIn(low, high) {
			inside++
			for k := range 50 {
				p := run.At(from + (run.Length()/2)*float64(k)/50)
				if tube.GapPath([]pt3{p}).Gap < 1e-9 {
					require.InDelta(t, 0, box.GapPoint(p).Gap, 1e-9)
				}
			}
		}
	}
	assert.Greater(t, told, missed*2/3)
	assert.Positive(t, inside)
}

// A tube of nothing is nowhere, and one of a point is there.
func TestTubesOfNothingAndOfAPoint(t *testing.T) {
	var tube geometry.Tube
	low, high := pt3{}, pt3{X: 10, Y: 10, Z: 10}
	assert.True(t, tube.Misses(low, high))
	assert.True(t, tube.LiesIn(low, high))
	tube.AddPath([]pt3{{X: 12, Y: 5, Z: 5}}, 3)
	assert.False(t, tube.Misses(low, high), "its surface is 1 mm inside")
	assert.False(t, tube.LiesIn(low, high), "its middle is not")
	tube = geometry.Tube{}
	tube.AddPath([]pt3{{X: 12, Y: 5, Z: 5}}, 2)
	assert.True(t, tube.Misses(low, high), "it only touches")
	assert.True(t, tube.LiesIn(low, pt3{X: 12, Y: 10, Z: 10}))
}
