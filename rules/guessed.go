package rules

import "slices"

// sizesOf are the keys of the floor's sizes that a finding against the floor rests on; where a run is below it, none are asked.
func sizesOf(subject Thing) []string {
	switch {
	case subject.Sort == TheStack:
		return []string{"floor.thickness"}
	case subject.onCut() || subject.Sort == AFuelHole:
		return []string{"floor.from", "floor.length", "floor.width"}
	}
	return nil
}

// onGuess tells whether a finding rests on a size of the floor that nobody has measured: what was not looked at is not clear.
func (j *judge) onGuess(f *Finding) bool {
	if len(j.job.Guesses) == 0 || f.Against.Sort != TheFloor {
		return false
	}
	return slices.ContainsFunc(sizesOf(f.Subject), func(key string) bool { return slices.Contains(j.job.Guesses, key) })
}
