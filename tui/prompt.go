package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
)

// prompt asks for a line of text. Enter takes it, Esc gives up.
type prompt struct {
	asks   string
	fields []form.Field
	form   form.Form
	said   string // why the last paste or key was not taken
	take   func(text string) tea.Cmd
	leave  func()
}

func newPrompt(asks, label, text string, take func(string) tea.Cmd, leave func()) *prompt {
	p := &prompt{asks: asks, fields: []form.Field{{Key: label, Label: label, Text: text}}, take: take, leave: leave}
	p.form = p.form.Open(label, p.fields).AtEnd() // one mostly goes on from the name there
	return p
}

// afresh selects what stands there: a name that nobody gave is mostly replaced.
func (p *prompt) afresh() *prompt {
	p.form = p.form.Open(p.fields[0].Key, p.fields)
	return p
}

func (p *prompt) waits() bool { return true }

func (p *prompt) update(r *Root, msg tea.Msg) tea.Cmd {
	pressed, ok := msg.(tea.KeyMsg)
	if !ok {
		return nil
	}
	event := p.answered(pressed)
	p.said = event.Say
	switch text := strings.TrimSpace(p.fields[0].Text); {
	case event.Edited:
		p.fields[0].Text = event.Text
		p.form = p.form.Took(event.Key, p.fields)
	case event.Left:
		r.shut(p)
		p.leave()
	case event.Past && text != "":
		r.shut(p)
		return p.take(text)
	}
	return nil
}

// answered has the form answer a key or a pasted text.
func (p *prompt) answered(msg tea.KeyMsg) (event form.Event) {
	if !msg.Paste {
		p.form, event = p.form.Update(msg, p.fields)
		return event
	}
	next, put, err := p.form.Paste(msg.Runes, func([]form.Put) []form.Field { return p.fields })
	if err != nil {
		return form.Event{Say: err.Error()}
	}
	p.form = next
	return form.Event{Key: put[0].Key, Text: put[0].Text, Edited: true}
}

func (p *prompt) view(r *Root, w, h int) string {
	styles := r.desk.State.Settings.Styles()
	return "  " + styles.Title.Render(p.asks) + "\n  " + styles.Fault.Render(p.said) + "\n" +
		p.form.View(p.fields, w, max(h-2, 1), styles)
}

func (p *prompt) keys() []key.Binding {
	return []key.Binding{desk.Named(desk.KeyEnter, "take it"), desk.Named(desk.KeyLeave, "not now")}
}
