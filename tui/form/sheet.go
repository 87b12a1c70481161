package form

import (
	"errors"
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

// Settler is a sheet with fields that are settings of the workshop and not values of the job.
type Settler interface {
	// Settings returns the settings with the text of a field; mine is false for a field of the job.
	Settings(s desk.State, key, text string) (set desk.Settings, mine bool)
}

// Editor is a form on a sheet. What fields of other sheets refused is kept. It is a plain value.
type Editor struct {
	form  Form
	sheet Sheet
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

// fields are the fields of a sheet, their keys made unlike those of any other sheet.
func (e Editor) fields(sheet Sheet, s desk.State) []Field {
	prefix := sheet.ID() + "/"
	fields := slices.Clone(sheet.Fields(s, e.held(sheet)))
	for i := range fields {
		fields[i].Key = prefix + fields[i].Key
		if fields[i].IfBlank != "" {
			fields[i].IfBlank = prefix + fields[i].IfBlank
		}
	}
	return fields
}

// held are the texts of a sheet that the job did not take.
func (e Editor) held(sheet Sheet) map[string]string {
	out := map[string]string{}
	for key, w := range e.form.wrong {
		if own, mine := strings.CutPrefix(key, sheet.ID()+"/"); mine {
			out[own] = w.text
		}
	}
	return out
}

// Show puts a sheet before the fitter without giving the keys to a field.
func (e Editor) Show(sheet Sheet) Editor {
	e.form, e.sheet = e.form.Close(), sheet
	return e
}

// Open gives the keys to a field of a sheet, the first one for "".
func (e Editor) Open(sheet Sheet, key string, s desk.State) Editor {
	e.sheet = sheet
	e.form = e.form.Close().Open(sheet.ID()+"/"+key, e.fields(sheet, s))
	return e
}

// Close takes the keys from the form.
func (e Editor) Close() Editor {
	e.form = e.form.Close()
	return e
}

// Forget drops the refused texts of a sheet.
func (e Editor) Forget(sheet Sheet) Editor {
	e.form.wrong = maps.Clone(e.form.wrong)
	maps.DeleteFunc(e.form.wrong, func(key string, _ wrong) bool { return strings.HasPrefix(key, sheet.ID()+"/") })
	return e
}

// ForgetAll drops all refused texts: the things they were typed for have changed places.
func (e Editor) ForgetAll() Editor {
	e.form.wrong = nil
	return e
}

// Wrong says whether a sheet holds a text that the job did not take.
func (e Editor) Wrong(sheet Sheet, s desk.State) bool {
	return len(e.held(sheet)) > 0 && e.form.Wrong(e.fields(sheet, s))
}

// Update answers a key while a field has the keys.
func (e Editor) Update(msg tea.KeyMsg, s desk.State) (Editor, desk.Change, Event) {
	var event Event
	fields := e.fields(e.sheet, s)
	e.form, event = e.form.Update(msg, fields)
	return e.answer(event, fields, s)
}

// Tap answers a tap on the form as painted into w columns and h rows.
func (e Editor) Tap(x, y, w, h int, s desk.State) (Editor, desk.Change, Event) {
	var event Event
	fields := e.fields(e.sheet, s)
	e.form, event = e.form.Tap(fields, w, h, x, y)
	return e.answer(event, fields, s)
}

// answer puts an edited text into the job, or keeps it with the reason why not.
func (e Editor) answer(event Event, fields []Field, s desk.State) (Editor, desk.Change, Event) {
	if !event.Edited {
		return e, desk.Change{}, event
	}
	field := fields[index(fields, event.Key)]
	id := e.sheet.ID()
	key := strings.TrimPrefix(event.Key, id+"/")
	if settler, ok := e.sheet.(Settler); ok {
		if set, mine := settler.Settings(s, key, event.Text); mine {
			s.Settings = set
			return e.goneOn(id, event, []string{key}, s), desk.Change{Settings: &set}, event
		}
	}
	job, next, took, err := e.set(key, event.Text, s)
	if err != nil {
		e.form = e.form.Refused(field, event.Text, err.Error())
		if event.Picked {
			e.form = e.form.Onward(e.fields(e.sheet, s))
		}
		return e, desk.Change{}, event
	}
	s.Job, e.sheet = job, next
	return e.goneOn(id, event, took, s), desk.Change{Job: &job, Step: id + " " + field.Label}, event
}

// goneOn notes which texts were taken, and goes on from a field that a letter chose. The sheet was called was.
func (e Editor) goneOn(was string, event Event, took []string, s desk.State) Editor {
	fields := e.fields(e.sheet, s)
	for _, key := range took {
		e.form = e.form.Took(was+"/"+key, fields)
	}
	if now := e.sheet.ID(); now != was {
		e.form = e.form.Open(now+"/"+strings.TrimPrefix(e.form.On(), was+"/"), fields)
	}
	if event.Picked {
		e.form = e.form.Onward(fields)
	}
	return e
}

// set tries a new text together with texts the job has not taken before: two edges can often only be moved
// together. It returns the keys of the texts taken, and otherwise why the new text alone is not.
func (e Editor) set(key, text string, s desk.State) (job vehicles.Job, next Sheet, took []string, err error) {
	held := e.held(e.sheet)
	delete(held, key)
	tries := []map[string]string{held, {}}
	for _, other := range slices.Sorted(maps.Keys(held)) {
		tries = append(tries, map[string]string{other: held[other]})
	}
	tries[1], tries[len(tries)-1] = tries[len(tries)-1], tries[1] // the new text alone comes last
	for _, texts := range tries {
		texts[key] = text
		if job, next, err = e.sheet.Set(s, texts); err == nil {
			return job, next, slices.Collect(maps.Keys(texts)), nil
		}
	}
	return job, next, nil, err
}

// View paints the form into h rows of w columns.
func (e Editor) View(s desk.State, w, h int) string {
	if e.sheet == nil {
		return desk.Fit("", w, h)
	}
	return e.form.View(e.fields(e.sheet, s), w, h, s.Settings.Styles())
}

// Try returns the first thing wrong with a job that was not wrong with the one before it.
func Try(before, after vehicles.Job) error {
	_, old := vehicles.Reduce(before)
	_, now := vehicles.Reduce(after)
	for _, fault := range now {
		known := func(f vehicles.Fault) bool { return f.Text == fault.Text } // its key moves when the list does
		if !slices.ContainsFunc(old, known) {
			return errors.New(fault.Text)
		}
	}
	return nil
}
