package checks

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// A name in the list is cut only where the figures begin right behind it, and what may be foul of the sample has its whole name in every size.
func TestNamesInTheListAreNotCutBesideEmptyColumns(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {100, 27}, {120, 27}, {160, 47}} {
		w, h := size[0], size[1]
		d := screentest.New(t, New(), vehicles.Demo(), w, h)
		listW, _, _ := d.Screen.(screen).sizes(w, h)
		for _, f := range rules.ForPeople(d.State.Result.Findings) {
			row := ""
			for _, line := range strings.Split(ansi.Strip(d.View(w, h)), "\n") {
				if strings.HasPrefix(line, "▶") {
					row = ansi.Cut(line, 0, listW)
				}
			}
			name := words.Named(*f)
			if f.Verdict != rules.Clear {
				assert.Contains(t, row, name+" ", "%v", size)
			}
			if name, figures, cut := strings.Cut(row, "…"); cut {
				require.NotEmpty(t, name)
				blank := len(figures) - len(strings.TrimLeft(figures, " "))
				assert.Equal(t, 1, blank, "%v: %q", size, row)
			}
			for _, column := range [2]string{words.Signed(*f, d.State.Settings.Units), words.PlusMinus(*f, d.State.Settings.Units)} {
				assert.Contains(t, row+" ", column+" ", "%v: figures stand whole", size)
			}
			d.Type("<down>")
		}
	}
}
