package field

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The map by its definition, node by node.
func TestMapIsExactAtEveryNode(t *testing.T) {
	r := seeded(t, 2)
	for _, n := range []int{0, 1, 3, 20, 60} {
		for workers := 1; workers <= 2; workers++ {
			l := mixed(r, n)
			p := NewMargins(l).Map([]float64{20, 17.3}[workers-1], workers)
			cols, rows := p.Size()
			for row := range rows {
				for col := range cols {
					want := slowly(l, p.Node(col, row))
					got := p.Margin(col, row)
					if diff := want - got; diff > 6e-8*max(want, -want)+1e-9 || -diff > 6e-8*max(want, -want)+1e-9 {
						require.Fail(t, "wrong", "%d obstacles, node %v: %v, want %v", n, p.Node(col, row), got, want)
					}
					if want > 1e-9 || want < -1e-9 {
						require.Equal(t, want >= 0, got >= 0)
					}
				}
			}
		}
	}
}

func TestMapNodesCoverTheFloorFromTheDatum(t *testing.T) {
	for _, c := range []struct {
		name       string
		min, max   float64
		step       float64
		first      float64
		cols       int
		lastInside bool
	}{
		{"on the grid", 40, 3240, 5, 40, 641, true},
		{"off the grid", 43, 3238, 5, 40, 641, false},
		{"tenths", 0.3, 0.9, 0.1, 0.3, 7, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := NewMargins(Limits{Min: pt(c.min, c.min), Max: pt(c.max, c.max)}).Map(c.step, 1)
			cols, rows := p.Size()
			assert.Equal(t, c.cols, cols)
			assert.Equal(t, c.cols, rows)
			assert.InDelta(t, c.first, p.Node(0, 0).X, 1e-9)
			last := p.Node(cols-1, rows-1)
			assert.GreaterOrEqual(t, last.Y, c.max-1e-9)
			assert.Equal(t, c.lastInside, last.X <= c.max+1e-9)
		})
	}
}
