package work

import (
	"encoding/json"

	"bench.example/undermark/vehicles"
)

type listJSON struct {
	Steps     []stepJSON   `json:"steps"`
	Done      int          `json:"done"`
	Elsewhere []recordJSON `json:"elsewhere"`
}

type stepJSON struct {
	Step     string   `json:"step"`
	Name     string   `json:"name"`
	Part     string   `json:"part"`
	Do       string   `json:"do"`
	Of       string   `json:"of,omitempty"`
	Measured string   `json:"measured,omitempty"`
	Unit     string   `json:"unit,omitempty"`
	Least    *float64 `json:"least,omitempty"`
	Most     *float64 `json:"most,omitempty"`
	Expected string   `json:"expected,omitempty"`
	Source   string   `json:"source,omitempty"`
	Defers   string   `json:"defers,omitempty"`
	Caution  string   `json:"caution,omitempty"`
	After    []string `json:"after,omitempty"`
	Early    bool     `json:"early,omitempty"`
	Amiss    string   `json:"amiss,omitempty"`
	Lacks    string   `json:"lacks,omitempty"`
	Known    string   `json:"known,omitempty"`
	Foul     string   `json:"foul,omitempty"`
	recorded
}

// recorded is what a job records of a step; at is null while it is not done.
type recorded struct {
	At     *string  `json:"at"`
	Value  *float64 `json:"value,omitempty"`
	Due    string   `json:"due,omitempty"`
	Note   string   `json:"note,omitempty"`
	Photos []string `json:"photos,omitempty"`
}

type recordJSON struct {
	Step string `json:"step"`
	recorded
}

func number(n vehicles.Number) *float64 {
	if !n.Set {
		return nil
	}
	return &n.Value
}

func recordOf(d vehicles.Done) recorded {
	r := recorded{Value: number(d.Value), Due: d.Due, Note: d.Note, Photos: d.Photos}
	if d.At != "" {
		r.At = &d.At
	}
	return r
}

// JSON writes the list as `work --json` prints it; early is a step that was done while one that must come before it was not, foul what
// bars it as the job stands.
func (l List) JSON(j *vehicles.Job) ([]byte, error) {
	out := listJSON{[]stepJSON{}, l.Count(), []recordJSON{}}
	for i := range l {
		s := &l[i]
		out.Steps = append(out.Steps, stepJSON{
			Step: s.ID, Name: s.Name(), Part: s.Part.String(), Do: s.Do, Of: s.Of, Measured: s.Measured, Unit: s.Unit,
			Least: number(s.Expected.Least), Most: number(s.Expected.Most), Expected: s.Expected.Text(s.Unit), Source: s.Expected.sources(),
			Defers: s.Defers, Caution: s.Caution, After: s.After, Early: s.Ticked() && len(l.Early(i)) > 0, Amiss: s.Amiss(), Lacks: s.Lacks(), Known: s.Known, Foul: s.Foul,
			recorded: recordOf(s.Done),
		})
	}
	for _, d := range l.Elsewhere(j) {
		out.Elsewhere = append(out.Elsewhere, recordJSON{d.Step, recordOf(d)})
	}
	return json.Marshal(out)
}
