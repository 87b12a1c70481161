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

// inPlan is a littered floor on which all reaches from floor to ground, without bends: a way on it is a shortest one exactly.
func inPlan(q route.Query) route.Query {
	q.Bend, q.Fall, q.MostTurn = 0, math.Inf(-1), 0
	q.To = goal(q.To[0].At.X, q.To[0].At.Y, q.From.Z)
	q.Max.Z = q.From.Z
	for i := range q.Obstacles {
		q.Obstacles[i].Prism.Low, q.Obstacles[i].Prism.High = -1000, 1000
	}
	return q
}

// shortest is how long the shortest way is, endless where there is none.
func shortest(q route.Query) float64 {
	ways := route.Find(context.Background(), &q, 1, nil)
	if len(ways) == 0 {
		return math.Inf(1)
	}
	return ways[0].Length
}

// A thing more in the way makes no way shorter, less asked of one makes none longer, and the way back is as long.
func TestWhatIsInTheWayNeverShortensIt(t *testing.T) {
	r := seeded(t, 75)
	longer := 0
	for range rounds(150) {
		q := inPlan(littered(r))
		all := shortest(q)
		fewer := q
		fewer.Obstacles = q.Obstacles[:len(q.Obstacles)-1]
		require.LessOrEqual(t, shortest(fewer), all+1e-6)
		less := q
		less.Obstacles = nil
		for _, o := range q.Obstacles {
			o.Need = max(0, o.Need-5)
			less.Obstacles = append(less.Obstacles, o)
		}
		require.LessOrEqual(t, shortest(less), all+1e-6)
		back := q
		back.From, back.To = q.To[0].At.At(q.From.Z), goal(q.From.X, q.From.Y, q.From.Z)
		if there := shortest(back); !math.IsInf(all, 1) || !math.IsInf(there, 1) {
			require.InDelta(t, all, there, 1e-6)
		}
		if all > q.To[0].At.Sub(q.From.Plan()).Norm()+1 {
			longer++
		}
	}
	assert.Greater(t, longer, rounds(150)/4, "something was in the way")
}

// A floor and its mirror image have ways of one length.
func TestAMirroredFloorHasTheSameWay(t *testing.T) {
	r := seeded(t, 76)
	for range rounds(100) {
		q := inPlan(littered(r))
		mirrored := q
		mirrored.From.Y = -q.From.Y
		mirrored.To = goal(q.To[0].At.X, -q.To[0].At.Y, q.From.Z)
		mirrored.Min.Y, mirrored.Max.Y = -q.Max.Y, -q.Min.Y
		mirrored.Obstacles = nil
		for _, o := range q.Obstacles {
			o.Prism.Footprint = acrossX(o.Prism.Footprint)
			mirrored.Obstacles = append(mirrored.Obstacles, o)
		}
		if a, b := shortest(q), shortest(mirrored); !math.IsInf(a, 1) || !math.IsInf(b, 1) {
			require.InDelta(t, a, b, 1e-6)
		}
	}
}

// acrossX is a footprint mirrored in the X axis.
func acrossX(f geometry.Footprint) geometry.Footprint {
	down := func(p pt) pt { return pt{X: p.X, Y: -p.Y} }
	switch f.Shape {
	case geometry.Round:
		return geometry.NewRound(down(f.Middle), f.Radius)
	case geometry.Line:
		var path []pt
		for _, p := range f.Path {
			path = append(path, down(p))
		}
		return geometry.NewLine(path, f.Radius)
	}
	middle := down(f.Middle)
	return geometry.NewRectangle(middle.Sub(f.Half), middle.Add(f.Half), -f.Turn)
}
