package geometry_test

import (
	"math/rand/v2"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// rounds is how many of n random cases a test looks at: a fifth of them in a short run.
func rounds(n int) int {
	if testing.Short() {
		return max(1, n/5)
	}
	return n
}

// seeded returns a random source whose seed is in the test's log.
func seeded(t testing.TB, seed uint64) *rand.Rand {
	t.Logf("seed %d", seed)
	return rand.New(rand.NewPCG(seed, seed))
}

func randomPoint(r *rand.Rand, size float64) pt {
	return pt{X: (r.Float64() - 0.5) * size, Y: (r.Float64() - 0.5) * size}
}

func randomPath(r *rand.Rand, n int, size float64) (path []pt) {
	for range n {
		path = append(path, randomPoint(r, size))
	}
	return path
}

func randomTurn(r *rand.Rand) float64 {
	return []float64{0, 90, -180, r.Float64() * 360}[r.IntN(4)]
}

func randomRectangle(r *rand.Rand, size float64) geometry.Footprint {
	a := randomPoint(r, size)
	return geometry.NewRectangle(a, a.Add(pt{X: r.Float64() * size / 2, Y: r.Float64() * size / 2}), randomTurn(r))
}

func flatten(points []pt) (xy []float64) {
	for _, p := range points {
		xy = append(xy, p.X, p.Y)
	}
	return xy
}

func asPolygon(f geometry.Footprint) geom.Geometry {
	c := f.Corners()
	sequence := geom.NewSequence(flatten(append(c[:], c[0])), geom.DimXY)
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(sequence)}).AsGeometry()
}

func asLine(path []pt) geom.Geometry {
	return geom.NewLineString(geom.NewSequence(flatten(path), geom.DimXY)).AsGeometry()
}

func asPoint(p pt) geom.Geometry { return geom.XY{X: p.X, Y: p.Y}.AsPoint().AsGeometry() }

// Independent engine: peterstace/simplefeatures, geom.Distance (0 where things overlap).
func TestPlanDistancesAgreeWithAnotherEngine(t *testing.T) {
	const pairs, tolerance = 10000, 1e-6
	r := seeded(t, 1)
	apart := 0
	for range pairs {
		a, b := randomRectangle(r, 2000), randomRectangle(r, 2000)
		path, p := randomPath(r, 2+r.IntN(3), 2000), randomPoint(r, 3000)
		line, dot := geometry.NewLine(path, 0), geometry.NewRound(p, 0)
		for _, c := range []struct {
			name string
			got  float64
			a, b geom.Geometry
		}{
			{"rectangles", geometry.Between(a, b).Gap, asPolygon(a), asPolygon(b)},
			{"rectangle, line", geometry.Between(a, line).Gap, asPolygon(a), asLine(path)},
			{"rectangle, point", a.GapOnly(p), asPolygon(a), asPoint(p)},
			{"line, point", line.GapOnly(p), asLine(path), asPoint(p)},
			{"line, round", geometry.Between(line, dot).Gap, asLine(path), asPoint(p)},
		} {
			want, ok := geom.Distance(c.a, c.b)
			require.True(t, ok)
			require.InDelta(t, want, max(0, c.got), tolerance, c.name)
			if want > 0 {
				apart++
			}
		}
	}
	require.Greater(t, apart, 2*pairs, "enough of the pairs are apart")
}

// The same engine in a trick: the way out of a rectangle is the distance to its ring.
func TestDepthAgreesWithAnotherEngine(t *testing.T) {
	r := seeded(t, 2)
	inside := 0
	for range 10000 {
		f, p := randomRectangle(r, 2000), randomPoint(r, 2000)
		c := f.Corners()
		want, _ := geom.Distance(asLine(append(c[:], c[0])), asPoint(p))
		gap, nearest := f.Gap(p)
		if gap < 0 {
			want = -want
			inside++
		}
		require.InDelta(t, want, gap, 1e-6)
		require.InDelta(t, want, f.GapOnly(p), 1e-6)
		onRing, _ := geom.Distance(asLine(append(c[:], c[0])), asPoint(nearest))
		require.InDelta(t, 0, onRing, 1e-6)
	}
	require.Greater(t, inside, 300)
}
