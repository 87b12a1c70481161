package vehicles

import "slices"

// List is a slice of a job that is never edited in place: every edit returns a changed copy and leaves the old one as it
// was, so that jobs may share it. An index that is not there changes nothing.
//
//	job.Obstructions = job.Obstructions.With(i, o)
type List[T any] []T

// With returns the list with v in place of the item i.
func (l List[T]) With(i int, v T) List[T] {
	if i < 0 || i >= len(l) {
		return l
	}
	l = slices.Clone(l)
	l[i] = v
	return l
}

// Insert returns the list with v before the item i, at the end for i = len(l).
func (l List[T]) Insert(i int, v T) List[T] {
	if i < 0 || i > len(l) {
		return l
	}
	return slices.Insert(slices.Clone(l), i, v)
}

// Without returns the list without the item i; what has no items left is nil, as in a file that has none.
func (l List[T]) Without(i int) List[T] {
	switch {
	case i < 0 || i >= len(l):
		return l
	case len(l) == 1:
		return nil
	}
	return slices.Delete(slices.Clone(l), i, i+1)
}

// Move returns the list with the item from taken out and put back as the item to.
func (l List[T]) Move(from, to int) List[T] {
	if from < 0 || from >= len(l) || to < 0 || to >= len(l) {
		return l
	}
	v := l[from]
	return slices.Insert(slices.Delete(slices.Clone(l), from, from+1), to, v)
}
