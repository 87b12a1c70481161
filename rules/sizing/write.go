package sizing

import (
	"encoding/csv"
	"encoding/json"
	"io"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
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
				r.ID.String(), r.Label, maybe(r.Value), r.Unit, r.Text, r.Why, r.Source.String(), r.Taken, r.Lacks, r.Amiss, r.Instructions,
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

// Columns are the head of the results as comma-separated values. The value is as reckoned, empty for what is said in words or lacks something.
var Columns = []string{"job", "subject", "result", "value", "unit", "words", "why", "source", "taken", "lacks", "put right", "instructions first"}

// CSV writes subjects behind the name of their job, a row a result (RFC 4180, with plain line ends), behind the head where it is asked for.
func CSV(to io.Writer, job string, all []Subject, head bool) error {
	var rows [][]string
	if head {
		rows = append(rows, Columns)
	}
	for _, s := range all {
		for _, r := range s.Rows {
			value, first := "", ""
			if r.Value.Set {
				value = survey.Exact(r.Value.Value)
			}
			if r.Instructions {
				first = "yes"
			}
			row := []string{job, string(s.Topic), r.Label, value, string(r.Unit), r.Text, r.Why, r.Source.String(), strings.Join(r.Taken, "; "), strings.Join(r.Lacks, "; "), r.Amiss, first}
			for i, cell := range row {
				if i != valueColumn {
					row[i] = harmless.Cell(cell)
				}
			}
			rows = append(rows, row)
		}
	}
	return csv.NewWriter(to).WriteAll(rows)
}

// valueColumn is the column that is to be reckoned with.
const valueColumn = 3
