package rules

import (
	"encoding/json"

	"bench.example/undermark/vehicles"
)

type routeJSON struct {
	Path    [][]float64  `json:"path"`
	Length  *float64     `json:"length"`
	Bends   *float64     `json:"bends"`
	Margin  *float64     `json:"margin"`
	Muffler *mufflerJSON `json:"muffler,omitempty"`
	Clips   []float64    `json:"clips,omitzero"`
	Pump    *pumpJSON    `json:"pump,omitempty"`
	Verdict string       `json:"verdict,omitempty"`
	Doubts  []missJSON   `json:"doubtful,omitempty"` // of a run that breaks no rule
	Miss    *routeJSON   `json:"miss,omitempty"`     // where there is no run: the nearest
	Breaks  []missJSON   `json:"breaks,omitempty"`   // and what that breaks
}

type mufflerJSON struct {
	Leg    int     `json:"leg"`
	Start  float64 `json:"start"`
	Length float64 `json:"length"`
	Across float64 `json:"across"`
	Drain  string  `json:"drain,omitempty"`
}

type pumpJSON struct {
	Leg       int      `json:"leg"`
	Start     float64  `json:"start"`
	Tilt      float64  `json:"tilt"`
	MlPer1000 *float64 `json:"ml_per_1000,omitempty"`
	Hz        *float64 `json:"hz,omitempty"`
}

// pairJSON are an exhaust and an intake that were sought together.
type pairJSON struct {
	Exhaust json.RawMessage `json:"exhaust"`
	Intake  json.RawMessage `json:"intake"`
	Margin  *float64        `json:"margin"`             // the worse of both
	Here    bool            `json:"as_it_is,omitempty"` // they are the job's own: nothing was found that keeps more
}

// PairJSON writes a pair as `route both --json` prints it.
func PairJSON(p Pair) ([]byte, error) {
	exhaust, err := RouteJSON(p.Exhaust)
	if err != nil {
		return nil, err
	}
	intake, err := RouteJSON(p.Intake)
	if err != nil {
		return nil, err
	}
	out := pairJSON{Exhaust: exhaust, Intake: intake, Here: p.Exhaust.Here}
	if p.Found() {
		out.Margin = maybe(p.Margin())
	}
	return json.Marshal(out)
}

type missJSON struct {
	ID      string      `json:"id"`
	Against *string     `json:"against"`
	Value   *float64    `json:"value"`
	Needed  *float64    `json:"required"`
	Margin  *float64    `json:"margin"`
	At      [][]float64 `json:"at,omitempty"`
	Why     string      `json:"why"`
}

// RouteJSON writes a run that was sought as `route --json` prints it. Where there is none, its path is empty, and the nearest miss
// stands beside it.
func RouteJSON(r Route) ([]byte, error) {
	out := routeJSON{Path: [][]float64{}}
	switch {
	case r.Found():
		out = r.json(Doubtful)
		out.Doubts, out.Breaks = out.Breaks, nil
		out.Verdict = r.Verdict.String()
	case r.Run != nil:
		miss := r.json(Foul)
		out.Miss = &miss
	}
	return json.Marshal(out)
}

// json is the run as it is, with what is that bad of it under breaks.
func (r *Route) json(bad Verdict) routeJSON {
	out := routeJSON{Path: [][]float64{}, Margin: maybe(r.Margin), Clips: r.Run.Clips}
	out.Length, out.Bends = maybe(vehicles.Some(r.Length)), maybe(vehicles.Some(r.Bends))
	for _, p := range r.Run.Path {
		out.Path = append(out.Path, []float64{number(p.X), number(p.Y), number(p.Drop)})
	}
	if m := r.Run.Muffler; m != nil {
		out.Muffler = &mufflerJSON{m.Leg, m.Start, m.Length, m.Across, m.Drain}
	}
	if p := r.Run.Pump; p != nil {
		out.Pump = &pumpJSON{p.Leg, p.Start, p.Tilt, maybe(p.MlPer1000), maybe(p.Hz)}
	}
	for i := range r.Misses {
		if f := &r.Misses[i]; f.Verdict == bad {
			out.Breaks = append(out.Breaks, missJSON{
				ID: f.ID(), Against: word(f.Against.String()), Value: maybe(vehicles.Number{Value: f.Value, Set: !f.Unsaid}), Needed: maybe(f.Required),
				Margin: maybe(f.Margin), At: f.places(), Why: f.Why,
			})
		}
	}
	return out
}
