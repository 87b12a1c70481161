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

func drawRun(t *rapid.T) geometry.Run {
	path := make([]geometry.Point3, rapid.IntRange(2, 5).Draw(t, "points"))
	for i := range path {
		path[i] = drawPoint3(t)
	}
	return geometry.Rounded(path, rapid.Float64Range(0, 300).Draw(t, "bend"))
}

func drawFootprint(t *rapid.T) geometry.Footprint {
	across := rapid.Float64Range(1, 400).Draw(t, "across")
	switch rapid.IntRange(0, 2).Draw(t, "shape") {
	case 0:
		return geometry.NewRectangle(drawPoint(t), drawPoint(t), rapid.Float64Range(-180, 180).Draw(t, "turn"))
	case 1:
		return geometry.NewRound(drawPoint(t), across/2)
	}
	return geometry.NewLine([]geometry.Point{drawPoint(t), drawPoint(t), drawPoint(t)}, across/2)
}

// flat is the line through points that a run is seen as.
func flat(p *scene.Projection, run geometry.Run, off float64) []geometry.Point {
	f, _ := p.Seen(&scene.Item{Primitive: scene.Stroke, Path: run.Pieces()}, off)
	return f.Line
}

// gap is how far a place is from a line through points.
func gap(line []geometry.Point, p geometry.Point) float64 {
	f := geometry.NewLine(line, 0)
	return f.GapOnly(p)
}

// Every place of a bend is seen within the tolerance of the lines it is painted by; a finer one brings more of them.
func TestBendsAreFlattenedWithinTheTolerance(t *testing.T) {
	for name, p := range every() {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				run, off := drawRun(t), rapid.SampledFrom([]float64{0.02, 0.2, 3, 50, 1000}).Draw(t, "off")
				line := flat(&p, run, off)
				for i := range 101 {
					s := run.Length() * float64(i) / 100
					require.LessOrEqual(t, gap(line, p.Point(run.At(s))), off+1e-9)
				}
				require.LessOrEqual(t, len(line), len(flat(&p, run, off/4)))
			})
		})
	}
}

// The bend of a template at full size: 60 mm, of which a chord of 10 mm is off by 0.21 mm where 0.2 are allowed.
func TestATemplatesBendIsTrue(t *testing.T) {
	run := geometry.Rounded([]geometry.Point3{{}, {X: 300}, {X: 300, Y: 300}}, 60)
	bend, off, below := run.Pieces()[1], 0.0, scene.Below.Projection()
	line := flat(&below, run, 0.02)
	for i := range 1001 {
		off = max(off, gap(line, bend.At(float64(i)/1000).Plan()))
	}
	assert.LessOrEqual(t, off, 0.02)
	assert.Greater(t, off, 0.01, "no more lines than it takes")
}

func TestCirclesStayCircles(t *testing.T) {
	below := scene.Below.Projection()
	cut := scene.Item{Role: scene.Cut, Primitive: scene.Outline, Solid: scene.Upright(geometry.NewRound(geometry.Point{X: 1210, Y: 240}, 63.5), 0, 30)}
	f, ok := below.Seen(&cut, 10)
	require.True(t, ok)
	assert.Equal(t, geometry.NewRound(geometry.Point{X: 1210, Y: 240}, 63.5), f.Area)

	vent := cut
	vent.Primitive = scene.Edge
	f, _ = below.Seen(&vent, 0.1)
	assert.Equal(t, f.Line[0], f.Line[len(f.Line)-1], "closed")
	for i := range 360 {
		on := geometry.Point{X: 63.5}.Turn(float64(i)).Add(geometry.Point{X: 1210, Y: 240})
		assert.LessOrEqual(t, gap(f.Line, on), 0.1)
	}
}

// Whatever is seen of an item lies in the bounds of that.
func TestBoundsHoldEverything(t *testing.T) {
	const off = 0.1
	for name, p := range every() {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				run, radius := drawRun(t), rapid.Float64Range(0, 100).Draw(t, "radius")
				low, high := rapid.Float64Range(-500, 0).Draw(t, "low"), rapid.Float64Range(0, 500).Draw(t, "high")
				foot := drawFootprint(t)
				prism := scene.Upright(foot, low, high)
				holds(t, &p, &scene.Item{Solid: prism}, within(t, &foot).At(rapid.Float64Range(low, high).Draw(t, "z")), 1e-9)
				holds(t, &p, &scene.Item{Primitive: scene.Edge, Solid: scene.Upright(foot, low, low)}, within(t, &foot).At(low), off)
				s := rapid.Float64Range(0, run.Length()).Draw(t, "s")
				round := drawPoint3(t)
				round = round.Scale(radius / max(round.Norm(), 1))
				holds(t, &p, &scene.Item{Solid: scene.Pipe(run.Pieces(), radius)}, run.At(s).Add(round), off)
				holds(t, &p, &scene.Item{Primitive: scene.Stroke, Path: run.Pieces()}, run.At(s), off)
				holds(t, &p, &scene.Item{Primitive: scene.Spot, At: round}, round, 1e-9)
			})
		})
	}
}

func holds(t *rapid.T, p *scene.Projection, it *scene.Item, place geometry.Point3, off float64) {
	f, ok := p.Seen(it, 0.1)
	require.True(t, ok)
	low, high := f.Bounds()
	at := p.Point(place)
	require.True(t, at.X >= low.X-off && at.Y >= low.Y-off && at.X <= high.X+off && at.Y <= high.Y+off,
		"%v is outside %v to %v", at, low, high)
}

// within is a place of a footprint.
func within(t *rapid.T, f *geometry.Footprint) geometry.Point {
	if f.Shape == geometry.Line {
		return f.Path[1]
	}
	c := f.Corners()
	at := c[0].Add(c[2].Sub(c[0]).Scale(rapid.Float64Range(0, 1).Draw(t, "share")))
	if f.Shape == geometry.Round {
		at = f.Middle.Add(at.Sub(f.Middle).Scale(math.Sqrt2 / 2))
	}
	return at
}

// From below a picture is that from above in a mirror: the same is seen.
func TestBothSidesShowTheSame(t *testing.T) {
	below, above := scene.Below.Projection(), scene.Above.Projection()
	rapid.Check(t, func(t *rapid.T) {
		it := scene.Item{Solid: scene.Pipe(drawRun(t).Pieces(), 13)}
		b, _ := below.Seen(&it, 0.2)
		a, _ := above.Seen(&it, 0.2)
		require.Equal(t, a, b)
	})
}

func TestABarrelIsSeenAlongAndEndOn(t *testing.T) {
	wheel := scene.Item{Solid: scene.Barrel(geometry.Point3{X: 900, Y: 672, Z: -105}, geometry.Point3{X: 900, Y: 888, Z: -105}, 345)}
	below := scene.Below.Projection()
	f, _ := below.Seen(&wheel, 1)
	low, high := f.Bounds()
	assert.Equal(t, [2]geometry.Point{{X: 555, Y: 672}, {X: 1245, Y: 888}}, [2]geometry.Point{low, high})
	right, behind := scene.FromRight.Projection(), scene.FromBehind.Projection()
	f, _ = right.Seen(&wheel, 1)
	assert.Equal(t, geometry.NewRound(geometry.Point{X: 900, Y: -105}, 345), f.Area)
	f, _ = behind.Seen(&wheel, 1)
	low, high = f.Bounds()
	near(t, geometry.Point{X: -888, Y: -450}, low)
	near(t, geometry.Point{X: -672, Y: 240}, high)
}

// A run of the outputs' samples, laid out straight: what it passes under is where it passes it, what it does not pass
// is not seen.
func TestAlongARun(t *testing.T) {
	run := geometry.Rounded([]geometry.Point3{{X: 1245, Y: 265, Z: -60}, {X: 1120, Y: 660, Z: -95}, {X: 300, Y: 690, Z: -110}, {X: -20, Y: 760, Z: -125}}, 60)
	p := scene.Beside(&run, 1, "stub", "outlet")
	f, ok := p.Seen(&scene.Item{Solid: scene.Pipe(run.Pieces(), 13)}, 0.05)
	require.True(t, ok)
	ends := f.Area.Path
	near(t, geometry.Point{Y: -60}, ends[0])
	assert.InDelta(t, run.Length(), ends[len(ends)-1].X, 1e-6)
	for s := 0.0; s < run.Length(); s += 7 {
		assert.LessOrEqual(t, gap(ends, geometry.Point{X: s, Y: run.At(s).Z}), 0.05+1e-6)
	}
	beam := geometry.NewRectangle(geometry.Point{X: 800, Y: -850}, geometry.Point{X: 884, Y: 850}, 0)
	f, ok = p.Seen(&scene.Item{Solid: scene.Upright(beam, -80, 0)}, 0.05)
	require.True(t, ok)
	low, high := f.Bounds()
	assert.InDelta(t, 884, p.Unproject(low).X, 1)
	assert.InDelta(t, 800, p.Unproject(high).X, 1)
	assert.Equal(t, [2]float64{-80, 0}, [2]float64{low.Y, high.Y})
	_, ok = p.Seen(&scene.Item{Solid: scene.Upright(geometry.NewRound(geometry.Point{X: 420}, 300), -200, 0)}, 0.05)
	assert.False(t, ok, "the spare wheel is nowhere under it")
	ahead := p.Step(run.At(500), 10, 0)
	assert.InDelta(t, 10, ahead.Norm(), 1e-9)
	assert.InDelta(t, 510, p.Point(run.At(500).Add(ahead)).X, 0.01)
}
