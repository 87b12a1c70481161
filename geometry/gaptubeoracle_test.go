package geometry_test

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Distances in space of the JTS project, Distance3DOpTest, between pipes: less both their radii. In parts of them, so that the
// radii fit.
func TestPublishedDistancesBetweenPipes(t *testing.T) {
	for _, c := range []struct {
		a, b []pt3
		want float64
	}{
		{[]pt3{{X: 10, Y: 10}, {X: 20, Y: 20}}, []pt3{{X: 10, Y: 20, Z: 10}, {X: 20, Y: 30, Z: 10}}, 12.24744871391589},
		{[]pt3{{X: 10, Y: 10, Z: 10}, {X: 20, Y: 20, Z: 20}}, []pt3{{X: 11, Y: 11, Z: 10}}, 0.816496580927726},
		{[]pt3{{X: 10, Y: 10}, {X: 20, Y: 10}}, []pt3{{X: 10, Y: 20, Z: 10}, {X: 20, Y: 20, Z: 10}}, 14.142135623730951},
		{[]pt3{{}, {X: 10, Y: 10}}, []pt3{{X: 10, Z: 1}, {Y: 10, Z: 1}}, 1},
		{[]pt3{{X: 20, Y: 10, Z: 20}, {X: 10, Y: 20, Z: 10}}, []pt3{{X: 10, Y: 10, Z: 20}, {X: 20, Y: 20, Z: 10}}, 0},
		{
			[]pt3{{X: 10, Y: 10, Z: 20}, {X: 20, Y: 20, Z: 30}, {X: 20, Y: 20, Z: 1}, {X: 30, Y: 30, Z: 5}},
			[]pt3{{X: 1, Y: 80, Z: 10}, {Y: 39, Z: 5}, {X: 39, Z: 5}, {X: 80, Y: 1, Z: 20}}, 0.7071067811865476,
		},
		{
			[]pt3{{Y: 1, Z: 2}, {X: 1, Y: 1, Z: 1}, {X: 1, Z: 2}},
			[]pt3{{Z: 0.1}, {X: 0.5, Y: 0.5}, {X: 1, Y: 1}, {X: 1.5, Y: 1.5}, {X: 2, Y: 2}}, 1,
		},
	} {
		for _, radii := range [][2]float64{{0, 0}, {0.1, 0.2}, {13, 4}} {
			for _, pair := range [][2][]pt3{{c.a, c.b}, {c.b, c.a}} {
				var p, q geometry.Tube
				p.AddPath(pair[0], radii[0])
				q.AddPath(pair[1], radii[1])
				between, radius := p.GapTube(&q)
				assert.Equal(t, radii[1], radius)
				assert.Equal(t, radii[0], between.Radius)
				if want := c.want - radii[0] - radii[1]; want > -radii[1] { // once one's middle is in the other how deep is another question
					assert.InDelta(t, want, between.Distance, 1e-9)
				}
			}
		}
	}
}

// Two rounded runs, each of two thicknesses, against points strewn along both centrelines: no pair is nearer, one is nearly as
// near, it is the same from either side, and wherever both go together.
func TestGapTubeAgainstSampling(t *testing.T) {
	r := seeded(t, 31)
	const strewn = 260
	build := func(path []pt3, thin, thick float64) (tube geometry.Tube, points []pt3, radii []float64) {
		run := geometry.Rounded(path, 60)
		half := run.Length() / 2
		tube.AddRun(&run, 0, half, thin)
		tube.AddRun(&run, half, run.Length(), thick)
		for i := range strewn {
			s := run.Length() * float64(i) / (strewn - 1)
			points = append(points, run.At(s))
			if radii = append(radii, thin); s > half {
				radii[i] = thick
			}
		}
		return tube, points, radii
	}
	for range 40 {
		var a, b []pt3
		for i := range 4 {
			a = append(a, pt3{X: 200 * float64(i), Y: 250 * r.Float64(), Z: -150 * r.Float64()})
			b = append(b, pt3{X: 250 * r.Float64(), Y: 300 + 200*float64(i), Z: -150 * r.Float64()})
		}
		p, pointsP, radiiP := build(a, 13, 20)
		q, pointsQ, radiiQ := build(b, 4, 9)
		least := math.Inf(1)
		for i := range pointsP {
			for k := range pointsQ {
				least = min(least, pointsP[i].Sub(pointsQ[k]).Norm()-radiiP[i]-radiiQ[k])
			}
		}
		between, radius := p.GapTube(&q)
		require.LessOrEqual(t, between.Distance, least+1e-6)
		require.InDelta(t, least, between.Distance, 4)
		require.InDelta(t, between.Gap-between.Radius-radius, between.Distance, 1e-9)
		require.InDelta(t, between.Gap, between.B.Sub(between.A).Norm(), 1e-9)
		back, _ := q.GapTube(&p)
		require.InDelta(t, between.Distance, back.Distance, 2e-6)
		turn, shift := 360*r.Float64(), randomPoint(r, 2000).At(-50)
		carried := func(path []pt3) (out []pt3) {
			for _, x := range path {
				out = append(out, x.Plan().Turn(turn).At(x.Z).Add(shift))
			}
			return out
		}
		p, _, _ = build(carried(a), 13, 20)
		q, _, _ = build(carried(b), 4, 9)
		again, _ := p.GapTube(&q)
		require.InDelta(t, between.Distance, again.Distance, 1e-6)
	}
}

// Two rings about one axis, one over the other: the hypotenuse of how far apart their bends and their heights are.
func TestBendsOverOneAnother(t *testing.T) {
	ring := func(bend, z float64) geometry.Tube {
		run := geometry.Rounded([]pt3{{X: bend, Z: z}, {X: bend, Y: bend, Z: z}, {Y: bend, Z: z}}, bend)
		var tube geometry.Tube
		tube.AddRun(&run, 0, run.Length(), 10)
		return tube
	}
	for _, c := range []struct{ inner, outer, over float64 }{{60, 100, 30}, {60, 60, 50}, {80, 200, 160}, {60, 85, 0}} {
		p, q := ring(c.inner, -100), ring(c.outer, -100-c.over)
		between, _ := p.GapTube(&q)
		assert.InDelta(t, math.Hypot(c.outer-c.inner, c.over)-20, between.Distance, 1e-6, "%+v", c)
	}
}

// Two bends anywhere, against the least over ever finer grids of places of both about the best of a coarse one.
func TestGapOfBendsAgainstFinerAndFinerGrids(t *testing.T) {
	r := seeded(t, 32)
	for range 300 {
		var runs [2]geometry.Run
		var tubes [2]geometry.Tube
		var from, to [2]float64
		for i := range runs {
			at := func() pt3 { return randomPoint(r, 200).At(200 * (r.Float64() - 0.5)) }
			runs[i] = geometry.Rounded([]pt3{at(), at(), at()}, 5+40*r.Float64())
			if legs := runs[i].Legs; len(runs[i].ShortLegs) == 0 {
				from[i], to[i] = legs[0].End, legs[1].Begin
			} else {
				to[i] = runs[i].Length()
			}
			tubes[i].AddRun(&runs[i], from[i], to[i], 1)
		}
		between, _ := tubes[0].GapTube(&tubes[1])
		assert.InDelta(t, finestGap(runs, from, to), between.Gap, 1e-6)
	}
}

// finestGap is the least distance between stretches of two runs, by grids of places: of the best few of one the surroundings are looked at more
// closely, until they are next to nothing.
func finestGap(runs [2]geometry.Run, from, to [2]float64) float64 {
	const coarse, fine, kept = 60, 8, 12
	type place struct{ a, b, gap float64 }
	look := func(at, wide [2]float64, n int) (list []place) {
		for i := range n + 1 {
			for k := range n + 1 {
				a := min(max(at[0]+wide[0]*(2*float64(i)/float64(n)-1), from[0]), to[0])
				b := min(max(at[1]+wide[1]*(2*float64(k)/float64(n)-1), from[1]), to[1])
				list = append(list, place{a, b, runs[0].At(a).Sub(runs[1].At(b)).Norm()})
			}
		}
		slices.SortFunc(list, func(p, q place) int { return cmp.Compare(p.gap, q.gap) })
		return list
	}
	wide := [2]float64{(to[0] - from[0]) / 2, (to[1] - from[1]) / 2}
	least := math.Inf(1)
	for _, start := range look([2]float64{from[0] + wide[0], from[1] + wide[1]}, wide, coarse)[:kept] {
		at, near := start, [2]float64{4 * wide[0] / coarse, 4 * wide[1] / coarse}
		for near[0]+near[1] > 1e-8 {
			at = look([2]float64{at.a, at.b}, near, fine)[0]
			near = [2]float64{near[0] * 0.7, near[1] * 0.7}
		}
		least = min(least, at.gap)
	}
	return least
}
