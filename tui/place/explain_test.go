package place

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
)

// Where the explanations are more than their rows, arrows and the wheel go to the last, the last row says what is seen, and a tap means
// what is under it.
func TestTheExplanationsAreGoneThrough(t *testing.T) {
	s := drilledAt(t, "1229.3", "L650")
	p := report(t, s)
	require.Greater(t, len(p.Slips), 1)
	listed, _, _ := screentest.After(New(), s, append([]tea.Msg{tea.WindowSizeMsg{Width: 60, Height: 17}}, screentest.Keys("e")...)...)
	list := func(of any, h int) panelRows { return of.(screen).explanations(s, 60, h) }
	whole := list(listed, 100)
	h := len(whole.rows) - 1
	seen := map[int]bool{}
	last := list(listed, h)
	for range p.Slips {
		require.Len(t, last.rows, h)
		assert.Contains(t, last.rows[h-1], "(↑ ↓)")
		for _, of := range last.of {
			seen[of] = true
		}
		listed, _, _ = screentest.After(listed, s, screentest.Keys("down")...)
		last = list(listed, h)
	}
	assert.Len(t, seen, len(p.Slips)+1, "each, and rows of none")
	assert.Contains(t, last.of, len(p.Slips)-1)
	end := listed
	listed, _, _ = screentest.After(listed, s, screentest.Keys("up up up up up up")...)
	assert.Equal(t, list(listed, h).rows[2], whole.rows[2])
	wheeled, _, _ := screentest.After(end, s, tea.MouseMsg{X: 5, Y: 12, Button: tea.MouseButtonWheelUp, Action: tea.MouseActionPress})
	assert.Less(t, wheeled.(screen).slip, end.(screen).slip)
}
