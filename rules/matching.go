package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// sure99 is the factor of 99 % of a normal distribution, both ways. Source: JCGM 100:2008, table G.1, whose 99 % is
// 2.576.
const sure99 = 2.576

// TiesApart returns the pairs of ties in use whose distance apart differs between below and above by more than their
// tapes explain, the worst first. It needs no fit: what differs here is wrong however the sides lie on each other.
func TiesApart(plan vehicles.Plan) []survey.Pair {
	variance := map[string]float64{}
	for _, t := range plan.Ties {
		variance[t.Name] = t.Variance
	}
	var apart []survey.Pair
	for _, p := range survey.PairDistances(plan.Ties) {
		// A tie's variance is that of its places below and above together, along any one direction: half of all four.
		if math.Abs(p.Difference) > sure99*math.Sqrt(variance[p.A]+variance[p.B]) {
			apart = append(apart, p)
		}
	}
	slices.SortStableFunc(apart, func(p, q survey.Pair) int {
		return cmp.Compare(math.Abs(q.Difference), math.Abs(p.Difference))
	})
	return apart
}
