package form

import (
	"fmt"
	"maps"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// Form is which field has the keys and what is being typed. It is a plain value.
type Form struct {
	key   string // the field that has the keys; "" for none
	at    int    // where that field stood
	input typing
	known standing          // what stood in that field when the form last looked
	wrong map[string]wrong  // by key; never edited in place
	about map[string]string // by key: why texts of other fields were refused; never edited in place
	chose string            // what a letter chose just now, and went on from
}

// standing is a text in a field, and whether it was refused.
type standing struct {
	text string
	bad  bool
}

// wrong is a text the job did not take.
type wrong struct{ text, why, known string }

// Event is what a message came to.
type Event struct {
	Key    string // the field it is about
	Text   string // with Edited: its new text
	Edited bool
	Picked bool   // with Edited: a letter chose it, and the form may go on to the next field
	Past   bool   // Enter in the last field
	Left   bool   // no field has the keys any more
	Say    string // why nothing was taken
}

// Typing says whether a field has the keys.
func (f Form) Typing() bool { return f.key != "" }

// On is the key of the field that has the keys, "" for none.
func (f Form) On() string { return f.key }

// Wrong says whether any field holds a text that the job did not take.
func (f Form) Wrong(fields []Field) bool {
	for _, field := range fields {
		if _, bad := f.wrongAt(field); bad {
			return true
		}
	}
	return false
}

// Waits begins why a text is refused that waits for another field.
const Waits = "waits for "

// refused is the first field whose text was refused, and not because it waits for another; "" for none.
func (f Form) refused(fields []Field) (key, label string) {
	for _, field := range fields {
		if w, bad := f.wrongAt(field); bad && !strings.HasPrefix(w.why, Waits) {
			return field.Key, field.Label
		}
	}
	return "", ""
}

// wrongAt returns the refused text of a field, unless the job has come to hold something else since.
func (f Form) wrongAt(field Field) (wrong, bool) {
	w, bad := f.wrong[field.Key]
	return w, bad && w.known == field.Text
}

// Open gives the keys to the field of that key, or to the first when it is not there.
func (f Form) Open(at string, fields []Field) Form {
	return f.open(max(index(fields, at), 0), fields)
}

// open gives the keys to field i, if there is one.
func (f Form) open(i int, fields []Field) Form {
	if i < 0 || i >= len(fields) {
		return f
	}
	field := fields[i]
	f.key, f.at, f.known = field.Key, i, f.standing(field)
	f.input = typingOf(f.known.text).selected()
	return f
}

// standing is what stands in a field, and whether it was refused.
func (f Form) standing(field Field) standing {
	if w, bad := f.wrongAt(field); bad {
		return standing{w.text, true}
	}
	return standing{field.Text, false}
}

// AtEnd drops the selection: the cursor stands at the end of the text.
func (f Form) AtEnd() Form {
	f.input.all = false
	return f
}

// Close takes the keys from the form. Refused texts stay.
func (f Form) Close() Form {
	f.key = ""
	return f
}

// Took tells the form that the job took a field's text: fields are those of the job after it.
func (f Form) Took(key string, fields []Field) Form {
	if _, was := f.wrong[key]; was {
		f.wrong = maps.Clone(f.wrong)
		delete(f.wrong, key)
	}
	return f.sure(fields)
}

// sure is the form after a look at fields that its own texts were put into: what is being typed stays as it is.
func (f Form) sure(fields []Field) Form {
	if i := index(fields, f.key); i >= 0 {
		f.known, f.at = f.standing(fields[i]), i
	}
	return f
}

// Refused tells the form that the job did not take a text of the field of that key, and why.
func (f Form) Refused(field Field, text, why string) Form {
	m := maps.Clone(f.wrong)
	if m == nil {
		m = map[string]wrong{}
	}
	m[field.Key] = wrong{text, why, field.Text}
	f.wrong = m
	if f.key == field.Key {
		f.known = f.standing(field)
	}
	return f
}

// looked is the form after a look at the fields as they are now: an undo may have changed the text under it, or
// taken its field away.
func (f Form) looked(fields []Field) Form {
	if f.key == "" {
		return f
	}
	i := index(fields, f.key)
	switch {
	case len(fields) == 0:
		return f.Close()
	case i < 0:
		return f.open(min(f.at, len(fields)-1), fields)
	case f.standing(fields[i]) != f.known:
		return f.open(i, fields)
	}
	return f
}

// Update answers a key that belongs to the form. The screen then says Took or Refused to what was edited.
func (f Form) Update(msg tea.KeyMsg, fields []Field) (Form, Event) {
	chose := f.chose
	f.chose = ""
	f = f.looked(fields)
	i := index(fields, f.key)
	if i < 0 {
		return f, Event{}
	}
	if why := f.slip(msg, fields[i], chose); why != "" {
		return f, Event{Key: f.key, Say: why}
	}
	switch msg.String() {
	case "esc":
		left := f.key
		return f.Close(), Event{Key: left, Left: true}
	case "enter":
		return f.entered(fields)
	case KeySo:
		if fields[i].Guess && f.input.all {
			return f.measured(fields)
		}
	case "down", "tab":
		return f.open(i+1, fields), Event{Key: f.key}
	case "up", "shift+tab":
		return f.open(i-1, fields), Event{Key: f.key}
	}
	switch {
	case len(fields[i].Choices) > 0:
		return f.choose(msg, fields)
	case fields[i].Nudge != nil && (msg.Type == tea.KeyLeft || msg.Type == tea.KeyRight):
		return f.nudged(msg, fields[i])
	}
	return f.typed(msg)
}

// nudged changes the text by a step.
func (f Form) nudged(msg tea.KeyMsg, field Field) (Form, Event) {
	by := 1
	if msg.Type == tea.KeyLeft {
		by = -1
	}
	text := field.Nudge(field.Text, by)
	f.input = typingOf(text).selected()
	return f, Event{Key: f.key, Text: text, Edited: true}
}

// KeySo says of a guess that it was measured just so: whoever only goes on has measured nothing.
const KeySo = "y"

// measured takes the guess in the field that has the keys as measured, and goes on.
func (f Form) measured(fields []Field) (Form, Event) {
	text := fields[f.at].Text
	f, e := f.next(fields)
	e.Text, e.Edited = text, true
	return f, e
}

// entered goes on from a field.
func (f Form) entered(fields []Field) (Form, Event) {
	here := fields[f.at]
	if here.Must && here.chosen() < 0 {
		return f, Event{Key: f.key, Say: here.Label + " comes first: press one of the letters shown."}
	}
	return f.next(fields)
}

// next goes on from a field; from the last, it says so.
func (f Form) next(fields []Field) (Form, Event) {
	was := f.key
	f = f.Onward(fields)
	return f, Event{Key: was, Past: f.key == was}
}

// Onward goes on to the next field that is not passed by, from one that is to the next of all, and stays in the last.
func (f Form) Onward(fields []Field) Form {
	here := fields[f.at]
	if here.IfBlank != "" && strings.TrimSpace(f.input.String()) == "" {
		return f.Open(here.IfBlank, fields)
	}
	for i := f.at + 1; i < len(fields); i++ {
		if !fields[i].Pass || here.Pass && len(here.Choices) == 0 { // whoever went to what is passed by goes through the rest of it
			return f.open(i, fields)
		}
	}
	return f
}

// choose answers a key in a field of choices: a letter chooses and goes on, or stays where several choices have it, arrows
// choose and stay.
func (f Form) choose(msg tea.KeyMsg, fields []Field) (Form, Event) {
	field := fields[f.at]
	if w, bad := f.wrongAt(field); bad {
		field.Text = w.text
	}
	pick := Event{Key: field.Key, Edited: true}
	switch {
	case msg.Type == tea.KeyLeft:
		pick.Text = field.step(-1)
	case msg.Type == tea.KeyRight || msg.Type == tea.KeySpace:
		pick.Text = field.step(1)
	case msg.Type == tea.KeyRunes && len(msg.Runes) == 1:
		c, alone, found := field.byLetter(msg.Runes[0])
		if !found {
			return f, Event{Key: field.Key, Say: fmt.Sprintf("%q chooses nothing here: %s takes one of the letters shown.", msg.String(), field.Label)}
		}
		pick.Text, pick.Picked = c.Name, alone
	default:
		return f, Event{Key: field.Key}
	}
	return f, pick
}

// typed passes a key on to the line being typed.
func (f Form) typed(msg tea.KeyMsg) (Form, Event) {
	before := f.input.String()
	input, err := f.input.press(msg)
	if err != nil {
		return f, Event{Key: f.key, Say: err.Error()}
	}
	f.input = input
	now := f.input.String()
	return f, Event{Key: f.key, Text: now, Edited: now != before}
}
