package marks

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// tapOn taps the first row of the screen that has the text in it, so many columns in.
func tapOn(t *testing.T, d *screentest.Driver, w, h int, text string, x int) desk.Change {
	for y, row := range strings.Split(d.View(w, h), "\n") {
		if strings.Contains(row, text) {
			return d.Send(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
		}
	}
	require.FailNow(t, "not on the screen: "+text, d.View(w, h))
	return desk.Change{}
}

func TestEveryRowTakesTaps(t *testing.T) {
	for _, size := range screentest.Sizes {
		d := screentest.New(t, New(), screentest.State(t).Job, size.W, size.H)
		tapOn(t, d, size.W, size.H, "looked, none there", 12)
		assert.Contains(t, d.Said, "looked for, none there")
		tapOn(t, d, size.W, size.H, "leave open", 12)
		change := tapOn(t, d, size.W, size.H, "mark all the same", 12)
		assert.Equal(t, desk.BeforeDrilling, change.Ask)
		tapOn(t, d, size.W, size.H, "not made", size.W-2)
		assert.True(t, d.State.Ticked["cut centre"], "on the head of what is shown")

		d.Type("<tab>")
		tapOn(t, d, size.W, size.H, "plate 3", 12)
		assert.Equal(t, "plate 3", d.Screen.(screen).here(d.State).id(), "on a row")
		assert.False(t, d.State.Ticked["plate 3"])
		tapOn(t, d, size.W, size.H, "plate 3", 12)
		assert.True(t, d.State.Ticked["plate 3"], "and once more")
		tapOn(t, d, size.W, size.H, "plate 4", 3)
		assert.True(t, d.State.Ticked["plate 4"], "on its box")
		before := d.View(size.W, size.H)
		d.Send(tea.MouseMsg{Button: tea.MouseButtonWheelDown, Action: tea.MouseActionPress})
		assert.NotEqual(t, before, d.View(size.W, size.H), "the wheel goes on")
	}
}

func TestNoRowGoesFromUnderAThumb(t *testing.T) {
	d := screentest.New(t, New(), screentest.State(t).Job, 60, 9)
	d.Type("lm<tab>")
	d.Tap(12, 7)
	first := strings.Split(d.View(60, 9), "\n")
	d.Tap(12, 3)
	second := strings.Split(d.View(60, 9), "\n")
	for y := 2; y < 9; y++ {
		assert.Equal(t, string([]rune(first[y])[desk.BoxColumns:]), string([]rune(second[y])[desk.BoxColumns:]))
	}
}

// With the last tick comes what is to be done then; when the place of marks has changed they are no longer made.
func TestWhatComesAfterTheLastTick(t *testing.T) {
	d := screentest.New(t, New(), hung(t).Job, 60, 17)
	d.Type("lm")
	all, top := items(d.State), onTop(d.State)
	require.Less(t, len(top), len(all))
	for i := range all {
		d.Type("<enter>")
		switch i {
		case len(top) - 1:
			assert.Contains(t, d.Said, "All on top is made: drill the pilot, then measure it (d)")
		case len(all) - 1:
			assert.Contains(t, d.Said, "All made: drill the pilot, then measure it from below (d)")
		default:
			assert.NotContains(t, d.Said, "drill", "%d", i)
		}
	}
	d.Said = ""
	d.Type("<enter>")
	assert.Contains(t, d.Said, "All made: drill the pilot")
	d.Said = ""
	d.Type("<space>")
	assert.Equal(t, d.Screen.(screen).here(d.State).short(d.State.Settings)+" is not made now.", d.Said, "all are made no longer")
	d.Type("<space>")
	change := screentest.Pressed(d, 'd')
	assert.Equal(t, "Place", change.Goto)
	assert.Equal(t, "drilled", change.Open.Field)
}

// Who marks a foul cut all the same is not told to drill it.
func TestNobodyIsToldToDrillAFoulCut(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	d.Type("lm")
	for range items(d.State) {
		d.Type("<enter>")
		assert.NotContains(t, d.Said, "drill the pilot")
	}
	assert.Contains(t, d.Said, "All made, but the cut is foul: cut: brake pipe across, 84.6 mm short. Don't drill or saw there")
}
