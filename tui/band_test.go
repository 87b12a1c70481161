package tui

import (
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/digits"
	"bench.example/undermark/tui/screentest"
)

// wholeVan is the program on a job that has some of everything, in a window of w by h.
func wholeVan(t *testing.T, w, h int) (*bench, Options) {
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, screentest.Full(t).Format(), 0o644))
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: w, Height: h})
	return b, o
}

// windows are the sizes of the golden screens with the rows that are the root's own.
var windows = [][2]int{{60, 20}, {100, 30}, {160, 50}}

// taped are keys that go to a field of a length on each screen that has one and type there, what is then shown large, what it is
// measured from, and the field's label.
var taped = []struct{ title, keys, text, from, label string }{
	{"Underneath", "home enter ctrl+u 652.5", "652.5", ": near edge", "near edge"},
	{"Underneath", "home enter down ctrl+u +84", "+84", "On from the reading before: far edge", "far edge"},
	{"Underneath", "home enter down down ctrl+u l240", "L240", "From the left edge: one side", "one side"},
	{"Underneath", "home enter down down ctrl+u -240", "-240", "centreline: one side", "one side"},
	{"Underneath", "home enter down down down down down ctrl+u 95", "95", "Below the floor: top", "top"},
	{"On top", "home enter ctrl+u 25-1/2\"", "25-1/2\"", "", ""},
	{"Match", "home enter ctrl+u 1502", "1502", ": below", "below"},
	{"Place", "m 1219", "1219", "from the", "from the"},
	{"Work", "home down down down down down down down down down enter ctrl+u 31.5", "31.5", "depth of the floor", "depth of the floor"},
	{"Runs", "t 1219", "1219", "from the", "from the"},
}

func TestWhatIsTapedIsShownInBigFigures(t *testing.T) {
	for _, size := range windows {
		for _, c := range taped {
			what := c.title + ", " + c.keys
			b, _ := wholeVan(t, size[0], size[1])
			b.press("B").goTo(b.titled(c.title))
			b.keys(c.keys)
			require.True(t, b.screens[b.at].Typing(), what)
			rows := b.rows()
			require.Len(t, rows, size[1], what)
			band := rows[headRows : headRows+b.bandHeight()]
			require.GreaterOrEqual(t, len(band), 5, what)
			assert.Contains(t, band[0], c.from, what)
			figures, ok := digits.Big(c.text, 2)
			require.True(t, ok, what)
			unit := "mm"
			if strings.HasSuffix(c.text, `"`) {
				unit = ""
			}
			if large := digits.Fit(c.text, size[0]-len(unit)-1, len(band)-1); len(large) >= 3 {
				figures = large
			}
			for i, figure := range figures {
				assert.True(t, strings.HasPrefix(band[1+i], strings.TrimRight(figure, " ")), "%s, row %d: %q", what, i, band[1+i])
			}
			assert.Contains(t, band[len(figures)], unit, what)
			body := strings.Join(rows[headRows+len(band):size[1]-1], "\n")
			assert.Contains(t, body, "▸ "+c.label, what+": the field is seen\n"+strings.Join(rows, "\n"))
			assert.Contains(t, rows[size[1]-1], "Esc", what+": so are the keys")
		}
	}
}

// A tap beside the big figures means what is painted there, one on them nothing.
func TestTapsGoBelowTheBigFigures(t *testing.T) {
	for _, size := range windows {
		b, _ := wholeVan(t, size[0], size[1])
		b.press("B").goTo(b.titled("Underneath"))
		b.keys("home enter")
		for y, row := range b.rows() {
			if strings.Contains(row, "  far edge") {
				b.tap(4, y)
			}
		}
		assert.Contains(t, b.rows()[headRows], "far edge", "the field that was tapped has the keys")
		job := string(b.desk.State.Job.Format())
		for y := headRows; y < headRows+b.bandHeight(); y++ {
			b.tap(1, y)
		}
		assert.Contains(t, b.rows()[headRows], "far edge")
		assert.Equal(t, job, string(b.desk.State.Job.Format()))
	}
}

// The band comes and goes with the field, and the screens have the rows it leaves; the setting is kept.
func TestBigFiguresComeAndGo(t *testing.T) {
	b, o := wholeVan(t, 60, 20)
	b.goTo(b.titled("Underneath"))
	b.keys("home enter")
	assert.Zero(t, b.bandHeight(), "off unless it is asked for")
	b.press("esc", "B")
	assert.Zero(t, b.bandHeight(), "nothing is typed")
	b.press("enter", "up", "up", "up")
	assert.Zero(t, b.bandHeight(), "a kind is no length")
	b.press("down", "down", "down")
	assert.Equal(t, 6, b.bandHeight())
	assert.Equal(t, 20-headRows-noteRows-footRows-6, b.bodyHeight())
	b.press("esc")
	assert.Zero(t, b.bandHeight())
	kept, err := desk.LoadSettings(o.SettingsPath)
	require.NoError(t, err)
	assert.True(t, kept.Big)
	b.press("B")
	kept, err = desk.LoadSettings(o.SettingsPath)
	require.NoError(t, err)
	assert.False(t, kept.Big)
}
