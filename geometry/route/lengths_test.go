package route_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/route"
)

// What general-purpose programs make of the same floors, mm: the true shortest in plan, as an exact any-angle search in C finds it, and the
// least that any of them was seen to come to in space, a sampling planner given a second among them.
var leastKnown = map[int]struct{ plan, space float64 }{50: {3457.6, 3345}, 200: {3565.5, 3463}, 500: {2760.6, 2754}}

// In plan a way is as long as the shortest there is, to a thousandth; in space a run is longer than the shortest known by a hundredth at most.
func TestWaysAreAsShortAsAnyKnown(t *testing.T) {
	for _, c := range crowdedFloors {
		known := leastKnown[c.n]
		flat := c.query(true)
		ways := route.Find(context.Background(), &flat, 1, nil)
		require.Len(t, ways, 1, c.n)
		plan := ways[0].Length
		assert.InEpsilon(t, known.plan, plan, 0.001, "%d in plan", c.n)

		q := c.query(false)
		ways = route.Find(context.Background(), &q, 1, nil)
		require.Len(t, ways, 1, c.n)
		s := route.Straightener{Bend: q.Bend, Worth: worthOf(&q), Steps: []float64{32, 2}}
		_, worth := s.Straighten(context.Background(), ways[0].Corners)
		assert.Zero(t, worth.Short, "%d keeps its distances", c.n)
		assert.LessOrEqual(t, worth.Length, known.space*1.01, "%d in space", c.n)
		t.Logf("%d: %.1f in plan, %.1f in space", c.n, plan, worth.Length)
	}
}

// What a way's heights make of its length is known long before it comes to its goal: a search in space looks at no more than twice the
// legs that one in plan looks at on the same floor, where all things reach from floor to ground. It would else be six times as many.
func TestASearchInSpaceLooksAtFewMoreLegs(t *testing.T) {
	for _, c := range crowdedFloors {
		looked := func(flat bool) (legs int) {
			q := c.query(flat)
			route.Find(context.Background(), &q, 1, func(tried int) { legs = tried })
			return legs
		}
		plan, space := looked(true), looked(false)
		assert.LessOrEqual(t, space, 2*plan, c.n)
		t.Logf("%d: %d legs in plan, %d in space", c.n, plan, space)
	}
}
