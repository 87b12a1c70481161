package form

import (
	"errors"
	"reflect"
	"slices"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// A text that the job refuses is kept in the job itself, with the reason: so it is saved, undone and told of like
// anything else there. The value it was to replace is again what it was when the field was entered, and never a part of
// the refused text that could be read.

// Called is a sheet whose ID says where it is and not what it is.
type Called interface {
	// Called is what refused texts of the sheet are kept under, "" while there is nothing to keep them for, and its name.
	Called(j vehicles.Job) (of, name string)
}

// Beginner is a sheet of something that may not be there yet.
type Beginner interface {
	// Begun returns the job with the thing begun, and its sheet then.
	Begun(j vehicles.Job) (vehicles.Job, Sheet)
}

// called is what refused texts of a sheet are kept under, and its name.
func called(sheet Sheet, j vehicles.Job) (of, name string) {
	if c, ok := sheet.(Called); ok {
		return c.Called(j)
	}
	return sheet.ID(), sheet.ID()
}

// Refused are the texts of a sheet that the job did not take.
func Refused(sheet Sheet, j vehicles.Job) []vehicles.Refusal {
	var out []vehicles.Refusal
	all := j.Refused()
	if len(all) == 0 {
		return nil
	}
	of, _ := called(sheet, j)
	for _, r := range all {
		if r.Of == of && of != "" {
			out = append(out, r)
		}
	}
	return out
}

// held are the texts of a sheet that the job did not take, by key.
func held(sheet Sheet, j vehicles.Job) map[string]string {
	out := map[string]string{}
	for _, r := range Refused(sheet, j) {
		out[r.Field] = r.Text
	}
	return out
}

// taken is the job after, in which the sheet took these texts: they are refused no more. What it still refuses is kept
// under what the sheet is called now.
func taken(before, after vehicles.Job, was, next Sheet, texts map[string]string) vehicles.Job {
	all := after.Refused()
	if len(all) == 0 {
		return after
	}
	of, _ := called(was, before)
	now, name := called(next, after)
	var rest []vehicles.Refusal
	for _, r := range all {
		_, took := texts[r.Field]
		switch {
		case r.Of != of || of == "":
		case took:
			continue
		default:
			r.Of, r.Name = now, name
		}
		rest = append(rest, r)
	}
	return after.WithRefused(rest)
}

// origin is where the field that has the keys was entered.
type origin struct {
	key       string
	job, seen vehicles.Job // as the field was entered; as the last key left it
	sheet     Sheet
}

// looked notes where the field was entered, afresh when an undo has changed the job since.
func (e Editor) looked(s desk.State) Editor {
	if e.from.sheet == nil || e.from.key != e.form.key || !reflect.DeepEqual(e.from.seen, s.Job) {
		e.from = origin{e.form.key, s.Job, s.Job, e.sheet}
	}
	return e
}

// refused returns the job as the field was entered, with the text kept as refused, and the sheet as it was then.
func (e Editor) refused(key, label, text string, s desk.State) (vehicles.Job, Sheet) {
	job, sheet := e.from.job, e.from.sheet
	if b, ok := sheet.(Beginner); ok {
		job, sheet = b.Begun(job)
	}
	of, name := called(sheet, job)
	mine := func(r vehicles.Refusal) bool { return r.Of == of && r.Field == key }
	all := append(slices.DeleteFunc(job.Refused(), mine), vehicles.Refusal{Of: of, Name: name, Field: key, Label: label, Text: text})
	s.Job = job.WithRefused(all)
	texts := held(sheet, s.Job)
	for i, r := range all {
		if r.Of == of {
			all[i].Why, all[i].About = reason(sheet, r.Field, texts, s)
		}
	}
	return job.WithRefused(all), sheet
}

// reason says why a text is refused: why all of the sheet's refused texts together are, or when another of them is to
// blame for that, why it is alone. About is the field that this is about, when that is not one of theirs.
func reason(sheet Sheet, key string, texts map[string]string, s desk.State) (why, about string) {
	_, _, err := sheet.Set(s, texts)
	var fault Fault
	if errors.As(err, &fault) && fault.Key != key {
		if _, blamed := texts[fault.Key]; blamed {
			if _, _, alone := sheet.Set(s, map[string]string{key: texts[key]}); alone != nil {
				err = alone
			}
		}
	}
	if err == nil {
		return "not taken yet: type it again", ""
	}
	if fault = (Fault{}); errors.As(err, &fault) && fault.Key != key {
		about = fault.Key
	}
	return err.Error(), about
}

// on are the form and the fields of a sheet, with what the job refused of it. Field keys are made unlike those of any
// other sheet. A refused text of a field that the form has no more stands behind the others.
func (e Editor) on(sheet Sheet, s desk.State) (Form, []Field) {
	prefix, all := sheet.ID()+"/", Refused(sheet, s.Job)
	fields := slices.Clone(sheet.Fields(s, held(sheet, s.Job)))
	for i := range fields {
		fields[i].Key = prefix + fields[i].Key
		if fields[i].IfBlank != "" {
			fields[i].IfBlank = prefix + fields[i].IfBlank
		}
	}
	for _, r := range all {
		if index(fields, prefix+r.Field) < 0 {
			fields = append(fields, Field{Key: prefix + r.Field, Label: r.Label, Pass: true})
		}
	}
	f := e.form
	f.wrong, f.about = map[string]wrong{}, map[string]string{}
	for _, r := range all {
		why, field := r.Why, fields[index(fields, prefix+r.Field)]
		if i := index(fields, prefix+r.About); i >= 0 && r.About != "" {
			f.about[fields[i].Key] = r.Why
			if why = "see " + fields[i].Label; field.Key == f.key {
				why = fields[i].Label + ": " + r.Why
			}
		}
		f.wrong[field.Key] = wrong{r.Text, why, field.Text}
	}
	return f, fields
}

// Reminder says which texts of the sheet being edited are not in the job, "" for none.
func (e Editor) Reminder(s desk.State) string {
	if !e.Typing() {
		return ""
	}
	return vehicles.RefusedWords(Refused(e.sheet, s.Job))
}
