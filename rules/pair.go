package rules

import (
	"context"

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

// rooms are how much more than is asked a pair is sought with, mm: the most that can be kept is.
var rooms = []float64{0, 5, 10, 15, 20, 30, 40, 60, 80, 120}

// FindPair seeks an exhaust and an intake together, each from its stub to an edge of the van: those that keep most beside what is asked from
// what is under the floor, within the steps of rooms, and of those the shortest. Where there is no pair it is the nearest miss of an
// exhaust, or the exhaust that was found and the nearest miss of an intake. The job has a heater, a cut and both runs, whose paths do
// not matter. tell, if any, is told at which of how many steps it is.
func FindPair(ctx context.Context, r *Result, tell func(done, of int)) Pair {
	s := pairSeeker{ctx: ctx, result: r}
	s.tell = func() {
		if s.done++; tell != nil {
			tell(min(s.done, pairSteps), pairSteps)
		}
	}
	best := s.first()
	if !best.Found() {
		return best
	}
	low, high := 0, len(rooms)
	for high-low > 1 && ctx.Err() == nil {
		middle := (low + high) / 2
		if p := s.roomier(rooms[middle]); p.Found() {
			best, low = p, middle
		} else {
			high = middle
		}
	}
	return best
}

// pairSteps is about how many searches a pair takes: three edges each, and those that led somewhere for each room of a halving.
const pairSteps = 24

// pairSeeker is one search for a pair.
type pairSeeker struct {
	ctx    context.Context
	result *Result
	ways   [][2]Edge // where exhausts and intakes can end that go with each other
	demand demand    // that all of them meet
	done   int
	tell   func()
}

// first is the best pair that keeps what is asked, and finds the edges that pairs lead to.
func (s *pairSeeker) first() Pair {
	best := Pair{Exhaust: Route{Verdict: Foul}, Intake: Route{Verdict: Foul}}
	for _, d := range demands {
		s.demand = d
		for _, edge := range Edges {
			exhaust := s.exhaust(edge, 0)
			if !exhaust.Found() {
				continue
			}
			for _, mouth := range Edges {
				if p := (Pair{exhaust, s.intake(&exhaust, mouth, 0)}); p.Found() {
					s.ways = append(s.ways, [2]Edge{edge, mouth})
					best = p.shorter(best)
				}
			}
			if !best.Found() {
				best.Exhaust = exhaust
			}
		}
		if best.Found() || s.ctx.Err() != nil {
			return best
		}
	}
	return s.missed(best)
}

// roomier is the shortest pair that keeps so much more than is asked.
func (s *pairSeeker) roomier(room float64) Pair {
	best := Pair{Exhaust: Route{Verdict: Foul}, Intake: Route{Verdict: Foul}}
	var exhaust Route
	for i, w := range s.ways {
		if i == 0 || s.ways[i-1][0] != w[0] {
			exhaust = s.exhaust(w[0], room)
		}
		if exhaust.Found() {
			best = Pair{exhaust, s.intake(&exhaust, w[1], room)}.shorter(best)
		}
	}
	return best
}

// missed tells of the nearest miss of the exhausts, or of the intakes that could go with an exhaust that was found.
func (s *pairSeeker) missed(p Pair) Pair {
	for _, edge := range Edges {
		switch {
		case s.ctx.Err() != nil:
			return p
		case p.Exhaust.Found():
			with := s.with(&p.Exhaust)
			p.Intake = p.Intake.nearer(FindRoute(s.ctx, &with, vehicles.IntakeRun, Target{Edge: edge}, nil))
		default:
			bare := s.bare()
			p.Exhaust = p.Exhaust.nearer(FindRoute(s.ctx, &bare, vehicles.ExhaustRun, Target{Edge: edge}, nil))
		}
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

func (s *pairSeeker) exhaust(edge Edge, room float64) Route {
	r := s.bare()
	return s.sought(&r, vehicles.ExhaustRun, edge, room)
}

func (s *pairSeeker) intake(exhaust *Route, edge Edge, room float64) Route {
	r := s.with(exhaust)
	return s.sought(&r, vehicles.IntakeRun, edge, room)
}

// sought is a run to an edge that meets the demand; none where none does.
func (s *pairSeeker) sought(r *Result, kind vehicles.RunKind, edge Edge, room float64) Route {
	s.tell()
	one := newSeeker(s.ctx, r, kind, Target{Edge: edge, Room: room}, nil)
	if best := one.among(s.demand); best.keeps() {
		return one.told(best)
	}
	return Route{Verdict: Foul}
}

// shorter is the shorter of two pairs, one that was found before one that was not.
func (p Pair) shorter(than Pair) Pair {
	if p.Found() && (!than.Found() || p.Exhaust.Length+p.Intake.Length < than.Exhaust.Length+than.Intake.Length) {
		return p
	}
	return than
}
