package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// sure99 is how many standard uncertainties hold 99 % of a normal distribution, both ways (2.576): of differences between ties,
// of misclosures. It is the root of the 99 % point of chi-squared with one degree of freedom; compare JCGM 100:2008, table G.1.
func sure99() float64 { return math.Sqrt(survey.ChiSquared99(1)) }

// TiesApart returns the pairs of ties in use whose distance apart differs between below and above by more than their
// tapes explain, the worst first. It needs no fit: what differs here is wrong however the sides lie on each other.
func TiesApart(plan vehicles.Plan) []survey.Baseline {
	variance := map[string]float64{}
	for _, t := range plan.Ties {
		variance[t.Name] = t.Variance()
	}
	var apart []survey.Baseline
	for _, p := range survey.Baselines(plan.Ties) {
		// A tie's variance is that of its places below and above together, along any one direction: half of all four.
		if math.Abs(p.Difference) > sure99()*math.Sqrt(variance[p.A]+variance[p.B]) {
			apart = append(apart, p)
		}
	}
	slices.SortStableFunc(apart, func(p, q survey.Baseline) int {
		return cmp.Compare(math.Abs(q.Difference), math.Abs(p.Difference))
	})
	return apart
}

// TieOnWrongSide returns the one tie whose readings, with left and right changed over on one side, would make three or
// more ties agree that do not agree as they are; which of its two sides it is, below or above, only the van says. The plan
// is that of the job. Nothing but the ties is reduced: nothing else enters their fit.
func TieOnWrongSide(job vehicles.Job, plan vehicles.Plan) (tie int, ok bool) {
	if agree(plan.Fit) || plan.Fit.N < 3 {
		return 0, false
	}
	least := math.Inf(1)
	for i := range job.Ties {
		if !job.Ties[i].Use {
			continue
		}
		for _, below := range []bool{true, false} {
			tried, faults := vehicles.ReduceTies(job.WithTieSideSwapped(i, below))
			if len(faults) == 0 && agree(tried) && tried.RMS < least {
				tie, ok, least = i, true, tried.RMS
			}
		}
	}
	return tie, ok
}

// agree tells whether a fit leaves over no more than its tapes explain: the 99 % point of chi-squared.
func agree(fit survey.Fit) bool {
	return !fit.Tied() || fit.Statistic <= survey.ChiSquared99(2*fit.N-3)
}
