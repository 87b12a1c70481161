package route_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
)

// far is the distance of a place from a prism, by its definition and by none of this program's code.
func far(p *geometry.Prism, at pt3) float64 {
	f := &p.Footprint
	plan := math.Inf(1)
	switch f.Shape {
	case geometry.Rectangle:
		turn := -f.Turn * math.Pi / 180
		x, y := at.X-f.Middle.X, at.Y-f.Middle.Y
		u, v := x*math.Cos(turn)-y*math.Sin(turn), x*math.Sin(turn)+y*math.Cos(turn)
		plan = math.Hypot(max(math.Abs(u)-f.Half.X, 0), max(math.Abs(v)-f.Half.Y, 0))
	case geometry.Round:
		plan = math.Hypot(at.X-f.Middle.X, at.Y-f.Middle.Y) - f.Radius
	default:
		for i := 1; i < len(f.Path); i++ {
			a, b := f.Path[i-1], f.Path[i]
			dx, dy := b.X-a.X, b.Y-a.Y
			t := 0.0
			if n := dx*dx + dy*dy; n > 0 {
				t = min(max(((at.X-a.X)*dx+(at.Y-a.Y)*dy)/n, 0), 1)
			}
			plan = min(plan, math.Hypot(at.X-a.X-t*dx, at.Y-a.Y-t*dy)-f.Radius)
		}
	}
	return math.Hypot(max(plan, 0), max(at.Z-p.High, p.Low-at.Z, 0))
}

// worthOf is what a run through corners comes to by what a query asks: every distance exact, on legs and arcs, but for what is surely too
// far away, as rules judge the runs that they try.
func worthOf(q *route.Query) func([]pt3, float64) route.Worth {
	var boxes [][2]pt3
	for i := range q.Obstacles {
		o := &q.Obstacles[i]
		low, high := o.Prism.Footprint.Bounds()
		keep := o.Need + 1 // for all rounding
		grown := pt3{X: keep, Y: keep, Z: keep}
		boxes = append(boxes, [2]pt3{low.At(o.Prism.Low).Sub(grown), high.At(o.Prism.High).Add(grown)})
	}
	return func(corners []pt3, most float64) route.Worth {
		run := geometry.Rounded(corners, q.Bend)
		var tube geometry.Tube
		tube.AddRun(&run, 0, run.Length(), 0)
		short := 100 * float64(len(run.ShortLegs))
		for i := range q.Obstacles {
			o := &q.Obstacles[i]
			if tube.Misses(boxes[i][0], boxes[i][1]) {
				continue
			}
			if gap := tube.Gap(&o.Prism).Distance; gap < o.Need {
				short += o.Need - gap
			}
			if short > most+1e-6 { // by more than rounding
				return route.Worth{Short: short}
			}
		}
		for i, c := range corners[1:] {
			short += max(0, q.Min.X-c.X, c.X-q.Max.X) + max(0, q.Min.Y-c.Y, c.Y-q.Max.Y) + max(0, q.Min.Z-c.Z, c.Z-q.Max.Z)
			if fall := q.Fall * c.Sub(corners[i]).Plan().Norm(); !math.IsInf(q.Fall, -1) {
				short += max(0, fall-(corners[i].Z-c.Z)-1e-9)
			}
		}
		if q.MostTurn > 0 {
			short += max(0, run.Turns()-q.MostTurn*180/math.Pi)
		}
		return route.Worth{Short: short, Length: run.Length()}
	}
}

// found is the best run for a query: a few ways, straightened; ok is false where none keeps all that is asked.
func found(q *route.Query, steps ...float64) (corners []pt3, worth route.Worth, ok bool) {
	s := route.Straightener{Bend: q.Bend, Worth: worthOf(q), Steps: steps}
	for _, w := range route.Find(context.Background(), q, 4, nil) {
		c, of := s.Straighten(context.Background(), w.Corners)
		if of.Short == 0 && (!ok || of.Length < worth.Length) {
			corners, worth, ok = c, of, true
		}
	}
	return corners, worth, ok
}

// littered is a small floor with a few things on it, and a run asked for across it.
func littered(r *rand.Rand) route.Query {
	between := func(a, b float64) float64 { return math.Round(a + (b-a)*r.Float64()) }
	q := route.Query{
		From: pt3{X: 100, Y: between(-300, 300), Z: -45}, To: goal(1100, between(-300, 300), -between(100, 250)),
		Min: pt3{X: 0, Y: -450, Z: -320}, Max: pt3{X: 1200, Y: 450, Z: -53}, Fall: 0.02, Bend: between(20, 70), MostTurn: 1.5 * math.Pi,
	}
	for range 2 + r.IntN(7) {
		at := pt{X: between(250, 950), Y: between(-450, 450)}
		high := -between(0, 120)
		o := route.Obstacle{Need: between(15, 80), Prism: geometry.Prism{High: high, Low: high - between(20, 250)}}
		switch r.IntN(4) {
		case 0:
			o.Prism.Footprint = geometry.NewRound(at, between(10, 80))
		case 1:
			o.Prism.Footprint = geometry.NewLine([]pt{at, at.Add(pt{X: between(-200, 200), Y: between(-200, 200)})}, between(3, 20))
		case 2:
			o.Prism.Footprint = geometry.NewRectangle(at, at.Add(pt{X: between(20, 250), Y: between(20, 250)}), between(-89, 89))
		default:
			o.Prism.Footprint = geometry.NewRectangle(at, at.Add(pt{X: between(20, 250), Y: between(20, 250)}), 0)
		}
		q.Obstacles = append(q.Obstacles, o)
	}
	return q
}

// On a thousand random floors each run that was found keeps what was asked, by places sampled along it and distances worked out by none
// of this program's code.
func TestFoundRunsAreClearBySampling(t *testing.T) {
	r := seeded(t, 71)
	runs := 0
	for range rounds(1000) {
		q := littered(r)
		corners, _, ok := found(&q, 16, 4, 1)
		if !ok {
			continue
		}
		runs++
		run := geometry.Rounded(corners, q.Bend)
		require.Empty(t, run.ShortLegs)
		before := run.At(0)
		for s := 0.0; s <= run.Length(); s += 2 {
			at := run.At(s)
			for i := range q.Obstacles {
				if off := far(&q.Obstacles[i].Prism, at); off < q.Obstacles[i].Need-1e-6 { // asked a million times: by itself
					require.Fail(t, "too near", "%g mm: %+v", off, q)
				}
			}
			require.False(t, at.Z > before.Z+1e-9, "it falls")
			before = at
		}
	}
	t.Logf("%d runs", runs)
	assert.Greater(t, runs, rounds(1000)/3)
}

// A slow search that sees nothing but a grid: of places 100 mm apart in plan and 40 mm in height, two corners at the most, each leg and
// bend judged exactly. What is found is never longer, and is there wherever the grid has one.
func TestNeverLongerThanAnExhaustiveSearch(t *testing.T) {
	r := seeded(t, 72)
	compared := 0
	for range rounds(40) {
		q := littered(r)
		slow, there := exhaustively(&q)
		if !there {
			continue
		}
		compared++
		_, worth, ok := found(&q, 32, 8, 2, 1)
		require.True(t, ok, "the grid has one of %g mm: %+v", slow, q)
		require.LessOrEqual(t, worth.Length, slow+1e-6, "%+v", q)
	}
	t.Logf("%d runs compared", compared)
	assert.Greater(t, compared, rounds(40)/4)
}

// exhaustively is the length of the shortest run over places of a grid, with two corners at the most.
func exhaustively(q *route.Query) (least float64, ok bool) {
	worth := worthOf(q)
	to := q.To[0].At.At(q.To[0].Low)
	least = math.Inf(1)
	try := func(corners ...pt3) {
		length := 0.0
		for i, c := range corners[1:] {
			d := c.Sub(corners[i])
			if -d.Z < q.Fall*d.Plan().Norm() {
				return
			}
			length += d.Norm()
		}
		if length-200 >= least { // no bends save as much as that
			return
		}
		if w := worth(corners, math.Inf(1)); w.Short == 0 {
			least = min(least, w.Length)
		}
	}
	try(q.From, to)
	var places []pt3
	for x := q.Min.X; x <= q.Max.X; x += 100 {
		for y := q.Min.Y; y <= q.Max.Y; y += 100 {
			for z := -60.0; z >= q.Min.Z; z -= 40 {
				if at := (pt3{X: x, Y: y, Z: z}); z <= q.From.Z && z >= to.Z {
					places = append(places, at)
					try(q.From, at, to)
				}
			}
		}
	}
	for _, a := range places {
		for _, b := range places {
			if b.Z < a.Z && b.X >= a.X-200 {
				try(q.From, a, b, to)
			}
		}
	}
	return least, !math.IsInf(least, 1)
}
