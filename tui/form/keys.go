package form

import (
	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/tui/desk"
)

var (
	keyField  = key.NewBinding(key.WithKeys("down"), key.WithHelp("↑ ↓", "other fields"))
	keyLetter = key.NewBinding(key.WithKeys("right"), key.WithHelp("letter", "chooses"))
	keyWipe   = key.NewBinding(key.WithKeys("ctrl+u"), key.WithHelp("Ctrl-U", "empty the field"))
)

// Keys are the bindings while a field has the keys.
func (e Editor) Keys(s desk.State) []key.Binding {
	next, leave := desk.Named(desk.KeyEnter, "next"), desk.Named(desk.KeyLeave, "leaves the field")
	if e.picking(s) {
		return []key.Binding{leave, keyLetter, next, keyField}
	}
	return []key.Binding{leave, next, keyField, keyWipe}
}

// picking says whether the field that has the keys is one of choices.
func (e Editor) picking(s desk.State) bool {
	_, fields := e.on(e.record, s)
	i := index(fields, e.form.On())
	return i >= 0 && len(fields[i].Choices) > 0
}

// Picking says whether a field of choices has the keys: it needs rows for them.
func (e Editor) Picking(s desk.State) bool { return e.Typing() && e.picking(s) }
