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

// Overlapping is the overlaps of a plan: the pairs of obstructions that are deeper in each other in plan and in height than tape and
// touch explain, in the order of the job, with what was measured to find them. What has no measured drop is left out, as its heights are
// only taken for the worst. The zero one is of a plan without obstructions.
type Overlapping struct {
	Pairs   []Overlap
	Partial bool // more lie near one another than are compared
	things  []vehicles.Placed
	gaps    map[[2]int]float64 // between things that are near each other
	there   []extent           // in the order in which they were sorted
}

// After is that of another plan, as a job has it that was edited: what lies between two obstructions that are both where they were
// is not measured again, and of the same plan nothing is looked at.
func (o *Overlapping) After(plan vehicles.Plan) *Overlapping {
	if n := len(plan.Obstructions); n > 0 && n == len(o.things) && &o.things[0] == &plan.Obstructions[0] {
		return o
	}
	next := &Overlapping{things: plan.Obstructions, gaps: make(map[[2]int]float64, len(o.gaps))}
	stays := make([]bool, len(plan.Obstructions))
	for i := range stays {
		stays[i] = i < len(o.things) && o.things[i].Prism.Same(&plan.Obstructions[i].Prism)
	}
	gap := func(a, b int) float64 {
		if known, ok := o.gaps[[2]int{a, b}]; ok && stays[a] && stays[b] {
			return known
		}
		return geometry.Between(plan.Obstructions[a].Prism.Footprint, plan.Obstructions[b].Prism.Footprint).Gap
	}
	next.there = extents(plan, o.there)
	next.Partial = !eachNear(next.there, func(a, b int) bool {
		if len(next.gaps) == mostCompared {
			return false
		}
		by := gap(a, b)
		next.gaps[[2]int{a, b}] = by
		if by < -overlapTolerance {
			next.Pairs = append(next.Pairs, Overlap{A: a, B: b, Depth: -by})
		}
		return true
	})
	slices.SortFunc(next.Pairs, func(p, q Overlap) int { return cmp.Or(p.A-q.A, p.B-q.B) })
	return next
}

// mostCompared is how many pairs that are near each other are compared, some hundred times what a van has: what lies over one another without end
// would else take seconds a key, and all memory.
const mostCompared = 20000

// eachNear calls each with the pairs of obstructions that are not apart as their boxes and heights have it, as long as it says so; it tells whether
// that was to the end.
func eachNear(there []extent, each func(a, b int) bool) bool {
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
			if !each(min(p.at, q.at), max(p.at, q.at)) {
				return false
			}
		}
	}
	return true
}

// extent is the space that an obstruction is in.
type extent struct {
	at        int // of the plan
	low, high geometry.Point
	prism     *geometry.Prism
}

// extents are those of the obstructions with a measured drop, from the bumper forward. They are looked at in the order that those of a
// plan before had: most of them are still in it, and what is nearly sorted is soon sorted.
func extents(plan vehicles.Plan, before []extent) []extent {
	list, looked := make([]extent, 0, len(plan.Obstructions)), make([]bool, len(plan.Obstructions))
	look := func(i int) {
		if o := &plan.Obstructions[i]; !looked[i] && !o.Assumed {
			low, high := o.Prism.Footprint.Bounds()
			list = append(list, extent{i, low, high, &o.Prism})
		}
		looked[i] = true
	}
	for i := range before {
		if at := before[i].at; at < len(looked) {
			look(at)
		}
	}
	for i := range looked {
		look(i)
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
