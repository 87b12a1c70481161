package tui

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
)

// Where a machine lags, Esc and the key after it are read as one: both are meant.
func TestEscAndTheKeyAfterItReadAtOnceAreTwoKeys(t *testing.T) {
	b, o := opened(t)
	b.press("e")
	both := func(key tea.KeyType) { b.send(tea.KeyMsg{Type: key, Alt: true}) }
	b.press("?")
	assert.NotNil(t, b.overlay())
	both(tea.KeyEsc)
	assert.Nil(t, b.overlay(), "the first of two closes what is open")
	b.press("?")
	both(tea.KeyCtrlS)
	assert.Nil(t, b.overlay())
	assert.Equal(t, "e", notesOnDisk(t, o.Path))
	b.press("?")
	both(tea.KeyCtrlZ)
	assert.Empty(t, b.desk.State.Job.Notes, "it is taken back")
	b.press("?")
	both(tea.KeyCtrlY)
	assert.Equal(t, "e", b.desk.State.Job.Notes)
}
