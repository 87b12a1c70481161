package vehicles

import "slices"

// Begun is a thing that was begun and lacks readings. It can't be judged, but something is there.
type Begun struct {
	Texts  map[string]string // what was said of it, by field
	Others map[string]any    // what else a file says of it, kept as it is
}

// Saying is the thing with these texts, as far as they say anything.
func (b Begun) Saying(texts map[string]string) Begun {
	b.Texts = nil
	for key, text := range texts {
		if text != "" {
			b.Texts = put(b.Texts, key, text)
		}
	}
	return b
}

// Unfinished are the things that were begun and lack readings, by what they are to be. Lists have the newest first.
type Unfinished struct {
	Obstructions, Openings, Fittings, Ties List[Begun]
}

// UnfinishedCount is how many things of the job were begun and lack readings.
func (j Job) UnfinishedCount() int {
	u := j.Unfinished
	return len(u.Obstructions) + len(u.Openings) + len(u.Fittings) + len(u.Ties)
}

// Settled says whether all that was begun is whole, nothing typed was refused and nothing is a guess: what is not
// settled is judged doubtful at best.
func (j Job) Settled() bool {
	return j.UnfinishedCount() == 0 && j.RefusedCount() == 0 && len(j.Guesses) == 0
}

// FloorKeys are the keys of the floor's sizes.
var FloorKeys = []string{"floor.from", "floor.length", "floor.width", "floor.thickness", "floor.ground"}

// WithFloorGuessed says of all the floor's sizes that nobody has measured them on this van.
func (j Job) WithFloorGuessed() Job {
	j.Guesses = slices.Clone(FloorKeys)
	return j
}

// WithoutGuess says of a value that it was measured.
func (j Job) WithoutGuess(key string) Job {
	j.Guesses = slices.DeleteFunc(slices.Clone(j.Guesses), func(other string) bool { return other == key })
	if len(j.Guesses) == 0 {
		j.Guesses = nil
	}
	return j
}
