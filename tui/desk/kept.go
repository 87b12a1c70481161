package desk

import (
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/vehicles"
)

// Kept is what screens have worked out of the job as it was judged last: once a change, not at each look at a row.
type Kept struct {
	sizes []sizing.Subject
	steps work.List
	done  []vehicles.Done // the records that the steps were made with
	asked []rules.Limit
}

// Sizes are the sizes behind the job as it was judged last. Nobody changes the list.
func (s *State) Sizes() []sizing.Subject {
	if s.Kept == nil {
		return sizing.Of(&s.Result)
	}
	if s.Kept.sizes == nil {
		s.Kept.sizes = sizing.Of(&s.Result)
	}
	return s.Kept.sizes
}

// Limits are all that the book asks that judged the job last. Nobody changes the list.
func (s *State) Limits() []rules.Limit {
	switch {
	case s.Result.Book == nil:
		return nil
	case s.Kept == nil:
		return s.Result.Book.Limits()
	case s.Kept.asked == nil:
		s.Kept.asked = s.Result.Book.Limits()
	}
	return s.Kept.asked
}

// WorkSteps are the steps of the work with what the job on the desk records now; which they are is of the job as it was judged last. Nobody
// changes the list.
func (s *State) WorkSteps() work.List {
	made := func() work.List {
		r := s.Result
		r.Job.Done = s.Job.Done
		return work.Of(&r)
	}
	if s.Kept == nil {
		return made()
	}
	if k := s.Kept; k.steps == nil || !same(k.done, s.Job.Done) {
		k.steps, k.done = made(), s.Job.Done
	}
	return s.Kept.steps
}

// same tells whether two lists are one: a list of a job is never edited in place.
func same[T any](a, b []T) bool { return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0]) }
