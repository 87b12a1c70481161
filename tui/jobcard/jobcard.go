// Package jobcard is the screen for the job itself: what stands on its records, the tape, how things are shown, the
// rules it is judged by, saving and the cautions.
package jobcard

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/form"
)

// Screen is the screen "Job". It is a plain value.
type Screen struct{ entry entryscreen.Entry }

// New returns the screen.
func New() desk.Screen { return Screen{entryscreen.New(&spec)} }

var spec = entryscreen.Spec{
	Title:   func(s desk.State) string { return "Job " + s.Job.Ref },
	Records: records, Row: row, Beside: beside, Tells: tells, NoPlan: true, Brief: true, Form: usualForm, Enter: enter,
}

var (
	keySaveAs   = key.NewBinding(key.WithKeys("w"), key.WithHelp("w", "save as"))
	keyFirstRun = key.NewBinding(key.WithKeys("f"), key.WithHelp("f", "first run"))
	keyCautions = key.NewBinding(key.WithKeys("c"), key.WithHelp("c", "cautions"))

	keySheet    = key.NewBinding(key.WithKeys("p"), key.WithHelp("p", "sheet on paper"))
	keyTemplate = key.NewBinding(key.WithKeys("t"), key.WithHelp("t", "template"))
	keyCustomer = key.NewBinding(key.WithKeys("h"), key.WithHelp("h", "customer's page"))

	// What is a chord on every other screen takes one finger here.
	keySave = key.NewBinding(key.WithKeys("s"), key.WithHelp("s", "save"))
	keyUndo = key.NewBinding(key.WithKeys("z"), key.WithHelp("z", "undo"))
	keyRedo = key.NewBinding(key.WithKeys("y"), key.WithHelp("y", "redo"))
	keyQuit = key.NewBinding(key.WithKeys("q"), key.WithHelp("q", "quit"))
)

// asked are what keys ask the root for.
var asked = []struct {
	key key.Binding
	ask desk.Ask
}{
	{keySaveAs, desk.SaveAs}, {keyCautions, desk.Cautions}, {keyFirstRun, desk.FirstRun}, {keySave, desk.Save}, {keyUndo, desk.Undo},
	{keyRedo, desk.Redo}, {keyQuit, desk.Quit}, {keySheet, desk.PrintSheet}, {keyTemplate, desk.PrintTemplate}, {keyCustomer, desk.PrintCustomer},
}

// Title is what the header calls the screen.
func (m Screen) Title() string { return "Job" }

// Typing says whether letters belong to a field.
func (m Screen) Typing() bool { return m.entry.Typing() }

// Update answers one message.
func (m Screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	if size, ok := msg.(tea.WindowSizeMsg); ok {
		m.entry = m.entry.Sized(size.Width, size.Height)
		return m, desk.Change{}, nil
	}
	m, change := m.step(msg, s)
	return m, change, nil
}

func (m Screen) step(msg tea.Msg, s desk.State) (Screen, desk.Change) {
	if press, isKey := msg.(tea.KeyMsg); isKey && !m.Typing() {
		for _, k := range asked {
			if key.Matches(press, k.key) {
				return m, desk.Change{Ask: k.ask}
			}
		}
	}
	var change desk.Change
	m.entry, change = m.entry.Update(msg, s)
	return m, change
}

// Records are those of all its forms.
func (m Screen) Records(s desk.State) []form.Record { return records(s) }

// View paints the screen.
func (m Screen) View(s desk.State, w, h int) string { return m.entry.View(s, w, h, nil) }

// Keys are the bindings that hold now.
func (m Screen) Keys(s desk.State) []key.Binding {
	return m.entry.Keys(s, keySaveAs, keySheet, keyTemplate, keyCautions, keyFirstRun, keyUndo, keyRedo, keySave, keyQuit, keyCustomer)
}

// act is a row that is no form: something to do.
type act uint8

const (
	doSave act = iota
	doSaveAs
	doCautions
	doFirstRun
	doSheet
	doTemplate
	doCustomer
)

// acts are what they are called and what they ask for.
var acts = [...]struct {
	text string
	ask  desk.Ask
}{
	doSave: {"Save", desk.Save}, doSaveAs: {"Save as another file", desk.SaveAs},
	doSheet: {"Job sheet on paper", desk.PrintSheet}, doTemplate: {"Template at its true size", desk.PrintTemplate},
	doCustomer: {"Page for the customer", desk.PrintCustomer},
	doCautions: {"Cautions: read before you cut", desk.Cautions},
	doFirstRun: {"First run: read before it is lit", desk.FirstRun},
}

// usualForm is how many rows the form of a card takes, with its title; most are of one rule and take fewer.
const usualForm = 10

// records are the rows: the cards, what can be done, the job's own rules, then all others.
func records(s desk.State) []form.Record {
	var out []form.Record
	for c := range cards {
		if card(c).there(s.Job) {
			out = append(out, cardRecord{card(c)})
		}
	}
	for a := range acts {
		out = append(out, actRecord{act: act(a)})
	}
	return append(out, ruleRecords(s)...)
}

// enter does what a row is for that is no form.
func enter(record form.Record, _ desk.State) (desk.Change, bool) {
	if h, ok := record.(actRecord); ok {
		return desk.Change{Ask: acts[h.act].ask}, true
	}
	return desk.Change{}, false
}

func row(record form.Record, s desk.State) form.Row {
	switch h := record.(type) {
	case cardRecord:
		return form.Row{Text: cards[h.card].text}
	case actRecord:
		out := form.Row{Text: acts[h.act].text}
		if h.act == doSave {
			out.Right = savedAt(s)
		}
		return out
	case ruleRecord:
		return h.row(s)
	}
	return form.Row{}
}

// savedAt says where the job is saved.
func savedAt(s desk.State) string {
	switch {
	case s.Path == "":
		return "nowhere yet"
	case s.Dirty:
		return "changed since: " + s.Path
	}
	return s.Path
}
