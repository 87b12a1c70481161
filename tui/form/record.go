package form

import (
	"reflect"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// Record is what a form edits: one thing of the job. Records are plain values.
type Record interface {
	// ID says which thing it is, for people too: "obstruction 3".
	ID() string
	// Fields are the fields as the job has them. Held are texts the job has not taken: a choice among them may
	// ask for other fields.
	Fields(s desk.State, held map[string]string) []Field
	// Set returns the job with all these texts, and the record to go on with; or why the job does not take them. Of the state,
	// Faults are those of the job.
	Set(s desk.State, texts map[string]string) (vehicles.Job, Record, error)
}

// Fault is why texts are not taken, and the key of the field that this is about: of a record's field, or from Try of the
// job file; then There says the same for where the field itself says which thing it is of.
type Fault struct{ Key, Why, There string }

func (f Fault) Error() string { return f.Why }

// Faults are why several texts are not taken; the first speaks.
type Faults []Fault

func (f Faults) Error() string { return f[0].Why }

// Unwrap returns them one by one.
func (f Faults) Unwrap() []error {
	out := make([]error, len(f))
	for i, fault := range f {
		out[i] = fault
	}
	return out
}

// Noter is a record that says what its texts come to, by field. That may take a reduction of what is not in the job yet,
// and so is asked for only when it is painted.
type Noter interface {
	Notes(s desk.State) map[string]string
}

// Settler is a record with fields that are settings of the workshop and not values of the job.
type Settler interface {
	// Settings returns the settings with the text of a field; mine is false for a field of the job.
	Settings(s desk.State, key, text string) (set desk.Settings, mine bool)
}

// Editor is a form on a record. The texts that the job refuses are kept in the job. It is a plain value.
type Editor struct {
	form   Form
	record Record
	from   origin
}

// Record is what is being edited, or was last.
func (e Editor) Record() Record { return e.record }

// Typing says whether a field has the keys.
func (e Editor) Typing() bool { return e.record != nil && e.form.Typing() }

// On is the key of the field that has the keys, "" for none.
func (e Editor) On() string {
	if !e.Typing() {
		return ""
	}
	return strings.TrimPrefix(e.form.On(), e.record.ID()+"/")
}

// Edited says whether something was typed into the field that has the keys since it was entered.
func (e Editor) Edited(s desk.State) bool {
	return e.from.record != nil && e.from.key == e.form.key && !reflect.DeepEqual(e.from.job, s.Job)
}

// Show puts a record before the fitter without giving the keys to a field.
func (e Editor) Show(record Record) Editor {
	e.record = record
	return e.Close()
}

// Open gives the keys to a field of a record, the first one for "".
func (e Editor) Open(record Record, key string, s desk.State) Editor {
	e = e.Show(record)
	f, fields := e.on(record, s)
	e.form = f.Open(record.ID()+"/"+key, fields)
	return e
}

// Close takes the keys from the form.
func (e Editor) Close() Editor {
	e.form, e.from = e.form.Close(), origin{}
	return e
}

// Update answers a key or a pasted text while a field has the keys.
func (e Editor) Update(msg tea.KeyMsg, s desk.State) (Editor, desk.Change, Event) {
	if msg.Paste {
		return e.paste(msg.Runes, s)
	}
	return e.answer(s, func(f Form, fields []Field) (Form, Event) { return f.Update(msg, fields) })
}

// Tap answers a tap on the form as painted into w columns and h rows.
func (e Editor) Tap(x, y, w, h int, s desk.State) (Editor, desk.Change, Event) {
	return e.answer(s, func(f Form, fields []Field) (Form, Event) { return f.Tap(e.noted(fields, s), w, h, x, y) })
}

// answer has the form answer, and puts an edited text into the job or keeps it there as refused.
func (e Editor) answer(s desk.State, ask func(Form, []Field) (Form, Event)) (Editor, desk.Change, Event) {
	e = e.looked(s)
	was := e
	f, fields := e.on(e.record, s)
	f, event := ask(f, fields)
	change := desk.Change{Say: event.Say}
	if key, label := f.refused(fields); event.Past && key != "" { // behind the last field it would be forgotten
		e.form = f.Open(key, fields)
		return e, desk.Change{Say: label + " was refused, and counts for nothing: mend it here. Esc leaves it."}, Event{Key: event.Key}
	}
	if event.Left {
		change.Say = e.Leaving(s)
	} else if event.Past {
		change.Say = e.reminder(s)
	}
	if e.form = f; event.Left {
		e = e.Close()
	}
	if !event.Edited {
		return e, change, event
	}
	field := fields[index(fields, event.Key)]
	done, err := e.enter([]Put{{event.Key, field.Label, event.Text}}, s)
	if err != nil {
		return was, desk.Change{Say: err.Error()}, Event{Key: event.Key}
	}
	id := e.record.ID()
	if done.change.Job != nil {
		done.change.Step, done.change.Anew = id+" "+field.Label, !e.from.begun
		done.editor.from.begun = true
	}
	return done.editor.goneOn(id, strings.TrimPrefix(event.Key, id+"/"), event, done.state), done.change, event
}

// goneOn goes on after a text was put into the job, or from a field that a letter chose. The record was called was.
func (e Editor) goneOn(was, key string, event Event, s desk.State) Editor {
	now := e.record.ID()
	if e.form.key != "" {
		e.form.key = now + "/" + strings.TrimPrefix(e.form.key, was+"/")
	}
	e.from.key, e.from.seen = now+"/"+key, s.Job
	f, fields := e.on(e.record, s)
	if e.form = f.sure(fields); event.Picked {
		e.form = e.form.Onward(fields)
		e.form.chose = event.Text
	}
	return e
}

// View paints the form into h rows of w columns.
func (e Editor) View(s desk.State, w, h int) string {
	if e.record == nil {
		return desk.Fit("", w, h)
	}
	f, fields := e.on(e.record, s)
	return f.View(e.noted(fields, s), w, h, s.Settings.Styles())
}

// noted are the fields with what their texts come to.
func (e Editor) noted(fields []Field, s desk.State) []Field {
	noter, ok := e.record.(Noter)
	if !ok {
		return fields
	}
	notes, prefix := noter.Notes(s), e.record.ID()+"/"
	for i := range fields {
		if note, says := notes[strings.TrimPrefix(fields[i].Key, prefix)]; says {
			fields[i].Note = note
		}
	}
	return fields
}

// Try places all that an edited job measures. The error is the first thing wrong with it that is not wrong with the job on
// the desk, a Fault; that matching points do not fit each other is none.
func Try(s desk.State, after vehicles.Job) (vehicles.Plan, error) {
	plan, faults := rules.ReduceAfter(&s.Plan, after, s.Book)
	for _, fault := range faults {
		known := func(f vehicles.Fault) bool { return f.Text == fault.Text } // its key moves when the list does
		if !desk.Misfit(fault) && !slices.ContainsFunc(s.Faults, known) {
			return plan, Fault{fault.Key, fault.Text, fault.There()}
		}
	}
	return plan, nil
}
