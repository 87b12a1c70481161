package place

import (
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A hole that is sawn is moved by nothing on Place: no arrow, no key, no tap, no typed place, and no key lets it.
func TestASawnHoleIsMovedByNothing(t *testing.T) {
	job := screentest.State(t).Job.WithDone(vehicles.Done{Step: vehicles.Sawn, At: "2026-11-27T10:15:00"})
	pilot := *screentest.State(t).Job.Cut
	drilled := drilledAt(t, "1221", "L651").Job.WithDone(vehicles.Done{Step: vehicles.Sawn, At: "2026-11-27T10:15:00"})
	for name, job := range map[string]vehicles.Job{"sawn": job, "measured and sawn": drilled} {
		for _, keys := range []string{"right", "r right", "n", "j", "t 1300 enter L500 enter", "y left", "w", "e a"} {
			_, after, _ := screentest.After(New(), screentest.Judged(screentest.State(t), job), screentest.Keys(keys)...)
			assert.Equal(t, pilot.At, after.Job.Cut.At, "%s: %s", name, keys)
		}
		d := screentest.New(t, New(), job, 100, 27)
		d.Type("<right>")
		assert.Equal(t, isSawn, d.Said, name)
		d.Said = ""
		if d.Type("r"); job.Cut.Drilled != nil {
			assert.Equal(t, isSawn, d.Said, name)
		}
		for y := 4; y < 20; y += 5 {
			for x := 8; x < 50; x += 9 {
				d.Send(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
			}
		}
		assert.Equal(t, pilot.At, d.State.Job.Cut.At, name)
		for _, b := range d.Screen.Keys(d.State) {
			for _, mover := range []key.Binding{moving.KeyMove, keyRelease, keyBest} {
				assert.NotEqual(t, mover.Help(), b.Help(), name)
			}
		}
	}
	free := job.WithDone(vehicles.Done{Step: vehicles.Sawn})
	_, after, changes := screentest.After(New(), screentest.Judged(screentest.State(t), free), screentest.Keys("right")...)
	require.NotEqual(t, pilot.At, after.Job.Cut.At, "taken back on Work")
	assert.False(t, strings.Contains(changes[0].Say, "sawn"))
}
