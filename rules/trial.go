package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// trial is a run being tried: a job with it put in, judged by the rules that it is held to and by no others.
type trial struct {
	judge   judge // of the job without the run
	kind    vehicles.RunKind
	run     vehicles.Run // what the run is but for its path and for what hangs on it
	rules   []*Rule
	haste   *haste              // nil: each run is judged whole
	order   []*Rule             // in which worth asks: what the run before fell short of first
	bands   float64             // by how many sigma it is to be clear
	spare   float64             // mm that it is to keep from every obstruction beside that
	upright bool                // the run is to leave its stub straight down
	eased   bool                // it counts where its muffler has too little room on its leg
	hanging vehicles.Hanging    // what hangs on the run's legs, to be put in its place
	above   []vehicles.RunPoint // of a fuel line: its path above the floor, which stays
	lower   int                 // how many of the legs that are fit for the muffler are passed over, from the outlet back

	last  judge // of the run tried last
	job   vehicles.Job
	plan  vehicles.Plan
	tried vehicles.Run        // that run
	laid  vehicles.LaidRun    // and where it is
	path  []vehicles.RunPoint // memory for that of the next
	bare  geometry.Run        // and for it before anything hangs on it
}

func newTrial(j judge, kind vehicles.RunKind, bands float64) *trial {
	j.only = SortOf(kind)
	return &trial{judge: j, kind: kind, run: *j.job.Run(kind), rules: askedOf(kind), order: askedOf(kind), bands: bands}
}

// worth judges a run through corners, its stub's mouth the first, which falls short already by so much. Once it is beyond most it does
// not look at what is left.
func (t *trial) worth(corners []geometry.Point3, short, most float64) route.Worth {
	if cornerTwice(corners) {
		return route.Worth{Short: math.Inf(1)}
	}
	run := t.run
	t.path = t.pathIn(t.path[:0], corners)
	run.Path = t.path
	lacks := 0.0
	run.Hanging, lacks = t.hang(corners)
	if !t.put(&run) {
		return route.Worth{Short: math.Inf(1)}
	}
	short += lacks
	if t.upright {
		short += aside(corners)
	}
	t.begin()
	t.last.haste = t.haste
	for i, r := range t.order {
		if short > most+marginNoise {
			break
		}
		if r.check == nil {
			continue
		}
		if t.haste != nil {
			t.haste.left = most - short
		}
		before := len(t.last.findings)
		r.check(&t.last, r)
		if short += t.short(t.last.findings[before:]); short > most+marginNoise && t.haste != nil {
			copy(t.order[1:], t.order[:i])
			t.order[0] = r
		}
	}
	laid := t.plan.Run(t.kind)
	length := laid.Line.Length() + awkward(&laid.Line)
	if t.eased {
		length += crampedMuffler(laid)
	}
	return route.Worth{Short: short, Length: length}
}

// cornerTwice tells whether two corners on end are one: the leg between them has no direction, and what goes by that is not asked. Both are
// in whole mm but for the stub's mouth, which is where it is to less than one.
func cornerTwice(corners []geometry.Point3) bool {
	for i := 1; i < len(corners); i++ {
		if corners[i].Sub(corners[i-1]).Norm() < route.OneCorner {
			return true
		}
	}
	return false
}

// pathThrough is a run's path through corners, whose first is the stub's mouth: from there on, or of a fuel line from its other end to
// there, behind what of it is above the floor.
func (t *trial) pathThrough(corners []geometry.Point3) []vehicles.RunPoint {
	return t.pathIn(make([]vehicles.RunPoint, 0, len(t.above)+len(corners)), corners)
}

// pathIn is that in the memory of a list, where it has room.
func (t *trial) pathIn(path []vehicles.RunPoint, corners []geometry.Point3) []vehicles.RunPoint {
	if t.kind != vehicles.FuelRun {
		for _, c := range corners[1:] {
			path = append(path, runPoint(c))
		}
		return path
	}
	path = append(path, t.above...)
	for i := len(corners) - 1; i >= 0; i-- {
		path = append(path, runPoint(corners[i]))
	}
	return path
}

func runPoint(c geometry.Point3) vehicles.RunPoint {
	return vehicles.RunPoint{X: c.X, Y: c.Y, Drop: number(-c.Z)}
}

// put lays a run, where the one before was; ok is false where what hangs on it can't.
func (t *trial) put(run *vehicles.Run) (ok bool) {
	t.tried = *run
	t.job = t.judge.job.WithRun(t.kind, &t.tried)
	t.plan, ok = t.judge.plan.WithRunIn(&t.laid, &t.job, t.kind)
	return ok
}

// begin begins to judge the run that was put.
func (t *trial) begin() {
	clear(t.last.findings) // whoever opens a finding takes it that nobody has written there
	found := t.last.findings[:0]
	t.last = t.judge
	t.last.job, t.last.plan, t.last.findings, t.last.measures = &t.job, &t.plan, found, [len(vehicles.RunKinds)]measuring{}
}

// findings are what rules say of the run that was put.
func (t *trial) findings(rules []*Rule) []Finding {
	t.begin()
	for _, r := range rules {
		if r.check != nil {
			r.check(&t.last, r)
		}
	}
	return t.last.findings
}

// short is by how much findings fall short in all, mm and degrees as they are: of being clear by what was measured, so that what
// no run could mend counts for nothing.
func (t *trial) short(findings []Finding) (short float64) {
	for i := range findings {
		if f := &findings[i]; !f.stays() {
			short += t.shortWith(f)
		}
	}
	return short
}

// misses tells whether findings fall short at all, those too that no run could mend.
func (t *trial) misses(findings []Finding) bool {
	return slices.ContainsFunc(findings, func(f Finding) bool { return t.shortWith(&f) > marginNoise })
}

// shortWith is by how much a finding falls short of being clear, with what is to be kept to spare.
func (t *trial) shortWith(f *Finding) float64 {
	short := f.shortOf(t.bands)
	if f.Rule.ByKind == AnObstruction && f.Margin.Set && t.spare > 0 {
		short += max(0, t.spare-max(0, f.Margin.Value-t.bands*f.Sigma))
	}
	return short
}

// shortOf is by how much a finding falls short of keeping so many sigma. Of what nobody has set a value for is asked only that
// nothing is hit.
func (f *Finding) shortOf(bands float64) float64 {
	m := f.Margin
	if !m.Set {
		if f.Rule.Unit != MM || f.Rule.Sense != Least || f.Unsaid {
			return 0
		}
		m.Value = f.Value
	}
	short := max(0, bands*f.Sigma-m.Value)
	switch {
	case f.Rule.Unit == Count:
		short *= countsAs
	case f.Rule.ByKind == AnObstruction && f.Value < 0:
		short -= asImpossible * f.Value
	}
	return short
}

// asImpossible is how many times a mm counts by which a run is where something else is: it can't be laid so.
const asImpossible = 10

// countsAs is how many mm one too many of anything counts as, where runs that are not what they should be are told apart.
const countsAs = 100

// worstClearance is the clearance of a run with the least margin; nil where there is none.
func worstClearance(findings []Finding) (worst *Finding) {
	for i := range findings {
		if f := &findings[i]; f.Rule.ByKind == AnObstruction && f.Margin.Set && (worst == nil || f.Margin.Value < worst.Margin.Value) {
			worst = f
		}
	}
	return worst
}

// keptSpare is what findings keep of every obstruction beside what is asked and beside what is uncertain; +Inf where nothing is near.
func keptSpare(findings []Finding) float64 {
	least := math.Inf(1)
	for i := range findings {
		if f := &findings[i]; f.Rule.ByKind == AnObstruction && f.Margin.Set {
			least = min(least, f.Margin.Value-coverage*f.Sigma)
		}
	}
	return least
}
