package match

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// The plan shows the point that is picked out, also where another screen left it looking at one place from near by.
func TestThePlanFollowsThePointThatIsPickedOut(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	d.State.Camera = desk.Camera{View: d.State.Camera.View, Middle: geometry.Point{X: 1e5, Y: 1e5}, Scale: 5}
	require.GreaterOrEqual(t, len(d.State.Plan.Ties), 2)
	middle := func() geometry.Point { return d.Screen.(Screen).seeing(fitted(d.State)).Camera.Middle }
	at := func(i int) geometry.Point {
		return d.State.Camera.View.Projection().Point(d.State.Plan.Ties[i].Below.At(0))
	}
	assert.Equal(t, at(0), middle(), "on entering")
	first := d.View(100, 27)
	d.Type("<down>")
	assert.Equal(t, at(1), middle(), "with Down")
	assert.NotEqual(t, first, d.View(100, 27))
	for range 8 {
		d.Send(tea.KeyMsg{Type: tea.KeyShiftLeft})
	}
	assert.NotEqual(t, at(1), middle(), "by hand it moves away")
	d.Type("<up>")
	assert.Equal(t, at(0), middle(), "and is back with the next point")
}
