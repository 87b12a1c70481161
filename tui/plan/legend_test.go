package plan

import (
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// The legend never covers the drawing: that is beside it, above it, or gives way whole. All of it can be read by scrolling, what is seen of it is
// said, and Esc closes it.
func TestTheLegendStandsOutsideTheDrawingAndScrolls(t *testing.T) {
	for _, size := range [][2]int{{60, 8}, {60, 17}, {57, 27}, {100, 27}, {103, 27}, {160, 47}} {
		s, w, h := demo(t), size[0], size[1]
		s.Settings.Colour = desk.NoColour
		p, _ := press(t, New().Sized(w, h), typed("l"), &s)
		in := p.parted(w, h)
		all := entries(s, Options{}, false)
		read := map[string]bool{}
		for range len(all) {
			rows := strings.Split(ansi.Strip(p.View(s, w, h, Options{})), "\n")
			require.Len(t, rows, h)
			for _, row := range rows {
				require.Equal(t, w, ansi.StringWidth(row))
			}
			page := ""
			for _, row := range rows[in.top:] {
				page += ansi.Cut(row, in.left, w) + "\n"
			}
			for _, e := range all {
				read[e.means] = read[e.means] || strings.Contains(page, e.means)
			}
			assert.Contains(t, page, "Esc closes")
			if len(all) > in.seats() {
				assert.Regexp(t, regexp.MustCompile(`\d+-\d+ of \d+ \(PgDn\)`), page)
			}
			if in.w > 0 {
				drawing := New().Sized(in.w, in.h)
				drawing.legend.open = false
				assert.Equal(t, drawing.lay(s, Options{}), p.lay(s, Options{}), "%v: what is tapped is what is drawn", size)
			}
			next, mine := p.Legend(tea.KeyMsg{Type: tea.KeyPgDown}, s, Options{})
			require.True(t, mine)
			p = next
		}
		for _, e := range all {
			assert.True(t, read[e.means], "%v: %s", size, e.means)
		}
		p, mine := p.Legend(tea.KeyMsg{Type: tea.KeyEsc}, s, Options{})
		assert.True(t, mine)
		assert.NotContains(t, p.View(s, w, h, Options{}), "Esc closes")
		_, mine = p.Legend(tea.KeyMsg{Type: tea.KeyEsc}, s, Options{})
		assert.False(t, mine, "a closed legend has no keys")
	}
}

// Where a screen puts letters of its own on the picture the kinds have none: one letter has one meaning in a view.
func TestOneLetterHasOneMeaningInAView(t *testing.T) {
	s := demo(t)
	for _, own := range [][]Letter{nil, {{"S", "stub"}, {"c", "clip"}}} {
		seen := map[string]string{}
		for _, e := range entries(s, Options{Letters: own}, false) {
			if e.code == "" {
				continue
			}
			other, there := seen[e.code]
			assert.False(t, there, "%s: %s and %s", e.code, e.means, other)
			seen[e.code] = e.means
		}
	}
	s.Job.Datum.Name = "step" // the letters of BUMPER stand one under the other
	p := New().Sized(160, 47)
	p.legend.open = true
	with := ansi.Strip(p.View(s, 160, 47, Options{Letters: []Letter{{"S", "stub"}}}))
	assert.Contains(t, with, "S stub")
	assert.NotContains(t, with, "spare wheel, jack")
	bare := p
	bare.legend.open = false
	for _, code := range []string{" B ", " SU "} {
		assert.NotContains(t, with, code)
	}
	assert.NotEmpty(t, scene.Cut.Pen().Means)
}
