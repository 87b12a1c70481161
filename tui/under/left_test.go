package under

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
)

// Esc keeps what was typed, as Enter does. A cold finger may have typed it: what stood in the field before is said, and one undo has it back.
func TestAFieldThatIsLeftWithAnotherTextSaysSo(t *testing.T) {
	esc := tea.KeyMsg{Type: tea.KeyEsc}
	near := func(r *screentest.Driver) string { return r.State.Job.Obstructions[0].X[0].Text }
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<enter>655")
	assert.Equal(t, "near edge was 652 and is 655 now. Ctrl-Z takes it back.", r.Send(esc).Say)
	assert.Equal(t, "655", near(r))
	r.Undo()
	assert.Equal(t, "652", near(r))

	r.Type("<enter>5")
	assert.Contains(t, r.Send(esc).Say, "is not in the job: near edge of rear crossmember, 5", "what is refused changed nothing, and is named")
	r.Undo()

	r.Type("<enter>660<enter><up>665")
	assert.Contains(t, r.Send(esc).Say, "near edge was 660 and is 665 now. ")
	r.Undo()
	assert.Equal(t, "660", near(r), "whoever comes back to a field begins another step")

	r.Type("<enter>660")
	assert.Empty(t, r.Send(esc).Say, "it is as it was")
	r.Type("<enter><down><down><down><down>")
	assert.Empty(t, r.Send(esc).Say)

	r.Type("nc700")
	assert.Empty(t, r.Send(esc).Say, "nothing stood there before")
}

// An undo within the field takes back an earlier step: what is typed then replaces what came back by that, and the next undo brings just that.
func TestAFieldThatIsLeftSaysWhatUndoHasBack(t *testing.T) {
	esc := tea.KeyMsg{Type: tea.KeyEsc}
	r := screentest.New(t, New(), screentest.Van(t), 100, 27)
	r.Type("<enter>660<esc><enter><left>")
	r.Undo()
	r.Type("<wipe>670")
	assert.Equal(t, "near edge was 652 and is 670 now. Ctrl-Z takes it back.", r.Send(esc).Say)
	r.Undo()
	assert.Equal(t, "652", r.State.Job.Obstructions[0].X[0].Text)
}
