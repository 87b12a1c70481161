package work

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// stepRecord is the form of a step, and the list that it was found in.
type stepRecord struct {
	id   string
	list work.List
}

// records are the rows: the steps, what is recorded of no step of the job, then what was made.
func records(s desk.State) []form.Record {
	list := s.WorkSteps()
	out := make([]form.Record, 0, len(list))
	for i := range list {
		out = append(out, stepRecord{list[i].ID, list})
	}
	for _, d := range list.Elsewhere(&s.Job) {
		out = append(out, stepRecord{d.Step, list})
	}
	return append(out, builtRecords(&s.Job)...)
}

func (r stepRecord) kind() vehicles.StepKind { return kindOf(r.id) }

// Name is what the step is called.
func (r stepRecord) Name() string { return r.kind().Name() }

func (r stepRecord) dated() bool {
	i := r.list.Index(r.id)
	return i >= 0 && r.list[i].Dated
}

// ID says which step it is.
func (r stepRecord) ID() string { return "step " + r.Name() }

// Fields are what is recorded of the step.
func (r stepRecord) Fields(s desk.State, held map[string]string) []form.Field {
	return r.slots().Fields(s, held)
}

// Set puts texts into the job.
func (r stepRecord) Set(s desk.State, texts map[string]string) (vehicles.Job, form.Record, error) {
	job, err := r.slots().Set(s, texts)
	return job, r, err
}

// slots are the step's values: first what Enter goes through.
func (r stepRecord) slots() (slots form.Slots) {
	if k := r.kind(); k.Measures() {
		slots = append(slots, r.value(k))
	}
	if r.dated() {
		slots = append(slots, r.slot(form.Field{Key: "due", Label: "to be done on", Blank: "like 2026-12-11"},
			func(d vehicles.Done) string { return d.Due }, setDue))
	}
	return append(slots,
		r.slot(form.Field{Key: "note", Label: "note", Blank: "none", Note: form.NewLine + " stands for a new line", Break: form.NewLine, Pass: true},
			func(d vehicles.Done) string { return strings.ReplaceAll(d.Note, "\n", form.NewLine) },
			func(d *vehicles.Done, text string) error {
				d.Note = strings.ReplaceAll(text, form.NewLine, "\n")
				return nil
			}),
		r.slot(form.Field{Key: "photos", Label: "photos", Blank: "names of files", Note: "commas between them", Pass: true},
			func(d vehicles.Done) string { return strings.Join(d.Photos, ", ") }, setPhotos),
		r.slot(form.Field{Key: "at", Label: "done", Blank: "not done", Note: "in the list Space says now", Pass: true}, vehicles.Done.When, setAt),
	)
}

// slot is a value of what is recorded of the step.
func (r stepRecord) slot(f form.Field, get func(vehicles.Done) string, set func(d *vehicles.Done, text string) error) form.Slot {
	return form.Slot{
		Field: f,
		Get:   func(s desk.State) string { return get(s.Job.DoneOf(r.id)) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			d := j.DoneOf(r.id)
			if err := set(&d, text); err != nil {
				return j, err
			}
			return j.WithDone(d), nil
		},
	}
}

// value is what is measured in the step.
func (r stepRecord) value(k vehicles.StepKind) form.Slot {
	step, _ := stepOf(r.list, r.id, &vehicles.Job{})
	f := form.Field{Key: "value", Label: step.Measured, Unit: k.Unit, Blank: vehicles.NotMeasured, Big: true}
	if f.Label == "" {
		f.Label = "value"
	}
	slot := r.slot(f, func(d vehicles.Done) string { return d.Value.Text() }, func(d *vehicles.Done, text string) error {
		var err error
		d.Value, err = number(text, k)
		return err
	})
	slot.Say = func(f *form.Field, s desk.State) {
		now := step
		if now.Done = s.Job.DoneOf(r.id); now.Amiss() != "" {
			f.Note = "! " + now.Amiss()
		} else {
			f.Note = survey.Joined("; ", step.Expected.Text(k.Unit), since(&step, s))
		}
	}
	return slot
}

// since says how many minutes are over since the step from which a step's time runs; "" where none does, or it is not done.
func since(step *work.Step, s desk.State) string {
	if ago, ok := s.Job.DoneOf(step.Since).Ago(s.Now); ok {
		return fmt.Sprintf("%d min since %s", int(ago.Minutes()), vehicles.StepName(step.Since))
	}
	return ""
}

// number reads what was measured in a step, with or without its unit; blank is nothing.
func number(text string, k vehicles.StepKind) (vehicles.Number, error) {
	if text == "" {
		return vehicles.Number{}, nil
	}
	v, err := form.NumberIn(strings.TrimSuffix(text, k.Unit), vehicles.AFigure)
	if err != nil {
		return vehicles.Number{}, err
	}
	if wrong := k.WrongValue(v); wrong != "" {
		return vehicles.Number{}, errors.New(wrong)
	}
	return vehicles.Some(v), nil
}

func setDue(d *vehicles.Done, text string) error {
	if _, err := time.Parse(time.DateOnly, text); err != nil && text != "" {
		return form.ErrNoDate
	}
	d.Due = text
	return nil
}

func setAt(d *vehicles.Done, text string) error {
	if text == "" || text == d.When() { // the seconds are not shown, and stay
		if text == "" {
			d.At = ""
		}
		return nil
	}
	at, ok := vehicles.ParseMoment(text)
	if !ok {
		return errors.New("a day, and a time if you know it: 2026-11-27 10:15")
	}
	d.At = at
	return nil
}

func setPhotos(d *vehicles.Done, text string) error {
	var names vehicles.List[string]
	for name := range strings.SplitSeq(text, ",") {
		name = strings.TrimSpace(name)
		if name == "" {
			continue
		}
		if wrong := vehicles.WrongPhoto(name); wrong != "" {
			return fmt.Errorf("%q: it must be %s", form.Quoted(name), wrong)
		}
		names = append(names, name)
	}
	d.Photos = names
	return nil
}

func row(record form.Record, s desk.State) form.Row {
	if built, is := record.(builtRecord); is {
		return builtRow(built, s)
	}
	r := record.(stepRecord)
	step, i := stepOf(r.list, r.id, &s.Job)
	out := form.Row{Mark: words.Box(step.Ticked()), Text: r.Name(), Right: words.StepStands(&step)}
	switch {
	case i < 0:
		if elsewhere := r.list.Elsewhere(&s.Job); len(elsewhere) > 0 && elsewhere[0].Step == r.id {
			out.Head = words.Upper(words.OfNoStep)
		}
		return out
	case i == 0 || r.list[i-1].Part != step.Part:
		out.Head = step.Part.String()
	}
	if !step.Ticked() && out.Right == "" {
		out.Right = inShort(&step, s)
	}
	if wrong := words.StepWrong(r.list, i); wrong != "" {
		out.Right, out.Fault = "! "+wrong, true
	}
	return out
}

// inShort says what is known of a step that nobody has ticked, where a row has little room; "" for nothing.
func inShort(step *work.Step, s desk.State) string {
	switch made, all := onTop(s); {
	case step.Known != "":
		return "the job has it"
	case step.ID == marking && made > 0:
		return fmt.Sprintf("%d of %d on Marks", made, all)
	}
	return ""
}

// marking is the step in which the marks are made.
const marking = "marked"

// marksMade says how many of the marks are ticked on Marks; "" of any other step, and where none is.
func marksMade(step *work.Step, s desk.State) string {
	made, all := onTop(s)
	switch {
	case step.ID != marking || made == 0:
		return ""
	case made == all:
		return fmt.Sprintf("All %d are ticked on Marks.", all)
	}
	return fmt.Sprintf("%d of %d are ticked on Marks.", made, all)
}

// onTop is how many of the marks on top are ticked on Marks, and how many there are.
func onTop(s desk.State) (made, all int) {
	for _, m := range s.Marks.Marks {
		if m.Above == nil {
			continue
		}
		if all++; s.Ticked[m.Name] {
			made++
		}
	}
	return made, all
}
