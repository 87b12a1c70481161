package marks

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// The tape that lands on the cut's centre reads -420.4 from above; the sign is on the figure, and the words say it too.
func TestAMarkBehindTheDatumSaysSo(t *testing.T) {
	document, err := vehicles.Load("../../testdata/cases/32-datum-is-a-step.toml")
	require.NoError(t, err)
	s := screentest.Judged(desk.State{Selected: -1}, document.Job)
	page, _, changes := screentest.After(New(), s, screentest.Keys("l enter")...)
	require.Equal(t, desk.BeforeDrilling, changes[1].Ask)
	view := screentest.Filled(t, page, s, 60, 17)
	assert.Contains(t, view, "behind the step of the sliding door")
	assert.Contains(t, view, "Hook on the step of the sliding door, zero 60 mm below")
	requireFigure(t, view, "-420.4")
	pinned, _, _ := screentest.After(page, s, screentest.Keys("p")...)
	assert.Contains(t, screentest.Filled(t, pinned, s, 100, 27), "two pins on the step of the sliding door")
	listed, _, _ := screentest.After(page, s, screentest.Keys("tab")...)
	view = screentest.Filled(t, listed, s, 100, 27)
	assert.Contains(t, view, "  step of…")
	assert.Contains(t, view, "above     -420.4")
}
