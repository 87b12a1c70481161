package form

import (
	"errors"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// Slot is one value of the job that is there once: its field, and how a text gets into the job.
type Slot struct {
	Field
	Get func(s desk.State) string // the text; the field's own when nil
	// Set returns the job with the text, blank for none. The job it is given may be changed: it is a copy.
	Set func(j vehicles.Job, text string) (vehicles.Job, error)
	// Say fills in what depends on the job: what a blank means, a note.
	Say func(f *Field, s desk.State)
}

// Slots are the values of one form, in the order of its fields.
type Slots []Slot

// Fields are the fields as the job has them, whatever texts are held.
func (l Slots) Fields(s desk.State, _ map[string]string) []Field {
	out := make([]Field, len(l))
	for i, slot := range l {
		out[i] = slot.Field
		out[i].Text = slot.Get(s)
		if slot.Say != nil {
			slot.Say(&out[i], s)
		}
	}
	return out
}

// Set returns the job with all these texts, or why it does not take them.
func (l Slots) Set(s desk.State, texts map[string]string) (vehicles.Job, error) {
	j := s.Job
	var faults Faults
	for _, slot := range l {
		text, edited := texts[slot.Key]
		if !edited {
			continue
		}
		after, err := slot.Set(j, strings.TrimSpace(text))
		if err != nil {
			faults = append(faults, Fault{Key: slot.Key, Why: err.Error()})
			continue
		}
		j = after
	}
	if len(faults) > 0 {
		return s.Job, faults
	}
	_, err := Try(s, j)
	return j, err
}

// Line is a slot for a line of text, which may be blank.
func Line(f Field, at func(j *vehicles.Job) *string) Slot {
	return Slot{
		Field: f,
		Get:   func(s desk.State) string { return *at(&s.Job) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			*at(&j) = text
			return j, nil
		},
	}
}

// Length reads a length that starts nowhere, "8", "6.5cm", `3/8"`, within limits. mm.
func Length(text string, l vehicles.Limits) (float64, error) {
	r, err := survey.Typed(text, survey.X)
	var unread survey.Unread
	switch {
	case errors.As(err, &unread):
		return 0, errors.New(unread.Found + `; a length is mm or e.g. 6.5cm, 3/8"`)
	case err != nil:
		return 0, err
	case r.Start != survey.Datum:
		return 0, errors.New("there is nothing here to run on from: write the whole length")
	}
	return r.Length, l.Takes(r.Length)
}

// Quoted is a text as it is repeated in words, cut when it is long.
func Quoted(text string) string { return ansi.Truncate(text, survey.LongestQuote, "...") }

// KeepsWhatItHad is said behind what is needed where the job had something.
const KeepsWhatItHad = "; till then the job keeps what it had"

// Required is a slot for a length that must be there.
func Required(f Field, l vehicles.Limits, at func(j *vehicles.Job) *float64) Slot {
	f.Unit, f.Blank = "mm", "needed"
	return Slot{
		Field: f,
		Get:   func(s desk.State) string { return survey.Exact(*at(&s.Job)) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if text == "" {
				return j, errors.New("needed" + KeepsWhatItHad)
			}
			v, err := Length(text, l)
			*at(&j) = v
			return j, err
		},
	}
}

// Optional is a slot for a number that may be left out; read reads it. Blank says what holds then.
func Optional(f Field, read func(text string) (float64, error), blank func(j vehicles.Job) string,
	at func(j *vehicles.Job) *vehicles.Number,
) Slot {
	return Slot{
		Field: f,
		Get: func(s desk.State) string {
			if n := *at(&s.Job); n.Set {
				return survey.Exact(n.Value)
			}
			return ""
		},
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if text == "" {
				*at(&j) = vehicles.Number{}
				return j, nil
			}
			v, err := read(text)
			*at(&j) = vehicles.Some(v)
			return j, err
		},
		Say: func(f *Field, s desk.State) { f.Blank = blank(s.Job) },
	}
}

// LengthIn returns a reader of lengths within limits.
func LengthIn(l vehicles.Limits) func(text string) (float64, error) {
	return func(text string) (float64, error) { return Length(text, l) }
}
