package scene_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// every is each view there is.
func every() map[string]scene.Projection {
	all := map[string]scene.Projection{}
	for _, v := range append([]scene.View{scene.Below, scene.Below.Next(), scene.FromLeft}, scene.Sides[:]...) {
		all[v.Projection().From] = v.Projection()
	}
	return all
}

func drawPoint(t *rapid.T) geometry.Point {
	within := rapid.Float64Range(-5000, 5000)
	return geometry.Point{X: within.Draw(t, "x"), Y: within.Draw(t, "y")}
}

func drawPoint3(t *rapid.T) geometry.Point3 {
	return drawPoint(t).At(rapid.Float64Range(-600, 600).Draw(t, "z"))
}

func near(t require.TestingT, want, got geometry.Point) {
	require.InDelta(t, 0, want.Sub(got).Norm(), 1e-9, "%v, %v", want, got)
}

func TestPlacesGoToThePlaneAndBack(t *testing.T) {
	for name, p := range every() {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				q, at := drawPoint(t), drawPoint3(t)
				near(t, q, p.Point(p.Unproject(q)))
				by := drawPoint(t)
				near(t, p.Point(at).Add(by), p.Point(at.Add(p.Move(at, by))))
				require.LessOrEqual(t, p.Point(at).Sub(q).Norm(), at.Sub(p.Unproject(q)).Norm()+1e-9, "nothing is seen longer than it is")
			})
		})
	}
}

// From either side of the van one sees the other's picture in a mirror, and each is that of what lies on its side.
func TestTheSidesAreMirrored(t *testing.T) {
	left, right := scene.FromSide(870).Projection(), scene.FromSide(-870).Projection()
	assert.Equal(t, []string{"the left", "the right", "the right"}, []string{left.From, right.From, scene.FromSide(0).Projection().From})
	assert.Equal(t, []string{"the left", "the right"}, []string{scene.FromSide(0.1).Projection().From, scene.FromSide(-0.1).Projection().From})
	at := geometry.Point3{X: 1210, Y: 240, Z: -95}
	assert.Equal(t, geometry.Point{X: -1210, Y: -95}, left.Point(at))
	assert.Equal(t, geometry.Point{X: 1210, Y: -95}, right.Point(at))
	for name, p := range every() {
		assert.Equal(t, name != "behind", p.Lengthwise(), name)
	}
}

// What goes up in the picture goes the way that the picture's top is called.
func TestTheTopIsWhereStepsGoUp(t *testing.T) {
	ways := map[scene.Way]geometry.Point3{
		scene.ToBumper: {X: -1}, scene.ToNose: {X: 1}, scene.ToLeft: {Y: 1}, scene.ToRight: {Y: -1}, scene.ToGround: {Z: -1}, scene.ToRoof: {Z: 1},
	}
	for name, p := range every() {
		at := geometry.Point3{X: 1210, Y: 240, Z: -95}
		assert.Equal(t, ways[p.Top()], p.Step(at, 0, 1), name)
		assert.Equal(t, ways[p.Bottom()], p.Step(at, 0, -1), name)
		assert.Equal(t, ways[p.Across.High], p.Step(at, 1, 0), name)
		assert.Equal(t, ways[p.Across.Low], p.Step(at, -1, 0), name)
	}
}

// A ruler counts what a tape reads: x from the bumper, y to the left, drops downwards.
func TestRulersCountWhatTapesRead(t *testing.T) {
	reads := map[scene.Way]float64{scene.ToNose: 1, scene.ToLeft: 1, scene.ToGround: 1, scene.ToBumper: -1, scene.ToRight: -1, scene.ToRoof: -1}
	for name, p := range every() {
		for _, axis := range []scene.Axis{p.Across, p.Up} {
			assert.Equal(t, reads[axis.High], axis.Counts, name)
			assert.Equal(t, -reads[axis.Low], axis.Counts, name)
		}
	}
}

// From below is from above in a mirror: the same plane, turned over about the van's length.
func TestBelowIsAboveTurnedOver(t *testing.T) {
	below, above := scene.Below.Projection(), scene.Above.Projection()
	assert.Equal(t, below.Plane, above.Plane)
	assert.NotEqual(t, below.Over, above.Over)
	assert.Equal(t, above.Top(), below.Bottom())
	assert.Equal(t, above.Bottom(), below.Top())
	at := geometry.Point3{}
	assert.Equal(t, above.Step(at, 3, 7), below.Step(at, 3, -7))
}

func TestTheFloorHidesWhatIsBehindItsFace(t *testing.T) {
	for name, p := range every() {
		hidden := 0
		for _, layer := range []scene.Layer{scene.Through, scene.Under, scene.Upon} {
			if p.Hidden(&scene.Item{Layer: layer}) {
				hidden++
				assert.NotEqual(t, scene.Through, layer, name)
			}
		}
		assert.Equal(t, p.FacesFloor(), hidden == 1, name)
	}
	below, above := scene.Below.Projection(), scene.Above.Projection()
	assert.True(t, below.Hidden(&scene.Item{Layer: scene.Upon}))
	assert.True(t, above.Hidden(&scene.Item{Layer: scene.Under}))
}

// Going on from view to view comes by each once.
func TestViewsComeRoundAgain(t *testing.T) {
	seen := map[string]bool{}
	for v := scene.Below; !seen[v.Projection().From]; v = v.Next() {
		seen[v.Projection().From] = true
	}
	assert.True(t, seen["below"] && seen["above"])
	assert.False(t, seen[""], "each says what it is seen from")
}
