// Package work is the screen for the work itself: its steps in order, each ticked as it is done with the time, the value where one is
// measured, a note and the names of photos. It refuses nothing: a step that is done before one that must come first for safety says so.
package work

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/words"
)

// Screen is the screen "Work". It is a plain value.
type Screen struct {
	entry entryscreen.Entry
	moved bool   // a row was chosen: till then the next step that is not done is
	just  string // the step that Space ticked a moment ago: what is noted now is of that, and Space goes on from it
}

// New returns the screen.
func New() desk.Screen { return Screen{entry: entryscreen.New(&spec)} }

var spec = entryscreen.Spec{
	Title: title, Records: records, Row: row, Beside: beside, Tells: tells, NoPlan: true, Form: usualForm,
	Empty: "No steps.",
}

// usualForm is how many rows the form of a step takes at most, with its title.
const usualForm = 8

var (
	keyGoOn = key.NewBinding(key.WithKeys(" "), key.WithHelp("Space", "next one done"))
	keyTick = key.NewBinding(key.WithKeys(" "), key.WithHelp("Space", "done, or not"))
	keyNext = key.NewBinding(key.WithKeys("n"), key.WithHelp("n", "next not done"))
)

// Title is what the header calls the screen.
func (m Screen) Title() string { return "Work" }

// Typing says whether letters belong to a field.
func (m Screen) Typing() bool { return m.entry.Typing() }

// Update answers one message.
func (m Screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	if size, ok := msg.(tea.WindowSizeMsg); ok {
		m.entry = m.entry.Sized(size.Width, size.Height)
		return m, desk.Change{}, nil
	}
	m = m.settled(s)
	m.entry = m.entry.Seen(s)
	switch msg.(type) {
	case tea.KeyMsg, tea.MouseMsg:
		m.moved = true
	}
	just := m.just
	m, change := m.step(msg, s)
	if change.Job == nil {
		m.entry = m.entry.Seen(s)
	}
	if m.just == just && !m.Typing() {
		m.just = "" // whatever else was done, Space means what is in sight
	}
	return m, change, nil
}

func (m Screen) step(msg tea.Msg, s desk.State) (Screen, desk.Change) {
	press, isKey := msg.(tea.KeyMsg)
	if isKey && !press.Paste && !m.Typing() {
		switch {
		case key.Matches(press, keyTick):
			return m.tick(s)
		case key.Matches(press, keyNext):
			m.entry.At = max(0, s.WorkSteps().Next())
			return m, desk.Change{}
		}
	}
	if mouse, is := msg.(tea.MouseMsg); is && !m.Typing() {
		if ticked, change, mine := m.tapped(mouse, s); mine {
			return ticked, change
		}
	}
	was := m
	var change desk.Change
	m.entry, change = m.entry.Update(msg, s)
	if isKey && was.Typing() && !m.Typing() && key.Matches(press, desk.KeyEnter) {
		m = m.onward(s)
	}
	return m, change
}

// settled is the screen at the next step that is not done, as long as nobody has chosen another.
func (m Screen) settled(s desk.State) Screen {
	if !m.moved {
		m.entry.At = max(0, s.WorkSteps().Next())
	}
	return m
}

// onward goes on from a step that is done to the next that is not: behind it, or else the first.
func (m Screen) onward(s desk.State) Screen {
	list := s.WorkSteps()
	here := m.entry.At
	if here >= len(list) || !list[here].Ticked() {
		return m
	}
	for i := here + 1; i < len(list); i++ {
		if !list[i].Ticked() {
			m.entry.At = i
			return m
		}
	}
	if next := list.Next(); next >= 0 {
		m.entry.At = next
	}
	return m
}

func title(s desk.State) string { return "Work: " + words.WorkTally(s.WorkSteps()) }

// Records are those of all its forms.
func (m Screen) Records(s desk.State) []form.Record { return records(s) }

// View paints the screen.
func (m Screen) View(s desk.State, w, h int) string { return m.settled(s).entry.View(s, w, h, nil) }

// Plain is what the screen says where nothing is drawn.
func (m Screen) Plain(s desk.State) desk.Plain { return m.settled(s).entry.Plain(s) }

// Keys are the bindings that hold now.
func (m Screen) Keys(s desk.State) []key.Binding {
	if m.Typing() {
		return m.entry.Keys(s)
	}
	tick := keyTick
	if here, is := m.here(s); is && here.id == m.just && s.Job.DoneOf(m.just).At != "" {
		tick = keyGoOn
	}
	return append([]key.Binding{tick}, m.settled(s).entry.Keys(s, keyNext)...)
}
