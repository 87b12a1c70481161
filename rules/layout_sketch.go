package rules

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// sketch is a spot with the ways that an exhaust could go from there, before any is worked out.
type sketch struct {
	spot
	placed *Result // the job with cut and heater there, without an intake
	foul   bool    // cut or heater break a rule there
	edge   Edge
	rough  *rough
	hard   float64 // about how hard the easiest way is, mm; +Inf where there is none
	laid   *Layout // what came of it, nil for nothing yet
	headed bool    // it is where another was laid, with the job's heading
}

// rough is a search for a run along an edge that has its ways and has not straightened any.
type rough struct {
	*seeker
	course *course
	demand demand
	ways   []route.Way
	by     route.Straightener // works them out
}

// How rough ways are told apart: so many are kept of each search; one of more corners is too crooked to be worth while, each costs so many
// mm, and so does one with no leg that a muffler fits on.
const (
	roughWays    = 2
	mostCorners  = 14
	cornerCounts = 60
	crampedCosts = 600
)

// sketches are the spots with the ways from them, the easiest first.
func (l *layouting) sketches() (list []sketch) {
	spots, edges := l.spots(), l.edges()
	l.knowFor(spots)
	list = make([]sketch, len(spots)*len(edges))
	share(len(list), l.workers, func(i int) {
		if l.goesOn(AtWays, i, len(list)) {
			list[i] = l.sketch(spots[i/len(edges)], edges[i%len(edges)])
		}
	})
	list = slices.DeleteFunc(list, func(s sketch) bool { return s.placed == nil })
	slices.SortStableFunc(list, func(a, b sketch) int { return cmp.Compare(a.hard-a.worth, b.hard-b.worth) })
	return list
}

// placed is the job with cut and heater at a spot, judged, and with an exhaust that is still to be laid; ok is false where it can't be.
func (l *layouting) placed(s *spot) (placed Result, ok bool) {
	job := l.result.Job
	if !l.fixed {
		job = s.taken(job)
	}
	exhaust := *job.Exhaust
	exhaust.Path, exhaust.Hanging = nil, exhaust.OnLegs()
	job.Exhaust, job.Intake, job.Fuel = nil, nil, nil
	placed, faults := Judge(job, l.result.Book)
	if len(faults) > 0 {
		return placed, false
	}
	placed.Job = placed.Job.WithRun(vehicles.ExhaustRun, &exhaust)
	return WithRoomForFuel(placed), true
}

// sketch looks for the ways of an exhaust from a spot.
func (l *layouting) sketch(s spot, edge Edge) sketch {
	k := sketch{spot: s, edge: edge, hard: math.Inf(1)}
	placed, ok := l.placed(&s)
	if !ok {
		return k
	}
	for i := range placed.Findings {
		k.foul = k.foul || placed.Findings[i].Verdict == Foul && placed.Findings[i].mendable()
	}
	k.placed = &placed
	k.rough = l.rough(&placed, vehicles.ExhaustRun, Target{Edge: edge}, uprightly(demands[0]))
	k.hard = k.rough.hard(placed.Job.Exhaust.Muffler)
	return k
}

// leadsTo is the edge that the first of a sketch's ways leads to; ok is false where it has none.
func (s *sketch) leadsTo() (edge Edge, ok bool) {
	if s.rough == nil || len(s.rough.ways) == 0 {
		return edge, false
	}
	corners := s.rough.ways[0].Corners
	return nearestEdge(&s.placed.Job, corners[len(corners)-1].Plan()), true
}

// taken is the job with cut and heater at the spot.
func (s *spot) taken(job vehicles.Job) vehicles.Job {
	cut := vehicles.Cut{Across: vehicles.UsualAcross}
	if job.Cut != nil {
		cut = *job.Cut
	}
	cut.At, cut.Drilled = [2]float64{hundredth(s.at.X), hundredth(s.at.Y)}, nil
	heater := *job.Heater
	heater.Yaw = s.yaw
	heater.Given |= vehicles.HasYaw
	return job.WithCut(cut).WithHeater(heater)
}

// rough seeks the ways of a run and works none out.
func (l *layouting) rough(r *Result, of vehicles.RunKind, to Target, d demand) *rough {
	k := &rough{seeker: newSeeker(l.wanted, r, of, to, nil), demand: d, by: coarsely}
	if of == vehicles.ExhaustRun {
		maps.Copy(k.ends, l.ends)
	}
	goals, keep := k.goals(d)
	if len(goals) == 0 || !keep {
		return k
	}
	d.less -= to.Spare
	k.course = newCourse(k.judge, of, goals, d)
	if k.findWays(); len(k.ways) == 0 {
		k.turning()
	}
	return k
}

// findWays finds the ways of its course.
func (k *rough) findWays() {
	k.ways = route.Find(k.ctx, &k.course.query, roughWays, nil)
	k.ways = slices.DeleteFunc(k.ways, func(w route.Way) bool { return len(w.Corners) > mostCorners })
}

// turning has a search look for ways that may turn just before an end in the open, as an intake's mouth must that would else face forward; ok is
// false where it did already, or there are none.
func (k *rough) turning() (ok bool) {
	if k.course == nil || k.course.query.TurnBefore {
		return false
	}
	open := slices.DeleteFunc(slices.Clone(k.course.query.To), func(g route.Goal) bool { return !g.Open })
	if len(open) == 0 {
		return false
	}
	k.course = newCourse(k.judge, k.kind, open, k.course.demand)
	k.course.query.TurnBefore = true
	k.findWays()
	return len(k.ways) > 0
}

// hard is about how hard the easiest way is, mm; +Inf where there is none, or none as long as a muffler and a bend on either side of it.
func (k *rough) hard(muffler *vehicles.Muffler) float64 {
	best := math.Inf(1)
	for _, w := range k.ways {
		if muffler != nil && w.Length < muffler.Length+2*k.judge.job.Run(k.kind).Bend.Value {
			continue
		}
		hard, straight := w.Length+cornerCounts*float64(len(w.Corners)), 0.0
		for i := 1; i < len(w.Corners); i++ {
			straight = max(straight, w.Corners[i].Sub(w.Corners[i-1]).Norm())
		}
		if muffler != nil && straight < muffler.Length+k.judge.job.Run(k.kind).Bend.Value {
			hard += crampedCosts
		}
		best = min(best, hard)
	}
	return best
}

// worked is the best of the ways worked out, and where none keeps what is asked of those that may turn before their ends; nil for none.
func (k *rough) worked() *attempt {
	best := k.workedWays()
	if !best.keeps() && k.turning() {
		if a := k.workedWays(); a.better(best) {
			best = a
		}
	}
	return best
}

// workedWays is the best of the ways that were found.
func (k *rough) workedWays() (best *attempt) {
	for _, w := range k.ways {
		for lower := range k.mufflerLegs() {
			if best.keeps() || k.ctx.Err() != nil {
				return best
			}
			a := k.straightened(k.course.corners(w), k.course, k.demand.judged, lower, k.by)
			if !a.keeps() && a.worth.Short < nearlyKept {
				a = k.straightened(a.corners, k.course, k.demand.judged, lower, closely)
			}
			if a.better(best) {
				best = a
			}
		}
	}
	return best
}
