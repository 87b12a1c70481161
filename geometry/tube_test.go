package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
)

// A tube whose middle is thicker, as a run with its muffler, against its stretches one by one and the least of them.
func TestATubeIsAsNearAsTheNearestOfItsStretches(t *testing.T) {
	r := seeded(t, 11)
	for range 400 {
		var path []pt3
		for i := range 5 {
			path = append(path, pt3{float64(i)*250 + 100*r.Float64(), 400 * r.Float64(), -50 - 100*r.Float64()})
		}
		run := geometry.Rounded(path, 60)
		from, to := run.Length()*0.3*r.Float64(), run.Length()*(0.6+0.4*r.Float64())
		axis := []pt3{run.At(from), run.At(to)}
		var tube geometry.Tube
		tube.AddRun(&run, 0, from, 13)
		tube.AddRun(&run, to, run.Length(), 13)
		tube.AddPath(axis, 34)
		for range 10 {
			low := r.Float64() * -200
			box := geometry.Prism{Footprint: randomFootprint(r, 200).Moved(0, randomPoint(r, 1500)), Low: low, High: low + 100}
			want := math.Inf(1)
			for _, s := range []struct{ from, to float64 }{{0, from}, {to, run.Length()}} {
				want = min(want, gapRounded(box, run, s.from, s.to).Gap-13)
			}
			want = min(want, box.GapRun(axis).Gap-34)
			got := tube.Gap(&box)
			assert.InDelta(t, want, got.Distance, 1e-8)
			assert.InDelta(t, got.Gap-got.Radius, got.Distance, 0)
			assert.InDelta(t, got.Gap, got.B.Sub(got.A).Norm(), 1e-9)
		}
		line := []pt3{{r.Float64() * 1000, r.Float64() * 900, -80}, {r.Float64() * 1000, -r.Float64() * 900, -20}}
		want := min(gapPath(run, line, 0, from).Gap-13, gapPath(run, line, to, run.Length()).Gap-13,
			geometry.BetweenPaths(axis, line).Gap-34)
		assert.InDelta(t, want, tube.GapPath(line).Distance, 1e-8)
	}
	var empty geometry.Tube
	assert.True(t, math.IsInf(empty.Gap(&geometry.Prism{}).Distance, 1))
}

// gapRounded is the separation of a stretch of a run without thickness (the first) from a prism.
func gapRounded(p geometry.Prism, run geometry.Run, from, to float64) geometry.Separation3 {
	var t geometry.Tube
	t.AddRun(&run, from, to, 0)
	return t.Gap(&p).Separation3
}

// gapPath is that from a path.
func gapPath(run geometry.Run, path []pt3, from, to float64) geometry.Separation3 {
	var t geometry.Tube
	t.AddRun(&run, from, to, 0)
	return t.GapPath(path).Separation3
}

// A part of a bend bulges out beyond its two ends: the tube is as near as the bulge, though a straight stretch of it is
// nearer than those ends.
func TestTheBulgeOfAPartOfABend(t *testing.T) {
	// A quarter about (0, 0) of 100 mm, its middle towards +x; its tangents meet at (100 sqrt 2, 0).
	far := 100 * math.Sqrt2
	run := geometry.Rounded([]pt3{{far - 300, -300, 0}, {far, 0, 0}, {far - 300, 300, 0}}, 100)
	begin, end := run.Legs[0].End, run.Legs[1].Begin
	box := geometry.Prism{Footprint: rect(110, -5, 120, 5, 0), Low: -50, High: 50}
	for _, part := range [][2]float64{{begin, end}, {begin + 10, end - 10}, {begin + 20, end}, {begin, begin + 100}} {
		var tube geometry.Tube
		tube.AddPath([]pt3{{130, -100, 0}, {140, -100, 0}, {140, 100, 0}}, 0) // 20 mm behind the box
		tube.AddRun(&run, part[0], part[1], 0)
		assert.InDelta(t, 10, tube.Gap(&box).Distance, 1e-9, "%v", part)
		assert.InDelta(t, 15, tube.GapPath([]pt3{{115, 0, -9}, {115, 0, 9}}).Distance, 1e-9, "%v", part)
	}
}
