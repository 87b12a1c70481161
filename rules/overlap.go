package rules

import (
	"cmp"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Overlap is a pair of obstructions that fill the same space: one runs through the other, one of them was measured wrong, or they are one thing.
type Overlap struct {
	A, B  int     // obstructions of the job, A before B
	Depth float64 // the shortest way out in plan, mm
}

// overlapTolerance is how deep in mm two things may seem to be in each other before one is called wrong: what touches,
// such as a bracket on a rail, is often measured so.
const overlapTolerance = 5

// Overlaps returns the pairs of obstructions that are deeper in each other in plan and in height than tape and touch
// explain, in the order of the job. What has no measured drop is left out, as its heights are only taken for the worst.
func Overlaps(plan vehicles.Plan) []Overlap {
	var list []Overlap
	there := extents(plan)
	for i := range there {
		p := &there[i]
		for k := range there[i+1:] {
			q := &there[i+1+k]
			if q.low.X+overlapTolerance >= p.high.X {
				break // so are all behind it
			}
			if p.apart(q) {
				continue
			}
			a, b := min(p.at, q.at), max(p.at, q.at)
			gap := geometry.Between(plan.Obstructions[a].Prism.Footprint, plan.Obstructions[b].Prism.Footprint).Gap
			if gap < -overlapTolerance {
				list = append(list, Overlap{A: a, B: b, Depth: -gap})
			}
		}
	}
	slices.SortFunc(list, func(p, q Overlap) int { return cmp.Or(p.A-q.A, p.B-q.B) })
	return list
}

// extent is the space that an obstruction is in.
type extent struct {
	at        int // of the plan
	low, high geometry.Point
	prism     *geometry.Prism
}

// extents are those of the obstructions with a measured drop, from the bumper forward.
func extents(plan vehicles.Plan) []extent {
	list := make([]extent, 0, len(plan.Obstructions))
	for i := range plan.Obstructions {
		if o := &plan.Obstructions[i]; !o.Assumed {
			low, high := o.Prism.Footprint.Bounds()
			list = append(list, extent{i, low, high, &o.Prism})
		}
	}
	slices.SortFunc(list, func(p, q extent) int { return cmp.Compare(p.low.X, q.low.X) })
	return list
}

// apart tells whether two things, of which q does not begin before p, are not deeper in each other than the tolerance as their
// boxes and their heights have it: the way out of a box is a way out of what it holds.
func (p *extent) apart(q *extent) bool {
	return p.low.X+overlapTolerance >= q.high.X ||
		p.low.Y+overlapTolerance >= q.high.Y || q.low.Y+overlapTolerance >= p.high.Y ||
		p.prism.Low+overlapTolerance >= q.prism.High || q.prism.Low+overlapTolerance >= p.prism.High
}
