package runs

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// One key shows the cut list; every line of it is seen, by keys or the wheel, in every window, and in the lines of the screen.
func TestTheCutListIsSeenWhole(t *testing.T) {
	for _, size := range screentest.Sizes {
		for name, down := range map[string]func(d *screentest.Driver){
			"keys": func(d *screentest.Driver) { d.Type("<down>") },
			"wheel": func(d *screentest.Driver) {
				d.Send(tea.MouseMsg{X: size.W - 5, Y: size.H - 3, Button: tea.MouseButtonWheelDown})
			},
		} {
			d := screentest.New(t, New(), roomy(), size.W, size.H)
			d.Type("q")
			seen := ""
			for range 60 {
				seen += d.View(size.W, size.H)
				down(d)
			}
			for _, line := range words.CutList(cutlist.Of(&d.State.Result, cutlist.Usual()), desk.Millimetres) {
				assert.Contains(t, seen, strings.Join(strings.Fields(line)[:2], " "), "%s, by %s", size.Name, name)
			}
			assert.Contains(t, seen, "Count yours.")
			d.Type("<esc>")
			assert.False(t, d.Screen.Typing())
			assert.NotContains(t, d.View(size.W, size.H), cutListHead[:8]+":")
		}
	}
	d := screentest.New(t, New(), roomy(), 60, 17)
	all := strings.Join(d.Screen.Plain(d.State).All(), "\n")
	for _, line := range cutListLines(d.State) {
		assert.Contains(t, all, line)
	}
	d.Type("q")
	assert.Contains(t, d.Screen.Plain(d.State).Here, cutListHead)
	d.Golden("cutlist-60x17", 60, 17)
}

// It opens by a tap, and a tap leaves it; with nothing laid it says so.
func TestTheCutListByTap(t *testing.T) {
	d := screentest.New(t, New(), stripped(roomy(), vehicles.RunKinds[:]...), 100, 27)
	tapRow(t, d, "[cut list]")
	require.True(t, d.Screen.Typing())
	assert.Contains(t, d.View(100, 27), "not counted: no exhaust is laid")
	tapRow(t, d, "not counted")
	assert.False(t, d.Screen.Typing())
}
