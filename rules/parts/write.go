package parts

import (
	"encoding/csv"
	"encoding/json"
	"io"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

type listJSON struct {
	Parts  []rowJSON `json:"parts"`
	Absent []string  `json:"absent"`
}

type rowJSON struct {
	For    string   `json:"for"`
	Of     string   `json:"of"`
	Size   string   `json:"size,omitempty"`
	Count  *float64 `json:"count"`
	Unit   string   `json:"unit"`
	Kit    *float64 `json:"kit,omitempty"`
	Buy    *float64 `json:"buy"`
	Note   string   `json:"note,omitempty"`
	Source string   `json:"source,omitempty"`
}

func number(n vehicles.Number) *float64 {
	if !n.Set {
		return nil
	}
	return &n.Value
}

// JSON writes the list as `parts --json` prints it; count and buy are null where nobody has reckoned them.
func (l *List) JSON() ([]byte, error) {
	out := listJSON{[]rowJSON{}, append([]string{}, l.Absent...)}
	for _, r := range l.Rows {
		out.Parts = append(out.Parts, rowJSON{r.For, r.Of, r.Size, number(r.Count), r.Unit, number(r.Kit), number(r.Buy()), r.Note, r.Source})
	}
	return json.Marshal(out)
}

// Columns are the head of the list as comma-separated values. Count and buy are empty where nobody has reckoned them, kit where the
// usual kit has none of its own.
var Columns = []string{"job", "for", "part", "size", "count", "unit", "kit", "buy", "note", "source"}

// CSV writes the list's rows behind the name of its job (RFC 4180, with plain line ends), behind the head where it is asked for. A text that a spreadsheet
// would reckon has an apostrophe before it.
func (l *List) CSV(to io.Writer, job string, head bool) error {
	w := csv.NewWriter(to)
	var rows [][]string
	if head {
		rows = append(rows, Columns)
	}
	figure := func(n vehicles.Number) string {
		if !n.Set {
			return ""
		}
		return survey.Exact(n.Value)
	}
	for _, r := range l.Rows {
		rows = append(rows, []string{harmless.Cell(job), r.For, r.Of, r.Size, figure(r.Count), r.Unit, figure(r.Kit), figure(r.Buy()), harmless.Cell(r.Note), r.Source})
	}
	for _, text := range l.Absent {
		rows = append(rows, []string{harmless.Cell(job), "", "not counted: " + text, "", "", "", "", "", "", ""})
	}
	return w.WriteAll(rows)
}
