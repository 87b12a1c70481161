package rules

import (
	"encoding/json"

	"bench.example/undermark/vehicles"
)

// AsBuilt judges a judged job as it was built, by the book that it was judged by before. With faults it can't be judged so.
func AsBuilt(planned *Result, book *Book) (Result, []vehicles.Fault) {
	return Judge(planned.Job.AsBuilt(), book)
}

// Compared is what a rule says of one pair of things as planned and as built; nil where it says nothing then, as of a leg that is there
// no more.
type Compared struct{ Planned, Built *Finding }

// Worse tells whether it came out worse than it was planned: by verdict, then by what is to spare. What was not planned is worse if it
// is not clear.
func (c Compared) Worse() bool {
	switch {
	case c.Built == nil:
		return false
	case c.Planned == nil:
		return c.Built.Verdict != Clear
	case c.Built.Verdict != c.Planned.Verdict:
		return c.Built.Verdict > c.Planned.Verdict
	}
	return c.Built.Margin.Set && c.Planned.Margin.Set && c.Built.Margin.Value < c.Planned.Margin.Value-sameMargin
}

// Same tells whether it came out as it was planned.
func (c Compared) Same() bool {
	return c.Built != nil && c.Planned != nil && c.Built.Verdict == c.Planned.Verdict && c.Built.Margin.Set == c.Planned.Margin.Set &&
		c.Built.Margin.Value-c.Planned.Margin.Value <= sameMargin && c.Planned.Margin.Value-c.Built.Margin.Value <= sameMargin
}

// sameMargin is by how much two margins may differ and be shown as one, in the unit of either: figures are shown to a tenth.
const sameMargin = 0.05

// Compare sets what was planned beside what was built: in the order in which people read what was built, and then what is there no
// more.
func Compare(planned, built *Result) []Compared {
	before := map[string]*Finding{}
	for i := range planned.Findings {
		f := &planned.Findings[i]
		before[f.key()] = f
	}
	list := make([]Compared, 0, len(built.Findings))
	for _, f := range ForPeople(built.Findings) {
		list = append(list, Compared{before[f.key()], f})
		delete(before, f.key())
	}
	for _, f := range ForPeople(planned.Findings) {
		if before[f.key()] != nil {
			list = append(list, Compared{f, nil})
		}
	}
	return list
}

// key tells a finding from all others of a job, and finds the same of another.
func (f *Finding) key() string { return f.ID() + "\x00" + f.About() }

type builtJSON struct {
	Format    int      `json:"format"`
	Job       string   `json:"job"`
	Otherwise []string `json:"otherwise"` // the tables that were made otherwise
	Planned   Result   `json:"planned"`
	Built     Result   `json:"built"`

	Deviations []deviationJSON `json:"deviations"`
}

// deviationJSON is a Deviation; what nobody has said or read is null.
type deviationJSON struct {
	Table       string   `json:"table"`
	What        string   `json:"what"`
	Unit        Unit     `json:"unit"`
	Planned     *float64 `json:"planned"`
	Built       *float64 `json:"built"`
	By          *float64 `json:"by"`
	Sigma       *float64 `json:"sigma"`
	Unexplained bool     `json:"unexplained"`
	Verdict     string   `json:"verdict"`
}

func deviationsJSON(list []Deviation) []deviationJSON {
	out := make([]deviationJSON, len(list))
	for i, d := range list {
		by, ok := d.By()
		out[i] = deviationJSON{
			d.Table.String(), d.What.String(), d.Unit, maybe(d.Planned), maybe(d.Built), maybe(vehicles.Number{Value: by, Set: ok}), maybe(d.Sigma), d.Unexplained, d.Verdict.String(),
		}
	}
	return out
}

// BuiltJSON writes both as `check --built --json` prints them, each as `check --json` does.
func BuiltJSON(planned, built Result) ([]byte, error) {
	otherwise := []string{}
	for _, table := range planned.Job.BuiltOtherwise().Tables() {
		otherwise = append(otherwise, table.String())
	}
	return json.Marshal(builtJSON{jsonFormat, planned.Job.Ref, otherwise, planned, built, deviationsJSON(Deviations(&planned, &built))})
}
