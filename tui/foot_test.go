package tui

import (
	"testing"

	"github.com/stretchr/testify/assert"

	tea "github.com/charmbracelet/bubbletea"
)

// Where there is width the foot of Place says how the cut is put where there is room; where there is more, what else a screen has, but
// never in the place of help, saving, undo and quitting.
func TestTheFootSaysMoreWhereThereIsWidth(t *testing.T) {
	b := sampled(t)
	foot := func(w int) string {
		b.send(tea.WindowSizeMsg{Width: w, Height: 30})
		b.goTo(b.titled("Place"))
		rows := b.rows()
		return rows[len(rows)-1]
	}
	for _, hint := range []string{"arrows move", "s step", "t type a place", "n best places", "? help"} {
		assert.Contains(t, foot(60), hint)
	}
	for _, hint := range []string{"n best places", "j nearest open place", "c whole layouts", "? help"} {
		assert.Contains(t, foot(100), hint)
	}
	for _, hint := range []string{"? help", "Ctrl-S save", "Ctrl-Z undo", "Ctrl-C quit", "m pilot as measured"} {
		assert.Contains(t, foot(160), hint)
	}
}
