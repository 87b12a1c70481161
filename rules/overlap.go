package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Overlap is a pair of obstructions that fill the same space: one of them was measured wrong, or they are one thing.
type Overlap struct {
	A, B  int     // obstructions of the job, A before B
	Depth float64 // the shortest way out in plan, mm
}

// overlapTolerance is how deep in mm two things may seem to be in each other before one is called wrong: what touches,
// such as a bracket on a rail, is often measured so.
const overlapTolerance = 5

// Overlaps returns the pairs of obstructions that are deeper in each other in plan and in height than tape and touch
// explain. What has no measured drop is left out, as its heights are only taken for the worst.
func Overlaps(plan vehicles.Plan) []Overlap {
	var list []Overlap
	for i := range plan.Obstructions {
		for k := i + 1; k < len(plan.Obstructions); k++ {
			p, q := &plan.Obstructions[i], &plan.Obstructions[k]
			if p.Assumed || q.Assumed || apart(&p.Prism, &q.Prism) {
				continue
			}
			if gap := geometry.Between(p.Prism.Footprint, q.Prism.Footprint).Gap; gap < -overlapTolerance {
				list = append(list, Overlap{A: i, B: k, Depth: -gap})
			}
		}
	}
	return list
}

// apart tells whether two prisms are apart by their heights or their plan bounds.
func apart(p, q *geometry.Prism) bool {
	if p.Low+overlapTolerance >= q.High || q.Low+overlapTolerance >= p.High {
		return true
	}
	low, high := p.Footprint.Bounds()
	from, to := q.Footprint.Bounds()
	return low.X >= to.X || from.X >= high.X || low.Y >= to.Y || from.Y >= high.Y
}
