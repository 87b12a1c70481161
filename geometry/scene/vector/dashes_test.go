package vector

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// Worked by hand: dashes of 3 and gaps of 2 along 10 to the right and then 4 down.
func TestDashesGoOverCorners(t *testing.T) {
	line := []geometry.Point{{}, {X: 10}, {X: 10, Y: 4}}
	assert.Equal(t, [][]geometry.Point{
		{{}, {X: 3}},
		{{X: 5}, {X: 8}},
		{{X: 10}, {X: 10, Y: 3}},
	}, dashed(line, []float64{3, 2}))
	assert.Equal(t, [][]geometry.Point{line}, dashed(line, nil))
}

// What is drawn of a line is as much of it as its dashes are of dashes and gaps, to one of each.
func TestAsMuchIsDrawnAsTheDashesSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := make([]geometry.Point, rapid.IntRange(2, 6).Draw(t, "points"))
		for i := range line {
			line[i] = geometry.Point{X: rapid.Float64Range(0, 300).Draw(t, "x"), Y: rapid.Float64Range(0, 200).Draw(t, "y")}
		}
		dash, gap := rapid.Float64Range(0.5, 9).Draw(t, "dash"), rapid.Float64Range(0.5, 9).Draw(t, "gap")
		drawn := 0.0
		for _, piece := range dashed(line, []float64{dash, gap}) {
			long := lengthOf(piece)
			assert.LessOrEqual(t, long, dash+1e-9)
			drawn += long
		}
		assert.InDelta(t, lengthOf(line)*dash/(dash+gap), drawn, dash+gap)
	})
}

func lengthOf(line []geometry.Point) (mm float64) {
	for i := 1; i < len(line); i++ {
		mm += line[i].Sub(line[i-1]).Norm()
	}
	return mm
}

func TestStepsOfARulerAreRound(t *testing.T) {
	for least, want := range map[float64]float64{0.9: 1, 1: 1, 1.1: 2, 3: 5, 7: 10, 13: 20, 240: 500, 501: 1000} {
		assert.Equal(t, want, roundStep(least), "%g", least)
	}
}
