package moving

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
)

// Ask is one field of a prompt.
type Ask struct {
	Label   string
	Text    string // what the job holds
	Reads   Reader
	Unit    string
	Blank   string // what an empty field says
	Note    string // what is said while the field has the keys
	Choices []form.Choice
	Pass    bool // Enter goes past it
}

// Prompt is a few fields to be typed and taken together. It is a plain value; what it asks comes afresh from the job each time.
type Prompt struct {
	Kind  int      // what is asked, as the screen counts it; 0: nothing is
	texts []string // what stands in the fields and could be read
	form  form.Form
}

// Ask opens a prompt of a kind.
func (p Prompt) Ask(kind int, asks []Ask) Prompt {
	p = Prompt{Kind: kind}
	for _, a := range asks {
		p.texts = append(p.texts, a.Text)
	}
	fields := p.fields(asks)
	p.form = p.form.Open(fields[0].Key, fields)
	return p
}

// On is the label of the field that has the keys, "" for none.
func (p Prompt) On() string { return p.form.On() }

// fields are those of the prompt, as they stand. A plain number is mm, whatever the units shown.
func (p Prompt) fields(asks []Ask) []form.Field {
	fields := make([]form.Field, len(asks))
	for i, a := range asks {
		fields[i] = form.Field{
			Key: a.Label, Label: a.Label, Text: p.texts[i], Unit: a.Unit, Blank: a.Blank, Note: a.Note, Choices: a.Choices, Pass: a.Pass,
		}
	}
	return fields
}

// Press answers a key or a pasted text; taken says that the fields are to be taken, as they can all be read.
func (p Prompt) Press(k tea.KeyMsg, asks []Ask, s desk.State) (next Prompt, change desk.Change, taken bool) {
	if k.Paste {
		next, change = p.pasted(k.Runes, asks, s)
		return next, change, false
	}
	form, event := p.form.Update(k, p.fields(asks))
	p.form = form
	return p.answered(event, asks, s)
}

// Tap answers a tap on the fields as painted into w columns and h rows.
func (p Prompt) Tap(x, y, w, h int, asks []Ask, s desk.State) (next Prompt, change desk.Change, taken bool) {
	form, event := p.form.Tap(p.fields(asks), w, h, x, y)
	p.form = form
	return p.answered(event, asks, s)
}

// answered goes on after the form has answered.
func (p Prompt) answered(event form.Event, asks []Ask, s desk.State) (next Prompt, change desk.Change, taken bool) {
	switch {
	case event.Left:
		return Prompt{}, change, false
	case event.Edited:
		p = p.edited(event.Key, event.Text, asks, s)
		if fields := p.fields(asks); event.Picked {
			p.form = p.form.Onward(fields)
		}
		return p, change, false
	case event.Past && p.form.Wrong(p.fields(asks)):
		return p, desk.Change{Say: "Not taken: put the text right first, or leave with Esc."}, false
	}
	return p, desk.Change{Say: event.Say}, event.Past
}

// pasted puts pasted lines into the fields.
func (p Prompt) pasted(text []rune, asks []Ask, s desk.State) (Prompt, desk.Change) {
	fields := p.fields(asks)
	next, put, err := p.form.Paste(text, func([]form.Put) []form.Field { return fields })
	if err != nil {
		return p, desk.Change{Say: err.Error()}
	}
	p.form = next
	for _, one := range put {
		p = p.edited(one.Key, one.Text, asks, s)
	}
	return p, desk.Change{}
}

// edited keeps a text of a field that can be read, and says what is wrong with another.
func (p Prompt) edited(key, text string, asks []Ask, s desk.State) Prompt {
	i := 0
	for n, a := range asks {
		if a.Label == key {
			i = n
		}
	}
	_, err := asks[i].Reads.Read(text, s)
	p.texts = append([]string(nil), p.texts...)
	if p.texts[i] = text; err != nil {
		p.texts[i] = "" // no part of it that could be read stays
		p.form = p.form.Refused(p.fields(asks)[i], text, err.Error())
		return p
	}
	p.form = p.form.Took(key, p.fields(asks))
	return p
}

// Blank tells whether nothing stands in any field.
func (p Prompt) Blank() bool { return strings.TrimSpace(strings.Join(p.texts, "")) == "" }

// Values are what the fields come to. What can't be read is an error.
func (p Prompt) Values(asks []Ask, s desk.State) ([]Value, error) {
	values := make([]Value, len(asks))
	for i, a := range asks {
		v, err := a.Reads.Read(p.texts[i], s)
		if err != nil {
			return nil, err
		}
		values[i] = v
	}
	return values, nil
}

// Rows paint the prompt below what it asks for.
func (p Prompt) Rows(heading string, asks []Ask, s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	rows := desk.Wrapped(st.Title, heading, w)
	return append(rows, strings.Split(p.form.View(p.fields(asks), w, max(1, h-len(rows)), st), "\n")...)
}

// Text is what stands in a field and could be read, "" for one that is not there.
func (p Prompt) Text(i int) string {
	if i >= len(p.texts) {
		return ""
	}
	return p.texts[i]
}
