package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// climbs are by how much more a pair that was found is moved to keep to spare, mm, again and again while it can be.
var climbs = []float64{20, 10, 5, 2}

// improved is the better of a pair that keeps so much to spare and of the job's own, each moved while the least that it keeps grows. It is the
// job's own as it is where neither comes to more.
func (s *pairSeeker) improved(found Pair, spare float64) Pair {
	own, best := s.own(), s.climbed(found, spare)
	if !own.Found() || own.Verdict() > best.Verdict() {
		return best
	}
	moved := s.climbed(own, max(0, min(own.Exhaust.kept, own.Intake.kept)))
	if moved.more(best) {
		best, moved = moved, best
	}
	for _, p := range []Pair{best, moved} {
		if p.keepsMore(own) && p.sloping() <= own.sloping() {
			return p
		}
	}
	own.Exhaust.Here, own.Intake.Here = true, true
	return own
}

// Verdict is the worse of both.
func (p *Pair) Verdict() Verdict { return max(p.Exhaust.Verdict, p.Intake.Verdict) }

// more tells whether a pair is milder judged than another, or judged alike more of it leaves straight down, or, alike in that too, it keeps more.
// One that nothing is near keeps most.
func (p *Pair) more(than Pair) bool {
	if order := cmp.Or(cmp.Compare(p.Verdict(), than.Verdict()), cmp.Compare(p.sloping(), than.sloping())); order != 0 {
		return order < 0
	}
	return p.keepsMore(than)
}

// keepsMore is that whichever way either leaves its stubs.
func (p *Pair) keepsMore(than Pair) bool {
	if p.Verdict() != than.Verdict() {
		return p.Verdict() < than.Verdict()
	}
	a, b := p.Margin(), than.Margin()
	return a.Or(math.Inf(1)) > b.Or(math.Inf(1))+marginNoise
}

// own is the pair that the job has; not found where it lacks one of them, or one breaks a rule.
func (s *pairSeeker) own() Pair {
	none := Pair{Exhaust: Route{Verdict: Foul}, Intake: Route{Verdict: Foul}}
	job := &s.result.Job
	if len(job.Exhaust.Path) == 0 || len(job.Intake.Path) == 0 {
		return none
	}
	bare := s.bare()
	own := Pair{Exhaust: hereOf(s, &bare, vehicles.ExhaustRun, job.Exhaust)}
	with := s.with(&own.Exhaust)
	own.Intake = hereOf(s, &with, vehicles.IntakeRun, job.Intake)
	return own
}

// mostRoom is what no pair can keep more than, mm: what its stubs' mouths do, or the most that is tried.
func (s *pairSeeker) mostRoom() float64 {
	most := spares[len(spares)-1]
	bare := s.bare()
	for _, kind := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
		r := s.result
		if kind == vehicles.ExhaustRun {
			r = &bare
		}
		one := newSeeker(s.ctx, r, kind, Target{Edge: AnyEdge}, nil)
		mouth := one.judge.plan.Mouth(one.judge.job, kind)
		t := one.trial(0, 0)
		run := t.run
		run.Path, run.Hanging = t.pathThrough([]geometry.Point3{mouth, mouth.Add(geometry.Point3{Z: -stubJoint})}), vehicles.Hanging{}
		if !t.put(&run) {
			continue
		}
		if f := worstClearance(t.findings(t.rules)); f != nil {
			most = min(most, f.Margin.Value+stubJoint)
		}
	}
	return most
}

// hereOf is a run that the job has as a route.
func hereOf(s *pairSeeker, r *Result, kind vehicles.RunKind, run *vehicles.Run) Route {
	one := newSeeker(s.ctx, r, kind, Target{Edge: AnyEdge}, nil)
	return one.judged(one.trial(0, 0), run)
}

// climbed is the best pair on the way of one that keeps so much to spare, moved to keep more in ever smaller steps, while it can be.
func (s *pairSeeker) climbed(best Pair, spare float64) Pair {
	at := best
	for _, step := range climbs {
		for s.ctx.Err() == nil && spare+step <= s.most {
			next := s.moved(at, spare+step)
			if !next.Found() {
				break
			}
			if at, spare = next, spare+step; at.more(best) {
				best = at
			}
		}
	}
	return best
}

// moved is a pair whose corners and ends were moved to keep so much to spare.
func (s *pairSeeker) moved(p Pair, spare float64) Pair {
	bare := s.bare()
	next := Pair{s.worked(&bare, vehicles.ExhaustRun, &p.Exhaust, spare), Route{Verdict: Foul}}
	if !next.Exhaust.Found() {
		return next
	}
	with := s.with(&next.Exhaust)
	next.Intake = s.worked(&with, vehicles.IntakeRun, &p.Intake, spare)
	return next
}

// worked is a run worked on from its own corners until it keeps so much to spare; none where it can't, or would no longer leave straight down.
func (s *pairSeeker) worked(r *Result, kind vehicles.RunKind, from *Route, spare float64) Route {
	s.tell()
	one := newSeeker(s.ctx, r, kind, Target{Edge: AnyEdge, Spare: spare, Upright: true}, nil)
	d := demands[s.demand]
	goals, _ := one.goals(d)
	corners := []geometry.Point3{one.judge.plan.Mouth(one.judge.job, kind)}
	for _, p := range from.Run.Path {
		corners = append(corners, inSpace(p))
	}
	for _, d.upright = range []bool{true, false} {
		if !d.upright && !from.slopes {
			break
		}
		c := newCourse(one.judge, kind, goals, d)
		for lower := range one.mufflerLegs() {
			if a := one.straighten(corners, c, d.judged, lower); a.keeps() {
				return one.told(a)
			}
		}
	}
	return Route{Verdict: Foul}
}

// LeastKept is the least that runs of a judged job keep from what is under the floor beside what is asked; not set where nothing is near.
func LeastKept(r *Result, of ...vehicles.RunKind) (least vehicles.Number) {
	for i := range r.Findings {
		f := &r.Findings[i]
		is := func(k vehicles.RunKind) bool { return f.Subject.Sort == SortOf(k) }
		if f.Rule.ByKind == AnObstruction && f.Margin.Set && slices.ContainsFunc(of, is) && (!least.Set || f.Margin.Value < least.Value) {
			least = f.Margin
		}
	}
	return least
}
