// Package sizing is the screen of what is reckoned behind a job: floor, fuel, electrics, heat, duct and saw. The list has every result;
// beside it stands how it came about, and Enter opens the figures it rests on.
package sizing

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/form"
)

// Screen is the screen "Sizing". It is a plain value.
type Screen struct{ entry entryscreen.Entry }

// New returns the screen.
func New() desk.Screen { return Screen{entryscreen.New(&spec)} }

var spec = entryscreen.Spec{
	Title:   func(s desk.State) string { return "Sizes of " + s.Job.Ref + ": no verdict rests on them" },
	Records: records, Row: row, Beside: beside, Tells: tells, NoPlan: true, Form: usualForm, Opens: opens, Enter: goes,
}

// usualForm is how many rows the form of a subject takes, with its title.
const usualForm = 12

// Title is what the header calls the screen.
func (m Screen) Title() string { return "Sizing" }

// Typing says whether letters belong to a field.
func (m Screen) Typing() bool { return m.entry.Typing() }

// Update answers one message.
func (m Screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	if size, ok := msg.(tea.WindowSizeMsg); ok {
		m.entry = m.entry.Sized(size.Width, size.Height)
		return m, desk.Change{}, nil
	}
	var change desk.Change
	m.entry, change = m.entry.Update(msg, s)
	return m, change, nil
}

// Records are those of all its forms.
func (m Screen) Records(s desk.State) (all []form.Record) {
	known := map[string]bool{}
	for _, row := range records(s) {
		if of, _ := opens(row, s); !known[of.ID()] {
			known[of.ID()] = true
			all = append(all, of)
		}
	}
	return all
}

// View paints the screen.
func (m Screen) View(s desk.State, w, h int) string { return m.entry.View(s, w, h, nil) }

// Plain is what the screen says where nothing is drawn.
func (m Screen) Plain(s desk.State) desk.Plain { return m.entry.Plain(s) }

// Keys are the bindings that hold now.
func (m Screen) Keys(s desk.State) []key.Binding { return m.entry.Keys(s) }
