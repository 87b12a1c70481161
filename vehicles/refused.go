package vehicles

import (
	"fmt"
	"slices"
	"strings"
)

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

	Others map[string]any // what else a file says of it, kept as it is
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
func (j Job) RefusedCount() int { return len(j.Refusals) }

// Refused are the texts that were typed and not taken, the oldest first: at most the MostRefused newest.
func (j Job) Refused() []Refusal { return slices.Clone(j.Refusals[j.waiting():]) }

// RefusedOf are those of one thing.
func (j *Job) RefusedOf(of string) []Refusal {
	return slices.DeleteFunc(j.Refused(), func(r Refusal) bool { return r.Of != of })
}

// waiting is how many refused texts do not count yet.
func (j *Job) waiting() int { return max(0, len(j.Refusals)-MostRefused) }

// WithRefused returns the job with these refused texts in place of those that count.
func (j Job) WithRefused(all []Refusal) Job {
	j.Refusals = slices.Concat(j.Refusals[:j.waiting()], all)
	if len(j.Refusals) == 0 {
		j.Refusals = nil
	}
	return j
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
