package geometry_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// drawn draws a footprint, now and then one with coordinates on a coarse grid, so that things touch and coincide.
func drawn(t *rapid.T, name string) geometry.Footprint {
	r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, name), 0))
	if rapid.Bool().Draw(t, name+" on a grid") {
		at := func() pt { return pt{X: float64(r.IntN(5) * 50), Y: float64(r.IntN(5) * 50)} }
		switch r.IntN(3) {
		case 0:
			return geometry.NewRound(at(), float64(r.IntN(3)*25))
		case 1:
			return geometry.NewLine([]pt{at(), at(), at()}[:1+r.IntN(3)], float64(r.IntN(3)*25))
		}
		return geometry.NewRectangle(at(), at(), float64(r.IntN(4)*45))
	}
	return randomFootprint(r, 400)
}

func mirrored(f geometry.Footprint) geometry.Footprint {
	flip := func(p pt) pt { return pt{X: p.X, Y: -p.Y} }
	switch f.Shape {
	case geometry.Round:
		return geometry.NewRound(flip(f.Middle), f.Radius)
	case geometry.Line:
		var path []pt
		for _, p := range f.Path {
			path = append(path, flip(p))
		}
		return geometry.NewLine(path, f.Radius)
	}
	return geometry.NewRectangle(flip(f.Middle).Sub(f.Half), flip(f.Middle).Add(f.Half), -f.Turn)
}

func TestMovingOrMirroringChangesNoGap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawn(t, "a"), drawn(t, "b")
		turn := rapid.Float64Range(-400, 400).Draw(t, "turn")
		shift := pt{X: rapid.Float64Range(-5000, 5000).Draw(t, "x"), Y: rapid.Float64Range(-5000, 5000).Draw(t, "y")}
		want := geometry.Between(a, b).Gap
		require.InDelta(t, want, geometry.Between(a.Moved(turn, shift), b.Moved(turn, shift)).Gap, 1e-8)
		require.InDelta(t, want, geometry.Between(mirrored(a), mirrored(b)).Gap, 1e-8)
		p, moved := b.Middle, a.Moved(turn, shift)
		require.InDelta(t, a.GapOnly(p), moved.GapOnly(p.Turn(turn).Add(shift)), 1e-8)
	})
}

func TestSwappingSwapsTheSeparation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawn(t, "a"), drawn(t, "b")
		s, back := geometry.Between(a, b), geometry.Between(b, a)
		require.InDelta(t, s.Gap, back.Gap, 1e-9)
		require.InDelta(t, 1, s.N.Norm(), 1e-9)
		along := s.N
		if s.Gap <= 0 {
			along = along.Scale(-1)
		}
		require.InDelta(t, 0, s.A.Add(along.Scale(s.Gap)).Sub(s.B).Norm(), 1e-8, "A, B and N belong together: %+v", s)
		if s.Gap > 0 {
			require.InDelta(t, 0, a.GapOnly(s.A), 1e-8)
			require.InDelta(t, 0, b.GapOnly(s.B), 1e-8)
		}
	})
}

// Of convex shapes: going the way out frees the first, and no way in another direction is shorter.
func TestTheWayOutIsTheShortest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawn(t, "a"), drawn(t, "b")
		if len(a.Path) > 2 || len(b.Path) > 2 {
			return
		}
		s := geometry.Between(a, b)
		if s.Gap > -1e-6 { // touching but for rounding
			return
		}
		require.InDelta(t, 0, geometry.Between(a.Moved(0, s.N.Scale(-s.Gap)), b).Gap, 1e-8)
		for way := 0.0; way < 360; way += 5 {
			less := pt{X: -s.Gap * 0.999}.Turn(way)
			require.Negative(t, geometry.Between(a.Moved(0, less), b).Gap, "%v degrees", way)
		}
	})
}

// The box is tight: each of its sides has a point of the footprint, found by the gap from far away.
func TestBoundsAreTight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawn(t, "f")
		low, high := f.Bounds()
		floor := f.Inside(low, high)
		require.InDelta(t, 0, floor.Gap, 1e-9)
		for _, c := range []struct{ a, b pt }{{low, pt{X: low.X, Y: high.Y}}, {low, pt{X: high.X, Y: low.Y}},
			{high, pt{X: low.X, Y: high.Y}}, {high, pt{X: high.X, Y: low.Y}}} {
			side := geometry.NewLine([]pt{c.a, c.b}, 0)
			require.InDelta(t, 0, max(0, geometry.Between(f, side).Gap), 1e-9)
		}
	})
}

// A gap changes by no more than the point moves.
func TestGapIsSteady(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, g := drawn(t, "f"), drawn(t, "g")
		for i := range 20 {
			p := f.Middle.Add(g.Middle.Sub(f.Middle).Scale(float64(i) / 20))
			q := p.Add(pt{X: 0.5}.Turn(float64(i) * 18))
			require.LessOrEqual(t, math.Abs(f.GapOnly(p)-f.GapOnly(q)), 0.5+1e-9)
			gap, nearest := f.Gap(p)
			require.InDelta(t, f.GapOnly(p), gap, 1e-12)
			require.InDelta(t, math.Abs(gap), nearest.Sub(p).Norm(), 1e-9)
		}
	})
}

// Two prisms are no nearer than any two points of theirs, and as near as the points given.
func TestBoxGapAgainstPoints(t *testing.T) {
	r := seeded(t, 10)
	for range 2000 {
		a, b := randomPrism(r), randomPrism(r)
		a.Footprint, b.Footprint = randomRectangle(r, 600), randomRectangle(r, 600)
		s := geometry.BoxGap(a, b)
		require.InDelta(t, 1, s.N.Norm(), 1e-9)
		if s.Gap <= 0 {
			continue
		}
		require.InDelta(t, 0, a.GapPoint(s.A).Gap, 1e-9)
		require.InDelta(t, s.Gap, a.GapPoint(s.B).Gap, 1e-9)
		require.InDelta(t, s.Gap, b.GapPoint(s.A).Gap, 1e-9)
		for range 50 {
			p := a.Footprint.Middle.Add(randomPoint(r, 900)).At(a.Low + r.Float64()*(a.High-a.Low))
			if a.GapPoint(p).Gap == 0 {
				require.GreaterOrEqual(t, b.GapPoint(p).Gap, s.Gap-1e-9)
			}
		}
	}
}

// Turning a prism and a run about the upright axis together, or walking the run backwards, changes no distance.
func TestMovingPrismAndRunTogether(t *testing.T) {
	r := seeded(t, 11)
	for range 1000 {
		p, path := randomPrism(r), randomPath3(r, 1+r.IntN(4))
		turn, shift, lift := r.Float64()*360, randomPoint(r, 5000), r.Float64()*100
		moved := geometry.Prism{Footprint: p.Footprint.Moved(turn, shift), Low: p.Low + lift, High: p.High + lift}
		var along, back []pt3
		for i := range path {
			q := path[i]
			along = append(along, q.Plan().Turn(turn).Add(shift).At(q.Z+lift))
			back = append(back, path[len(path)-1-i])
		}
		want := p.GapRun(path).Gap
		require.InDelta(t, want, moved.GapRun(along).Gap, 1e-8)
		require.InDelta(t, want, p.GapRun(back).Gap, 1e-9)
		bend := r.Float64() * 100
		run, turned := geometry.Rounded(path, bend), geometry.Rounded(along, bend)
		require.InDelta(t, run.Length(), turned.Length(), 1e-8)
		require.InDelta(t, gapRounded(p, run, 0, run.Length()).Gap, gapRounded(moved, turned, 0, turned.Length()).Gap, 1e-8)
	}
}

// How far two footprints are apart is what Between says, of rectangles that stand upright, too, and 0 where they overlap.
func TestApartIsTheGapBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawn(t, "a"), drawn(t, "b")
		if turn := rapid.SampledFrom([]float64{0, 90, 180, -90, 45}).Draw(t, "turn"); a.Shape == geometry.Rectangle && b.Shape == geometry.Rectangle {
			a, b = a.Moved(turn-a.Turn, pt{}), b.Moved(-b.Turn, pt{})
		}
		require.InDelta(t, max(geometry.Between(a, b).Gap, 0), geometry.Apart(&a, &b), 1e-9)
	})
}
