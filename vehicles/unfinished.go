package vehicles

import (
	"maps"
	"slices"
)

// Unfinished begins the key under [extra] where things lie that were begun and lack readings: "unfinished obstruction",
// "unfinished opening", "unfinished fitting". They can't be judged, but something is there.
const Unfinished = "unfinished "

// UnfinishedCount is how many things of the job were begun and lack readings.
func (j Job) UnfinishedCount() int {
	n := 0
	for _, what := range []string{"obstruction", "opening", "fitting", "matching point"} {
		n += len(j.ExtraTables(Unfinished + what))
	}
	return n
}

// Settled says whether all that was begun is whole, nothing typed was refused and nothing is a guess: what is not
// settled is judged doubtful at best.
func (j Job) Settled() bool {
	return j.UnfinishedCount() == 0 && j.RefusedCount() == 0 && len(j.Guesses()) == 0
}

// ExtraTables are the tables of a list under [extra], as the file's reader or a program makes them.
func (j Job) ExtraTables(key string) []map[string]any {
	if tables, ok := j.Extra[key].([]map[string]any); ok {
		return tables
	}
	var out []map[string]any
	list, _ := j.Extra[key].([]any)
	for _, v := range list {
		if item, ok := v.(map[string]any); ok {
			out = append(out, item)
		}
	}
	return out
}

// WithExtra returns the job with a list under [extra]; an empty one takes the key away.
func (j Job) WithExtra(key string, list []any) Job { return withExtra(j, key, list) }

func withExtra[T any](j Job, key string, list []T) Job {
	j.Extra = maps.Clone(j.Extra)
	if len(list) > 0 {
		j.Extra = put(j.Extra, key, any(list))
	} else if delete(j.Extra, key); len(j.Extra) == 0 {
		j.Extra = nil
	}
	return j
}

// guesses is the key under [extra] of the values that nobody has measured, by their keys in the file: "floor.width".
const guesses = "guesses"

// FloorKeys are the keys of the floor's sizes.
var FloorKeys = []string{"floor.from", "floor.length", "floor.width", "floor.thickness", "floor.ground"}

// Guesses are the keys of the values that nobody has measured on this van yet.
func (j Job) Guesses() []string {
	var out []string
	list, _ := j.Extra[guesses].([]any)
	for _, v := range list {
		if key, ok := v.(string); ok && slices.Contains(FloorKeys, key) {
			out = append(out, key)
		}
	}
	return out
}

// WithFloorGuessed says of all the floor's sizes that nobody has measured them on this van.
func (j Job) WithFloorGuessed() Job {
	var list []any
	for _, key := range FloorKeys {
		list = append(list, key)
	}
	return j.WithExtra(guesses, list)
}

// WithoutGuess says of a value that it was measured.
func (j Job) WithoutGuess(key string) Job {
	var list []any
	for _, other := range j.Guesses() {
		if other != key {
			list = append(list, other)
		}
	}
	return j.WithExtra(guesses, list)
}
