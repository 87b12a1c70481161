package scene_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// drawLevelRun is a run of a van: over some metres, never far from level.
func drawLevelRun(t *rapid.T) geometry.Run {
	path := []geometry.Point3{{X: 1000, Y: 200, Z: -60}}
	for range rapid.IntRange(1, 4).Draw(t, "legs") {
		way := geometry.Point{X: rapid.Float64Range(100, 700).Draw(t, "length")}.Turn(rapid.Float64Range(0, 360).Draw(t, "turn"))
		path = append(path, path[len(path)-1].Add(way.At(rapid.Float64Range(-60, 40).Draw(t, "rise"))))
	}
	return geometry.Rounded(path, rapid.Float64Range(0, 60).Draw(t, "bend"))
}

// drawNear is a thing somewhere about a run.
func drawNear(t *rapid.T, run *geometry.Run) geometry.Prism {
	at := run.At(rapid.Float64Range(0, run.Length()).Draw(t, "beside")).Plan()
	at = at.Add(geometry.Point{X: rapid.Float64Range(-150, 150).Draw(t, "dx"), Y: rapid.Float64Range(-150, 150).Draw(t, "dy")})
	half := geometry.Point{X: rapid.Float64Range(5, 80).Draw(t, "half x"), Y: rapid.Float64Range(5, 80).Draw(t, "half y")}
	f := geometry.NewRectangle(at.Sub(half), at.Add(half), rapid.Float64Range(-90, 90).Draw(t, "turned"))
	if rapid.Bool().Draw(t, "round") {
		f = geometry.NewRound(at, half.X)
	}
	top := rapid.Float64Range(-150, 0).Draw(t, "top")
	return geometry.Prism{Footprint: f, Low: top - rapid.Float64Range(10, 100).Draw(t, "height"), High: top}
}

// step is how closely the tests walk along a run, mm.
const step = 0.25

// walked is the first and the last place along a run at which something holds, by walking all along it; ok is false where it never does.
func walked(run *geometry.Run, holds func(geometry.Point3) bool) (first, last float64, ok bool) {
	for s := 0.0; s <= run.Length(); s += step {
		if holds(run.At(s)) {
			if !ok {
				first = s
			}
			last, ok = s, true
		}
	}
	return first, last, ok
}

// Laid out straight, every place of the run lies as far along as it is, as high as it is, and heights are stretched for the eye, which
// the ruler takes back.
func TestALaidOutRunIsAsLongAndAsHighAsItIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, stretch := drawLevelRun(t), rapid.Float64Range(1, 8).Draw(t, "stretch")
		p := scene.Beside(&run, stretch, "stub", "outlet")
		s := rapid.Float64Range(0, run.Length()).Draw(t, "s")
		at := run.At(s)
		seen := p.Point(at)
		require.Less(t, run.At(seen.X).Sub(at).Norm(), 1e-6, "where a run comes back to a place either is that place")
		require.InDelta(t, at.Z, -p.Up.Counts*seen.Y, 1e-9, "a ruler counts drops")
		require.InDelta(t, at.Z*stretch, seen.Y, 1e-9)
		require.InDelta(t, 0, p.Unproject(geometry.Point{X: s, Y: at.Z * stretch}).Sub(at).Norm(), 1e-9)
		up := rapid.Float64Range(-50, 50).Draw(t, "up")
		require.InDelta(t, 0, p.Move(at, geometry.Point{Y: up}).Sub(geometry.Point3{Z: up / stretch}).Norm(), 1e-9, "up is up, and as much less")
	})
}

// A place just before the end of a run is seen there, and not at the end: 128 mm straight on, rising by 1.
func TestAPlaceJustBeforeTheEndIsSeenThere(t *testing.T) {
	run := geometry.Rounded([]geometry.Point3{{Z: -60}, {X: 128, Z: -59}}, 0)
	p := scene.Beside(&run, 1, "stub", "outlet")
	for _, s := range []float64{0, 0.25, 1, 127, 127.75, 128, run.Length()} {
		assert.InDelta(t, s, p.Point(run.At(s)).X, 1e-6)
	}
	beyond := geometry.Point3{X: 500, Z: -59}
	assert.InDelta(t, run.Length(), p.Point(beyond).X, 1e-6, "nothing of it lies beyond its end")
}

// A place beside the run is seen where the run comes nearest to it: no place of the run, walked all along, is nearer.
func TestAPlaceBesideARunIsSeenAtTheNearestOfIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run := drawLevelRun(t)
		p := scene.Beside(&run, 1, "stub", "outlet")
		off := geometry.Point3{X: rapid.Float64Range(-200, 200).Draw(t, "x"), Y: rapid.Float64Range(-200, 200).Draw(t, "y"), Z: rapid.Float64Range(-100, 100).Draw(t, "z")}
		place := run.At(rapid.Float64Range(0, run.Length()).Draw(t, "s")).Add(off)
		got := run.At(p.Point(place).X).Sub(place).Norm()
		for s := 0.0; s <= run.Length(); s += 5 {
			require.LessOrEqual(t, got, run.At(s).Sub(place).Norm()+0.01)
		}
	})
}

// A thing is seen over all of the run that passes under or over it, and as high as it is.
func TestAThingIsSeenWhereTheRunPassesIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, stretch := drawLevelRun(t), rapid.Float64Range(1, 8).Draw(t, "stretch")
		thing := drawNear(t, &run)
		p := scene.Beside(&run, stretch, "stub", "outlet")
		seen, ok := p.Seen(&scene.Item{Solid: scene.Solid{Prism: thing}}, 0.1)
		passes := func(place geometry.Point3) bool { return thing.Footprint.Contains(place.Plan()) }
		first, last, passed := walked(&run, passes)
		comparedWith(t, first, last, passed, seen, ok)
		if ok {
			low, high := seen.Bounds()
			require.InDelta(t, thing.Low*stretch, low.Y, 1e-9)
			require.InDelta(t, thing.High*stretch, high.Y, 1e-9)
		}
	})
}

// One that is shown beside the run, too, is seen over all of the run that comes so near to it, in space.
func TestAThingIsSeenWhereTheRunComesNearIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, thing, near := drawLevelRun(t), geometry.Prism{}, rapid.Float64Range(1, 120).Draw(t, "near")
		thing = drawNear(t, &run)
		p := scene.Beside(&run, 1, "stub", "outlet")
		seen, ok := p.Seen(&scene.Item{Solid: scene.Solid{Prism: thing, SeenNear: near}}, 0.1)
		comes := func(place geometry.Point3) bool {
			return thing.Footprint.Contains(place.Plan()) || thing.GapPoint(place).Gap <= near
		}
		first, last, came := walked(&run, comes)
		comparedWith(t, first, last, came, seen, ok)
		if bare, there := p.Seen(&scene.Item{Solid: scene.Solid{Prism: thing}}, 0.1); there && ok {
			low, high := seen.Bounds()
			from, to := bare.Bounds()
			require.LessOrEqual(t, low.X, from.X+0.2, "what it passes it is near to")
			require.GreaterOrEqual(t, high.X, to.X-0.2)
		}
	})
}

// comparedWith holds what is seen to what was found by walking: to the step of that, and the tenth of a mm to which an edge is sought. What
// the run only grazes, over less than its places are apart, may be passed over.
func comparedWith(t *rapid.T, first, last float64, found bool, seen scene.Seen, ok bool) {
	if !ok {
		require.True(t, !found || last-first < 4, "from %v to %v", first, last)
		return
	}
	require.True(t, found)
	low, high := seen.Bounds()
	require.InDelta(t, first, low.X, 2+step)
	require.InDelta(t, last, high.X, 2+step)
}

// A run that stands upright has no way along it in plan: a step along goes nowhere, one up goes up.
func TestAnUprightRunHasNoWayInPlan(t *testing.T) {
	run := geometry.Rounded([]geometry.Point3{{X: 100, Y: 50, Z: -20}, {X: 100, Y: 50, Z: -220}}, 0)
	p := scene.Beside(&run, 2, "stub", "outlet")
	assert.Equal(t, geometry.Point3{Z: 3}, p.Move(run.At(100), geometry.Point{X: 7, Y: 6}))
	assert.InDelta(t, 80, p.Point(geometry.Point3{X: 170, Y: 50, Z: -100}).X, 1e-4, "beside the least of a parabola rounding tells no more")
	thing := scene.Upright(geometry.NewRound(geometry.Point{X: 100, Y: 50}, 30), -400, -300)
	f, ok := p.Seen(&scene.Item{Solid: thing}, 0.1)
	require.True(t, ok, "what lies straight below it")
	low, high := f.Bounds()
	assert.InDelta(t, 0, low.X, 1e-9)
	assert.InDelta(t, 200, math.Abs(high.X), 1e-9)
}
