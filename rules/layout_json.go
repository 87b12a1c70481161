package rules

import (
	"encoding/json"

	"bench.example/undermark/vehicles"
)

type layoutJSON struct {
	Area    string     `json:"area,omitempty"`
	At      []float64  `json:"at"`
	Yaw     *float64   `json:"yaw"`
	Edge    Edge       `json:"edge"`
	Away    *float64   `json:"away"`
	Beyond  bool       `json:"beyond_wish,omitempty"`
	AsItIs  bool       `json:"as_it_is,omitempty"`
	Verdict string     `json:"verdict"`
	Margin  *float64   `json:"margin"`
	Of      string     `json:"margin_of,omitempty"`
	Exhaust object     `json:"exhaust"`
	Intake  object     `json:"intake"`
	Fuel    object     `json:"fuel,omitempty"`
	Miss    object     `json:"fuel_miss,omitempty"`  // the nearest miss of a fuel line where none keeps every rule
	Lacks   string     `json:"fuel_lacks,omitempty"` // why it is not known where one begins
	Doubts  []missJSON `json:"doubtful,omitempty"`
	Breaks  []missJSON `json:"breaks,omitempty"`
}

// LayoutsJSON writes layouts as `layout --json` prints them.
func LayoutsJSON(found Layouts) ([]byte, error) {
	out := []layoutJSON{}
	for i := range found.Best {
		out = append(out, found.Best[i].json())
	}
	return json.Marshal(map[string][]layoutJSON{"layouts": out})
}

func (l *Layout) json() layoutJSON {
	out := layoutJSON{
		Area: l.Area, At: point(l.At), Yaw: maybe(vehicles.Some(l.Yaw)), Edge: l.Edge, Away: maybe(vehicles.Some(l.Away)), Beyond: l.Beyond, AsItIs: l.AsItIs,
		Verdict: l.Verdict().String(), Margin: maybe(l.Least), Of: l.LeastOf,
		Exhaust: l.runJSON(vehicles.ExhaustRun), Intake: l.runJSON(vehicles.IntakeRun), Fuel: l.runJSON(vehicles.FuelRun),
		Doubts: missesJSON(l.Misses, Doubtful), Breaks: missesJSON(l.Misses, Foul),
	}
	if l.Result.Job.Fuel == nil {
		out.Lacks = FuelLacks(&l.Result.Job)
	}
	if m := l.FuelMiss; m != nil && m.Run != nil {
		out.Miss = m.miss()
	}
	return out
}

// runJSON is a run of the layout, nil for none.
func (l *Layout) runJSON(of vehicles.RunKind) object {
	laid := l.Result.Plan.Run(of)
	if laid == nil {
		return nil
	}
	r := Route{Run: l.Result.Job.Run(of), Length: laid.Line.Length(), Bends: laid.Line.Turns()}
	for i := range l.Result.Findings {
		f := &l.Result.Findings[i]
		if f.Subject.Sort == SortOf(of) && f.Rule.ByKind == AnObstruction && f.Margin.Set && (!r.Margin.Set || f.Margin.Value < r.Margin.Value) {
			r.Margin = f.Margin
		}
	}
	return r.json()
}
