package form

import (
	"maps"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// Sheet is what a form edits: one thing of the job. Sheets are plain values.
type Sheet interface {
	// ID says which thing it is, for people too: "obstruction 3".
	ID() string
	// Fields are the fields as the job has them. Held are texts the job has not taken: a choice among them may
	// ask for other fields.
	Fields(s desk.State, held map[string]string) []Field
	// Set returns the job with all these texts, and the sheet to go on with; or why the job does not take them.
	Set(s desk.State, texts map[string]string) (vehicles.Job, Sheet, error)
}

// Fault is why texts are not taken, and the key of the field that this is about: of a sheet's field, or from Try of the
// job file.
type Fault struct{ Key, Why string }

func (f Fault) Error() string { return f.Why }

// Settler is a sheet with fields that are settings of the workshop and not values of the job.
type Settler interface {
	// Settings returns the settings with the text of a field; mine is false for a field of the job.
	Settings(s desk.State, key, text string) (set desk.Settings, mine bool)
}

// Editor is a form on a sheet. The texts that the job refuses are kept in the job. It is a plain value.
type Editor struct {
	form  Form
	sheet Sheet
	from  origin
}

// Sheet is what is being edited, or was last.
func (e Editor) Sheet() Sheet { return e.sheet }

// Typing says whether a field has the keys.
func (e Editor) Typing() bool { return e.sheet != nil && e.form.Typing() }

// On is the key of the field that has the keys, "" for none.
func (e Editor) On() string {
	if !e.Typing() {
		return ""
	}
	return strings.TrimPrefix(e.form.On(), e.sheet.ID()+"/")
}

// Show puts a sheet before the fitter without giving the keys to a field.
func (e Editor) Show(sheet Sheet) Editor {
	e.sheet = sheet
	return e.Close()
}

// Open gives the keys to a field of a sheet, the first one for "".
func (e Editor) Open(sheet Sheet, key string, s desk.State) Editor {
	e = e.Show(sheet)
	f, fields := e.on(sheet, s)
	e.form = f.Open(sheet.ID()+"/"+key, fields)
	return e
}

// Close takes the keys from the form.
func (e Editor) Close() Editor {
	e.form, e.from = e.form.Close(), origin{}
	return e
}

// Update answers a key while a field has the keys.
func (e Editor) Update(msg tea.KeyMsg, s desk.State) (Editor, desk.Change, Event) {
	return e.answer(s, func(f Form, fields []Field) (Form, Event) { return f.Update(msg, fields) })
}

// Tap answers a tap on the form as painted into w columns and h rows.
func (e Editor) Tap(x, y, w, h int, s desk.State) (Editor, desk.Change, Event) {
	return e.answer(s, func(f Form, fields []Field) (Form, Event) { return f.Tap(fields, w, h, x, y) })
}

// answer has the form answer, and puts an edited text into the job or keeps it there as refused.
func (e Editor) answer(s desk.State, ask func(Form, []Field) (Form, Event)) (Editor, desk.Change, Event) {
	e = e.looked(s)
	f, fields := e.on(e.sheet, s)
	f, event := ask(f, fields)
	var change desk.Change
	if event.Left || event.Past {
		change.Say = e.Reminder(s)
	}
	if e.form = f; event.Left {
		e = e.Close()
	}
	if !event.Edited {
		return e, change, event
	}
	field := fields[index(fields, event.Key)]
	id := e.sheet.ID()
	key := strings.TrimPrefix(event.Key, id+"/")
	if settler, ok := e.sheet.(Settler); ok {
		if set, mine := settler.Settings(s, key, event.Text); mine {
			s.Settings = set
			return e.goneOn(id, key, event, s), desk.Change{Settings: &set}, event
		}
	}
	job, next, err := e.set(key, event.Text, s)
	if err != nil {
		job, next = e.refused(key, field.Label, event.Text, s)
	}
	s.Job, e.sheet = job, next
	return e.goneOn(id, key, event, s), desk.Change{Job: &job, Step: id + " " + field.Label}, event
}

// goneOn goes on after a text was put into the job, or from a field that a letter chose. The sheet was called was.
func (e Editor) goneOn(was, key string, event Event, s desk.State) Editor {
	now := e.sheet.ID()
	if e.form.key != "" {
		e.form.key = now + "/" + strings.TrimPrefix(e.form.key, was+"/")
	}
	e.from.key, e.from.seen = now+"/"+key, s.Job
	f, fields := e.on(e.sheet, s)
	if e.form = f.sure(fields); event.Picked {
		e.form = e.form.Onward(fields)
	}
	return e
}

// set tries a new text together with texts the job has not taken before: two edges can often only be moved
// together. The texts that are taken are refused no more. The error is why the new text alone is not taken.
func (e Editor) set(key, text string, s desk.State) (job vehicles.Job, next Sheet, err error) {
	held := held(e.sheet, s.Job)
	delete(held, key)
	tries := []map[string]string{held}
	for _, other := range slices.Sorted(maps.Keys(held)) {
		tries = append(tries, map[string]string{other: held[other]})
	}
	for _, texts := range append(tries, map[string]string{}) {
		texts[key] = text
		if job, next, err = e.sheet.Set(s, texts); err == nil {
			return taken(s.Job, job, e.sheet, next, texts), next, nil
		}
	}
	return job, next, err
}

// View paints the form into h rows of w columns.
func (e Editor) View(s desk.State, w, h int) string {
	if e.sheet == nil {
		return desk.Fit("", w, h)
	}
	f, fields := e.on(e.sheet, s)
	return f.View(fields, w, h, s.Settings.Styles())
}

// Try returns the first thing wrong with a job that was not wrong with the one before it, a Fault.
func Try(before, after vehicles.Job) error {
	_, old := vehicles.Reduce(before)
	_, now := vehicles.Reduce(after)
	for _, fault := range now {
		known := func(f vehicles.Fault) bool { return f.Text == fault.Text } // its key moves when the list does
		if !slices.ContainsFunc(old, known) {
			return Fault{fault.Key, fault.Text}
		}
	}
	return nil
}
