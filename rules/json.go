package rules

import (
	"encoding/json"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The JSON of the commands other programs rely on, format 1. Numbers are written with all their digits.
const jsonFormat = 1

type checkJSON struct {
	Format       int           `json:"format"`
	Job          string        `json:"job"`
	Verdict      string        `json:"verdict"`
	Dangers      []string      `json:"dangers,omitempty"`
	Unchecked    []Lack        `json:"unchecked"`
	Unanswered   []string      `json:"unanswered,omitempty"` // beside it: what this program alone asks
	NotLookedFor []string      `json:"not_looked_for"`
	NorFor       []string      `json:"nor_looked_for,omitempty"` // of kinds that only this program knows
	AtRuns       []string      `json:"not_looked_for_at_runs,omitempty"`
	NoOpenings   []string      `json:"openings_not_looked_for,omitempty"`
	Findings     []findingJSON `json:"findings"`
	Next         []Advice      `json:"next,omitzero"`
}

type findingJSON struct {
	ID       string      `json:"id"`
	Subject  string      `json:"subject"`
	Against  *string     `json:"against"`
	Kind     *string     `json:"kind"`
	Value    *float64    `json:"value"` // null where nobody has said what it takes
	Required *float64    `json:"required"`
	Margin   *float64    `json:"margin"`
	Sigma    float64     `json:"sigma"`
	Unit     string      `json:"unit"`
	Verdict  string      `json:"verdict"`
	Weight   Weight      `json:"weight"`
	At       [][]float64 `json:"at,omitempty"`
	Source   string      `json:"source"`
	Book     string      `json:"book"`
	Why      string      `json:"why,omitempty"`
	Shielded bool        `json:"shielded,omitempty"` // it counts on a shield between
}

// MarshalJSON writes a result as `check --json` prints it.
func (r Result) MarshalJSON() ([]byte, error) { return CheckJSON(r, nil) }

// CheckJSON writes a result as `check --json` prints it, with what to measure next beside the findings; nil advice is not
// written, an empty list is.
func CheckJSON(r Result, next []Advice) ([]byte, error) {
	known, added := contractKinds(r.NotLookedFor)
	out := checkJSON{
		Format: jsonFormat, Job: r.Job.Ref, Verdict: r.Verdict.String(), Dangers: Dangers(&r),
		Unchecked: r.Unchecked, Unanswered: r.Unanswered, NotLookedFor: known, NorFor: added,
		AtRuns: r.NotLookedAtRuns, NoOpenings: r.OpeningsNotLookedFor,
		Findings: make([]findingJSON, len(r.Findings)), Next: next,
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		out.Findings[i] = findingJSON{
			ID: f.ID(), Subject: f.Subject.String(), Against: word(f.Against.String()), Kind: word(r.kindOf(f)),
			Value: maybe(vehicles.Number{Value: f.Value, Set: !f.Unsaid}), Required: maybe(f.Required), Margin: maybe(f.Margin), Sigma: number(f.Sigma),
			Unit: string(f.Rule.Unit), Verdict: f.Verdict.String(), Weight: f.Weight, At: f.places(), Source: f.Limit.Source, Book: f.Limit.Book, Why: f.Why, Shielded: f.Shielded(),
		}
	}
	return json.Marshal(out)
}

// kindOf is the kind of what a finding is held against, or of the stub it is of; "" for none: most fittings have none.
func (r *Result) kindOf(f *Finding) string {
	switch at := f.Against.Index; f.Against.Sort {
	case AnObstruction:
		return r.Job.Obstructions[at].Kind
	case AnOpening:
		return r.Job.Openings[at].Kind
	case AFitting:
		return r.Job.Fittings[at].Kind
	}
	if f.Rule.ByKind == AStub {
		return f.Subject.String()
	}
	return ""
}

// places are a finding's nearest points: x, y, or x, y, drop.
func (f *Finding) places() [][]float64 {
	var list [][]float64
	for _, p := range f.Points() {
		at := point(p.Plan())
		if !f.Flat {
			at = append(at, number(-p.Z))
		}
		list = append(list, at)
	}
	return list
}

type sheetJSON struct {
	Format  int        `json:"format"`
	Job     string     `json:"job"`
	Dangers []string   `json:"dangers,omitempty"`
	Fit     *fitJSON   `json:"fit"`
	Marks   []markJSON `json:"marks"`
	Checks  []Check    `json:"checks,omitempty"`
	Stubs   []markJSON `json:"stubs,omitempty"`
	Pilot   *pilotJSON `json:"pilot"`
}

type fitJSON struct {
	Ties      int            `json:"ties"`
	Theta     float64        `json:"theta_deg"`
	Shift     []float64      `json:"shift"`
	RMS       float64        `json:"rms"`
	Residuals []residualJSON `json:"residuals"`
	Suspect   *string        `json:"suspect"`
}

type residualJSON struct {
	Tie string  `json:"tie"`
	DX  float64 `json:"dx"`
	DY  float64 `json:"dy"`
}

type markJSON struct {
	Name  string     `json:"name"`
	Plan  []float64  `json:"plan"`
	Below belowJSON  `json:"below"`
	Above *aboveJSON `json:"above,omitempty"`

	InWay map[string][]string `json:"in_way,omitempty"` // by the key of the reading above: the fittings that its tape would pass through
}

type belowJSON struct {
	Bumper float64 `json:"bumper"`
	Left   float64 `json:"left"`
	Right  float64 `json:"right"`
}

type aboveJSON struct {
	X        float64   `json:"x"`
	Y        float64   `json:"y"`
	Bumper   float64   `json:"bumper"`
	Left     float64   `json:"left"`
	Right    float64   `json:"right"`
	PinLeft  float64   `json:"pin_left"`
	PinRight float64   `json:"pin_right"`
	Sigma    []float64 `json:"sigma"`
}

type pilotJSON struct {
	Drilled []float64 `json:"drilled"`
	Off     []float64 `json:"off"`
	MayMove float64   `json:"may_move"`
}

// MarksJSON writes a judged job's marks as `marks --json` prints them.
func MarksJSON(r Result) ([]byte, error) {
	sheet := Marks(r)
	out := sheetJSON{
		Format: jsonFormat, Job: r.Job.Ref, Dangers: Dangers(&r), Fit: r.fitJSON(), Marks: r.marksJSON(sheet.Marks), Checks: sheet.Checks, Stubs: r.marksJSON(sheet.Stubs),
	}
	if p := sheet.Pilot; r.Job.Cut != nil {
		out.Pilot = &pilotJSON{MayMove: number(p.Inside)}
		if p.Drilled != nil {
			out.Pilot.Drilled, out.Pilot.Off = point(*p.Drilled), point(p.Off)
		}
	}
	return json.Marshal(out)
}

func (r *Result) marksJSON(marks []Mark) []markJSON {
	out := make([]markJSON, len(marks))
	for i, m := range marks {
		out[i] = markJSON{
			Name: m.Name, Plan: point(m.Plan),
			Below: belowJSON{number(m.Below.Bumper), number(m.Below.Left), number(m.Below.Right)},
		}
		if a := m.Above; a != nil {
			out[i].Above = &aboveJSON{
				X: number(a.X), Y: number(a.Y), Bumper: number(a.Bumper), Left: number(a.Left), Right: number(a.Right),
				PinLeft: number(a.PinLeft), PinRight: number(a.PinRight), Sigma: a.Sigma[:],
			}
			out[i].InWay = r.inWay(m)
		}
	}
	return out
}

// wayKeys are the readings above as JSON names them, by TapeWay.
var wayKeys = [...]string{"bumper", "left", "right", "pin_left", "pin_right"}

// inWay names what stands in each tape's way, nil where all are free.
func (r *Result) inWay(m Mark) (ways map[string][]string) {
	for _, way := range TapeWays {
		for _, i := range OnFloor(r, m, way).Fittings {
			if ways == nil {
				ways = map[string][]string{}
			}
			ways[wayKeys[way]] = append(ways[wayKeys[way]], r.Job.Fittings[i].Name)
		}
	}
	return ways
}

func (r *Result) fitJSON() *fitJSON {
	fit := &r.Plan.Fit
	if !fit.Tied() {
		return nil
	}
	out := &fitJSON{
		Ties: fit.N, Theta: number(fit.Theta), Shift: point(fit.Shift), RMS: number(fit.RMS),
		Residuals: make([]residualJSON, len(fit.Residuals)), Suspect: word(fit.Suspect),
	}
	for i, t := range fit.Residuals {
		out.Residuals[i] = residualJSON{t.Name, number(t.DX), number(t.DY)}
	}
	return out
}

type ruleJSON struct {
	ID     string   `json:"id"`
	Kind   *string  `json:"kind"`
	Value  *float64 `json:"value"`
	Unit   string   `json:"unit"`
	Sense  string   `json:"sense"`
	Weight Weight   `json:"weight"`
	Title  string   `json:"title"`
	Ask    string   `json:"ask"`
	Source string   `json:"source"`
	Book   string   `json:"book"`
}

// MarshalJSON writes the rules that hold as `rules --json` prints them.
func (b *Book) MarshalJSON() ([]byte, error) {
	rules := []ruleJSON{}
	for _, l := range b.Limits() {
		rules = append(rules, ruleJSON{
			ID: l.ID, Kind: word(l.Kind), Value: maybe(l.Value), Unit: string(l.Unit), Sense: l.Sense.String(), Weight: l.Danger(),
			Title: l.Heading(), Ask: l.Ask, Source: l.Source, Book: l.Book,
		})
	}
	return json.Marshal(map[string][]ruleJSON{"rules": rules})
}

// number is v without a negative zero.
func number(v float64) float64 { return v + 0 }

func point(p geometry.Point) []float64 { return []float64{number(p.X), number(p.Y)} }

// maybe is nil for a number that is not there.
func maybe(n vehicles.Number) *float64 {
	if !n.Set {
		return nil
	}
	v := number(n.Value)
	return &v
}

// word is nil for a word that is not there.
func word(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}
