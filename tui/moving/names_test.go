package moving_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/place"
	"bench.example/undermark/tui/runs"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// Beside the plan each name stands whole, over as many rows as it takes, and so does what no move changes; a tap on any of its rows shows the finding.
func TestNoNameInTheListOfTheWorstIsCut(t *testing.T) {
	blanks := regexp.MustCompile(`\s+`)
	for _, size := range bodies {
		for name, screen := range map[string]desk.Screen{"place": place.New(), "runs": runs.New()} {
			w, h := size[0], size[1]
			d := screentest.New(t, screen, vehicles.Demo(), w, h)
			x, top, panelW, panelH := moving.Body{W: w, H: h}.PanelIn()
			rows := strings.Split(ansi.Strip(d.View(w, h)), "\n")[top:]
			_, first := onList(t, d.View(w, h))
			listed, far := "", len(rows)+top // from where on far doubts are told in a line
			for y, row := range rows[:panelH] {
				row = ansi.Cut(row, x, x+panelW)
				assert.NotContains(t, row, "…", "%s %v", name, size)
				if strings.Contains(row, "far off") {
					far = y + top
				}
				if y+top >= first {
					listed += ansi.Cut(row, 9, panelW) + " "
				}
			}
			for y := first; y < top+panelH-2; y++ {
				change := screentest.Tapped(d, x+1, y)
				if change.Focus == nil {
					continue
				}
				about := change.Focus.About()
				if y >= far {
					about = change.Focus.Against.String()
				}
				for _, word := range strings.Fields(about) {
					assert.Contains(t, blanks.ReplaceAllString(listed, " "), word, "%s %v row %d", name, size, y)
				}
			}
			switch all := strings.Join(rows, "\n"); {
			case name == "place" && w < desk.SideBySide: // what is foul elsewhere is told before what is clear
				assert.Contains(t, all, "Elsewhere: 2 foul, 4 doubtful")
			case name == "place":
				assert.Contains(t, all, "5 more that no move changes: clear")
			}
		}
	}
}
