package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// What of a tube is below a height, in closed form. A tube is a ball drawn along its centreline: where its middle is a above the
// height it is sqrt(r^2 - a^2) to either side there, and r where its middle is below.

func across(r, above float64) float64 {
	return math.Sqrt(r*r - max(0, above)*max(0, above))
}

// wall is a rectangle whose near edge is square to x at a place.
func wall(x float64) geometry.Footprint {
	return geometry.NewRectangle(pt{X: x, Y: -4000}, pt{X: x + 50, Y: 4000}, 0)
}

func gapBelow(t *testing.T, z float64, f geometry.Footprint, r float64, path ...pt3) float64 {
	t.Helper()
	var tube geometry.Tube
	tube.AddPath(path, r)
	s, ok := tube.GapBelow(z, &f)
	require.True(t, ok)
	return s.Gap
}

// A pipe that rises by m for each mm towards a wall leaves the height at a slant: it is nearest where x + sqrt(r^2 - a^2) is
// greatest, at a = r / sqrt(1 + m^2), and reaches (r sqrt(1 + m^2) - a0) / m from where its middle is a0 above the height.
func TestAPipeThatRisesOutOfAHeight(t *testing.T) {
	for _, m := range []float64{0.05, 0.1, 0.5, 1, 3} {
		for _, r := range []float64{5, 13, 34} {
			for _, a0 := range []float64{-20, -3, 0, 4} {
				reach := (r*math.Sqrt(1+m*m) - a0) / m
				far := reach + 500
				got := gapBelow(t, -100, wall(reach+77), r, pt3{X: 0, Z: -100 + a0}, pt3{X: far, Z: -100 + a0 + m*far})
				if a := r / math.Sqrt(1+m*m); a > a0 {
					assert.InDelta(t, 77, got, 1e-6, "m %v, r %v, a0 %v", m, r, a0)
				} else {
					assert.InDelta(t, reach+77-across(r, a0), got, 1e-6, "it begins past there")
				}
			}
		}
	}
}

// A pipe that falls towards a wall, its end a above the height, or below it.
func TestAPipeThatFallsTowardsAWall(t *testing.T) {
	for _, end := range []float64{12.9, 8, 1, 0, -1, -60} {
		got := gapBelow(t, -100, wall(600), 13, pt3{X: 0, Z: -100 + end + 50}, pt3{X: 500, Z: -100 + end})
		assert.InDelta(t, 100-across(13, end), got, 1e-6, "end %v", end)
		beside := geometry.NewRectangle(pt{X: -900, Y: 40}, pt{X: 900, Y: 60}, 0)
		got = gapBelow(t, -100, beside, 13, pt3{X: 0, Z: -100 + end + 50}, pt3{X: 500, Z: -100 + end})
		assert.InDelta(t, 40-across(13, end), got, 1e-6, "beside it, end %v", end)
	}
}

// A level bend of 200 about a place: from a disc there it is as far all along, and one beyond it sees its middle.
func TestALevelBendAboutADisc(t *testing.T) {
	const bend, r = 200., 13.
	run := geometry.Rounded([]pt3{{X: bend, Y: -300, Z: -90}, {X: bend, Y: bend, Z: -90}, {X: -300, Y: bend, Z: -90}}, bend)
	var tube geometry.Tube
	tube.AddRun(&run, 300, 300+bend*math.Pi/2, r)
	for _, z := range []float64{-102.5, -95, -90, -60, 0} {
		w := across(r, -90-z)
		for _, size := range []float64{0, 20, 150, 187.5} {
			inside := geometry.NewRound(pt{}, size)
			s, ok := tube.GapBelow(z, &inside)
			require.True(t, ok)
			assert.InDelta(t, bend-size-w, s.Gap, 0.0101, "z %v, size %v", z, size)
			beyond := geometry.NewRound(pt{X: 500}.Turn(45), size)
			s, _ = tube.GapBelow(z, &beyond)
			assert.InDelta(t, 500-bend-size-w, s.Gap, 0.0101, "z %v, size %v", z, size)
		}
	}
	disc := geometry.NewRound(pt{}, 20)
	_, ok := tube.GapBelow(-103, &disc)
	assert.False(t, ok)
}

// Over a disc right on the centreline a pipe is as deep in it as its middle, and half its width besides.
func TestAPipeRightOverADisc(t *testing.T) {
	disc := geometry.NewRound(pt{X: 200}, 40)
	for _, above := range []float64{-5, 0, 5, 12} {
		got := gapBelow(t, -100, disc, 13, pt3{X: -500, Z: -100 + above}, pt3{X: 900, Z: -100 + above})
		assert.InDelta(t, -40-across(13, above), got, 1e-6)
	}
}

// Below a height above all of it, what counts is the plan: the distance of two lines drawn flat, less both half widths.
func TestBelowAHeightAboveAllItIsThePlan(t *testing.T) {
	r := seeded(t, 23)
	flat := func(path []pt3) (out []pt3) {
		for _, p := range path {
			out = append(out, pt3{X: p.X, Y: p.Y})
		}
		return out
	}
	apart := 0
	for range 300 {
		path := randomPath3(r, 4)
		line := []pt{randomPoint(r, 2000), randomPoint(r, 2000), randomPoint(r, 2000)}
		pipe := geometry.NewLine(line, 9)
		var drawn []pt3
		for _, p := range line {
			drawn = append(drawn, p.At(0))
		}
		want := geometry.BetweenPaths(flat(path), drawn).Gap - 9 - 13
		got := gapBelow(t, 1e6, pipe, 13, path...)
		if want > 0 {
			apart++
			assert.InDelta(t, want, got, 1e-3)
		} else {
			assert.LessOrEqual(t, got, want+1e-3, "an overlap is at least as deep as the lines are near")
		}
	}
	require.Greater(t, apart, 50)
}

// The lower the height the less of the tube is below it; another stretch brings it no farther; and where van and tube go
// together, turned and shifted or in a mirror, nothing changes.
func TestPropertiesOfWhatIsBelow(t *testing.T) {
	r := seeded(t, 29)
	for range 150 {
		path := []pt3{}
		for i := range 4 {
			path = append(path, pt3{X: float64(i) * 150, Y: 300 * r.Float64(), Z: -120 * r.Float64()})
		}
		shape := randomFootprint(r, 150).Moved(0, pt{X: 500 * r.Float64(), Y: 900*r.Float64() - 300})
		run := geometry.Rounded(path, 50)
		var tube geometry.Tube
		tube.AddRun(&run, 0, run.Length(), 13)
		last := math.Inf(1)
		for z := -140.; z < 20; z += 8 {
			s, ok := tube.GapBelow(z, &shape)
			if !ok {
				assert.True(t, math.IsInf(last, 1), "what is below a height is below every higher one")
				continue
			}
			assert.LessOrEqual(t, s.Gap, last+0.011)
			last = s.Gap
		}
		turn, shift := 360*r.Float64(), randomPoint(r, 3000)
		var turned []pt3
		for _, p := range path {
			turned = append(turned, p.Plan().Turn(turn).Add(shift).At(p.Z))
		}
		moved, there := shape.Moved(turn, shift), geometry.Rounded(turned, 50)
		var other geometry.Tube
		other.AddRun(&there, 0, there.Length(), 13)
		s, ok := other.GapBelow(-60, &moved)
		was, wasOK := tube.GapBelow(-60, &shape)
		require.Equal(t, wasOK, ok)
		if ok {
			assert.InDelta(t, was.Gap, s.Gap, 1e-4)
			more := tube
			more.AddPath([]pt3{{X: 100, Y: -50, Z: -90}, {X: 400, Y: 350, Z: -90}}, 20)
			s, ok = more.GapBelow(-60, &shape)
			require.True(t, ok)
			assert.LessOrEqual(t, s.Gap, was.Gap+1e-9)
		}
	}
}
