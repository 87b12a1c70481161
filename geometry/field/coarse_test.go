package field

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// With a grid so coarse that most of a floor lies between its nodes the areas are those of a flood: what joins or parts them,
// and whole areas, are seen by nodes 64 times as dense alone.
func TestAreasOfACoarseGridAgainstAFlood(t *testing.T) {
	r := seeded(t, 23)
	compared := 0
	for range rounds(80) {
		if areasAsFlooded(t, tight(r), []float64{20, 32, 40}[r.IntN(3)]) {
			compared++
		}
	}
	require.Greater(t, compared, rounds(20))
}

// Floors on which random ones let a fault pass, looked for among some ten thousand.
func TestAreasOfFloorsThatNeedTheDenserNodes(t *testing.T) {
	for what, seeds := range map[string][]uint64{
		"narrow at the denser nodes, and goes on between them": {3696, 8040, 17149, 18309, 22691, 24345, 24609, 24620},
		"meets another across a side between closed corners":   {15825, 15845, 16076, 16160, 17160},
	} {
		for _, seed := range seeds {
			l := tight(rand.New(rand.NewPCG(seed, 9)))
			require.True(t, areasAsFlooded(t, l, []float64{20, 32, 40}[seed%3]), "%s: floor %d", what, seed)
		}
	}
}

// areasAsFlooded holds the areas on a map of so many mm against a flood; it is false for a floor on which they may be taken
// either way, as a neck is open or closed by less than they promise to see.
func areasAsFlooded(t *testing.T, l Limits, step float64) bool {
	least := step / (dense * dense)
	at := func(p geometry.Point) float64 { return above(-least-1, l, p) }
	g := finely(l, at)
	surely, perhaps := g.labelled(least), g.labelled(-least)
	parts := map[int]bool{}
	for _, a := range surely.areas {
		parts[perhaps.at(a.place)] = true
	}
	if len(parts) < len(surely.areas) {
		return false
	}
	found := map[int]bool{}
	for _, a := range NewMargins(l).Map(step, 2).Areas() {
		if a.Best.Margin > least+floodStep {
			label := perhaps.at(a.Best.At)
			require.False(t, found[label], "one area as two at %v, step %v: %+v", a.Best, step, l)
			found[label] = true
		}
	}
	for _, a := range surely.areas {
		if a.most > 2*least && !a.withinCell(step) {
			require.True(t, found[perhaps.at(a.place)], "none at %v, step %v: %+v", a.place, step, l)
		}
	}
	return true
}

// flooded is what a flood finds: the label of each node, -1 where it is closed, and the areas by their labels.
type flooded struct {
	cols   int
	labels []int
	areas  []floodedArea
}

// floodedArea is where an area lies, and its roomiest node.
type floodedArea struct {
	low, high, place geometry.Point
	most             float64
}

// at is the label of the node nearest to a place.
func (f *flooded) at(p geometry.Point) int {
	return f.labels[int(math.Round(p.Y/floodStep))*f.cols+int(math.Round(p.X/floodStep))]
}

// withinCell says whether an area may lie between four nodes.
func (a *floodedArea) withinCell(step float64) bool {
	return math.Floor((a.low.X-floodStep)/step) == math.Floor((a.high.X+floodStep)/step) ||
		math.Floor((a.low.Y-floodStep)/step) == math.Floor((a.high.Y+floodStep)/step)
}

// labelled floods the floor where the margin is at least level.
func (g *fineGrid) labelled(level float64) (f flooded) {
	rows, node, margins := g.rows, g.node, g.margins
	f.cols, f.labels = g.cols, make([]int, len(margins))
	for k := range margins {
		f.labels[k] = -1
	}
	for k := range margins {
		if f.labels[k] >= 0 || margins[k] < level {
			continue
		}
		a := floodedArea{low: node(k), high: node(k), place: node(k), most: margins[k]}
		f.labels[k] = len(f.areas)
		for line := []int{k}; len(line) > 0; {
			here := line[len(line)-1]
			line = line[:len(line)-1]
			p := node(here)
			a.low, a.high = pt(min(a.low.X, p.X), min(a.low.Y, p.Y)), pt(max(a.high.X, p.X), max(a.high.Y, p.Y))
			if margins[here] > a.most {
				a.most, a.place = margins[here], p
			}
			for _, d := range [4][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
				x, y := here%f.cols+d[0], here/f.cols+d[1]
				if next := y*f.cols + x; x >= 0 && x < f.cols && y >= 0 && y < rows && f.labels[next] < 0 && margins[next] >= level {
					f.labels[next] = len(f.areas)
					line = append(line, next)
				}
			}
		}
		f.areas = append(f.areas, a)
	}
	return f
}

// The cells left out are all open or all closed, those in the first and last column and row too; those named may be neither.
func TestBordersAreTheCellsThatMayBeBoth(t *testing.T) {
	r := seeded(t, 24)
	for range rounds(100) {
		l, step := tight(r), 4+20*r.Float64()
		b := NewMargins(l).Map(step, 1).nodes
		named := map[int]bool{}
		for _, cell := range b.borders() {
			i, j := cell%b.cols, cell/b.cols
			require.Less(t, i, b.cols-1)
			corners := []float32{b.row(j)[i], b.row(j)[i+1], b.row(j + 1)[i], b.row(j + 1)[i+1]}
			require.Less(t, -slices.Max(corners), float32(step*math.Phi+brink), "surely closed")
			require.Less(t, slices.Min(corners), float32(step*math.Phi+brink), "surely open")
			named[cell] = true
		}
		for i := range b.cols - 1 {
			for j := range b.rows - 1 {
				if named[j*b.cols+i] {
					continue
				}
				open := 0
				for k := range 49 {
					share := pt(float64(k%7)/6, float64(k/7)/6).Scale(step)
					if slowly(l, b.node(i, j).Add(share)) >= 0 {
						open++
					}
				}
				require.Contains(t, []int{0, 49}, open, "cell %d, %d of %d by %d", i, j, b.cols-1, b.rows-1)
			}
		}
	}
}
