package form

import (
	"cmp"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// A text that the job refuses is kept in the job itself, with the reason: so it is saved, undone and told of like
// anything else there. The value it was to replace is again what it was when the field was entered, and never a part of
// the refused text that could be read.

// Called is a record whose ID says where it is and not what it is.
type Called interface {
	// Called is what refused texts of the record are kept under, "" while there is nothing to keep them for, and its name.
	Called(j vehicles.Job) (of, name string)
}

// Beginner is a record of something that may not be there yet.
type Beginner interface {
	// Begun returns the job with the thing begun, and its record then.
	Begun(j vehicles.Job) (vehicles.Job, Record)
}

// NameOf is what refused texts of a record are kept under, and its name.
func NameOf(record Record, j vehicles.Job) (of, name string) {
	if c, ok := record.(Called); ok {
		return c.Called(j)
	}
	return record.ID(), record.ID()
}

// Refused are the texts of a record that the job did not take.
func Refused(record Record, j vehicles.Job) []vehicles.Refusal {
	if j.RefusedCount() == 0 {
		return nil
	}
	of, _ := NameOf(record, j)
	if of == "" {
		return nil
	}
	return j.RefusedOf(of)
}

// held are the texts of a record that the job did not take, by key.
func held(record Record, j vehicles.Job) map[string]string {
	out := map[string]string{}
	for _, r := range Refused(record, j) {
		out[r.Field] = r.Text
	}
	return out
}

// taken is the job after, in which the record took these texts: they are refused no more. What it still refuses is kept
// under what the record is called now.
func taken(before, after vehicles.Job, was, next Record, texts map[string]string) vehicles.Job {
	all := after.Refused()
	if len(all) == 0 {
		return after
	}
	of, _ := NameOf(was, before)
	now, name := NameOf(next, after)
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
	job, seen vehicles.Job     // as the field was entered; as the last key left it
	faults    []vehicles.Fault // of job
	record    Record
	begun     bool // something was put into the job since
}

// looked notes where the field was entered, afresh when an undo has changed the job since.
func (e Editor) looked(s desk.State) Editor {
	switch {
	case e.from.record == nil || e.from.key != e.form.key:
		e.from = origin{e.form.key, s.Job, s.Job, s.Faults, e.record, false}
	case !reflect.DeepEqual(e.from.seen, s.Job):
		e.from.job, e.from.seen, e.from.faults, e.from.record = s.Job, s.Job, s.Faults, e.record
	}
	return e
}

// errFull is for a text that is one refused too many.
var errFull = fmt.Errorf("%d texts are refused: put one right%s", vehicles.MostRefused, unchanged)

// keep returns the job with texts kept as refused, and the record then. Why is why the record takes none of them, nil where
// that is not known yet.
func keep(record Record, bad []Put, why error, s desk.State) (vehicles.Job, Record, error) {
	job := s.Job
	if b, ok := record.(Beginner); ok {
		job, record = b.Begun(job)
	}
	of, name := NameOf(record, job)
	texts, was := textsOf(bad), job.Refused()
	all := slices.DeleteFunc(slices.Clone(was), func(r vehicles.Refusal) bool {
		_, again := texts[r.Field]
		return again && r.Of == of
	})
	more := len(all) + len(bad) - len(was)
	if more > 0 && job.RefusedCount()+more > vehicles.MostRefused {
		return job, record, errFull
	}
	for _, p := range bad {
		all = append(all, vehicles.Refusal{Of: of, Name: name, Field: p.Key, Label: p.Label, Text: p.Text})
	}
	s.Job = job.WithRefused(all)
	var mine []*vehicles.Refusal
	for i := range all {
		if all[i].Of == of {
			mine = append(mine, &all[i])
		}
	}
	if len(mine) > len(bad) {
		why = nil // others are refused, too
	}
	judge(record, mine, why, s)
	return job.WithRefused(all), record, nil
}

// mostAlone is how many refused texts of a record, the newest, are judged by themselves at an edit; the others keep the reason
// they had.
const mostAlone = 8

// judge fills in why the refused texts of a record are refused: why all of them together are, or when another of them is to
// blame for that, why it is alone. About is the field that this is about, when that is not their own. Together is why all of
// them are, nil where that is not known yet.
func judge(record Record, refused []*vehicles.Refusal, together error, s desk.State) {
	texts := held(record, s.Job)
	if together == nil {
		_, _, together = record.Set(s, texts)
	}
	_, othersFault := texts[firstFault(together).Key]
	alone := 0
	for _, r := range slices.Backward(refused) {
		err := together
		switch own, found := faultOf(together, r.Field); {
		case found:
			err = own
		case othersFault && alone < mostAlone:
			alone++
			if _, _, own := record.Set(s, map[string]string{r.Field: r.Text}); own != nil {
				err = own
			}
		case othersFault && r.Why != "":
			continue
		}
		r.Why, r.About = reason(err, r.Field)
	}
}

// firstFault is the first fault of an error, an empty one for none.
func firstFault(err error) (fault Fault) {
	errors.As(err, &fault)
	return fault
}

// reason is why the text of a field is refused, and which field that is about when it is another.
func reason(err error, key string) (why, about string) {
	if err == nil {
		return "not taken yet: type it again", ""
	}
	if about = firstFault(err).Key; about == key {
		about = ""
	}
	return err.Error(), about
}

// Writing tells whether a text of a record is being written: it has the keys, and something was typed since.
func (e Editor) Writing(record Record, key string) bool {
	return e.record != nil && e.record.ID() == record.ID() && e.form.key == record.ID()+"/"+key && !e.form.input.all
}

// growing tells whether the field of that key is being written and what stands there may become a reading by what comes next: nobody is told
// of a fault in half a word.
func (f Form) growing(key string) bool {
	text := f.input.String()
	if f.key != key || text == "" || f.input.all || f.input.at < len(f.input.text) {
		return false
	}
	if _, err := survey.Typed(text, survey.Y); err == nil {
		return false // it is one: whatever is wrong with it is worth knowing
	}
	return slices.ContainsFunc(unitEnds, func(end string) bool {
		_, err := survey.Typed(text+end, survey.Y)
		return err == nil
	})
}

// unitEnds are what half a reading may go on with: a figure, the rest of a unit or of a fraction.
var unitEnds = []string{"1", "m", "n", "1\"", "/2\"", "2\""}

// on are the form and the fields of a record, with what the job refused of it.
func (e Editor) on(record Record, s desk.State) (Form, []Field) {
	prefix, all := record.ID()+"/", Refused(record, s.Job)
	fields := fieldsOf(record, s, all, nil)
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

// fieldsOf are the fields of a record with texts that it holds refused and texts put in since. Their keys are made unlike those
// of any other record. A refused text of a field that the form has no more stands behind the others.
func fieldsOf(record Record, s desk.State, refused []vehicles.Refusal, put []Put) []Field {
	prefix, texts := record.ID()+"/", map[string]string{}
	for _, r := range refused {
		texts[r.Field] = r.Text
	}
	for _, p := range put {
		texts[strings.TrimPrefix(p.Key, prefix)] = p.Text
	}
	fields := slices.Clone(record.Fields(s, texts))
	for i := range fields {
		fields[i].Key = prefix + fields[i].Key
		if fields[i].IfBlank != "" {
			fields[i].IfBlank = prefix + fields[i].IfBlank
		}
	}
	for _, r := range refused {
		if index(fields, prefix+r.Field) < 0 {
			fields = append(fields, Field{Key: prefix + r.Field, Label: r.Label, Pass: true})
		}
	}
	return fields
}

// reminder says which texts of the record being edited are not in the job, "" for none.
func (e Editor) reminder(s desk.State) string {
	if !e.Typing() {
		return ""
	}
	return vehicles.RefusedWords(Refused(e.record, s.Job))
}

// widestText is how many columns a text of a field takes at most where it is said what became of it.
const widestText = 24

// replaced says that another text stands in the field that has the keys than when it was entered, "" where none did. What is typed is kept
// however a field is left: a stray figure would stand there unseen.
func (e Editor) replaced(s desk.State) string {
	if !e.Typing() || !e.from.begun || e.from.key != e.form.key {
		return ""
	}
	was := e.stood(s)
	f, fields := e.on(e.record, s)
	i := index(fields, e.form.key)
	if i < 0 {
		return ""
	}
	now := f.standing(fields[i])
	if was == "" || now.bad || now.text == was {
		return ""
	}
	return fields[i].Label + " was " + desk.Cut(was, widestText) + " and is " + cmp.Or(desk.Cut(now.text, widestText), "blank") + " now. " +
		desk.KeyUndo.Help().Key + " takes it back."
}

// stood is what stood in the field that has the keys when it was entered, "" for a guess: to type over that is what the field is for.
func (e Editor) stood(s desk.State) string {
	s.Job, s.Faults = e.from.job, e.from.faults
	f, fields := e.on(e.from.record, s)
	i := index(fields, e.from.record.ID()+"/"+e.On())
	if i < 0 || fields[i].Guess {
		return ""
	}
	return f.standing(fields[i]).text
}

// Leaving is what is said as the field that has the keys is left: what became of a text that stood there, and what is not in the job.
func (e Editor) Leaving(s desk.State) string {
	return strings.TrimSpace(e.replaced(s) + " " + e.reminder(s))
}
