package field

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A queue gives back what a sorted list would, however puts and takes follow each other.
func TestTheQueueGivesTheLeastFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var q queue[int]
		var sorted []float64
		items := map[int]float64{}
		for n := range rapid.IntRange(1, 60).Draw(t, "steps") {
			if len(sorted) > 0 && rapid.Bool().Draw(t, "take") {
				require.False(t, q.empty())
				require.Equal(t, sorted[0], q.least())
				item := q.pop()
				require.Equal(t, sorted[0], items[item])
				delete(items, item)
				sorted = sorted[1:]
				continue
			}
			key := float64(rapid.IntRange(-5, 5).Draw(t, "key"))
			q.push(key, n)
			items[n] = key
			at, _ := slices.BinarySearch(sorted, key)
			sorted = slices.Insert(sorted, at, key)
		}
		require.Equal(t, len(sorted) == 0, q.empty())
	})
}

// A part of a floor's grid holds the same nodes as the whole: none lost at its edges, none taken from beyond.
func TestAPartOfAPatchHasItsNodes(t *testing.T) {
	whole := patch{values: make([]float32, 7*5), stride: 7, cols: 7, rows: 5, left: -3, low: 10, step: 5}
	for i := range whole.values {
		whole.values[i] = float32(i)
	}
	for _, size := range []int{1, 2, 3, 4, 8} {
		seen := 0
		for j := 0; j < whole.rows; j += size {
			for i := 0; i < whole.cols; i += size {
				part := whole.sub(i, j, size)
				for row := range part.rows {
					for col, v := range part.row(row) {
						require.Equal(t, whole.row(j + row)[i+col], v)
						require.Equal(t, whole.node(i+col, j+row), part.node(col, row))
						seen++
					}
				}
				c := part.cell(nil)
				require.Equal(t, part.node(0, 0), pt(c.x-c.halfX, c.y-c.halfY))
				require.Equal(t, part.node(part.cols-1, part.rows-1), pt(c.x+c.halfX, c.y+c.halfY))
			}
		}
		require.Equal(t, 35, seen)
	}
	outside := whole.sub(7, 0, 2)
	require.LessOrEqual(t, outside.cols, 0)
}

// The quarters of a cell cover it, and no place of it is farther from its middle than its radius.
func TestTheQuartersOfACell(t *testing.T) {
	c := cell{x: 10, y: -4, halfX: 6, halfY: 2, near: []int32{1, 2}}
	area := 0.0
	for _, q := range c.quarters() {
		area += 4 * q.halfX * q.halfY
		require.Equal(t, c.near, q.near)
		for _, corner := range [4][2]float64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
			p := pt(q.x+corner[0]*q.halfX, q.y+corner[1]*q.halfY)
			require.Zero(t, c.distance(p), "in the cell")
			require.LessOrEqual(t, p.Sub(c.middle()).Norm(), c.radius()+1e-12)
		}
	}
	require.Equal(t, 4*c.halfX*c.halfY, area)
	require.Equal(t, 5.0, c.distance(pt(10+6+3, -4+2+4)), "off its corner")
	require.Equal(t, 3.0, c.distance(pt(10, -4-2-3)))
}
