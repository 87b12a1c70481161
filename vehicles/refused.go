package vehicles

import (
	"fmt"
	"slices"
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

// MostRefused is how many refused texts of a job count as such: fifty points of a line, all typed wrong. Beyond that the
// newest count; the file keeps the others, which come up as those are put right. So whatever a file holds, a key that
// looks them all through is answered at once.
const MostRefused = 100

// String is "bottom of fuel tank, 203", harmless and on one line.
func (r Refusal) String() string {
	text := cut(r.Text)
	if text == "" {
		text = "emptied"
	}
	return oneLine(fmt.Sprintf("%s of %s, %s", r.Label, cut(r.Name), text))
}

// entries are the values of a refusal and their keys in the file.
func (r *Refusal) entries() [7]entry {
	return [7]entry{
		{"of", &r.Of}, {"name", &r.Name}, {"field", &r.Field}, {"label", &r.Label}, {"text", &r.Text}, {"why", &r.Why}, {"about", &r.About},
	}
}

// entry is one value of a refusal by its key in the file.
type entry struct {
	key string
	at  *string
}

// RefusedCount is how many texts were typed and not taken, those included that do not count yet.
func (j Job) RefusedCount() int { return len(j.ExtraTables(refused)) }

// Refused are the texts that were typed and not taken, the oldest first: at most the MostRefused newest.
func (j Job) Refused() []Refusal { return j.refusedOf(func(string) bool { return true }) }

// RefusedOf are those of one thing.
func (j Job) RefusedOf(of string) []Refusal {
	return j.refusedOf(func(other string) bool { return other == of })
}

func (j Job) refusedOf(wanted func(of string) bool) []Refusal {
	var out []Refusal
	for _, table := range newest(j.ExtraTables(refused)) {
		if of, _ := table["of"].(string); !wanted(of) {
			continue
		}
		var r Refusal
		for _, e := range r.entries() {
			*e.at, _ = table[e.key].(string)
		}
		out = append(out, r)
	}
	return out
}

// newest are the tables that count.
func newest(tables []map[string]any) []map[string]any {
	return tables[max(0, len(tables)-MostRefused):]
}

// WithRefused returns the job with these refused texts in place of those that count.
func (j Job) WithRefused(all []Refusal) Job {
	tables := j.ExtraTables(refused)
	list := slices.Clone(tables[:len(tables)-len(newest(tables))])
	for i := range all {
		table := map[string]any{}
		for _, e := range all[i].entries() {
			if *e.at != "" {
				table[e.key] = *e.at
			}
		}
		list = append(list, table)
	}
	return withExtra(j, refused, list)
}

// mostNamed is how many refused texts are named in one line.
const mostNamed = 5

// RefusedWords says which readings are not in the job, "" for none.
func RefusedWords(all []Refusal) string {
	var names []string
	for _, r := range all[:min(len(all), mostNamed)] {
		names = append(names, r.String())
	}
	if n := len(all) - len(names); n > 0 {
		names = append(names, fmt.Sprintf("and %d more", n))
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
