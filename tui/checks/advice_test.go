package checks

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// What is to be done about a finding is read whole in the smallest window, with the finding picked in the list above it.
func TestWhatIsToBeDoneIsReadWholeInFewRows(t *testing.T) {
	told := 0
	for name, job := range map[string]vehicles.Job{"the sample": vehicles.Demo(), "held to everything": screentest.Full(t)} {
		for _, size := range [][2]int{{60, 15}, {100, 26}} {
			w, h := size[0], size[1]
			d := screentest.New(t, New(), job, w, h)
			listW, _, _ := d.Screen.(screen).sizes(w, h)
			for _, f := range rules.ForPeople(d.State.Result.Findings) {
				var page []string
				for _, row := range strings.Split(ansi.Strip(d.View(w, h)), "\n") {
					page = append(page, ansi.Cut(row, 0, listW))
				}
				all := strings.Join(strings.Fields(strings.Join(page, " ")), " ")
				assert.Contains(t, all, "▶", "%s %v: %s", name, size, f.About())
				if f.Verdict != rules.Clear {
					told++
					do := "Do: " + advice(*f, d.State)
					assert.Contains(t, all, strings.Join(strings.Fields(strings.Join(desk.Wrap(do, listW), " ")), " "), "%s %v: %s", name, size, f.About())
				}
				d.Type("<down>")
			}
		}
	}
	assert.Greater(t, told, 30)
}
