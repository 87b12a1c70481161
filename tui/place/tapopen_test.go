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
	rows := strings.Split(d.View(w, h), "\n")
	for y, row := range slices.Backward(rows) {
		if i := strings.LastIndex(row, text); i >= 0 {
			d.Tap(ansi.StringWidth(row[:i])+1, y)
			return
		}
	}
	require.Fail(t, "not on the screen: "+text, strings.Join(rows, "\n"))
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
			d := &screentest.Driver{T: t, Screen: p, Desk: screentest.New(t, New(), s.Job, size.W, size.H).Desk}
			d.Send(tea.WindowSizeMsg{Width: size.W, Height: size.H})
			switch {
			case size.H-8 < 12: // one at a time
				for range i {
					tapAt(t, d, size.W, size.H, "layouts of what")
				}
			case size.W >= abreastFrom && i < 2:
				d.Tap(10+i*(size.W/3), 8)
			case i > 0:
				tapAt(t, d, size.W, size.H, " "+string(rune('1'+i))+"  ")
			}
			assert.Equal(t, i, d.Screen.(page).at, "%s, %d", size.Name, i)
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
