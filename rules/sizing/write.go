package sizing

import (
	"encoding/json"

	"bench.example/undermark/vehicles"
)

type subjectJSON struct {
	Topic Topic     `json:"topic"`
	Title string    `json:"title"`
	Rows  []rowJSON `json:"rows"`
}

type rowJSON struct {
	ID           string   `json:"id"`
	Label        string   `json:"label"`
	Value        *float64 `json:"value"`
	Unit         Unit     `json:"unit"`
	Text         string   `json:"text,omitempty"`
	Why          string   `json:"why,omitempty"`
	Source       string   `json:"source,omitempty"`
	Taken        []string `json:"taken,omitempty"`
	Lacks        []string `json:"lacks,omitempty"`
	Amiss        string   `json:"amiss,omitempty"`
	Instructions bool     `json:"instructions,omitempty"`
}

// JSON writes subjects as `sizing --json` prints them: values as reckoned, null for what is said in words or lacks something.
func JSON(all []Subject) ([]byte, error) {
	out := struct {
		Subjects []subjectJSON `json:"subjects"`
	}{[]subjectJSON{}}
	for _, s := range all {
		subject := subjectJSON{s.Topic, s.Title, []rowJSON{}}
		for _, r := range s.Rows {
			subject.Rows = append(subject.Rows, rowJSON{
				r.ID, r.Label, maybe(r.Value), r.Unit, r.Text, r.Why, r.Source, r.Taken, r.Lacks, r.Amiss, r.Instructions,
			})
		}
		out.Subjects = append(out.Subjects, subject)
	}
	return json.Marshal(out)
}

func maybe(n vehicles.Number) *float64 {
	if !n.Set {
		return nil
	}
	return &n.Value
}
