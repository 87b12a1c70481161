package field

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// need of the benchmarks: radius of the cut and 15 mm.
const cutNeed = 63.5 + 15

// rounds is how many of n random cases a test looks at: a fifth of them in a short run.
func rounds(n int) int {
	if testing.Short() {
		return max(1, n/5)
	}
	return n
}

func seeded(t testing.TB, seed uint64) *rand.Rand {
	t.Logf("seed %d", seed)
	return rand.New(rand.NewPCG(seed, seed))
}

// crowded returns a floor of a usual van with n obstacles, about equally crowded whatever n: half of them rectangles along the
// axes, a quarter turned ones, a quarter bent lines.
func crowded(r *rand.Rand, n int, need func() float64) Limits {
	l := Limits{Min: floorMin, Max: floorMax, EdgeNeed: need()}
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	tenth := func(x float64) float64 { return math.Round(10*x) / 10 }
	spacing := math.Sqrt(3200 * 1780 / float64(n))
	side := func() float64 { return tenth(between(0.15, 0.6) * spacing) }
	for i := range n {
		at := pt(tenth(between(floorMin.X, floorMax.X)), tenth(between(floorMin.Y, floorMax.Y)))
		var f geometry.Footprint
		if i%4 == 3 {
			f = geometry.NewLine(wander(r, at, 2+r.IntN(4), between(0.8, 1.6)*spacing), between(2.5, 6))
		} else {
			turn := 0.0
			if i%4 == 2 {
				turn = tenth(between(-89, 89))
			}
			f = geometry.NewRectangle(at, at.Add(pt(side(), side())), turn)
		}
		l.Obstacles = append(l.Obstacles, Obstacle{f, need()})
	}
	return l
}

// wander returns a path of n points on the floor that turns a little at each.
func wander(r *rand.Rand, at geometry.Point, n int, length float64) (path []geometry.Point) {
	way := r.Float64() * 360
	for range n {
		path = append(path, pt(min(max(at.X, floorMin.X), floorMax.X), min(max(at.Y, floorMin.Y), floorMax.Y)))
		way += (r.Float64() - 0.5) * 100
		at = at.Add(pt(length/float64(n-1), 0).Turn(way))
	}
	return path
}

func alike() float64 { return cutNeed }

// mixed returns a floor with rounds too, needs that differ, constraints, and of three floors one with ways to meet.
func mixed(r *rand.Rand, n int) Limits {
	need := func() float64 { return r.Float64() * 100 }
	l := crowded(r, n, need)
	for range 1 + n/10 {
		round := geometry.NewRound(pt(r.Float64()*3200, r.Float64()*1780-890), r.Float64()*150)
		l.Obstacles = append(l.Obstacles, Obstacle{round, need()})
	}
	body := geometry.NewRectangle(pt(-160, -60), pt(160, 60), 0).Moved(r.Float64()*90, pt(20, 10))
	fitting := geometry.NewRectangle(pt(1000, 300), pt(1400, 700), r.Float64()*20)
	l.Constraints = []Constraint{Carried{body, fitting, 25, -1}, Contained{body, l.Min, l.Max, 10}}
	for range max(0, r.IntN(9)-5) {
		body := body.Moved(r.Float64()*360, pt(0, 0))
		way := []Constraint{opaque{carriedPast(r, body)}, Contained{body, l.Min, l.Max, need() / 10}}
		for range r.IntN(6) {
			way = append(way, carriedPast(r, body))
		}
		l.Ways = append(l.Ways, way)
	}
	return l
}

// opaque is a constraint of which nothing is known but its margin.
type opaque struct{ Constraint }

// carriedPast returns a body carried past something.
func carriedPast(r *rand.Rand, body geometry.Footprint) Carried {
	at := pt(r.Float64()*3200, r.Float64()*1780-890)
	size := pt(r.Float64()*500, r.Float64()*500)
	c := Carried{Body: body, Need: r.Float64() * 40, Lift: -1}
	switch r.IntN(4) {
	case 0:
		c.Against = geometry.NewRectangle(at, at.Add(size), 0)
	case 1:
		c.Against = geometry.NewRectangle(at, at.Add(size), float64(r.IntN(24))*15)
	case 2:
		c.Against = geometry.NewRound(at, size.X/2)
	default:
		c.Against = geometry.NewLine(wander(r, at, 2+r.IntN(4), 800), 10)
	}
	if r.IntN(3) == 0 {
		c.Lift = r.Float64() * 60
	}
	return c
}

// slowly is the margin by its definition.
func slowly(l Limits, p geometry.Point) float64 {
	x := min(p.X-l.Min.X, l.Max.X-p.X)
	y := min(p.Y-l.Min.Y, l.Max.Y-p.Y)
	least := min(x, y) - l.EdgeNeed
	for _, o := range l.Obstacles {
		least = min(least, o.Footprint.GapOnly(p)-o.Need)
	}
	return min(least, leastOf(l.Constraints, p), bestOf(l.Ways, p))
}

func leastOf(list []Constraint, p geometry.Point) float64 {
	least := math.Inf(1)
	for _, c := range list {
		least = min(least, c.Margin(p))
	}
	return least
}

// above returns the margin by its definition where that is more than least, else least: what is too near already is not
// measured any further.
func above(least float64, l Limits, p geometry.Point) float64 {
	margin := min(p.X-l.Min.X, l.Max.X-p.X, p.Y-l.Min.Y, l.Max.Y-p.Y) - l.EdgeNeed
	for i := 0; i < len(l.Obstacles) && margin > least; i++ {
		o := &l.Obstacles[i]
		margin = min(margin, o.Footprint.GapOnly(p)-o.Need)
	}
	for i := 0; i < len(l.Constraints) && margin > least; i++ {
		margin = min(margin, l.Constraints[i].Margin(p))
	}
	if margin > least {
		margin = min(margin, bestOf(l.Ways, p))
	}
	return max(margin, least)
}

// bestOf is the margin of the best way.
func bestOf(ways [][]Constraint, p geometry.Point) float64 {
	best := math.Inf(-1)
	for _, way := range ways {
		best = max(best, leastOf(way, p))
	}
	if len(ways) == 0 {
		return math.Inf(1)
	}
	return best
}

func TestMarginIsThatOfItsDefinition(t *testing.T) {
	r := seeded(t, 1)
	for range rounds(50) {
		l := mixed(r, 1+r.IntN(80))
		m := NewMargins(l)
		for range 300 {
			p := pt(r.Float64()*3200+40, r.Float64()*1780-890)
			if r.IntN(2) == 0 { // inside a line, near its bends, the way out is not a leg's
				path := l.Obstacles[min(3, len(l.Obstacles)-1)].Footprint.Path
				if len(path) > 0 {
					p = path[r.IntN(len(path))].Add(pt(r.NormFloat64()*3, r.NormFloat64()*3))
				}
			}
			got := m.At(p)
			require.InDelta(t, slowly(l, p), got.Margin, 1e-9)
			require.InDelta(t, got.Margin, m.only(got.Limit, p), 1e-9, "what limits it")
		}
	}
}

// only is the margin of one thing that limits a place.
func (m *Margins) only(limit int, p geometry.Point) float64 {
	l := m.limits
	switch n := len(l.Obstacles); {
	case limit == Edge:
		return slowly(Limits{Min: l.Min, Max: l.Max, EdgeNeed: l.EdgeNeed}, p)
	case limit < n:
		return l.Obstacles[limit].Footprint.GapOnly(p) - l.Obstacles[limit].Need
	case limit < n+len(l.Constraints):
		return l.Constraints[limit-n].Margin(p)
	default:
		return bestOf(l.Ways, p)
	}
}
