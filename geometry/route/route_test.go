package route_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
)

type pt = geometry.Point

type pt3 = geometry.Point3

// goal is one place at one height.
func goal(x, y, z float64) []route.Goal {
	return []route.Goal{{At: pt{X: x, Y: y}, Low: z, High: z}}
}

// open is a question on a floor of 3 m by 2 m without anything on it.
func open() route.Query {
	return route.Query{
		From: pt3{X: 100, Y: 0, Z: -45}, To: goal(1100, 0, -150), Min: pt3{X: 0, Y: -1000, Z: -300}, Max: pt3{X: 3000, Y: 1000, Z: -45},
		Fall: 0.02, Bend: 60,
	}
}

func box(x0, y0, x1, y1, low, high, need float64) route.Obstacle {
	return route.Obstacle{Prism: geometry.Prism{Footprint: geometry.NewRectangle(pt{X: x0, Y: y0}, pt{X: x1, Y: y1}, 0), Low: low, High: high}, Need: need}
}

func first(t *testing.T, q route.Query) route.Way {
	t.Helper()
	ways := route.Find(context.Background(), &q, 1, nil)
	require.Len(t, ways, 1)
	return ways[0]
}

func TestNothingInTheWayIsAStraightLine(t *testing.T) {
	w := first(t, open())
	assert.Equal(t, []pt3{{X: 100, Z: -45}, {X: 1100, Z: -150}}, w.Corners)
	assert.InDelta(t, math.Hypot(1000, 105), w.Length, 1e-9)
}

// Round one corner of a box in the way, 100 mm off: two tangents and the arc between them.
func TestRoundABox(t *testing.T) {
	q := open()
	q.Obstacles = []route.Obstacle{box(500, -400, 700, 50, -1000, 1000, 100)}
	w := first(t, q)
	// From (100, 0) to the circle of 100 about (500, 50), along y = 150, and from the one about (700, 50) to (1100, 0).
	leg := math.Sqrt(400*400 + 50*50 - 100*100)
	arc := 100 * (math.Atan2(50, 400) + math.Asin(100/math.Hypot(400, 50)))
	assert.InDelta(t, math.Hypot(2*leg+2*arc+200, 105), w.Length, 1e-3)
	require.Len(t, w.Corners, 4)
}

// A way that needs 98 or 99.9 % of the fall there is to its goal is found, straight and round a box, and one that needs 100.1 % is not. By hand: straight it
// is 1000 long in plan; round the box, as above, two legs, two arcs and 200.
func TestAWayWhoseFallIsOnlyJustEnoughIsFound(t *testing.T) {
	leg := math.Sqrt(400*400 + 50*50 - 100*100)
	arc := 100 * (math.Atan2(50, 400) + math.Asin(100/math.Hypot(400, 50)))
	for length, things := range map[float64][]route.Obstacle{1000: nil, 2*leg + 2*arc + 200: {box(500, -4000, 700, 50, -1000, 1000, 100)}} {
		for needs, found := range map[float64]int{0.98: 1, 0.999: 1, 1.001: 0} {
			q := open()
			q.Obstacles, q.Fall = things, 0.1
			q.To = goal(1100, 0, q.From.Z-q.Fall*length/needs)
			assert.Len(t, route.Find(context.Background(), &q, 1, nil), found, "%v long, %v of the fall there is", length, needs)
		}
	}
}

func TestBelowWhatCantBePassedAbove(t *testing.T) {
	q := open()
	q.Obstacles = []route.Obstacle{box(500, -4000, 700, 4000, -80, 0, 40)}
	w := first(t, q)
	for i := 1; i < len(w.Corners); i++ {
		assert.GreaterOrEqual(t, w.Corners[i-1].Z-w.Corners[i].Z, 0.02*w.Corners[i].Sub(w.Corners[i-1]).Plan().Norm()-1e-6)
	}
	assert.GreaterOrEqual(t, q.Obstacles[0].Prism.GapRun(w.Corners).Gap, 40-0.1)
	assert.InDelta(t, math.Hypot(1000, 105), w.Length, 30)
}

func TestNoWayThroughAWall(t *testing.T) {
	q := open()
	q.Obstacles = []route.Obstacle{box(500, -4000, 700, 4000, -1000, 0, 40)}
	assert.Empty(t, route.Find(context.Background(), &q, 1, nil))
}

// The goal lies too high to be fallen to.
func TestNoWayUp(t *testing.T) {
	q := open()
	q.To = goal(1100, 0, -60)
	assert.Empty(t, route.Find(context.Background(), &q, 1, nil))
	q.To = goal(1100, 0, -65)
	assert.Len(t, route.Find(context.Background(), &q, 1, nil), 1)
}

// Goals all ahead, at which the last leg may not face forward, are come to by a turn just before, one bend radius away, and by nothing
// without it.
func TestAWayMayTurnBeforeEachOfSeveralGoals(t *testing.T) {
	q := open()
	q.To = append(goal(1100, 0, -150), goal(1100, 20, -150)...)
	q.Facing = []route.Facing{{From: pt3{X: 1}, Least: math.Pi / 2}}
	assert.Empty(t, route.Find(context.Background(), &q, 1, nil))
	q.TurnBefore = true
	w := first(t, q)
	last := w.Corners[len(w.Corners)-1].Sub(w.Corners[len(w.Corners)-2])
	assert.LessOrEqual(t, last.X, 1e-9)
	assert.LessOrEqual(t, w.Length, math.Hypot(math.Hypot(1000, q.Bend)+q.Bend, 105), "to beside it, and across")
	q.To = q.To[:1]
	assert.GreaterOrEqual(t, first(t, q).Length, w.Length-1e-9, "one of them alone")
}

// The heights that a way needs may make it longer than it looks in plan: one that goes down below a box, straight in plan, is not told
// before one that goes round it level. Several ends along an edge, as an outlet may have.
func TestTheShortestWayComesFirstThoughAnotherIsShorterInPlan(t *testing.T) {
	q := open()
	q.From, q.To = pt3{X: 635, Y: 25, Z: -45}, nil
	q.Min, q.Max = pt3{Y: -500, Z: -295}, pt3{X: 1200, Y: 500, Z: -55}
	q.Fall, q.Bend, q.MostLength = 0.02, 30, 0
	for x := 0.0; x <= 1200; x += 25 {
		q.To = append(q.To, route.Goal{At: geometry.Point{X: x, Y: 485}, Low: -295, High: -55})
	}
	q.Obstacles = []route.Obstacle{box(517, 115, 637, 195, -200, -60, 50)}
	few, many := route.Find(context.Background(), &q, 2, nil), route.Find(context.Background(), &q, 60, nil)
	require.Len(t, few, 2)
	assert.LessOrEqual(t, few[0].Length, many[0].Length)
	assert.LessOrEqual(t, few[1].Length, many[1].Length)
	assert.Greater(t, few[0].Corners[len(few[0].Corners)-1].Z, -100.0, "level, beside the box")
}

// A way falls as is asked to a hundredth of a mm, whichever way it goes: over 1000 mm of plan 20 mm lower there is one, 19.99 mm lower none.
func TestAWayFallsAsMuchAsIsAsked(t *testing.T) {
	for _, x := range []float64{400, 2400} {
		for fall, ways := range map[float64]int{20: 1, 20.01: 1, 200: 1, 19.99: 0, 19: 0, 0: 0, -1: 0} {
			q := open()
			q.From = pt3{X: 1400, Z: -60}
			q.To = goal(x, 0, -60-fall)
			assert.Len(t, route.Find(context.Background(), &q, 1, nil), ways, "to %g, falling %g", x, fall)
		}
	}
}

// So it is round a box, where the shortest way in plan is the one of TestRoundABox: there is a way down to as much as its length falls, and none that ends
// higher, from either end.
func TestAWayRoundABoxFallsAsMuchAsIsAsked(t *testing.T) {
	leg := math.Sqrt(400*400 + 50*50 - 100*100)
	arc := 100 * (math.Atan2(50, 400) + math.Asin(100/math.Hypot(400, 50)))
	falls := 0.02 * (2*leg + 2*arc + 200)
	for _, x := range []float64{100, 1100} {
		for off, ways := range map[float64]int{0.01: 1, 1: 1, 100: 1, -0.1: 0, -1: 0} {
			q := open()
			q.Obstacles = []route.Obstacle{box(500, -400, 700, 50, -1000, 1000, 100)}
			q.From, q.To = pt3{X: x, Z: -60}, goal(1200-x, 0, -60-falls-off)
			assert.Len(t, route.Find(context.Background(), &q, 1, nil), ways, "from %g, %g lower than it must be", x, off)
		}
	}
}
