package tui

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// Wherever a screen speaks of the line that x starts at, it says what the job calls it: no bumper is left on any screen, list row or
// form, with matching points or without.
func TestNoScreenSpeaksOfABumperThatIsNotTheDatum(t *testing.T) {
	ofWholeRun(t)
	named := jobOfCases(t, "32-datum-is-a-step.toml")
	document, err := vehicles.Load(named)
	require.NoError(t, err)
	untied := document.Job
	untied.Ties = nil
	for _, job := range []vehicles.Job{document.Job, untied} {
		for _, size := range screentest.Sizes {
			for _, screen := range Screens() {
				d := screentest.New(t, screen, job, size.W, size.H)
				plain := d.Screen.Plain(d.State)
				assert.NotContains(t, strings.ToLower(strings.Join(append(plain.Here, plain.All()...), "\n")), "bumper", screen.Title())
				for range 12 {
					said := strings.ToLower(ansi.Strip(d.Screen.View(d.State, size.W, size.H)))
					assert.NotContains(t, said, "bumper", screen.Title())
					d.Type("<enter><down><down>")
					assert.NotContains(t, strings.ToLower(ansi.Strip(d.Screen.View(d.State, size.W, size.H))), "bumper", screen.Title())
					d.Type("<esc><down>")
				}
			}
		}
	}
}
