package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// HoleTape is a direct tape from a drilled pilot hole to an obstruction: one that was taken, or one to take.
type HoleTape struct {
	To      int            // the obstruction's index
	Direct  int            // the tape's index in cut.direct, -1 for one to take
	Is      float64        // the plan distance by the survey, mm
	Way     geometry.Point // the unit direction from the hole; zero from inside the thing
	Far     float64        // what was read less Is, mm; of a tape that was taken, as is Verdict
	Verdict Verdict
}

// taken tells whether somebody has read it.
func (t *HoleTape) taken() bool { return t.Direct >= 0 }

// tapedGroups are what a direct tape is taken to, a group each: what is found again within a mm, and seldom stands alone.
var tapedGroups = [...]vehicles.Traits{vehicles.TapedAsPipe, vehicles.TapedAsRail, vehicles.TapedAsBeam}

// groupOf is the group of a thing; all others are one more, behind those.
func groupOf(o *vehicles.Obstruction) int {
	for i, group := range tapedGroups {
		if o.Is(group) {
			return i
		}
	}
	return len(tapedGroups)
}

const (
	// deepestTape is how far below the floor, mm, a tape from the hole is still level and plumb: a bit put up through the hole
	// reaches so far. common practice, no source.
	deepestTape = 150
	// mostNear is how many of the nearest things of a group are tried: more lie so far off that nobody tapes to them.
	mostNear = 6
)

// HoleTapes returns the direct tapes from the drilled hole, those that were taken and those to take: in each group of kinds to
// the nearest thing that a level tape reaches, so that each lies across one that agrees or is to be taken too; to any other kind
// only where those don't. They stand by group, the taken before those to take, as the job has them. Nil without a hole.
func HoleTapes(r *Result) []HoleTape {
	if r.Job.Cut == nil || !r.Plan.Cut.Drilled {
		return nil
	}
	t := taper{r: r, all: slices.Clone(r.Hole.Tapes)}
	t.proposeIn(len(tapedGroups))
	if !t.meet() {
		t.proposeIn(len(tapedGroups) + 1)
	}
	if len(t.all) == 0 {
		t.one()
	}
	slices.SortStableFunc(t.all, func(a, b HoleTape) int {
		return cmp.Or(cmp.Compare(t.group(&a), t.group(&b)), cmp.Compare(uint(a.Direct), uint(b.Direct)))
	})
	return t.all
}

// taper looks for tapes to take.
type taper struct {
	r   *Result
	all []HoleTape // those taken, then those to take
}

func (t *taper) group(h *HoleTape) int { return groupOf(&t.r.Job.Obstructions[h.To]) }

// good are the tapes that were taken and agree, and those to take.
func (t *taper) good() (good []HoleTape) {
	for _, h := range t.all {
		if !h.taken() || h.Verdict == Clear {
			good = append(good, h)
		}
	}
	return good
}

// meet tells whether two good ones lie across one another.
func (t *taper) meet() bool {
	ways := []geometry.Point{}
	for _, h := range t.good() {
		ways = append(ways, h.Way)
	}
	return fixes(ways)
}

// proposeIn adds one tape to take in each of the first so many groups that has no good one yet: of all ways to choose, that with
// the most tapes, of those the one with the shortest.
func (t *taper) proposeIn(groups int) {
	choices := make([][]HoleTape, groups)
	good := t.good()
	for g := range choices {
		if !slices.ContainsFunc(good, func(h HoleTape) bool { return t.group(&h) == g }) {
			choices[g] = t.near(g)
		}
	}
	best, most, least := []HoleTape(nil), 0, math.Inf(1)
	eachChoice(choices, nil, func(chosen []HoleTape) {
		sum := 0.0
		for _, h := range chosen {
			sum += h.Is
			if !crosses(h, chosen) && !crosses(h, good) {
				return
			}
		}
		if len(chosen) > most || len(chosen) == most && sum < least {
			best, most, least = slices.Clone(chosen), len(chosen), sum
		}
	})
	t.all = append(t.all, best...)
}

// one adds the shortest tape to take: nothing lies across it.
func (t *taper) one() {
	var all []HoleTape
	for g := range len(tapedGroups) + 1 {
		all = append(all, t.near(g)...)
	}
	if len(all) > 0 {
		t.all = append(t.all, slices.MinFunc(all, func(a, b HoleTape) int { return cmp.Compare(a.Is, b.Is) }))
	}
}

// eachChoice calls do with every way to choose at most one of each.
func eachChoice(of [][]HoleTape, chosen []HoleTape, do func([]HoleTape)) {
	if len(of) == 0 {
		do(chosen)
		return
	}
	eachChoice(of[1:], chosen, do)
	for _, h := range of[0] {
		eachChoice(of[1:], append(chosen, h), do)
	}
}

// crosses tells whether a tape lies across one of others.
func crosses(h HoleTape, others []HoleTape) bool {
	return slices.ContainsFunc(others, func(o HoleTape) bool { return fixes([]geometry.Point{h.Way, o.Way}) })
}

// near are tapes to the nearest things of a group that a level tape reaches and that have none yet, nearest first.
func (t *taper) near(group int) (near []HoleTape) {
	for i := range t.r.Job.Obstructions {
		taped := slices.ContainsFunc(t.all, func(h HoleTape) bool { return h.To == i })
		thing := &t.r.Plan.Obstructions[i]
		if taped || groupOf(&t.r.Job.Obstructions[i]) != group || rests(thing) != 0 || thing.Assumed {
			continue
		}
		if h := tapeTo(t.r, i); h.Is > 0 {
			near = append(near, h)
		}
	}
	slices.SortStableFunc(near, func(a, b HoleTape) int { return cmp.Compare(a.Is, b.Is) })
	reached := near[:0]
	for _, h := range near {
		if len(reached) < mostNear && t.reaches(h) {
			reached = append(reached, h)
		}
	}
	return reached
}

// tapeTo is a tape to take from the hole to an obstruction.
func tapeTo(r *Result, i int) HoleTape {
	h := HoleTape{To: i, Direct: -1}
	var nearest geometry.Point
	h.Is, nearest = r.Plan.Obstructions[i].Prism.Footprint.Gap(r.Plan.Cut.At)
	if h.Is = max(0, h.Is); h.Is > 0 {
		h.Way = nearest.Sub(r.Plan.Cut.At).Scale(1 / h.Is)
	}
	return h
}

// reaches tells whether a tape at the thing's top, or as low as it may be, meets nothing else on its way.
func (t *taper) reaches(h HoleTape) bool {
	thing, hole := &t.r.Plan.Obstructions[h.To].Prism, t.r.Plan.Cut.At
	top, low := min(0, thing.High), max(thing.Low, -deepestTape)
	if low > top {
		return false
	}
	tape := geometry.NewLine([]geometry.Point{hole, hole.Add(h.Way.Scale(h.Is))}, 0)
	min, max := tape.Bounds()
	free := [2]bool{true, true}
	for i := range t.r.Plan.Obstructions {
		other := &t.r.Plan.Obstructions[i].Prism
		from, to := other.Footprint.Bounds()
		if i == h.To || from.X > max.X || to.X < min.X || from.Y > max.Y || to.Y < min.Y {
			continue
		}
		for n, z := range [2]float64{top, low} {
			if free[n] && other.Low <= z && z <= other.High && geometry.Between(tape, other.Footprint).Gap < 0 {
				free[n] = false
			}
		}
	}
	return free[0] || free[1]
}
