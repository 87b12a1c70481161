package vehicles

import (
	"maps"
	"math"
	"slices"

	"bench.example/undermark/geometry"
)

// LookList is one of the lists of kinds that are looked for.
type LookList uint8

// The lists.
const (
	AtCut    LookList = iota // of obstructions, within LookRound of the cut
	AtRuns                   // of obstructions, within LookRound of each run
	AtOutlet                 // of openings, within LookOut of the exhaust's outlet, muffler and drains
)

// LookLists are all of them.
var LookLists = [...]LookList{AtCut, AtRuns, AtOutlet}

// LookOut is how far from where exhaust gas comes out one looks for what it could get in by, mm: beyond what any kind of
// opening is asked to be away. common practice, no source.
const LookOut = 2000

// exhaustWithin is how far the exhaust may move, mm, before looking LookOut round it no longer counts as looking round where it
// is now. common practice, no source.
const exhaustWithin = 200

// Kinds are the kinds of the list, in the order of lists.
func (l LookList) Kinds() []string {
	if l == AtOutlet {
		return OpeningKinds
	}
	return Kinds
}

// KindOf is the kind of the list of that name.
func (l LookList) KindOf(name string) Kind {
	if l == AtOutlet {
		return OpeningKindOf(name)
	}
	return KindOf(name)
}

// HasToLookRound tells whether the job has what a list is looked for round. For the cut it always has: where one looks is where it
// will be.
func (j *Job) HasToLookRound(l LookList) bool {
	switch l {
	case AtRuns:
		return j.Exhaust != nil || j.Intake != nil || j.Fuel != nil
	case AtOutlet:
		return j.Exhaust != nil
	}
	return true
}

// Entered is how many things of a kind of a list the job has.
func (j *Job) Entered(l LookList, kind string) (n int) {
	for i := range j.Openings {
		if l == AtOutlet && j.Openings[i].Kind == kind {
			n++
		}
	}
	for i := range j.Obstructions {
		if l != AtOutlet && j.Obstructions[i].Kind == kind {
			n++
		}
	}
	return n
}

// Has tells whether the job has a thing of a kind of a list.
func (j *Job) Has(l LookList, kind string) bool {
	if l == AtOutlet {
		return slices.ContainsFunc(j.Openings, func(o Opening) bool { return o.Kind == kind })
	}
	for i := range j.Obstructions { // they are large: by index
		if j.Obstructions[i].Kind == kind {
			return true
		}
	}
	return false
}

// Look is where runs were when kinds were looked for round them.
type Look struct {
	Kinds []string
	Runs  [len(RunKinds)]List[RunPoint] // from the stub on; nil for a run there was not, or that is not looked round
}

// LookedFor are the kinds of a list that were looked for and found absent.
func (j *Job) LookedFor(l LookList) map[string]bool {
	looked, _ := j.lists(l)
	return *looked
}

func (j *Job) lists(l LookList) (looked *map[string]bool, at *List[Look]) {
	switch l {
	case AtRuns:
		return &j.LookedRuns, &j.RunLooks
	case AtOutlet:
		return &j.LookedOpenings, &j.OpeningLooks
	}
	return &j.Looked, nil
}

// WithLookedAt notes that a kind of a list was looked for round what is where the plan has it and found absent, or takes the
// note back.
func (j Job) WithLookedAt(l LookList, plan *Plan, kind string, found bool) Job {
	if l == AtCut {
		return j.WithLooked(kind, found)
	}
	looked, looks := j.lists(l)
	*looked = maps.Clone(*looked)
	*looks = without(*looks, kind)
	if found {
		*looked = put(*looked, kind, true)
		*looks = lookedRound(*looks, kind, j.runsAt(l, plan))
	} else if delete(*looked, kind); len(*looked) == 0 {
		*looked = nil
	}
	return j
}

// without are looks without a kind.
func without(looks List[Look], kind string) (rest List[Look]) {
	for _, look := range looks {
		look.Kinds = slices.DeleteFunc(slices.Clone(look.Kinds), func(k string) bool { return k == kind })
		if len(look.Kinds) > 0 {
			rest = append(rest, look)
		}
	}
	return rest
}

// lookedRound are looks with one more kind, looked for round runs where they are.
func lookedRound(looks List[Look], kind string, now Look) List[Look] {
	for i, look := range looks {
		if look.same(&now) {
			look.Kinds = append(slices.Clone(look.Kinds), kind)
			return looks.With(i, look)
		}
	}
	now.Kinds = []string{kind}
	return looks.Insert(len(looks), now)
}

func (k *Look) same(other *Look) bool {
	for i := range k.Runs {
		if !slices.Equal(k.Runs[i], other.Runs[i]) {
			return false
		}
	}
	return true
}

// runsAt are the runs that a list is of, where they are now: as the plan lays them, else as the job has them.
func (j *Job) runsAt(l LookList, plan *Plan) (now Look) {
	for _, k := range RunKinds {
		switch run := j.Run(k); {
		case run == nil, l == AtOutlet && k != ExhaustRun:
		case plan.Run(k) == nil:
			now.Runs[k] = run.Path
		default:
			for _, p := range plan.Run(k).Path {
				now.Runs[k] = append(now.Runs[k], RunPoint{p.X, p.Y, -p.Z + 0})
			}
		}
	}
	return now
}

// LookedBefore are the kinds of a list that were looked for before what they were looked for round moved, in the order of
// lists. A kind of which nobody wrote down where is taken to be looked for round where all is now.
func (j *Job) LookedBefore(l LookList, plan *Plan) (kinds []string) {
	if l == AtCut {
		return j.LookedElsewhere()
	}
	looked, looks := j.lists(l)
	now, stale := j.runsAt(l, plan), map[string]bool{}
	for i := range *looks {
		look := &(*looks)[i]
		moved := look.left(&now, l.bears())
		for _, kind := range look.Kinds {
			stale[kind] = stale[kind] || moved
		}
	}
	for _, kind := range l.Kinds() {
		if stale[kind] && (*looked)[kind] {
			kinds = append(kinds, kind)
		}
	}
	return kinds
}

// bears is how far what a list is looked for round may move, mm.
func (l LookList) bears() float64 {
	if l == AtOutlet {
		return exhaustWithin
	}
	return lookedWithin
}

// left tells whether any run has come farther than within from where the runs of its kind were.
func (k *Look) left(now *Look, within float64) bool {
	for i := range now.Runs {
		if !slices.Equal(k.Runs[i], now.Runs[i]) && !along(now.Runs[i], k.Runs[i], within) {
			return true
		}
	}
	return false
}

// lookStep is how far apart the places are at which a run is held against where it was, mm: what lies between two is missed by
// at most half of it.
const lookStep = 10

// along tells whether a run keeps within so many mm of where another was, all along.
func along(run, was List[RunPoint], within float64) bool {
	if len(run) == 0 || len(was) == 0 {
		return len(run) == 0
	}
	path, before := inSpace(run), inSpace(was)
	for i := range path {
		leg := geometry.Segment3{A: path[max(0, i-1)], B: path[i]}
		if j := slices.Index(before, leg.B); j > 0 && before[j-1] == leg.A {
			continue // the same leg
		}
		steps := math.Ceil(leg.B.Sub(leg.A).Norm()/lookStep) + 1
		for s := range int(steps) {
			p := leg.At(min(1, float64(s+1)/steps))
			if geometry.BetweenPaths([]geometry.Point3{p}, before).Gap > within {
				return false
			}
		}
	}
	return true
}

func inSpace(path []RunPoint) []geometry.Point3 {
	points := make([]geometry.Point3, len(path))
	for i, p := range path {
		points[i] = geometry.Point3{X: p.X, Y: p.Y, Z: -p.Drop}
	}
	return points
}
