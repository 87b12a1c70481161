package form

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
)

// Merge adds a change to those made so far in answer to one message, and returns the state that the next piece
// of the message meets.
func Merge(s desk.State, all, c desk.Change) (desk.State, desk.Change) {
	if c.Job != nil {
		all.Job, all.Step, s.Job = c.Job, c.Step, *c.Job
	}
	if c.Select != nil {
		all.Select, s.Selected = c.Select, *c.Select
	}
	if c.Camera != nil {
		all.Camera, s.Camera = c.Camera, *c.Camera
	}
	if c.Settings != nil {
		all.Settings, s.Settings = c.Settings, *c.Settings
	}
	if c.Say != "" {
		all.Say = c.Say
	}
	if c.Ask != desk.Nothing {
		all.Ask = c.Ask
	}
	if c.Goto != "" {
		all.Goto, all.Focus, all.Open = c.Goto, c.Focus, c.Open
	}
	return s, all
}

// Each answers the pieces of a message one after another: each meets the state that the one before left.
func Each[M any](m M, msg tea.Msg, s desk.State, step func(M, tea.Msg, desk.State) (M, desk.Change)) (M, desk.Change) {
	var all desk.Change
	for _, piece := range Pieces(msg) {
		var change desk.Change
		m, change = step(m, piece, s)
		s, all = Merge(s, all, change)
	}
	return m, all
}

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
	_, fields := e.on(e.sheet, s)
	i := index(fields, e.form.On())
	return i >= 0 && len(fields[i].Choices) > 0
}

// Picking says whether a field of choices has the keys: it needs rows for them.
func (e Editor) Picking(s desk.State) bool { return e.Typing() && e.picking(s) }
