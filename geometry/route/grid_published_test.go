package route_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// gridProblem is a published problem over the cells of a map, with the length of the shortest way over them.
type gridProblem struct {
	from, to [2]int
	optimal  float64
}

// publishedGrid reads the map in testdata/grid and its problems; README.md there says whose they are.
func publishedGrid(t *testing.T) (g gridMap, problems []gridProblem) {
	text, err := os.ReadFile("testdata/grid/random-32-32-20.map")
	require.NoError(t, err)
	rows := strings.Fields(string(text))[7:] // behind type octile, height 32, width 32, map
	g = gridMap{len(rows), map[[2]int]bool{}}
	require.Equal(t, 32, g.side)
	for y, row := range rows {
		for x, c := range row {
			if c != '.' {
				g.blocked[[2]int{x, y}] = true
			}
		}
	}
	text, err = os.ReadFile("testdata/grid/random-32-32-20.scen")
	require.NoError(t, err)
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n")[1:] {
		var n [4]int
		fields := strings.Fields(line)
		for i := range n {
			n[i], err = strconv.Atoi(fields[4+i])
			require.NoError(t, err)
		}
		optimal, err := strconv.ParseFloat(fields[8], 64)
		require.NoError(t, err)
		problems = append(problems, gridProblem{[2]int{n[0], n[1]}, [2]int{n[2], n[3]}, optimal})
	}
	return g, problems
}

// The published optimal lengths among obstacles are those of this file's slow search over the cells, with which the product's is compared on
// random maps too; the product's way, which is not held to the cells, is never longer, and never shorter than a taut string round the
// corners of the blocked cells, of which nothing is kept.
func TestThePublishedGridProblems(t *testing.T) {
	g, problems := publishedGrid(t)
	require.Len(t, problems, 80)
	taut := g.tautest()
	shorter, detours, most := 0, 0, 0.0
	for n, p := range problems {
		require.InDelta(t, p.optimal, g.optimal(p.from, p.to), 1e-7, "problem %d: the slow search", n)
		found, least := shortest(g.query(p.from, p.to))/cell, taut.between(p.from, p.to)
		require.LessOrEqual(t, found, p.optimal+1e-8, "problem %d", n)
		require.GreaterOrEqual(t, found, least-1e-9, "problem %d", n)
		most = max(most, found/least-1)
		if found < p.optimal-1e-3 {
			shorter++
		}
		if straight := math.Hypot(float64(p.from[0]-p.to[0]), float64(p.from[1]-p.to[1])); found > straight+1e-3 {
			detours++
		}
	}
	t.Logf("%d problems, %d with something in the way, %d shorter than over the cells; at most %.4f of its length longer than a taut string", len(problems), detours, shorter, most)
	assert.Greater(t, detours, 60)
	assert.Less(t, most, 0.01, "1 mm is kept of cells of 100")
}

// tautString is a map with the corners of its blocked cells, round which a string without any width is drawn taut.
type tautString struct {
	gridMap
	corners [][2]float64
	pinched [][2]float64 // corners where two blocked cells touch aslant: nothing passes between
	legs    [][]float64  // between corners that see each other; else +Inf
}

// tautest has every pair of corners that see each other.
func (g gridMap) tautest() *tautString {
	s := &tautString{gridMap: g}
	seen := map[[2]float64]bool{}
	for c := range g.blocked {
		for _, at := range [][2]float64{{0, 0}, {1, 0}, {0, 1}, {1, 1}} {
			if at[0], at[1] = at[0]+float64(c[0]), at[1]+float64(c[1]); seen[at] {
				continue
			}
			seen[at] = true
			x, y := int(at[0]), int(at[1])
			a, b, c, d := g.free([2]int{x - 1, y - 1}), g.free([2]int{x, y}), g.free([2]int{x - 1, y}), g.free([2]int{x, y - 1})
			if a == b && c == d && a != c {
				s.pinched = append(s.pinched, at)
			} else {
				s.corners = append(s.corners, at)
			}
		}
	}
	s.legs = make([][]float64, len(s.corners))
	for i := range s.corners {
		s.legs[i] = s.seenFrom(s.corners[i])
	}
	return s
}

// seenFrom are the distances of the corners that are seen from a place, +Inf of the others.
func (s *tautString) seenFrom(at [2]float64) []float64 {
	far := make([]float64, len(s.corners))
	for i, c := range s.corners {
		if far[i] = math.Inf(1); s.sees(at, c) {
			far[i] = math.Hypot(at[0]-c[0], at[1]-c[1])
		}
	}
	return far
}

// sees tells whether the straight line between two places goes through the inside of no blocked cell, nor between two that touch: along an edge
// and past a corner it may. It is cut by each cell in turn, as Liang and Barsky do; beyond the map all is blocked.
func (s *tautString) sees(a, b [2]float64) bool {
	for k := range 2 {
		if line := a[k]; a[k] == b[k] && line == math.Trunc(line) {
			one, other := a, b
			one[k], other[k] = line-0.5, line-0.5
			two, another := one, other
			two[k], another[k] = line+0.5, line+0.5
			return s.sees(one, other) || s.sees(two, another)
		}
	}
	for _, p := range s.pinched {
		u, v := [2]float64{p[0] - a[0], p[1] - a[1]}, [2]float64{b[0] - a[0], b[1] - a[1]}
		if along := u[0]*v[0] + u[1]*v[1]; along > 0 && along < v[0]*v[0]+v[1]*v[1] && math.Abs(u[0]*v[1]-u[1]*v[0]) < 1e-9 {
			return false
		}
	}
	for x := int(min(a[0], b[0])) - 1; x <= int(max(a[0], b[0])); x++ {
		for y := int(min(a[1], b[1])) - 1; y <= int(max(a[1], b[1])); y++ {
			if s.free([2]int{x, y}) {
				continue
			}
			begin, end := 0.0, 1.0
			for k, low := range [2]float64{float64(x), float64(y)} {
				d := b[k] - a[k]
				switch {
				case d == 0 && (a[k] <= low || a[k] >= low+1):
					end = -1
				case d != 0:
					p, q := (low-a[k])/d, (low+1-a[k])/d
					begin, end = max(begin, min(p, q)), min(end, max(p, q))
				}
			}
			if end-begin > 1e-9 {
				return false
			}
		}
	}
	return true
}

// between is how long the taut string is between the middles of two cells, by Dijkstra's search without a queue.
func (s *tautString) between(from, to [2]int) float64 {
	a, b := [2]float64{float64(from[0]) + 0.5, float64(from[1]) + 0.5}, [2]float64{float64(to[0]) + 0.5, float64(to[1]) + 0.5}
	far, last, done := s.seenFrom(a), s.seenFrom(b), make([]bool, len(s.corners))
	best := math.Inf(1)
	if s.sees(a, b) {
		best = math.Hypot(a[0]-b[0], a[1]-b[1])
	}
	for {
		at := -1
		for i := range far {
			if !done[i] && far[i] < best && (at < 0 || far[i] < far[at]) {
				at = i
			}
		}
		if at < 0 {
			return best
		}
		done[at] = true
		best = min(best, far[at]+last[at])
		for i, leg := range s.legs[at] {
			far[i] = min(far[i], far[at]+leg)
		}
	}
}
