package route_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
)

func seeded(t testing.TB, seed uint64) *rand.Rand {
	t.Logf("seed %d", seed)
	return rand.New(rand.NewPCG(seed, seed))
}

// rounds is how many of n random cases a test looks at: a tenth of them in a short run.
func rounds(n int) int {
	if testing.Short() {
		return max(1, n/10)
	}
	return n
}

// clear is how far the centreline stays from everything on a crowded floor, mm.
const clear = 25

// crowded is a floor of 3200 mm by 1780 mm with n things on it, about equally crowded whatever n, and two places near far corners of it:
// half of the things are rectangles along the axes, a quarter turned ones, a quarter bent lines. The floors are those that the path
// jobs of the general-purpose peers run on: their generator, its first seed, and the draw of it that has a way.
type crowded struct {
	n, draw  int
	from, to pt3
}

var crowdedFloors = []crowded{
	{50, 0, pt3{X: 260, Y: -790, Z: -45}, pt3{X: 3140, Y: 790, Z: -150}},
	{200, 0, pt3{X: 140, Y: -790, Z: -45}, pt3{X: 3140, Y: 790, Z: -150}},
	{500, 0, pt3{X: 80, Y: -470, Z: -45}, pt3{X: 2580, Y: 320, Z: -150}},
}

// splitmix is the peers' generator of random numbers.
type splitmix uint64

func (s *splitmix) next() float64 {
	*s += 0x9e3779b97f4a7c15
	z := uint64(*s)
	z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9
	z = (z ^ (z >> 27)) * 0x94d049bb133111eb
	return float64((z^(z>>31))>>11) * 0x1p-53
}

func (s *splitmix) between(a, b float64) float64 { return a + (b-a)*s.next() }

func tenth(v float64) float64 { return math.Round(v*10) / 10 }

// query is the floor as a question: with things that reach from floor to ground where flat, and a centreline that keeps clear of the
// floor's edges too.
func (c crowded) query(flat bool) route.Query {
	q := route.Query{
		From: c.from, To: goal(c.to.X, c.to.Y, c.to.Z), Fall: math.Inf(-1), Bend: clear,
		Min: pt3{X: 40 + clear, Y: -890 + clear, Z: -460 + clear}, Max: pt3{X: 3240 - clear, Y: 890 - clear, Z: -clear},
	}
	if flat {
		q.To = goal(c.to.X, c.to.Y, c.from.Z)
	}
	r := splitmix(uint64(1000003 + c.n*7919 + c.draw*104729))
	spacing := math.Sqrt(3200 * 1780 / float64(c.n))
	for i := range c.n {
		o := c.thing(&r, i, spacing)
		if flat {
			o.Prism.Low, o.Prism.High = -1000, 1000
		}
		q.Obstacles = append(q.Obstacles, o)
	}
	return q
}

func (c crowded) thing(r *splitmix, i int, spacing float64) route.Obstacle {
	high := tenth(r.between(0, 60))
	low := 460.0
	if r.next() >= 0.4 {
		low = tenth(high + r.between(40, 200))
	}
	o := route.Obstacle{Prism: geometry.Prism{Low: -low, High: -high}, Need: clear}
	if i%4 != 3 {
		at := pt{X: tenth(r.between(40, 3240)), Y: tenth(r.between(-890, 890))}
		half := pt{X: tenth(r.between(0.15, 0.6)*spacing) / 2, Y: tenth(r.between(0.15, 0.6)*spacing) / 2}
		turn := 0.0
		if i%4 == 2 {
			turn = tenth(r.between(-89, 89))
		}
		o.Prism.Footprint = geometry.NewRectangle(at.Sub(half), at.Add(half), turn)
		return o
	}
	radius := tenth(r.between(5, 12)) / 2
	n := 2 + int(r.next()*4)
	way, x, y := r.between(0, 2*math.Pi), r.between(40, 3240), r.between(-890, 890)
	leg := r.between(0.8, 1.6) * spacing / float64(n-1)
	var path []pt
	for range n {
		path = append(path, pt{X: tenth(min(max(x, 40), 3240)), Y: tenth(min(max(y, -890), 890))})
		way += r.between(-0.9, 0.9)
		x, y = x+leg*math.Cos(way), y+leg*math.Sin(way)
	}
	o.Prism.Footprint = geometry.NewLine(path, radius)
	return o
}
