package rules

import "context"

// Stage is what the search for layouts is at.
type Stage uint8

// The stages, in their order.
const (
	AtWays     Stage = iota // which ways an exhaust has from the places that look best
	AtLayouts               // the runs from there
	AtMisses                // near misses
	AtInTheWay              // what would make room if it were moved
)

// seeking is a search that can be stopped and tells how far it is.
type seeking struct {
	wanted context.Context // until it is done
	tell   func(at Stage, done, of int)
}

// goesOn tells how far a stage is, and whether the search is still wanted.
func (s *seeking) goesOn(at Stage, done, of int) bool {
	s.tell(at, done, of)
	return s.wanted.Err() == nil
}
