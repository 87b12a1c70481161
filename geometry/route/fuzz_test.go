package route_test

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
)

// asked is a question drawn from a seed, odd ones among them: things over both ends, without size or a need, goals outside the box or
// upside down, no room to fall.
func asked(seed uint64, things, goals uint8, fall, bend float64) route.Query {
	r := rand.New(rand.NewPCG(seed, 1))
	whole := func(a, b float64) float64 { return math.Round(a + (b-a)*r.Float64()) }
	q := littered(r)
	q.Bend = bend
	if q.Fall = fall; r.IntN(4) == 0 {
		q.Fall = math.Inf(-1)
	}
	for range goals % 8 {
		high := whole(-300, 0)
		q.To = append(q.To, route.Goal{At: pt{X: whole(-100, 1300), Y: whole(-500, 500)}, Low: high - whole(-20, 100), High: high})
	}
	for range things % 24 {
		at := pt{X: whole(0, 1200), Y: whole(-450, 450)}
		high := whole(-200, 0)
		o := route.Obstacle{Need: whole(-20, 60), Prism: geometry.Prism{High: high, Low: high - whole(0, 200)}}
		if r.IntN(2) == 0 {
			o.Prism.Footprint = geometry.NewRound(at, whole(0, 60))
		} else {
			o.Prism.Footprint = geometry.NewLine([]pt{at, {X: whole(0, 1200), Y: at.Y}}, whole(0, 20))
		}
		q.Obstacles = append(q.Obstacles, o)
	}
	return q
}

// Whatever is asked, it is answered, twice in the same way: no more ways than were asked for, the shortest first, each from the start to one of
// the goals, at a height that it allows, no shorter than the straight line, and never rising where it is asked to fall.
func FuzzFind(f *testing.F) {
	for seed := range uint64(40) {
		f.Add(seed, uint8(seed), uint8(seed/3), 0.02, 60.0)
	}
	f.Add(uint64(103), uint8(17), uint8('T'), 0.02, 20.0) // a leg falls less than its arcs do
	f.Fuzz(func(t *testing.T, seed uint64, things, goals uint8, fall, bend float64) {
		if math.IsNaN(fall) || math.Abs(fall) > 10 || math.IsNaN(bend) || bend < 0 || bend > 1000 {
			t.Skip("no job asks that")
		}
		q := asked(seed, things, goals, fall, bend)
		const most = 3
		ways := route.Find(context.Background(), &q, most, nil)
		assert.Equal(t, ways, route.Find(context.Background(), &q, most, nil))
		require.LessOrEqual(t, len(ways), most)
		for i, w := range ways {
			if i > 0 {
				assert.GreaterOrEqual(t, w.Length, ways[i-1].Length-1e-6)
			}
			answers(t, &q, w)
		}
	})
}

// answers holds a way to its question.
func answers(t *testing.T, q *route.Query, w route.Way) {
	require.GreaterOrEqual(t, len(w.Corners), 2)
	end := w.Corners[len(w.Corners)-1]
	assert.Equal(t, q.From, w.Corners[0])
	assert.True(t, slices.ContainsFunc(q.To, func(g route.Goal) bool {
		return g.At == end.Plan() && end.Z >= g.Low-1e-6 && end.Z <= g.High+1e-6
	}), "%v is none of the goals", end)
	assert.GreaterOrEqual(t, w.Length, end.Sub(q.From).Norm()-1e-6)
	falls := !math.IsInf(q.Fall, -1) && q.Fall >= 0
	for i, c := range w.Corners[1:] {
		require.False(t, math.IsNaN(c.X+c.Y+c.Z))
		if falls {
			assert.LessOrEqual(t, c.Z, w.Corners[i].Z+1e-6)
		}
	}
	if falls {
		assert.GreaterOrEqual(t, q.From.Z-end.Z, q.Fall*end.Sub(q.From).Plan().Norm()-1e-6)
	}
}
