package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Whole millimetres from 0 to 6: faces, edges and corners are met exactly, legs are level, upright, of no length or one
// millimetre long. Slow twin: the sampled distance, refined, as in TestPrismDistanceAgainstSampling.
func TestPrismDistanceOnAGridOfMillimetres(t *testing.T) {
	r := seeded(t, 31)
	whole := func() float64 { return float64(r.IntN(7)) }
	at := func() pt3 { return pt3{whole(), whole(), whole()} }
	touching := 0
	for range rounds(6000) {
		low := whole()
		p := geometry.Prism{Low: low, High: low + float64(r.IntN(3))}
		switch a, b := at().Plan(), at().Plan(); r.IntN(3) {
		case 0:
			p.Footprint = geometry.NewRectangle(a, b, float64(r.IntN(4)*45))
		case 1:
			p.Footprint = geometry.NewRound(a, float64(r.IntN(3)))
		default:
			p.Footprint = geometry.NewLine([]pt{a, b}, float64(r.IntN(3)))
		}
		s := geometry.Segment3{A: at(), B: at()}
		got := p.GapRun([]pt3{s.A, s.B})
		requireConsistent(t, got)
		require.InDelta(t, 0, slowGap(p, got.B), 1e-9, "B is on the prism")
		slow := slowLeast(func(t float64) float64 { return slowGap(p, s.At(t)) })
		require.GreaterOrEqual(t, slow, got.Gap-1e-9)
		require.InDelta(t, slow, got.Gap, 1e-7, "%+v %+v", p, s)
		if got.Gap == 0 {
			touching++
		}
	}
	require.Greater(t, touching, rounds(6000)/10)
}

// Segments on the same grid against the same search over both of them.
func TestSegmentsOnAGridOfMillimetres(t *testing.T) {
	r := seeded(t, 32)
	at := func() pt3 { return pt3{float64(r.IntN(5)), float64(r.IntN(5)), float64(r.IntN(5))} }
	for range rounds(3000) {
		a, b := geometry.Segment3{A: at(), B: at()}, geometry.Segment3{A: at(), B: at()}
		got := geometry.BetweenSegments(a, b)
		requireConsistent(t, got)
		slow := slowLeast(func(t float64) float64 { return geometry.BetweenPaths([]pt3{a.At(t)}, []pt3{b.A, b.B}).Gap })
		require.GreaterOrEqual(t, slow, got.Gap-1e-9)
		require.InDelta(t, slow, got.Gap, 1e-7, "%+v %+v", a, b)
	}
}

// Runs on a coarser grid against samples: bends at right angles, folds and short legs among them.
func TestRunsOnAGrid(t *testing.T) {
	r := seeded(t, 33)
	for range rounds(300) {
		var path []pt3
		for range 2 + r.IntN(3) {
			path = append(path, pt3{float64(r.IntN(4) * 100), float64(r.IntN(4) * 100), float64(r.IntN(3) * -50)})
		}
		run := geometry.Rounded(path, float64(r.IntN(4)*20))
		p := geometry.Prism{Footprint: geometry.NewRectangle(pt{X: 100, Y: 100}, pt{X: 150, Y: 200}, 0), Low: -60, High: -40}
		got := gapRounded(p, run, 0, run.Length())
		slow := math.Inf(1)
		for i := range 20 {
			slow = min(slow, slowLeast(func(u float64) float64 { return slowGap(p, run.At((float64(i)+u)/20*run.Length())) }))
		}
		require.GreaterOrEqual(t, slow, got.Gap-2e-9)
		require.InDelta(t, slow, got.Gap, 1e-6, "%v", path)
	}
}

// The way out of bent lines whose points are whole millimetres apart, against dense samples of their outline.
func TestWayOutOnAGridOfMillimetres(t *testing.T) {
	r := seeded(t, 35)
	const step = 0.02
	whole := func() pt { return pt{X: float64(r.IntN(6)), Y: float64(r.IntN(6))} }
	for range rounds(400) {
		path, radius := []pt{whole(), whole(), whole()}, float64(1+r.IntN(3))
		f, centreline := geometry.NewLine(path, radius), geometry.NewLine(path, 0)
		outline := sampleOutline(path, radius, step, centreline)
		for range 10 {
			p := whole()
			gap, nearest := f.Gap(p)
			require.InDelta(t, math.Abs(gap), nearest.Sub(p).Norm(), 1e-9)
			slow := math.Inf(1)
			for _, q := range outline {
				slow = min(slow, q.Sub(p).Norm())
			}
			require.InDelta(t, slow, math.Abs(gap), 2*step, "%v %v from %v", path, radius, p)
		}
	}
}
