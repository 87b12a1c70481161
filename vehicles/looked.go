package vehicles

import (
	"maps"
	"math"
)

// LookRound is how far from the cut one looks for what may be in the way, mm. Source: job file format 1, [looked].
const LookRound = 300

// lookedWithin is how far the cut may move, mm, before looking LookRound round it no longer counts as looking round where it
// is now. common practice, no source.
const lookedWithin = 50

// WithLooked notes that a kind was looked for round where the cut is and found absent, or takes the note back.
func (j Job) WithLooked(kind string, looked bool) Job {
	j.Looked = maps.Clone(j.Looked)
	j.LookedAt = maps.Clone(j.LookedAt)
	delete(j.LookedAt, kind)
	if looked {
		j.Looked = put(j.Looked, kind, true)
		if j.Cut != nil {
			j.LookedAt = put(j.LookedAt, kind, j.Cut.At)
		}
	} else if delete(j.Looked, kind); len(j.Looked) == 0 {
		j.Looked = nil
	}
	if len(j.LookedAt) == 0 {
		j.LookedAt = nil
	}
	return j
}

// LookedElsewhere are the kinds looked for round a place that the cut has since moved away from, in the order of Kinds.
// A kind of which nobody wrote down where is taken to be looked for round where the cut is.
func (j *Job) LookedElsewhere() []string {
	if j.Cut == nil {
		return nil
	}
	var kinds []string
	for _, kind := range Kinds {
		at, known := j.LookedAt[kind]
		if known && j.Looked[kind] && math.Hypot(at[0]-j.Cut.At[0], at[1]-j.Cut.At[1]) > lookedWithin {
			kinds = append(kinds, kind)
		}
	}
	return kinds
}
