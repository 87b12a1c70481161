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

// motion carries a floor with all that is on it: quarter turns about the datum, then a shift. Quarter turns alone, as the box that a
// centreline stays in lies along the axes.
type motion struct {
	quarters int
	shift    pt3
}

func (m motion) plan(p pt) pt {
	for range m.quarters {
		p = pt{X: -p.Y, Y: p.X}
	}
	return p.Add(m.shift.Plan())
}

func (m motion) space(p pt3) pt3 { return m.plan(p.Plan()).At(p.Z + m.shift.Z) }

func (m motion) query(q route.Query) route.Query {
	a, b := m.space(q.Min), m.space(q.Max)
	q.From = m.space(q.From)
	q.Min, q.Max = pt3{X: min(a.X, b.X), Y: min(a.Y, b.Y), Z: a.Z}, pt3{X: max(a.X, b.X), Y: max(a.Y, b.Y), Z: b.Z}
	goals, things := q.To, q.Obstacles
	q.To, q.Obstacles = nil, nil
	for _, g := range goals {
		q.To = append(q.To, route.Goal{At: m.plan(g.At), Low: g.Low + m.shift.Z, High: g.High + m.shift.Z})
	}
	for _, o := range things {
		o.Prism.Footprint = o.Prism.Footprint.Moved(90*float64(m.quarters), m.shift.Plan())
		o.Prism.Low, o.Prism.High = o.Prism.Low+m.shift.Z, o.Prism.High+m.shift.Z
		q.Obstacles = append(q.Obstacles, o)
	}
	return q
}

// A floor that is moved and turned with all that is on it has ways of the same lengths: falls, bends and heights with them.
func TestAMovedFloorHasTheSameWays(t *testing.T) {
	r := seeded(t, 77)
	found := 0
	for range rounds(80) {
		q := littered(r)
		m := motion{r.IntN(4), pt3{X: math.Round(r.Float64()*4000 - 2000), Y: math.Round(r.Float64()*4000 - 2000), Z: math.Round(r.Float64()*400 - 200)}}
		there := m.query(q)
		here := route.Find(context.Background(), &q, 1, nil)
		moved := route.Find(context.Background(), &there, 1, nil)
		require.Len(t, moved, len(here))
		if len(here) == 0 {
			continue
		}
		found++
		require.InDelta(t, here[0].Length, moved[0].Length, 1e-4)
		ends := here[0].Corners
		require.Less(t, m.space(ends[0]).Sub(moved[0].Corners[0]).Norm(), 1e-6)
	}
	assert.Greater(t, found, rounds(80)/4)
}

// Of several goals the nearest is gone to: with one more the way is no longer, it ends at one of them, and as high as that goal allows.
func TestTheWayEndsAtTheGoalThatIsNearest(t *testing.T) {
	r := seeded(t, 78)
	others := 0
	for range rounds(80) {
		q := littered(r)
		one := route.Find(context.Background(), &q, 1, nil)
		more := q
		at := pt{X: q.Min.X + r.Float64()*(q.Max.X-q.Min.X), Y: q.Min.Y + r.Float64()*(q.Max.Y-q.Min.Y)}
		other := route.Goal{At: at, Low: q.To[0].Low, High: q.To[0].High}
		more.To = []route.Goal{q.To[0], other}
		both := route.Find(context.Background(), &more, 1, nil)
		if len(one) > 0 {
			require.NotEmpty(t, both)
			require.LessOrEqual(t, both[0].Length, one[0].Length*1.001+1e-6, "in space a way may take some more than in plan it was ranked by")
		}
		if len(both) == 0 {
			continue
		}
		end := both[0].Corners[len(both[0].Corners)-1]
		goal := q.To[0]
		if end.Plan().Sub(at).Norm() < 1e-6 {
			goal = other
			others++
		}
		require.Less(t, end.Plan().Sub(goal.At).Norm(), 1e-6)
		require.GreaterOrEqual(t, end.Z, goal.Low-1e-6)
		require.LessOrEqual(t, end.Z, goal.High+1e-6)
	}
	assert.Positive(t, others)
}

// A goal whose heights are none is nowhere, and what asks for nothing is in nobody's way.
func TestWhatIsNowhereAndWhatAsksNothing(t *testing.T) {
	q := open()
	straight := first(t, q)
	q.To = append([]route.Goal{{At: pt{X: 200}, Low: -50, High: -60}}, q.To...)
	assert.Equal(t, straight, first(t, q), "the nearer goal is nowhere")
	q.Obstacles = []route.Obstacle{box(500, -400, 700, 400, -1000, 1000, 0), box(500, -400, 700, 400, -1000, 1000, -30)}
	assert.Equal(t, straight, first(t, q))
	q.To = q.To[:1]
	assert.Empty(t, route.Find(context.Background(), &q, 1, nil))
}

// The tightest limits: a way as long as may be is found, one a hair longer is not; so with how much it turns.
func TestAWayAtItsLimits(t *testing.T) {
	q := open()
	q.Obstacles = []route.Obstacle{box(500, -400, 700, 50, -1000, 1000, 100)}
	plan := geometry.NewLine(inPlanOf(first(t, q)), 0)
	length := 0.0
	for i := 1; i < len(plan.Path); i++ {
		length += plan.Path[i].Sub(plan.Path[i-1]).Norm()
	}
	// By hand (TestRoundABox): two tangents, two arcs of 100 mm and 200 mm between them; each arc turns by as much as it is long over 100.
	leg := math.Sqrt(400*400 + 50*50 - 100*100)
	arc := math.Atan2(50, 400) + math.Asin(100/math.Hypot(400, 50))
	whole := math.Hypot(2*leg+200*arc+200, 105)
	for _, c := range []struct {
		most, turn float64
		found      bool
	}{
		{whole + 1, 0, true}, {whole - 1, 0, false}, {0, 2*arc + 0.001, true}, {0, 2*arc - 0.001, false}, {whole + 1, 2*arc + 0.001, true},
	} {
		q.MostLength, q.MostTurn = c.most, c.turn
		ways := route.Find(context.Background(), &q, 1, nil)
		for _, w := range ways {
			if c.found {
				assert.InDelta(t, whole, w.Length, 0.5)
			}
		}
		assert.Equal(t, c.found, len(ways) > 0, "%+v", c)
	}
	assert.GreaterOrEqual(t, length, 2*leg+200*arc+200-1e-6, "corners stand outside of what is rounded")
}

// inPlanOf is a way in plan.
func inPlanOf(w route.Way) (path []pt) {
	for _, c := range w.Corners {
		path = append(path, c.Plan())
	}
	return path
}
