package rules

import (
	"math"
	"slices"
)

// rank is where a finding stands among the others, by danger.
type rank struct {
	margin float64
	at     int32
	group  int16 // foul, doubtful, clear; in each what touches first, then by weight, in each weight those with a margin first
}

func rankOf(f *Finding, at int32) rank {
	group := 2 * int16(Foul-f.Verdict)
	if !f.touches() {
		group++
	}
	group = 8*group + 2*int16(Kills-f.Weight)
	if !f.Margin.Set {
		group++
	}
	return rank{group: group, margin: f.Margin.Value, at: at}
}

// touches tells whether things that must be apart lie on one another.
func (f *Finding) touches() bool {
	return f.Verdict != Clear && f.Rule.Sense == Least && f.Rule.Unit == MM && f.Value <= 0
}

// compare is negative for a finding that comes before another: by group, then by margin, else as they were.
func (r rank) compare(q rank) int {
	switch {
	case r.group != q.group:
		return int(r.group) - int(q.group)
	case r.margin < q.margin:
		return -1
	case r.margin > q.margin:
		return 1
	}
	return int(r.at - q.at)
}

// manyRanks is from how many on rough keys are quicker.
const manyRanks = 40

// The bits of a rough key: what is left of them is the margin's.
const (
	groupBits = 6
	atBits    = 16
)

// rough is a rank as one number that is sorted at once: its group, the first bits of its margin, and where it is. Ranks whose
// margins differ by less than about a thousand millionth may stand the wrong way round.
func (r rank) rough() uint64 {
	margin := math.Float64bits(r.margin)
	if margin>>63 == 1 {
		margin = ^margin
	} else {
		margin |= 1 << 63
	}
	return uint64(r.group)<<(64-groupBits) | margin>>(groupBits+atBits)<<atBits | uint64(r.at)
}

// sorted are the ranks in their order: in that of their rough keys, and then each put past those that it comes before. Sorted by
// comparing, many would take twice as long; few are not worth the keys.
func sorted(ranks []rank) []rank {
	if len(ranks) < manyRanks || len(ranks) >= 1<<atBits {
		slices.SortFunc(ranks, rank.compare)
		return ranks
	}
	keys, list := make([]uint64, len(ranks)), make([]rank, len(ranks))
	for i, r := range ranks {
		keys[i] = r.rough()
	}
	slices.Sort(keys)
	for i, key := range keys {
		r := ranks[key&(1<<atBits-1)]
		for ; i > 0 && r.compare(list[i-1]) < 0; i-- {
			list[i] = list[i-1]
		}
		list[i] = r
	}
	return list
}

// sortWorst puts the findings most dangerous first: foul, doubtful, clear; in each what touches, then by weight, then by
// margin, those without one last. Findings are large: their ranks are sorted, and each is then moved once. With a stable
// sort of the findings themselves those of 500 obstructions take 1.6 to 2 times as long (BenchmarkFindings).
func sortWorst(findings []Finding) {
	ranks := make([]rank, len(findings))
	for i := range findings {
		ranks[i] = rankOf(&findings[i], int32(i))
	}
	ranks = sorted(ranks)
	for start := range ranks {
		if int(ranks[start].at) == start || ranks[start].at < 0 {
			continue
		}
		first, i := findings[start], start
		for int(ranks[i].at) != start {
			from := ranks[i].at
			findings[i], ranks[i].at = findings[from], -1
			i = int(from)
		}
		findings[i], ranks[i].at = first, -1
	}
}

// ForPeople are the findings, which are sorted, in the order in which people read them: theirs, but of the doubtful ones those first that hold
// others back, and of the clear ones those last that say that there is none of something, as they say least.
func ForPeople(findings []Finding) []*Finding {
	var next [standings + 1]int // where the next of each standing goes
	for i := range findings {
		next[findings[i].standing()+1]++
	}
	for standing := range standings {
		next[standing+1] += next[standing]
	}
	list := make([]*Finding, len(findings))
	for i := range findings {
		standing := findings[i].standing()
		list[next[standing]] = &findings[i]
		next[standing]++
	}
	return list
}

// standings is how many standings there are.
const standings = 5

// standing is 0 for what is foul, 1 for what is doubtful and holds others back, 2 for what else is doubtful, 3 for what is clear, 4
// for what is clear as there is none of it.
func (f *Finding) standing() int {
	switch {
	case f.Verdict == Foul:
		return 0
	case f.Verdict == Doubtful && f.Rule.HoldsBack:
		return 1
	case f.Verdict == Doubtful:
		return 2
	case f.ofNone():
		return 4
	}
	return 3
}

// ofNone tells whether it is clear as there is none of what it counts.
func (f *Finding) ofNone() bool { return f.Verdict == Clear && f.Rule.Unit == Count && f.Value == 0 }

// FoulAtCut are the findings of a judged job that say that nobody may drill or saw where the cut is, as people read them.
func FoulAtCut(r *Result) (foul []*Finding) {
	for _, f := range ForPeople(r.Findings) {
		if f.Rule.AtCut && f.Verdict == Foul {
			foul = append(foul, f)
		}
	}
	return foul
}
