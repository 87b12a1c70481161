package geometry_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

func randomFootprint(r *rand.Rand, size float64) geometry.Footprint {
	switch r.IntN(3) {
	case 0:
		return geometry.NewRound(randomPoint(r, size), r.Float64()*size/4)
	case 1:
		return geometry.NewLine(randomPath(r, 1+r.IntN(4), size), r.Float64()*size/10)
	}
	return randomRectangle(r, size)
}

func randomPrism(r *rand.Rand) geometry.Prism {
	low := r.Float64() * -300
	return geometry.Prism{Footprint: randomFootprint(r, 1000), Low: low, High: low + r.Float64()*200*float64(r.IntN(2))}
}

func randomPath3(r *rand.Rand, n int) (path []pt3) {
	for range n {
		p := randomPoint(r, 1500).At(r.Float64() * -400)
		if len(path) > 0 && r.IntN(3) == 0 { // level, vertical and along an axis: the cases that degenerate
			before := path[len(path)-1]
			p = []pt3{{p.X, p.Y, before.Z}, {before.X, before.Y, p.Z}, {p.X, before.Y, before.Z}, before}[r.IntN(4)]
		}
		path = append(path, p)
	}
	return path
}

// slowGap is the distance from a point to a prism, from the plan gap that the other engine checks.
func slowGap(p geometry.Prism, x pt3) float64 {
	plan := max(0, p.Footprint.GapOnly(x.Plan()))
	return math.Hypot(plan, max(0, p.Low-x.Z, x.Z-p.High))
}

// slowLeast samples a function on 0..1 and closes in on its lowest samples by thirds.
func slowLeast(f func(float64) float64) float64 {
	const samples = 400
	best, at := math.Inf(1), 0.0
	for i := range samples + 1 {
		t := float64(i) / samples
		if v := f(t); v < best {
			best, at = v, t
		}
	}
	low, high := max(0, at-1.0/samples), min(1, at+1.0/samples)
	for range 90 {
		a, b := low+(high-low)/3, high-(high-low)/3
		if f(a) < f(b) {
			high = b
		} else {
			low = a
		}
	}
	return min(best, f((low+high)/2))
}

func requireConsistent(t *testing.T, s geometry.Separation3) {
	t.Helper()
	require.InDelta(t, 1, s.N.Norm(), 1e-9)
	require.InDelta(t, s.Gap, s.B.Sub(s.A).Norm(), 1e-9)
	if s.Gap == 0 {
		require.Equal(t, pt3{0, 0, -1}, s.N)
		return
	}
	require.InDelta(t, 0, s.A.Add(s.N.Scale(s.Gap)).Sub(s.B).Norm(), 1e-9)
}

// Slow twin: dense samples along the path, refined; it can only be farther than the true least distance.
func TestPrismDistanceAgainstSampling(t *testing.T) {
	r := seeded(t, 3)
	entered := 0
	for range 3000 {
		p, path := randomPrism(r), randomPath3(r, 1+r.IntN(4))
		got := p.GapRun(path)
		requireConsistent(t, got)
		require.InDelta(t, 0, slowGap(p, got.B), 1e-9, "B is on the prism")
		slow := slowGap(p, path[0])
		for i := 1; i < len(path); i++ {
			leg := geometry.Segment3{A: path[i-1], B: path[i]}
			slow = min(slow, slowLeast(func(t float64) float64 { return slowGap(p, leg.At(t)) }))
		}
		require.GreaterOrEqual(t, slow, got.Gap-1e-9)
		require.InDelta(t, slow, got.Gap, 1e-6, "%+v %v", p, path)
		if got.Gap == 0 {
			entered++
		}
	}
	require.Greater(t, entered, 100)
}

// Slow twin: the union's outline by dense samples of every circle and side that lie in no stadium.
func TestLineDepthAgainstSampling(t *testing.T) {
	r := seeded(t, 4)
	const step = 0.05
	deeper := 0
	for range 60 {
		path := randomPath(r, 2+r.IntN(4), 100)
		radius := 5 + r.Float64()*25
		f := geometry.NewLine(path, radius)
		centreline := geometry.NewLine(path, 0)
		outline := sampleOutline(path, radius, step, centreline)
		for range 40 {
			p := path[r.IntN(len(path))].Add(randomPoint(r, 2*radius))
			gap, nearest := f.Gap(p)
			require.InDelta(t, gap, f.GapOnly(p), 1e-12)
			require.InDelta(t, math.Abs(gap), nearest.Sub(p).Norm(), 1e-9)
			require.InDelta(t, radius, centreline.GapOnly(nearest), 1e-9, "the nearest point is on the outline")
			slow := math.Inf(1)
			for _, q := range outline {
				slow = min(slow, q.Sub(p).Norm())
			}
			require.GreaterOrEqual(t, slow, math.Abs(gap)-1e-9)
			require.InDelta(t, slow, math.Abs(gap), 2*step)
			if gap < 0 && -gap > radius-centreline.GapOnly(p)+1 {
				deeper++
			}
		}
	}
	require.Greater(t, deeper, 100, "cases where the way out is longer than out of the nearest leg alone")
}

func sampleOutline(path []pt, radius, step float64, centreline geometry.Footprint) (outline []pt) {
	keep := func(q pt) {
		if centreline.GapOnly(q) >= radius-1e-9 {
			outline = append(outline, q)
		}
	}
	for _, c := range path {
		for a := 0.0; a < 360; a += step / radius * 180 / math.Pi {
			keep(c.Add(pt{X: radius}.Turn(a)))
		}
	}
	for i := 1; i < len(path); i++ {
		leg := path[i].Sub(path[i-1])
		off := leg.Turn(90).Scale(radius / leg.Norm())
		for s := 0.0; s < 1; s += step / leg.Norm() {
			keep(path[i-1].Add(leg.Scale(s)).Add(off))
			keep(path[i-1].Add(leg.Scale(s)).Sub(off))
		}
	}
	return outline
}

// Slow twin: every pair of samples of two segments.
func TestSegmentsAgainstSampling(t *testing.T) {
	r := seeded(t, 5)
	for range 2000 {
		p, q := randomPath3(r, 2), randomPath3(r, 2)
		a, b := geometry.Segment3{A: p[0], B: p[1]}, geometry.Segment3{A: q[0], B: q[1]}
		got := geometry.BetweenSegments(a, b)
		requireConsistent(t, got)
		slow := math.Inf(1)
		for i := range 41 {
			for j := range 41 {
				slow = min(slow, a.At(float64(i)/40).Sub(b.At(float64(j)/40)).Norm())
			}
		}
		require.GreaterOrEqual(t, slow, got.Gap-1e-9)
		require.LessOrEqual(t, slow, got.Gap+(p[1].Sub(p[0]).Norm()+q[1].Sub(q[0]).Norm())/80)
	}
}
