package tui

import (
	"fmt"
	"os"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/sparing"
)

// line tells how many bytes are sent over it, at each time.
type line struct {
	*os.File
	sent chan int
}

func (l *line) Write(p []byte) (int, error) {
	l.sent <- len(p)
	return len(p), nil
}

// A key sends little of a picture, in true colour: a tenth where somebody walks through a list or types, and a seventh where
// the cut moves, as names and their leaders on a plan as crowded as this one move with it.
func TestAKeySendsLittle(t *testing.T) {
	const wide, high = 120, 40
	right, left := tea.KeyMsg{Type: tea.KeyRight}, tea.KeyMsg{Type: tea.KeyLeft}
	down, up := tea.KeyMsg{Type: tea.KeyDown}, tea.KeyMsg{Type: tea.KeyUp}
	digit, back := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'1'}}, tea.KeyMsg{Type: tea.KeyBackspace}
	for _, c := range []struct {
		screen string
		first  []tea.KeyMsg
		keys   [2]tea.KeyMsg
		most   int // bytes; a picture of Place is 23,000
	}{
		{"Place", nil, [2]tea.KeyMsg{right, left}, 3400},
		{"Underneath", nil, [2]tea.KeyMsg{down, up}, 2400},
		{"Underneath", []tea.KeyMsg{{Type: tea.KeyEnter}, down, down, down}, [2]tea.KeyMsg{digit, back}, 2000},
	} {
		t.Run(fmt.Sprint(c.screen, " ", c.keys[0]), func(t *testing.T) {
			r := working(t, jobOfCases(t, "24-everything.toml"))
			r.desk.Begin(withObstructions(r.desk.State.Job, 60).WithDrilled(nil), true)
			r.desk.State.Settings.Colour = desk.TrueColour
			sent := &line{sent: make(chan int, 1)}
			to := sparing.On(sent)
			m, _ := to.Showing(r).Update(tea.WindowSizeMsg{Width: wide, Height: high})
			r.goTo(r.titled(c.screen))
			for _, k := range c.first {
				r.Update(k)
			}
			for i := range 12 {
				_, err := to.WriteString(ansi.CursorHomePosition + m.View() + ansi.CursorPosition(0, 1)) // as the library writes it
				require.NoError(t, err)
				if bytes := <-sent.sent; i > 0 { // each key changes the picture
					assert.Less(t, bytes, c.most, "key %d", i)
				}
				m, _ = m.Update(c.keys[i%2])
			}
		})
	}
}
