package rules

import (
	"container/heap"
	"math"

	"bench.example/undermark/geometry"
)

// Move is the best place for the cut's centre that still swallows the pilot hole.
type Move struct {
	To      geometry.Point
	By      geometry.Point // To less where the pilot hole is
	Before  float64        // the worst margin where the pilot hole is, mm; 0 when no rule asks anything
	Margin  float64        // the worst margin at To, mm, at most moveWithin below the best there is
	Against string         // what that margin is to
}

// moveWithin is how far, in mm, the margin of a Move may lie below the best.
const moveWithin = 0.1

// keeps are what cut, plate and body ask of the place of the cut.
func (r *Result) keeps() []keep {
	j := newJudge(&r.Job, &r.Plan, r.Book)
	return j.keeps(TheCut, ThePlate, TheBody)
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

// bestMove finds the place within reach mm of the pilot hole with the largest worst margin: squares over that disc, the
// most promising first, are parted into four until none can hold a better one. As no margin changes by more than the
// centre moves, a square holds nothing above the margin at its middle plus half its diagonal.
func bestMove(r *Result, reach float64) Move {
	from := r.Plan.Cut.At
	list := binding(r.keeps(), from, reach)
	best, which := Move{To: from}, -1
	if len(list) == 0 {
		return best
	}
	best.Before, which = worst(list, from)
	best.Margin = best.Before
	open := &squares{{middle: from, half: reach, most: best.Before + reach*math.Sqrt2}}
	for open.Len() > 0 && (*open)[0].most > best.Margin+moveWithin {
		s := heap.Pop(open).(square)
		for _, q := range s.quarters() {
			away := q.middle.Sub(from)
			if away.Norm()-q.half*math.Sqrt2 > reach {
				continue
			}
			at := q.middle
			margin, i := worst(list, at)
			q.most = margin + q.half*math.Sqrt2
			if q.most <= best.Margin+moveWithin {
				continue
			}
			if d := away.Norm(); d > reach { // what it can do inside the disc
				at = from.Add(away.Scale(reach / d))
				margin, i = worst(list, at)
			}
			if margin > best.Margin {
				best.To, best.Margin, which = at, margin, i
			}
			heap.Push(open, q)
		}
	}
	best.Against, best.By = list[which].name, best.To.Sub(from)
	return best
}

// binding leaves out what can't be the worst anywhere within reach.
func binding(list []keep, from geometry.Point, reach float64) []keep {
	least, _ := worst(list, from)
	var kept []keep
	for _, k := range list {
		if k.Margin(from) <= least+2*reach {
			kept = append(kept, k)
		}
	}
	return kept
}

// square is a part of the disc that may hold the best place; most is what its margin can't be above.
type square struct {
	middle geometry.Point
	half   float64
	most   float64
}

// quarters parts a square into four.
func (s square) quarters() (four [4]square) {
	for i, to := range [4]geometry.Point{{X: 1, Y: 1}, {X: 1, Y: -1}, {X: -1, Y: 1}, {X: -1, Y: -1}} {
		four[i] = square{middle: s.middle.Add(to.Scale(s.half / 2)), half: s.half / 2}
	}
	return four
}

// squares is a heap with the most promising first.
type squares []square

func (s squares) Len() int           { return len(s) }
func (s squares) Less(i, k int) bool { return s[i].most > s[k].most }
func (s squares) Swap(i, k int)      { s[i], s[k] = s[k], s[i] }
func (s *squares) Push(v any)        { *s = append(*s, v.(square)) }
func (s *squares) Pop() any {
	last := len(*s) - 1
	v := (*s)[last]
	*s = (*s)[:last]
	return v
}
