package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// However few rows a list or a message leaves to the plan, the ring round the cut is whole where the cut is seen at all.
func TestTheRingIsWholeInFewRows(t *testing.T) {
	for _, at := range [][2]float64{{1405, 195}, {1243, 240}, {2000, -500}, {700, 700}} {
		job := vehicles.Demo()
		moved := *job.Cut
		moved.At, job.Cut = at, &moved
		result, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		seen := 0
		for h := 2 + canvas.RingCells/2; h <= 12; h++ {
			for selected := range result.Plan.Obstructions {
				for _, opts := range []Options{{}, {Follow: true}} {
					s := desk.State{Job: job, Result: result, Selected: selected, Settings: desk.Settings{Colour: desk.TrueColour}}
					p := New().Sized(60, h)
					shown := p.draw(s, opts)
					c := canvas.Paint(shown, 60, h, canvas.Look{Camera: p.camera(shown, s, opts), Faces: true, Left: "left", Right: "right"})
					if _, _, in := c.CellOf(result.Plan.Cut.At.At(0)); !in {
						continue
					}
					seen++
					cols, rows := ringCells(&c)
					wide, high := c.CellSize()
					across := 2 * canvas.RingReach(63.5, c.Scale)
					assert.InDelta(t, across/wide, cols, 1+1e-9, "%v at %v, %d rows", opts.Follow, at, c.Rows)
					assert.InDelta(t, across/high, rows, 1+1e-9, "%v at %v, %d rows", opts.Follow, at, c.Rows)
					assert.GreaterOrEqual(t, rows, canvas.RingCells/2, "%v at %v, %d rows", opts.Follow, at, c.Rows)
				}
			}
		}
		assert.Greater(t, seen, 200, "%v", at)
	}
}

// ringCells is how many columns and rows the ring is painted in.
func ringCells(c *canvas.Canvas) (cols, rows int) {
	const blocks = '▀' // from there on
	left, right, top, bottom := c.Width, -1, c.Height, -1
	for i, cell := range c.Cells {
		if cell.Ink.Role == scene.Cut && cell.Rune >= blocks {
			col, row := i%c.Width, i/c.Width
			left, right, top, bottom = min(left, col), max(right, col), min(top, row), max(bottom, row)
		}
	}
	return right - left + 1, bottom - top + 1
}
