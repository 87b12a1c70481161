package place

import (
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
)

// On a small screen a layout's picture has the rows that no line of the list fills, as many for each of them, and a tap on any of them leaves the
// list; after that the plan has its own rows again.
func TestALayoutsPictureHasTheRowsThatItsLinesLeave(t *testing.T) {
	const w, h = 60, 17
	d := screentest.New(t, New(), demo(t).Job, w, h)
	d.Type("c")
	d.Send(d.Work())
	best := d.Screen.(page).proposed()
	require.Greater(t, len(best), 1)
	fewest, first := h, -1
	for range best {
		rows := strings.Split(screentest.Filled(t, d.Screen, d.State, w, h), "\n")
		at := slices.IndexFunc(rows, func(row string) bool { return strings.Contains(row, "Whole layouts") })
		require.Positive(t, at)
		if first < 0 {
			first = at
		}
		assert.Equal(t, first, at, "the picture stays as it is from one layout to the next")
		blank := 0
		for _, row := range rows[at:] {
			if strings.TrimSpace(row) == "" {
				blank++
			}
		}
		fewest = min(fewest, blank)
		d.Type("<down>")
	}
	assert.Zero(t, fewest, "the longest of them fills its rows")
	_, planH := moving.Sizes(w, h)
	require.Greater(t, first, planH, "this one leaves some")
	d.Send(tea.MouseMsg{X: 30, Y: planH, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
	assert.False(t, d.Screen.Typing(), "a tap on the picture leaves the list")
	assert.Contains(t, strings.Split(d.View(w, h), "\n")[planH], "CUT")
}
