package rules

import (
	"cmp"
	"slices"
)

// rank is where a finding stands among the others.
type rank struct {
	verdict  Verdict
	marginal bool // it has a margin
	margin   float64
	at       int
}

func rankOf(f *Finding, at int) rank { return rank{f.Verdict, f.Margin.Set, f.Margin.Value, at} }

// compare is negative for a finding that comes before another: foul, doubtful, clear, in each by margin, those without one
// last; else as they were.
func (r rank) compare(q rank) int {
	switch {
	case r.verdict != q.verdict:
		return int(q.verdict) - int(r.verdict)
	case r.marginal != q.marginal:
		if r.marginal {
			return -1
		}
		return 1
	}
	return cmp.Or(cmp.Compare(r.margin, q.margin), r.at-q.at)
}

// worstFirst returns the findings in the order of lists. Findings are large: their ranks are sorted.
func worstFirst(findings []Finding) []Finding {
	ranks := make([]rank, len(findings))
	for i := range findings {
		ranks[i] = rankOf(&findings[i], i)
	}
	slices.SortFunc(ranks, rank.compare)
	sorted := make([]Finding, len(findings))
	for i, r := range ranks {
		sorted[i] = findings[r.at]
	}
	return sorted
}
