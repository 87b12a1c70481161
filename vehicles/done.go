package vehicles

import (
	"slices"
	"strings"
	"time"
	"unicode"
)

// Done is what is recorded of a step of the work. One that has no time is not done: somebody has noted something of it.
type Done struct {
	Step   string       // one of StepKinds; each is recorded once
	At     string       // when it was done, as Moment writes it; "" while it is not
	Value  Number       // what was measured, in the step's unit
	Due    string       // the day on which it is to be done, YYYY-MM-DD; "" for none
	Note   string       // may have several lines
	Photos List[string] // names of files, never of folders: nobody opens them
}

// Blank tells whether nothing is recorded.
func (d Done) Blank() bool {
	return d.At == "" && !d.Value.Set && d.Due == "" && d.Note == "" && len(d.Photos) == 0
}

// DoneOf is what the job records of a step, blank for nothing.
func (j *Job) DoneOf(step string) Done {
	if i := j.doneAt(step); i >= 0 {
		return j.Done[i]
	}
	return Done{Step: step}
}

func (j *Job) doneAt(step string) int {
	return slices.IndexFunc(j.Done, func(d Done) bool { return d.Step == step })
}

// WithDone returns the job with what is recorded of a step, in place of what was; a blank record takes it out. What is new is put where
// its step is in the order of the work.
func (j Job) WithDone(d Done) Job {
	i := j.doneAt(d.Step)
	switch {
	case d.Blank():
		j.Done = j.Done.Without(i)
		return j
	case i >= 0:
		j.Done = j.Done.With(i, d)
		return j
	}
	i = slices.IndexFunc(j.Done, func(o Done) bool { return StepIndex(o.Step) > StepIndex(d.Step) })
	if i < 0 {
		i = len(j.Done)
	}
	j.Done = j.Done.Insert(i, d)
	return j
}

// The forms of a moment: a day, or a day with its time, as the clock where the van stands shows it.
const (
	momentForm = "2006-01-02T15:04:05.999999999"
	localTime  = "datetime-local" // as the library names the location of a time without a zone
)

// Moment is a time as a record has it, to the minute.
func Moment(t time.Time) string { return t.Truncate(time.Minute).Format(momentForm) }

// ParseMoment reads what people write for a moment: 2026-11-27, 2026-11-27 10:15, with seconds, with a T between.
func ParseMoment(text string) (moment string, ok bool) {
	text = strings.Replace(strings.TrimSpace(text), " ", "T", 1)
	if _, err := time.Parse(time.DateOnly, text); err == nil {
		return text, true
	}
	for _, form := range []string{momentForm, "2006-01-02T15:04"} {
		if t, err := time.Parse(form, text); err == nil {
			return t.Format(momentForm), true
		}
	}
	return "", false
}

// moment reads a TOML date, or a date with a time and no zone.
func (t *table) moment(key string) string {
	value, path, ok := t.take(key, optional, "")
	if !ok {
		return ""
	}
	if at, isTime := value.(time.Time); isTime {
		switch at.Location().String() {
		case localDate:
			return at.Format(time.DateOnly)
		case localTime:
			return at.Format(momentForm)
		}
	}
	t.wrong(path, value, "a date and time like 2026-11-27T10:15:00, without quotes and without a zone; or a date alone")
	return ""
}

// WrongPhoto says why a text is no name of a photo's file, "" where it is one.
func WrongPhoto(name string) string {
	switch {
	case strings.TrimSpace(name) == "" || name != strings.TrimSpace(name) || name == "." || name == "..":
		return "the name of a file, like pilot-1.jpg"
	case strings.ContainsAny(name, `/\:,`) || strings.ContainsFunc(name, unicode.IsControl):
		return `a file's name alone, without / \ : and commas`
	}
	return ""
}

// done reads what is recorded of each step.
func (t *table) record() (list List[Done]) {
	first := map[string]int{}
	for i, s := range t.list("done") {
		d := s.recorded()
		t.r.names["done"][i] = d.Step
		if j, twice := first[d.Step]; twice && d.Step != "" {
			t.r.faults = append(t.r.faults, fault{
				key: joinKey(joinIndex("done", i), "step"), also: joinKey(joinIndex("done", j), "step"),
				text: " is recorded twice: put both into one; the first is on line ",
			})
		}
		first[d.Step] = i
		list = append(list, d)
	}
	return list
}

func (t *table) recorded() Done {
	d := Done{
		Step: t.choice("step", required, StepIDs()),
		At:   t.moment("at"), Value: t.number("value", optional, AFigure), Due: t.date("due"),
		Note: t.text("note", optional, AText, func(r rune) bool {
			return unicode.IsControl(r) && r != '\n' && r != '\t' && r != '\r'
		}),
		Photos: t.photos(),
	}
	if i := StepIndex(d.Step); i >= 0 && d.Value.Set {
		if wrong := StepKinds[i].WrongValue(d.Value.Value); wrong != "" {
			t.r.fault(joinKey(t.path, "value"), " is %s; %s", d.Value.Text(), wrong)
		}
	}
	t.done()
	return d
}

// WrongValue says why a step does not take a value, "" where it does.
func (k StepKind) WrongValue(v float64) string {
	switch {
	case !k.Measures():
		return "nothing is measured in this step: put it into note"
	case v < 0 && !k.Signed:
		return "it must be 0 or more, in " + k.Unit
	}
	return ""
}

func (t *table) photos() (names List[string]) {
	const accepted = `a list of file names ["pilot-1.jpg"]`
	value, path, ok := t.take("photos", optional, accepted)
	if !ok {
		return nil
	}
	list, isList := value.([]any)
	if !isList {
		t.wrong(path, value, accepted)
		return nil
	}
	for i, item := range list {
		name, isText := item.(string)
		if wrong := WrongPhoto(name); !isText || wrong != "" {
			t.wrong(joinIndex(path, i), item, wrong)
			continue
		}
		names = append(names, name)
	}
	return names
}

func (w *writer) record(list List[Done]) {
	for _, d := range list {
		w.list("done")
		w.text("step", d.Step)
		if d.At != "" {
			w.value("at", d.At)
		}
		w.maybe("value", d.Value)
		w.date("due", d.Due)
		w.texts("note", d.Note)
		if len(d.Photos) > 0 {
			w.value("photos", wordList(d.Photos))
		}
	}
}

// momentText is a moment as people read it: "2026-11-27 10:15".
func momentText(moment string) string {
	if t, err := time.Parse(momentForm, moment); err == nil {
		return t.Format("2006-01-02 15:04")
	}
	return moment
}

// Ago is how long before now the step was done; ok is false while it is not, where only the day is known, and of what is later than now.
func (d Done) Ago(now time.Time) (ago time.Duration, ok bool) {
	at, err := time.ParseInLocation(momentForm, d.At, now.Location())
	if err != nil || at.After(now) {
		return 0, false
	}
	return now.Sub(at), true
}

// When says when the step was done, "" while it is not.
func (d Done) When() string { return momentText(d.At) }

// String says what is recorded, in short: "2026-11-27 10:15, 12.3 V".
func (d Done) String() string {
	parts := []string{}
	if d.At != "" {
		parts = append(parts, d.When())
	}
	if d.Value.Set {
		parts = append(parts, d.Value.Text()+" "+StepUnit(d.Step))
	}
	return strings.Join(parts, ", ")
}
