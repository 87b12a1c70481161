package rules

import (
	"math"

	"bench.example/undermark/geometry"
)

// keeps are what cut, plate and body ask of the place of the cut, and what lies inside the floor.
func (r *Result) keeps() []keep {
	j := newJudge(&r.Job, &r.Plan, r.Book)
	return j.keeps(TheCut, AFitting, ThePlate, TheBody)
}

// worst returns the least margin at a place and which it is; +Inf and -1 without any.
func worst(list []keep, c geometry.Point) (margin float64, which int) {
	margin, which = math.Inf(1), -1
	for i := range list {
		if m := list[i].Margin(c); m < margin {
			margin, which = m, i
		}
	}
	return margin, which
}
