package rules

import (
	"context"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Target is where a run is to end: at a place, or at the best along an edge of the van.
type Target struct {
	At      *vehicles.RunPoint // nil: along Edge
	Edge    Edge
	Within  float64             // with both: along Edge, no farther than so many mm in plan from At; 0: at At itself
	Spare   float64             // mm that are kept from every obstruction beside what is asked
	Upright bool                // it leaves its stub straight down as far as its first bend takes, where a run that does keeps every rule
	Above   []vehicles.RunPoint // of a fuel line that begins above the floor: its path there, before At; FuelTarget has it
}

// exactly tells whether the run is to end at its place and nowhere else.
func (t *Target) exactly() bool { return t.At != nil && t.Within == 0 }

// far tells whether a place is too far from where the run is to end.
func (t *Target) far(at geometry.Point) bool {
	return t.At != nil && at.Sub(geometry.Point{X: t.At.X, Y: t.At.Y}).Norm() > t.Within
}

// Edge is an edge of the van.
type Edge string

// The edges along which an outlet or a mouth may be.
const (
	LeftEdge  Edge = "left"
	RightEdge Edge = "right"
	RearEdge  Edge = "rear"
	UnderVan  Edge = "under" // no edge: anywhere under the van; an intake's mouth alone may be there
	AnyEdge   Edge = "any"   // any of those where the run may end
)

// Edges are those of the van, each by itself.
var Edges = []Edge{LeftEdge, RightEdge, RearEdge}

// Route is a run that was sought.
type Route struct {
	Run     *vehicles.Run   // with its path and what hangs on it; nil where nothing was found at all
	Length  float64         // of the rounded run, mm
	Bends   float64         // degrees
	Margin  vehicles.Number // the least that it keeps beside what is asked from anything; not set where nothing is near it
	Against string          // what that is kept from, by name
	Verdict Verdict         // Foul: it is the nearest miss; so it may be where it is doubtful, see Found
	Misses  []Finding       // what it breaks, or what is doubtful of it, the worst first
	Here    bool            // it is the run that the job has: nothing better was found
	misses  bool            // it keeps less of something than is asked, be it by less than is known
	slopes  bool            // its stub leg does not lead straight down from the stub
	Stub    string          // of a miss: what is too near to its stub, so that no end mends it and it was worked out roughly; "" for nothing
	short   float64         // by how much it falls short in all
	kept    float64         // what it keeps to spare for all that is uncertain, mm; +Inf where nothing is near it
}

// Found tells whether it is a run which breaks no rule as far as is known. One that is a mm short of what is asked is a miss, though that may
// be too close to call.
func (r *Route) Found() bool { return r.Run != nil && r.Verdict != Foul && !r.misses }

// Missed are those of what is not clear of it that are as bad as what makes it a miss, or of a run that was found what is doubtful.
func (r *Route) Missed() []Finding {
	missed := r.Misses[:0:0]
	for i := range r.Misses {
		if f := &r.Misses[i]; f.Verdict == r.Verdict && (r.Found() || r.Verdict == Foul || f.shortOf(0) > marginNoise) {
			missed = append(missed, *f)
		}
	}
	return missed
}

// Aim is what a search for a run tries to keep.
type Aim uint8

// The aims, each sought where the one before can't be kept.
const (
	ToBeClear   Aim = iota // every rule, whatever is uncertain
	ToKeepRules            // every rule as far as is known
	ToMissLeast            // as much of the rules as can be kept
)

// Tell is told how far a search for a run is: what it aims at, and how many legs were tried for that so far.
type Tell func(at Aim, tried int)

// FindRoute seeks the shortest run of a kind, from its stub to the target, that keeps every rule that it is held to, clear of what
// is uncertain where that can be. Where none does, it is the nearest miss: what breaks the rules by least. The job has a heater, a
// cut and a run of that kind. Its path matters only where no search leads to one that keeps every rule: then it is straightened, or told as it is,
// if it ends where the run is to end and breaks none. It is stopped by ctx; what was found until then may not be the shortest.
// Whoever calls it asks ToSeek first, as FindPair's callers ask ToPair: among many more things it takes minutes.
func FindRoute(ctx context.Context, r *Result, kind vehicles.RunKind, to Target, tell Tell) Route {
	return newSeeker(ctx, r, kind, to, tell).route()
}

// route is the best that can be found, or the nearest miss.
func (s *seeker) route() Route {
	if s.stub = s.blocked(); s.stub != "" {
		return s.told(s.roughMiss())
	}
	best, kept := s.seek()
	if !kept && s.ctx.Err() == nil {
		if own, ok := s.asItIs(); ok {
			return own
		}
		best = s.nearestMiss(best)
	}
	return s.told(best)
}

// nearEnd are within how many mm of where a run ends now another end is sought in turn, the nearest first.
var nearEnd = []float64{0, 100, 200, 400, 800}

// FindNear seeks a run that ends where the job's own does, or as near to that along an edge of the van as it can be, in steps of nearEnd;
// where none is, it is the nearest miss of one that ends there. As FindRoute, else.
func FindNear(ctx context.Context, r *Result, kind vehicles.RunKind, tell Tell) Route {
	path := r.Job.Run(kind).Path
	end := path[kind.FarEnd(len(path))]
	for _, within := range nearEnd {
		s := newSeeker(ctx, r, kind, Target{At: &end, Edge: AnyEdge, Within: within, Upright: true}, tell)
		if s.blocked() != "" {
			break
		}
		if best, kept := s.seek(); kept || ctx.Err() != nil {
			return s.told(best)
		}
	}
	return FindRoute(ctx, r, kind, Target{At: &end, Upright: true}, tell)
}

func newSeeker(ctx context.Context, r *Result, kind vehicles.RunKind, to Target, tell Tell) *seeker {
	job := withoutWay(r.Job, kind)
	plan, _ := r.Plan.WithRun(&job, kind)
	s := &seeker{ctx: ctx, judge: newJudge(&job, &plan, r.Book), kind: kind, to: to, tell: tell, hanging: r.Job.Run(kind).OnLegs(), own: *r.Job.Run(kind)}
	s.ends = map[endsAsked]ends{}
	return s
}

// withoutWay is a job whose run of a kind has lost its path and what hangs there: that may lie past the end of another way.
func withoutWay(job vehicles.Job, kind vehicles.RunKind) vehicles.Job {
	run := *job.Run(kind)
	run.Path, run.Hanging = nil, vehicles.Hanging{}
	return job.WithRun(kind, &run)
}

// trial is a trial of the seeker's run, with what hangs on it.
func (s *seeker) trial(bands float64, lower int) *trial {
	t := newTrial(s.judge, s.kind, bands)
	t.lower, t.hanging, t.above = lower, s.hanging, s.to.Above
	return t
}

// told is an attempt as a route, judged whole; none where there is none.
func (s *seeker) told(a *attempt) Route {
	if a == nil {
		return Route{Verdict: Foul, Stub: s.stub}
	}
	t := s.trial(0, a.lower)
	run := s.hung(t, a.corners)
	route := s.judged(t, &run)
	route.short, route.Stub = a.worth.Short, s.stub
	return route
}

// hung is a run through corners with all that hangs on it: its clips spread, its drains where it is lowest.
func (s *seeker) hung(t *trial, corners []geometry.Point3) vehicles.Run {
	run := t.run
	run.Path = t.pathThrough(corners)
	run.Hanging, _ = t.hang(corners)
	t.put(&run)
	run.Clips = s.judge.spreadClips(SortOf(s.kind), t.plan.Run(s.kind)).Along
	if s.kind != vehicles.FuelRun {
		run.Drains = drainsOf(t.plan.Run(s.kind))
	}
	return run
}

// shortHung is by how much a run that keeps what is asked of it falls short once its clips and drains are on: nothing may be there
// that holds them. An exhaust that is sought must not rise either.
func (s *seeker) shortHung(t *trial, corners []geometry.Point3) float64 {
	run := s.hung(t, corners)
	if !t.put(&run) {
		return math.Inf(1)
	}
	t.findings(t.rules)
	if s.kind == vehicles.ExhaustRun {
		t.last.rises()
	}
	return t.short(t.last.findings)
}

// judged is a run, with all that hangs on it, as a route.
func (s *seeker) judged(t *trial, run *vehicles.Run) Route {
	if !t.put(run) {
		return Route{Verdict: Foul}
	}
	t.findings(t.rules)
	if s.kind == vehicles.ExhaustRun {
		t.last.rises()
	}
	laid, findings := t.plan.Run(s.kind), slices.Clone(t.last.findings)
	route := Route{Run: run, Length: laid.Line.Length(), Bends: laid.Line.Turns(), Verdict: Clear, slopes: slopes(laid, s.kind), kept: keptSpare(findings), misses: t.misses(findings)}
	if f := worstClearance(findings); f != nil {
		route.Margin, route.Against = f.Margin, f.Against.String()
	}
	sortWorst(findings)
	for _, f := range findings {
		if f.Verdict != Clear {
			route.Misses = append(route.Misses, f)
		}
		route.Verdict = max(route.Verdict, f.Verdict)
	}
	return route
}
