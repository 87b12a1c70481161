package vehicles

import (
	"maps"
	"math"
)

// lookedRound is the key under [extra] that says, by kind, where the cut was when the fitter looked round it.
const lookedRound = "looked round"

// LookRound is how far from the cut one looks for what may be in the way, mm. Source: job file format 1, [looked].
const LookRound = 300

// lookedWithin is how far the cut may move, mm, before looking LookRound round it no longer counts as looking round where it
// is now. common practice, no source.
const lookedWithin = 50

// WithLooked notes that a kind was looked for round where the cut is and found absent, or takes the note back.
func (j Job) WithLooked(kind string, looked bool) Job {
	j.Looked = maps.Clone(j.Looked)
	places := maps.Clone(j.lookedPlaces())
	delete(places, kind)
	if looked {
		j.Looked = put(j.Looked, kind, true)
		if j.Cut != nil {
			places = put(places, kind, any([]any{j.Cut.At[0], j.Cut.At[1]}))
		}
	} else if delete(j.Looked, kind); len(j.Looked) == 0 {
		j.Looked = nil
	}
	j.Extra = maps.Clone(j.Extra)
	if len(places) > 0 {
		j.Extra = put(j.Extra, lookedRound, any(places))
	} else if delete(j.Extra, lookedRound); len(j.Extra) == 0 {
		j.Extra = nil
	}
	return j
}

// LookedElsewhere are the kinds looked for round a place that the cut has since moved away from, in the order of Kinds.
// A kind of which nobody wrote down where is taken to be looked for round where the cut is.
func (j Job) LookedElsewhere() []string {
	if j.Cut == nil {
		return nil
	}
	var kinds []string
	places := j.lookedPlaces()
	for _, kind := range Kinds {
		at, ok := places[kind].([]any)
		if !ok || len(at) != 2 || !j.Looked[kind] {
			continue
		}
		x, isX := asNumber(at[0])
		y, isY := asNumber(at[1])
		if isX && isY && math.Hypot(x-j.Cut.At[0], y-j.Cut.At[1]) > lookedWithin {
			kinds = append(kinds, kind)
		}
	}
	return kinds
}

func (j Job) lookedPlaces() map[string]any {
	places, _ := j.Extra[lookedRound].(map[string]any)
	return places
}
