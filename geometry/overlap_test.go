package geometry_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Two pipes that cross part the shortest way: over the end that sticks out least, each way round.
func TestCrossingPipesPartOverTheNearerEnd(t *testing.T) {
	long := geometry.NewLine([]pt{{X: -200}, {X: 200}}, 3)
	for _, turn := range []float64{0, 90, 30, 217} {
		for _, end := range []float64{10, -10} { // of the short one, beyond the long one
			short := geometry.NewLine([]pt{{Y: end}, {Y: -9 * end}}, 2)
			a, b := long.Moved(turn, pt{X: 700, Y: -300}), short.Moved(turn, pt{X: 700, Y: -300})
			s := geometry.Between(a, b)
			assert.InDelta(t, -15, s.Gap, 1e-9)
			out := pt{Y: end / 10}.Turn(turn)
			assert.InDelta(t, 0, s.N.Sub(out).Norm(), 1e-9, "the long one gets out that way")
			s = geometry.Between(b, a)
			assert.InDelta(t, -15, s.Gap, 1e-9)
			assert.InDelta(t, 0, s.N.Add(out).Norm(), 1e-9)
		}
	}
}

// A round between a rectangle and a line: the separation seen from either is the same one turned round.
func TestTheSeparationFromARoundIsTurnedRound(t *testing.T) {
	round := geometry.NewRound(pt{X: 200, Y: 50}, 20)
	for _, other := range []geometry.Footprint{rect(0, 0, 100, 100, 0), geometry.NewLine([]pt{{X: 97, Y: -50}, {X: 97, Y: 150}}, 3)} {
		s := geometry.Between(other, round)
		assertSame(t, geometry.Separation{Gap: 80, A: pt{X: 100, Y: 50}, B: pt{X: 180, Y: 50}, N: pt{X: 1}}, s)
		s = geometry.Between(round, other)
		assertSame(t, geometry.Separation{Gap: 80, A: pt{X: 180, Y: 50}, B: pt{X: 100, Y: 50}, N: pt{X: -1}}, s)
	}
}

// The point given between two boxes one above the other is in both, and in the middle of what they share where that is a
// rectangle.
func TestTheMiddleOfWhatTwoBoxesShare(t *testing.T) {
	body := geometry.Prism{Footprint: rect(0, 0, 100, 100, 0), Low: 0, High: 50}
	for _, c := range []struct {
		name  string
		other geometry.Footprint
		want  *pt // nil where only that it is in both counts
	}{
		{"shifted", rect(20, 0, 200, 100, 0), &pt{X: 60, Y: 50}},
		{"the same", rect(0, 0, 100, 100, 0), &pt{X: 50, Y: 50}},
		{"inside", rect(10, 20, 30, 40, 0), &pt{X: 20, Y: 30}},
		{"inside at an edge", rect(0, 20, 30, 40, 0), &pt{X: 15, Y: 30}},
		{"round it", rect(-50, -50, 150, 150, 0), &pt{X: 50, Y: 50}},
		{"touching along an edge", rect(100, 20, 200, 80, 0), nil},
		{"touching at a corner", rect(100, 100, 200, 200, 0), &pt{X: 100, Y: 100}},
		{"a diamond in the corner", rect(50, 50, 150, 150, 45), nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := geometry.BoxGap(body, geometry.Prism{Footprint: c.other, Low: 70, High: 90})
			require.InDelta(t, 20, s.Gap, 1e-12)
			if c.want != nil {
				assert.InDelta(t, 0, s.A.Plan().Sub(*c.want).Norm(), 1e-9, "%v", s.A)
			}
			assert.Equal(t, s.A.Plan(), s.B.Plan())
			assert.Equal(t, [2]float64{50, 70}, [2]float64{s.A.Z, s.B.Z})
			assert.LessOrEqual(t, max(body.Footprint.GapOnly(s.A.Plan()), c.other.GapOnly(s.A.Plan())), 1e-9, "in both")
		})
	}
}
