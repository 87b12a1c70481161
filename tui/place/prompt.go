package place

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
)

// asked is what a prompt asks for.
type asked uint8

const (
	nothing asked = iota
	cutAt         // where the cut is to be, as the tape reads from below
	drilled       // where the pilot hole came out, as the tape reads from below
	collar        // the collar's depth, the hole's width, and how wide what burns is cut back
	pointAt       // where a point of a run is to be
	pipe          // a run's width and bend
)

// prompt is a few fields to be typed and taken together.
type prompt struct {
	kind  asked
	texts []string // what stands in the fields and could be read
	form  form.Form
}

// ask opens a prompt.
func (m screen) ask(kind asked, s desk.State) screen {
	m.prompt = prompt{kind: kind, texts: m.texts(kind, s)}
	fields := m.fields(s)
	m.prompt.form = m.prompt.form.Open(fields[0].Key, fields)
	return m
}

// typed answers a key while the fields have the keys.
func (m screen) typed(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	fields := m.fields(s)
	next, event := m.prompt.form.Update(k, fields)
	m.prompt.form = next
	switch {
	case event.Left:
		m.prompt = prompt{}
	case event.Edited:
		return m.edited(event.Key, event.Text, s), desk.Change{}
	case event.Past && m.prompt.form.Wrong(fields):
		return m, desk.Change{Say: "Not taken: put the text right first, or leave with Esc."}
	case event.Past:
		return m.take(s)
	}
	return m, desk.Change{Say: event.Say}
}

// pasted puts pasted lines into the fields.
func (m screen) pasted(text []rune, s desk.State) (screen, desk.Change) {
	fields := m.fields(s)
	next, put, err := m.prompt.form.Paste(text, func([]form.Put) []form.Field { return fields })
	if err != nil {
		return m, desk.Change{Say: err.Error()}
	}
	m.prompt.form = next
	for _, p := range put {
		m = m.edited(p.Key, p.Text, s)
	}
	return m, desk.Change{}
}

// edited keeps a text of a field that can be read, and says what is wrong with another.
func (m screen) edited(key, text string, s desk.State) screen {
	i := slices.IndexFunc(m.fields(s), func(f form.Field) bool { return f.Key == key })
	_, err := m.read(i, text, s)
	m.prompt.texts = slices.Clone(m.prompt.texts)
	if m.prompt.texts[i] = text; err != nil {
		m.prompt.texts[i] = "" // no part of it that could be read stays
		m.prompt.form = m.prompt.form.Refused(m.fields(s)[i], text, err.Error())
		return m
	}
	m.prompt.form = m.prompt.form.Took(key, m.fields(s))
	return m
}

// take puts what was typed into the job, or says why it can't be.
func (m screen) take(s desk.State) (screen, desk.Change) {
	change, err := m.taken(s)
	if err != nil {
		return m, desk.Change{Say: err.Error()}
	}
	m.prompt = prompt{}
	return m, change
}

// alongVan stands for the name of the field of a reading from the datum line.
const alongVan = "along the van"

// labels are the fields of each prompt.
var labels = map[asked][]string{
	cutAt:   {alongVan, "across"},
	drilled: {alongVan, "across"},
	collar:  {"collar depth", "hole across", "cut back to"},
	pointAt: {alongVan, "across", "below floor"},
	pipe:    {"pipe across", "bend radius"},
}

// cutBack is the collar's field for how wide what burns is cut back.
const cutBack = 2

// fields are those of the prompt, with what they come to. A plain number is mm, whatever the units shown.
func (m screen) fields(s desk.State) []form.Field {
	fields := make([]form.Field, len(labels[m.prompt.kind]))
	for i, label := range labels[m.prompt.kind] {
		fields[i] = form.Field{Key: label, Label: strings.Replace(label, alongVan, "from the "+desk.Datum(&s.Job.Datum, 16), 1), Text: m.prompt.texts[i], Unit: "mm", Blank: m.blank(i, s), Note: m.note(i, s)}
	}
	if m.prompt.kind == collar {
		fields[cutBack].Pass = true // steel has nothing to be cut back
	}
	return fields
}

// axis is the axis of a field: the second of a place is read across the van.
func (m screen) axis(i int) survey.Axis {
	if i == 1 && m.prompt.kind != collar && m.prompt.kind != pipe {
		return survey.Y
	}
	return survey.X
}

// heading says what a prompt asks for.
func (m screen) heading() string {
	switch m.prompt.kind {
	case cutAt:
		return "Where is the cut to be? As the tape reads from below."
	case drilled:
		return "Where did the pilot hole come out? As the tape reads from below. Both blank: not drilled."
	case collar:
		return "How deep is the collar, how wide the hole, how wide are wood, foam and lining cut back?"
	case pointAt:
		return "Where is the point to be? As the tape reads from below."
	}
	return "How wide is the pipe, and how tight may it bend?"
}
