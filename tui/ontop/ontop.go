// Package ontop is the screen for what is on top: the floor itself, where the tape is hooked, how well things are
// measured, the heater, and what stands on the floor. Beside its forms are small drawings for whoever has not met
// slopes and side edges before.
package ontop

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// Screen is the screen "On top". It is a plain value.
type Screen struct{ entry entryscreen.Entry }

// New returns the screen.
func New() desk.Screen { return Screen{entryscreen.New(&spec)} }

var spec = entryscreen.Spec{
	Title: title,
	Row:   row, Records: records, Warn: wrongs, Beside: beside, Tells: tells, Around: aloud.NearOnTop, Above: true,
	Fresh: []entryscreen.Fresh{
		{Key: key.NewBinding(key.WithKeys("n"), key.WithHelp("n", "new fitting")), List: features.Fittings},
	},
}

// Title is what the header calls the screen.
func (m Screen) Title() string { return "On top" }

// Typing says whether letters belong to a field.
func (m Screen) Typing() bool { return m.entry.Typing() }

// Update answers one message.
func (m Screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	if size, ok := msg.(tea.WindowSizeMsg); ok {
		m.entry = m.entry.Sized(size.Width, size.Height)
		return m, desk.Change{}, nil
	}
	var change desk.Change
	if _, ok := msg.(desk.Reveal); ok {
		m, change = m.revealed(s)
		return m, change, nil
	}
	m.entry, change = m.entry.Update(msg, s)
	return m, change, nil
}

// revealed goes to what the finding in the state's focus is of: a fitting, or the heater's card.
func (m Screen) revealed(s desk.State) (Screen, desk.Change) {
	if s.Focus == nil {
		return m, desk.Change{}
	}
	var of form.Record = record{heaterCard}
	if s.Focus.Against.Sort == rules.AFitting {
		of = features.Record{List: features.Fittings, Row: int(s.Focus.Against.Index)}
	}
	var change desk.Change
	m.entry, change = m.entry.Reveal(func(row form.Record) bool { return row == of }, s)
	return m, change
}

// Records are those of all its forms.
func (m Screen) Records(s desk.State) []form.Record { return records(s) }

// View paints the screen.
func (m Screen) View(s desk.State, w, h int) string { return m.entry.View(s, w, h, nil) }

// Keys are the bindings that hold now.
func (m Screen) Keys(s desk.State) []key.Binding { return m.entry.Keys(s) }

func title(s desk.State) string {
	if n := features.Fittings.Rows(s.Job); n != 1 {
		return fmt.Sprintf("On top: %d fittings", n)
	}
	return "On top: 1 fitting"
}

// records are the rows of the list: the cards, then the fittings.
func records(s desk.State) []form.Record {
	var out []form.Record
	for c := range cards {
		out = append(out, record{card(c)})
	}
	return append(out, features.Fittings.Records(s.Job)...)
}

func row(of form.Record, s desk.State) form.Row {
	if h, isCard := of.(record); isCard {
		asks := h.card.asks(s.Job)
		return form.Row{Text: strings.Replace(cards[h.card].text, "DATUM", desk.Datum(&s.Job.Datum, 24), 1), Right: asks, Fault: asks != ""}
	}
	feature := of.(features.Record)
	name, kind := feature.Name(s.Job)
	out := form.Row{Text: name}
	if kind != "" {
		out.Mark = vehicles.KindOf(kind).Code
	}
	if feature.Row < len(s.Result.Plan.Fittings) {
		out.Right = words.TapesMet(&s.Result, s.Marks, feature.Row)
	}
	if feature.Row == 0 {
		out.Head = "Fittings: on the floor, or inside it"
	}
	return out
}

// wrongs says what keeps the job from being judged.
func wrongs(s desk.State) []string {
	var out []string
	for _, fault := range s.Faults {
		out = append(out, fault.Text)
	}
	return out
}
