package route_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/route"
)

// gridMap is a map of cells, some blocked, as the published grid problems have them: moves go to the eight neighbours, aslant only where
// both cells beside the move are free.
type gridMap struct {
	side    int
	blocked map[[2]int]bool
}

func (g gridMap) free(c [2]int) bool {
	return c[0] >= 0 && c[1] >= 0 && c[0] < g.side && c[1] < g.side && !g.blocked[c]
}

// optimal is how long the shortest way over the cells is, in cells, by Dijkstra's search without a queue; endless where there is none.
func (g gridMap) optimal(from, to [2]int) float64 {
	far := map[[2]int]float64{from: 0}
	for done := map[[2]int]bool{}; ; {
		at, least := [2]int{}, math.Inf(1)
		for c, d := range far {
			if !done[c] && d < least {
				at, least = c, d
			}
		}
		if at == to || math.IsInf(least, 1) {
			return least
		}
		done[at] = true
		for dx := -1; dx <= 1; dx++ {
			for dy := -1; dy <= 1; dy++ {
				next := [2]int{at[0] + dx, at[1] + dy}
				beside := g.free([2]int{at[0] + dx, at[1]}) && g.free([2]int{at[0], at[1] + dy})
				if d, known := far[next]; g.free(next) && beside && (!known || d > least+math.Hypot(float64(dx), float64(dy))) {
					far[next] = least + math.Hypot(float64(dx), float64(dy))
				}
			}
		}
	}
}

// cell is how large a cell is, mm, and thin what is kept from a blocked one: so little that each way over cells keeps it.
const (
	cell = 100.0
	thin = 1.0
)

// query is a map as a floor with walls round it, its ways from the middle of one cell to that of another.
func (g gridMap) query(from, to [2]int) route.Query {
	middle := func(c [2]int) (x, y float64) { return (float64(c[0]) + 0.5) * cell, (float64(c[1]) + 0.5) * cell }
	q := open()
	x, y := middle(to)
	q.From.X, q.From.Y = middle(from)
	q.To = goal(x, y, q.From.Z)
	q.Min, q.Max = pt3{Z: q.Min.Z}, pt3{X: float64(g.side) * cell, Y: float64(g.side) * cell, Z: q.Max.Z}
	for c := range g.blocked {
		x, y := float64(c[0])*cell, float64(c[1])*cell
		q.Obstacles = append(q.Obstacles, box(x, y, x+cell, y+cell, -1000, 1000, thin))
	}
	whole := float64(g.side) * cell
	for _, wall := range [][4]float64{{-cell, -cell, whole + cell, 0}, {-cell, whole, whole + cell, whole + cell}, {-cell, 0, 0, whole}, {whole, 0, whole + cell, whole}} {
		q.Obstacles = append(q.Obstacles, box(wall[0], wall[1], wall[2], wall[3], -1000, 1000, thin))
	}
	return inPlan(q)
}

// Published optimal lengths over the cells of a map, of problems between whose ends nothing lies. They check how this test counts lengths,
// moves aslant with them, over 49 by 49 empty cells, and no more than that; the product's search, which is not held to the cells, has the
// straight line there (Sturtevant, Benchmarks for Grid-Based Pathfinding, IEEE T-CIAIG 4(2) 2012, problems of its file arena, whose map
// comes from a game and is not here).
func TestLengthsOverEmptyCellsAreThePublishedOnes(t *testing.T) {
	empty := gridMap{side: 49}
	for _, c := range []struct {
		from, to [2]int
		want     float64
	}{
		{[2]int{19, 26}, [2]int{19, 29}, 3}, {[2]int{44, 30}, [2]int{43, 28}, 2.41421356}, {[2]int{32, 19}, [2]int{31, 11}, 8.4142},
		{[2]int{25, 25}, [2]int{8, 8}, 24.0416}, {[2]int{36, 31}, [2]int{19, 47}, 23.6274}, {[2]int{4, 17}, [2]int{36, 16}, 32.4142},
		{[2]int{3, 45}, [2]int{39, 11}, 50.0833},
	} {
		assert.InDelta(t, c.want, empty.optimal(c.from, c.to), 5e-5)
		straight := math.Hypot(float64(c.from[0]-c.to[0]), float64(c.from[1]-c.to[1]))
		found := shortest(empty.query(c.from, c.to)) / cell
		assert.InDelta(t, straight, found, 1e-6)
		assert.LessOrEqual(t, found, c.want+5e-5, "what is not held to cells is no longer than what is")
	}
}

// On random maps a way is found wherever the cells have one, never longer than theirs, and never shorter than the straight line; where
// nothing is in the way it is that line.
func TestNeverLongerThanOverTheCellsOfAMap(t *testing.T) {
	const seed, side = 83, 14
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	led, shorter := 0, 0
	for n := range rounds(200) {
		g := gridMap{side, map[[2]int]bool{}}
		from, to := [2]int{r.IntN(side), r.IntN(side)}, [2]int{r.IntN(side), r.IntN(side)}
		for range r.IntN(side * side / 3) {
			if c := [2]int{r.IntN(side), r.IntN(side)}; c != from && c != to {
				g.blocked[c] = true
			}
		}
		optimal := g.optimal(from, to) * cell
		if from == to || math.IsInf(optimal, 1) {
			continue
		}
		led++
		found := shortest(g.query(from, to))
		straight := math.Hypot(float64(from[0]-to[0]), float64(from[1]-to[1])) * cell
		require.LessOrEqual(t, found, optimal+1e-6, "map %d", n)
		require.GreaterOrEqual(t, found, straight-1e-6, "map %d", n)
		if found < optimal-1 {
			shorter++
		}
	}
	t.Logf("%d maps with a way, %d of them shorter than over their cells", led, shorter)
	assert.Greater(t, led, rounds(200)/3)
}
