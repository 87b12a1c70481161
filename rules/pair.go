package rules

import (
	"cmp"
	"context"
	"runtime"
	"slices"
	"sync"

	"bench.example/undermark/vehicles"
)

// Pair is an exhaust and an intake that were sought together.
type Pair struct{ Exhaust, Intake Route }

// Found tells whether both were.
func (p *Pair) Found() bool { return p.Exhaust.Found() && p.Intake.Found() }

// Margin is the worse of what both keep from obstructions beside what is asked; not set where nothing is near either.
func (p *Pair) Margin() vehicles.Number {
	a, b := p.Exhaust.Margin, p.Intake.Margin
	if !a.Set || b.Set && b.Value < a.Value {
		return b
	}
	return a
}

// spares are how much more than is asked a pair is sought with, mm: the most that can be kept is.
var spares = []float64{0, 5, 10, 15, 20, 30, 40, 60, 80, 120}

// FindPair seeks an exhaust and an intake together, each from its stub, the exhaust to an edge of the van and the intake to wherever its
// mouth may be: those that keep most beside what is asked from what is under the floor. Rooms are tried by searches, shortest pair first;
// then corners, outlet and mouth of what was found, and of the job's own runs, are moved while the least that both keep grows; a stub leg that
// leads straight down is not given up for more to spare. Where the job has both, breaking no rule, and nothing keeps more, those are the pair, and Here. Where there is no pair it is the nearest miss of an
// exhaust, or the exhaust that was found and the nearest miss of an intake; from a stub that is blocked no pair is sought. The job has a heater,
// a cut and both runs, which may be without paths. tell, if any, is told at which of how many steps it is, never twice at once. Searches that
// do not ask for each other's result go on beside each other; what is found is the same whichever of them ends first.
func FindPair(ctx context.Context, r *Result, tell func(done, of int)) Pair {
	s := pairSeeker{ctx: ctx, result: r}
	s.tell = func() {
		s.telling.Lock()
		defer s.telling.Unlock()
		if s.done++; tell != nil {
			tell(min(s.done, pairSteps), pairSteps)
		}
	}
	best := s.first()
	if !best.Found() {
		return best
	}
	s.most, s.straight = s.mostRoom(), best.straight()
	spare, tooMuch := 0.0, slices.IndexFunc(spares, func(spare float64) bool { return spare > s.most })
	if tooMuch < 0 {
		tooMuch = len(spares)
	}
	for low, high := 0, tooMuch; high-low > 1 && ctx.Err() == nil; {
		middle := (low + high) / 2
		if p := s.roomier(spares[middle]); p.Found() {
			best, low, spare = p, middle, spares[middle]
		} else {
			high = middle
		}
	}
	return s.improved(best, spare)
}

// pairSteps is about how many searches a pair takes: an exhaust an edge and its intake, and those that led somewhere for each spare of a
// halving.
const pairSteps = 24

// pairSeeker is one search for a pair.
type pairSeeker struct {
	ctx      context.Context
	result   *Result
	edges    []Edge           // where exhausts can end that have an intake
	alone    bool             // the intake's stub is blocked: exhausts are sought by themselves
	demand   int              // that all of them meet, of demands
	straight [2]bool          // by kind: the run leaves its stub straight down, and nothing to spare is worth giving that up
	most     float64          // what no pair can keep more than, mm
	exhausts map[Edge]*seeker // of the exhausts that keep no more than is asked
	done     int
	telling  sync.Mutex
	tell     func()
}

// first is the best pair that keeps what is asked, and finds the edges that pairs lead to.
func (s *pairSeeker) first() Pair {
	best := Pair{Exhaust: Route{Verdict: Foul}, Intake: Route{Verdict: Foul}}
	bare := s.bare()
	s.exhausts = map[Edge]*seeker{}
	for _, edge := range Edges {
		s.exhausts[edge] = newSeeker(s.ctx, &bare, vehicles.ExhaustRun, Target{Edge: edge, Upright: true}, nil)
	}
	if s.exhausts[Edges[0]].blocked() != "" { // no edge mends it
		return s.missed(best)
	}
	s.alone = newSeeker(s.ctx, s.result, vehicles.IntakeRun, Target{Edge: AnyEdge}, nil).blocked() != ""
	for s.demand = range demands {
		lone := best.Exhaust.Found() // what met a stricter demand stays
		for i, p := range s.pairs(Edges, 0) {
			if p.Found() {
				s.edges = append(s.edges, Edges[i])
				best = p.shorter(best)
			} else if !lone && !best.Found() {
				best.Exhaust = p.Exhaust.before(best.Exhaust)
			}
		}
		if best.Found() || s.ctx.Err() != nil {
			return best
		}
		if s.alone && best.Exhaust.Found() {
			break
		}
	}
	return s.missed(best)
}

// before is the shorter of two runs that were found, else the one that was.
func (r Route) before(other Route) Route {
	if r.Found() && (!other.Found() || r.Length < other.Length) {
		return r
	}
	return other
}

// roomier is the shortest pair that keeps so much more than is asked.
func (s *pairSeeker) roomier(spare float64) Pair {
	best := Pair{Exhaust: Route{Verdict: Foul}, Intake: Route{Verdict: Foul}}
	for _, p := range s.pairs(s.edges, spare) {
		best = p.shorter(best)
	}
	return best
}

// pairs are what is found for exhausts to some edges, each with its intake.
func (s *pairSeeker) pairs(edges []Edge, spare float64) []Pair {
	pairs := make([]Pair, len(edges))
	share(len(edges), runtime.GOMAXPROCS(0), func(i int) {
		pairs[i] = Pair{s.exhaust(edges[i], spare), Route{Verdict: Foul}}
		if pairs[i].Exhaust.Found() && !s.alone {
			pairs[i].Intake = s.intake(&pairs[i].Exhaust, spare)
		}
	})
	return pairs
}

// missed tells of the nearest miss of the exhausts, or of the intakes that could go with an exhaust that was found.
func (s *pairSeeker) missed(p Pair) Pair {
	if p.Exhaust.Found() {
		p.Intake = s.anyIntake(&p.Exhaust)
		return p
	}
	misses := make([]Route, len(Edges))
	share(len(Edges), runtime.GOMAXPROCS(0), func(i int) { misses[i] = s.exhausts[Edges[i]].route() })
	for _, miss := range misses {
		if s.ctx.Err() != nil {
			return p
		}
		p.Exhaust = p.Exhaust.nearer(miss)
	}
	if p.Exhaust.Found() { // the nearest miss of an edge breaks nothing after all
		p.Intake = s.anyIntake(&p.Exhaust)
	}
	return p
}

// nearer is the nearer of two misses: that which breaks less.
func (r Route) nearer(other Route) Route {
	if r.Run == nil || other.Run != nil && other.short < r.short {
		return other
	}
	return r
}

// bare is the job without an intake, which the exhaust need not mind: it is sought too.
func (s *pairSeeker) bare() Result {
	r := *s.result
	r.Job.Intake, r.Plan.Intake = nil, nil
	return r
}

// with is the job with an exhaust put in.
func (s *pairSeeker) with(exhaust *Route) Result {
	r := *s.result
	r.Job = r.Job.WithRun(vehicles.ExhaustRun, exhaust.Run)
	r.Plan, _ = r.Plan.WithRun(&r.Job, vehicles.ExhaustRun)
	return r
}

// exhaust is one to an edge that meets the demand, intake one that may go with an exhaust; none where none does.
func (s *pairSeeker) exhaust(edge Edge, spare float64) Route {
	one := s.exhausts[edge]
	if spare > 0 {
		bare := s.bare()
		one = newSeeker(s.ctx, &bare, vehicles.ExhaustRun, Target{Edge: edge, Spare: spare, Upright: true}, nil)
		one.strict = s.straight[vehicles.ExhaustRun]
	}
	return s.sought(one)
}

func (s *pairSeeker) intake(exhaust *Route, spare float64) Route {
	with := s.with(exhaust)
	one := newSeeker(s.ctx, &with, vehicles.IntakeRun, Target{Edge: AnyEdge, Spare: spare, Upright: true}, nil)
	one.strict = spare > 0 && s.straight[vehicles.IntakeRun]
	return s.sought(one)
}

// anyIntake is the best intake that may go with an exhaust, or its nearest miss.
func (s *pairSeeker) anyIntake(exhaust *Route) Route {
	with := s.with(exhaust)
	return FindRoute(s.ctx, &with, vehicles.IntakeRun, Target{Edge: AnyEdge, Upright: true}, nil)
}

func (s *pairSeeker) sought(one *seeker) Route {
	s.tell()
	if best := one.try(s.demand); best.keeps() {
		return one.told(best)
	}
	return Route{Verdict: Foul}
}

// shorter is the better of two pairs before more is asked for: one that was found, then that of which more leaves straight down, then the
// shorter.
func (p Pair) shorter(than Pair) Pair {
	if !p.Found() || than.Found() && cmp.Or(cmp.Compare(p.sloping(), than.sloping()), cmp.Compare(p.Exhaust.Length+p.Intake.Length, than.Exhaust.Length+than.Intake.Length)) >= 0 {
		return than
	}
	return p
}

// straight tells of each run of a pair whether it leaves its stub straight down.
func (p *Pair) straight() [2]bool {
	return [2]bool{vehicles.ExhaustRun: !p.Exhaust.slopes, vehicles.IntakeRun: !p.Intake.slopes}
}

// sloping is how many runs of a pair do not.
func (p *Pair) sloping() int { return asNumber(p.Exhaust.slopes) + asNumber(p.Intake.slopes) }
