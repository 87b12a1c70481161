package rules

import (
	"encoding/json"

	"bench.example/undermark/vehicles"
)

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
	if r.Found() {
		out := append(r.json(), member{"verdict", r.Verdict.String()})
		return json.Marshal(out.with("doubtful", r.Missed(), Doubtful))
	}
	out := object{{"path", [][]float64{}}, {"length", nil}, {"bends", nil}, {"margin", nil}}
	if r.Run != nil {
		out = append(out, member{"miss", r.miss()})
	}
	return json.Marshal(out)
}

// miss is a run that is a miss, with what it breaks.
func (r *Route) miss() object { return r.json().with("breaks", r.Missed(), r.Verdict) }

// json is the run as it is, with all that hangs on it.
func (r *Route) json() object {
	path := [][]float64{}
	for _, p := range r.Run.Path {
		path = append(path, []float64{number(p.X), number(p.Y), number(p.Drop)})
	}
	out := object{{"path", path}, {"length", maybe(vehicles.Some(r.Length))}, {"bends", maybe(vehicles.Some(r.Bends))}, {"margin", maybe(r.Margin)}}
	for _, k := range vehicles.HangingKinds {
		if !k.Many() {
			if thing := r.Run.Hanging.Thing(k, 0); thing != nil {
				out = append(out, member{k.Key, hungJSON(thing)})
			}
		} else if list := *k.List(&r.Run.Hanging); k.SaysNone && list != nil || len(list) > 0 {
			out = append(out, member{k.Key, list})
		}
	}
	return out
}

// hungJSON is a thing that hangs on a leg as the file has it.
func hungJSON(thing *vehicles.Hung) object {
	out := object{{"leg", thing.Leg()}, {"start", thing.Start()}}
	for _, d := range thing.Details() {
		if v := d.Value(); v != nil {
			out = append(out, member{d.Key, v})
		}
	}
	return out
}

// missesJSON are those that are that bad.
func missesJSON(misses []Finding, bad Verdict) (out []missJSON) {
	for i := range misses {
		if f := &misses[i]; f.Verdict == bad {
			out = append(out, missJSON{
				ID: f.ID(), Against: word(f.Against.String()), Value: maybe(vehicles.Number{Value: f.Value, Set: !f.Unsaid}), Needed: maybe(f.Required),
				Margin: maybe(f.Margin), At: f.places(), Why: f.Why,
			})
		}
	}
	return out
}

// with adds what is that bad of a run, under a key, where there is any.
func (o object) with(key string, misses []Finding, bad Verdict) object {
	if list := missesJSON(misses, bad); len(list) > 0 {
		return append(o, member{key, list})
	}
	return o
}

// member is a key of an object of JSON with its value.
type member struct {
	key   string
	value any
}

// object is an object of JSON whose keys come out of a table: they are written in their order.
type object []member

// MarshalJSON writes it, null for none.
func (o object) MarshalJSON() ([]byte, error) {
	if o == nil {
		return []byte("null"), nil
	}
	out := []byte{'{'}
	for i, m := range o {
		if i > 0 {
			out = append(out, ',')
		}
		key, err := json.Marshal(m.key)
		if err != nil {
			return nil, err
		}
		value, err := json.Marshal(m.value)
		if err != nil {
			return nil, err
		}
		out = append(append(append(out, key...), ':'), value...)
	}
	return append(out, '}'), nil
}
