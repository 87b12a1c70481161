package tui

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
)

// overlay is what lies over the screens for a while: a question, a line to type, a text to read.
type overlay interface {
	// update answers a key, a tap at body coordinates, or any other message.
	update(r *Root, msg tea.Msg) tea.Cmd
	// view paints the body of w columns; what is below row h is cut off.
	view(r *Root, w, h int) string
	// plain is what it says where nothing is drawn.
	plain(r *Root) desk.Plain
	keys() []key.Binding
	// waits says whether it asks for something that must be answerable in the smallest window.
	waits() bool
}

// overlay is the one that shows, or nil.
func (r *Root) overlay() overlay {
	if len(r.overlays) == 0 {
		return nil
	}
	return r.overlays[len(r.overlays)-1]
}

func (r *Root) open(o overlay) { r.overlays = append(r.overlays, o) }

func (r *Root) shut(o overlay) {
	r.overlays = slices.DeleteFunc(slices.Clone(r.overlays), func(other overlay) bool { return other == o })
	r.sayUntil = r.now().Add(sayAtLeast) // a line below it can be read only now
}

// answerable says whether the overlay that shows may be used in a window too small for the screens.
func (r *Root) answerable() bool { return r.overlay() != nil && r.overlay().waits() }

// isTap says whether a message is a press of the left button or a finger, and at which row.
func isTap(msg tea.Msg) (row int, tap bool) {
	m, ok := msg.(tea.MouseMsg)
	return m.Y, ok && m.Action == tea.MouseActionPress && m.Button == tea.MouseButtonLeft
}
