package vehicles

import (
	"fmt"
	"slices"
)

// Every edit returns a new job and leaves the old one as it was: it copies the one slice, map or table it changes
// and shares the rest. An index that is not there changes nothing.

// replaced, inserted, without and moved return changed copies of a slice.
func replaced[T any](s []T, i int, v T) []T {
	if i < 0 || i >= len(s) {
		return s
	}
	s = slices.Clone(s)
	s[i] = v
	return s
}

// inserted puts v before the item i, at the end for i = len(s).
func inserted[T any](s []T, i int, v T) []T {
	if i < 0 || i > len(s) {
		return s
	}
	return slices.Insert(slices.Clone(s), i, v)
}

// without takes the item i out; what has no items left is nil, as in a file that has none.
func without[T any](s []T, i int) []T {
	switch {
	case i < 0 || i >= len(s):
		return s
	case len(s) == 1:
		return nil
	}
	return slices.Delete(slices.Clone(s), i, i+1)
}

// moved takes the item from out and puts it back as the item to.
func moved[T any](s []T, from, to int) []T {
	if from < 0 || from >= len(s) || to < 0 || to >= len(s) {
		return s
	}
	v := s[from]
	return slices.Insert(slices.Delete(slices.Clone(s), from, from+1), to, v)
}

func (j Job) WithObstruction(i int, o Obstruction) Job {
	j.Obstructions = replaced(j.Obstructions, i, o)
	return j
}

func (j Job) InsertObstruction(i int, o Obstruction) Job {
	j.Obstructions = inserted(j.Obstructions, i, o)
	return j
}

func (j Job) WithoutObstruction(i int) Job {
	j.Obstructions = without(j.Obstructions, i)
	return j
}

func (j Job) MoveObstruction(from, to int) Job {
	j.Obstructions = moved(j.Obstructions, from, to)
	return j
}

func (j Job) WithOpening(i int, o Opening) Job {
	j.Openings = replaced(j.Openings, i, o)
	return j
}

func (j Job) InsertOpening(i int, o Opening) Job {
	j.Openings = inserted(j.Openings, i, o)
	return j
}

func (j Job) WithoutOpening(i int) Job {
	j.Openings = without(j.Openings, i)
	return j
}

func (j Job) MoveOpening(from, to int) Job {
	j.Openings = moved(j.Openings, from, to)
	return j
}

func (j Job) WithFitting(i int, f Fitting) Job {
	j.Fittings = replaced(j.Fittings, i, f)
	return j
}

func (j Job) InsertFitting(i int, f Fitting) Job {
	j.Fittings = inserted(j.Fittings, i, f)
	return j
}

func (j Job) WithoutFitting(i int) Job {
	j.Fittings = without(j.Fittings, i)
	return j
}

func (j Job) MoveFitting(from, to int) Job {
	j.Fittings = moved(j.Fittings, from, to)
	return j
}

func (j Job) WithTie(i int, t Tie) Job {
	j.Ties = replaced(j.Ties, i, t)
	return j
}

func (j Job) InsertTie(i int, t Tie) Job {
	j.Ties = inserted(j.Ties, i, t)
	return j
}

func (j Job) WithoutTie(i int) Job {
	j.Ties = without(j.Ties, i)
	return j
}

func (j Job) MoveTie(from, to int) Job {
	j.Ties = moved(j.Ties, from, to)
	return j
}

func (j Job) WithWheel(i int, w Wheel) Job {
	j.Wheels = replaced(j.Wheels, i, w)
	return j
}

func (j Job) InsertWheel(i int, w Wheel) Job {
	j.Wheels = inserted(j.Wheels, i, w)
	return j
}

func (j Job) WithoutWheel(i int) Job {
	j.Wheels = without(j.Wheels, i)
	return j
}

// UniqueName returns base, or base with the lowest number from 2 behind it, so that no obstruction, opening, fitting
// or tie has that name yet.
func (j Job) UniqueName(base string) string {
	taken := map[string]bool{}
	for _, o := range j.Obstructions {
		taken[o.Name] = true
	}
	for _, o := range j.Openings {
		taken[o.Name] = true
	}
	for _, f := range j.Fittings {
		taken[f.Name] = true
	}
	for _, t := range j.Ties {
		taken[t.Name] = true
	}
	name := base
	for n := 2; taken[name]; n++ {
		name = fmt.Sprintf("%s %d", base, n)
	}
	return name
}
