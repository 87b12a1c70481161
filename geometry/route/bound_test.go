package route

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// A way that has to go below something and has the goal ahead: its string goes down to what it passes, level below, and straight up again.
func TestABoundIsTheLengthOfAString(t *testing.T) {
	goal := Goal{At: geometry.Point{X: 1000}, Low: -50, High: -50}
	s := newSearch(&Query{From: geometry.Point3{Z: -50}, To: []Goal{goal}, Fall: math.Inf(-1)})
	start := &layer{low: -50, high: -50, highest: -50}
	open := &layer{low: -400, high: 0, highest: 0, to: 300, before: start}
	below := &layer{low: -400, high: -200, highest: -200, from: 300, to: 400, before: open}
	n := &label{at: 400, leg: tangent{to: geometry.Point{X: 400}}, layers: []*layer{below}}
	s.bound(n)
	up := math.Hypot(600, 150)
	assert.InDelta(t, math.Hypot(300, 150)+100+up, n.least, 1e-9)
	assert.InDelta(t, 600/up, n.slope, 1e-12)
	for _, beside := range []float64{0, 1, 50, 400} {
		on := math.Hypot(300, beside)
		longer := s.least(n, on, geometry.Point{X: 700, Y: beside}, 0)
		assert.LessOrEqual(t, longer, math.Hypot(300, 150)+100+math.Hypot(2*on, 150)+1e-9, "%g beside", beside)
		assert.GreaterOrEqual(t, longer, n.least+0.95*(2*on-600), "%g beside", beside)
	}
}

// Of goals all along an edge those that are looked at have the nearest one among them, wherever on a disc a way is, and are few.
func TestTheNearestGoalOfADiscIsTheNearestOfAll(t *testing.T) {
	t.Log("seed 32")
	r := rand.New(rand.NewPCG(32, 32))
	looked, all := 0, 0
	for range 50 {
		q := scattered(r)
		for y := -500.; y <= 500; y += 25 {
			q.To = append(q.To, Goal{At: geometry.Point{X: 1150, Y: y}, Low: -400, High: -100}, Goal{At: geometry.Point{X: -90, Y: y}, Low: -400, High: -100})
		}
		s := newSearch(q)
		for i, d := range s.discs {
			for range 5 {
				at := d.at.Add(geometry.Point{X: d.radius}.Turn(360 * r.Float64()))
				least := math.Inf(1)
				for _, g := range q.To {
					least = min(least, g.At.Sub(at).Norm())
				}
				require.InDelta(t, least, s.near(at, i), 1e-9)
			}
			looked, all = looked+len(s.nearest[i]), all+len(q.To)
		}
	}
	t.Logf("%d of %d goals were looked at", looked, all)
	assert.Less(t, looked, all/8)
}

// scattered are boxes between a start and some goals beyond them: some to be passed above, some below, some neither.
func scattered(r *rand.Rand) *Query {
	q := &Query{From: geometry.Point3{X: -50, Z: -60}, Fall: math.Inf(-1), Bend: 30, Min: geometry.Point3{X: -100, Y: -500, Z: -420}, Max: geometry.Point3{X: 1200, Y: 500, Z: -50}}
	if r.IntN(2) == 0 {
		q.Fall = 0.02
	}
	for range 1 + r.IntN(4) {
		low := -400 + 200*r.Float64()
		q.To = append(q.To, Goal{At: geometry.Point{X: 1150, Y: 800*r.Float64() - 400}, Low: low, High: low + 100*r.Float64()})
	}
	for range 12 {
		at := geometry.Point{X: 1000 * r.Float64(), Y: 1000*r.Float64() - 500}
		high := -200 * r.Float64()
		box := geometry.NewRectangle(at, at.Add(geometry.Point{X: 40 + 100*r.Float64(), Y: 40 + 200*r.Float64()}), 0)
		q.Obstacles = append(q.Obstacles, Obstacle{Prism: geometry.Prism{Footprint: box, Low: high - 50 - 250*r.Float64(), High: high}, Need: 30})
	}
	return q
}

// No way is shorter than what was said of it anywhere along it, or one that is would not be looked for.
func TestNoWayIsShorterThanItsBounds(t *testing.T) {
	t.Log("seed 31")
	r := rand.New(rand.NewPCG(31, 31))
	ways, tight := 0, 0
	for range 200 {
		s := newSearch(scattered(r))
		s.wanted = 20
		s.run(context.Background(), nil)
		for _, end := range s.ends {
			ways++
			for l := end.before; l.before != nil; l = l.before {
				require.LessOrEqual(t, l.least, end.length+touching)
				require.LessOrEqual(t, l.before.least, l.least+touching, "farther on more is known")
			}
			if end.before.least > 0.99*end.length {
				tight++
			}
		}
	}
	t.Logf("%d ways, %d with a bound within a hundredth", ways, tight)
	assert.Greater(t, ways, 1000)
	assert.Greater(t, tight, ways/3)
}
