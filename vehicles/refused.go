package vehicles

import (
	"fmt"
	"strings"
)

// refused is the key under [extra] of the texts that were typed and not taken.
const refused = "refused"

// Refusal is a text that was typed into a field and not taken. The job holds there what it held before; the text is
// kept so that nobody takes it for entered.
type Refusal struct {
	Of    string // what the field is of, for programs: "obstruction fuel tank"
	Name  string // what it is called, for people: "fuel tank"
	Field string // the field, for programs
	Label string // and for people: "bottom"
	Text  string
	Why   string
	About string // the field that the reason is about, "" for Field itself
}

// String is "bottom of fuel tank, 203", harmless and on one line.
func (r Refusal) String() string {
	text := r.Text
	if text == "" {
		text = "emptied"
	}
	return oneLine(fmt.Sprintf("%s of %s, %s", r.Label, r.Name, text))
}

// entries are the values of a refusal by their keys in the file.
func (r *Refusal) entries() map[string]*string {
	return map[string]*string{
		"of": &r.Of, "name": &r.Name, "field": &r.Field, "label": &r.Label, "text": &r.Text, "why": &r.Why, "about": &r.About,
	}
}

// Refused are the texts that were typed and not taken, the oldest first.
func (j Job) Refused() []Refusal {
	tables := j.ExtraTables(refused)
	out := make([]Refusal, len(tables))
	for i, table := range tables {
		for key, at := range out[i].entries() {
			*at, _ = table[key].(string)
		}
	}
	return out
}

// WithRefused returns the job with these refused texts in place of those it had.
func (j Job) WithRefused(all []Refusal) Job {
	var list []any
	for i := range all {
		table := map[string]any{}
		for key, at := range all[i].entries() {
			if *at != "" {
				table[key] = *at
			}
		}
		list = append(list, table)
	}
	return j.WithExtra(refused, list)
}

// RefusedWords says which readings are not in the job, "" for none.
func RefusedWords(all []Refusal) string {
	var names []string
	for _, r := range all {
		names = append(names, r.String())
	}
	switch list := strings.Join(names, "; "); len(all) {
	case 0:
		return ""
	case 1:
		return "one reading was refused and is not in the job: " + list
	default:
		return fmt.Sprintf("%d readings were refused and are not in the job: %s", len(all), list)
	}
}
