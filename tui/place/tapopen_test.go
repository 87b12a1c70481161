package place

import (
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
)

// tapAt taps the last row of a screen where a text shows: a panel stands below the plan or beside it.
func tapAt(t *testing.T, d *screentest.Driver, w, h int, text string) {
	d.Send(tapOn(t, d.View(w, h), text))
}

func tapOn(t *testing.T, view, text string) tea.MouseMsg {
	for y, row := range slices.Backward(strings.Split(view, "\n")) {
		if i := strings.LastIndex(row, text); i >= 0 {
			return tea.MouseMsg{X: ansi.StringWidth(row[:i]) + 1, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}
		}
	}
	require.Fail(t, "not on the screen: "+text, view)
	return tea.MouseMsg{}
}

// A tape of the list that is tapped is the one the arrows go to; what was typed before is taken, what can't be read stays.
func TestATappedTapeIsTheOneTheArrowsGoTo(t *testing.T) {
	for _, size := range screentest.Sizes {
		byKeys, byTap := unexplained(t, size.W, size.H), unexplained(t, size.W, size.H)
		byKeys.Type("d361<down>579")
		byTap.Type("d361")
		tapAt(t, byTap, size.W, size.H, "rear crossmember:")
		require.Len(t, byTap.State.Job.Cut.Direct, 1, size.Name)
		byTap.Type("579")
		assert.Equal(t, byKeys.View(size.W, size.H), byTap.View(size.W, size.H), size.Name)

		wrong := unexplained(t, size.W, size.H)
		wrong.Type("dL 3")
		tapAt(t, wrong, size.W, size.H, "rear crossmember:")
		assert.Equal(t, 1, wrong.State.Selected, "it stays in the field that is not right")
		assert.Empty(t, wrong.State.Job.Cut.Direct)
	}
}

// A layout that is tapped, its line or its picture, is the one that is shown.
func TestATappedLayoutIsShown(t *testing.T) {
	s := demo(t)
	p := proposing(t, s)
	best := p.(page).proposed()
	require.Len(t, best, 3)
	for _, size := range screentest.Sizes {
		for i := range best {
			shown, _, _ := p.Update(tea.WindowSizeMsg{Width: size.W, Height: size.H}, s)
			tap := func(text string) {
				shown, _, _ = shown.Update(tapOn(t, screentest.Filled(t, shown, s, size.W, size.H), text), s)
			}
			switch {
			case size.H-8 < roomForAll: // one at a time
				for range i {
					tap("layouts of what")
				}
			case size.W >= abreastFrom && i == 1: // its picture
				shown, _, _ = shown.Update(tea.MouseMsg{X: size.W / 2, Y: 8, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}, s)
			case i > 0:
				tap(" " + string(rune('1'+i)) + "  ")
			}
			assert.Equal(t, i, shown.(page).at, "%s, %d", size.Name, i)
		}
	}
}

// A tap on what would explain the pilot hole does what its letter does.
func TestATappedExplanationIsPutRight(t *testing.T) {
	for _, size := range screentest.Sizes {
		job := drilledAt(t, "1229.3", "L650").Job // read a centimetre too far
		byKeys, byTap := screentest.New(t, New(), job, size.W, size.H), screentest.New(t, New(), job, size.W, size.H)
		before := string(byKeys.State.Job.Format())
		byKeys.Type("ea")
		byTap.Type("e")
		tapAt(t, byTap, size.W, size.H, "a from")
		assert.NotEqual(t, before, string(byTap.State.Job.Format()))
		assert.Equal(t, string(byKeys.State.Job.Format()), string(byTap.State.Job.Format()))
	}
}
