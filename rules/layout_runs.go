package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
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
	room   float64 // that its runs are to keep beside what is asked, mm
	laid   *Layout // what came of it, nil for nothing yet
}

// rough is a search for a run along an edge that has its ways and has not straightened any.
type rough struct {
	*seeker
	course *course
	demand demand
	ways   []route.Way
}

// How rough ways are told apart: so many are kept of each search; one of more corners is too crooked to be worth while, each costs so many
// mm, and so does one with no leg that a muffler fits on.
const (
	roughWays    = 2
	mostCorners  = 14
	cornerCounts = 60
	crampedCosts = 600
)

// all are the layouts that were worked out, whatever they are worth.
func (l *layouting) all() (list []*Layout) {
	sketches := l.sketches()
	for _, d := range []demand{demands[0], demands[len(demands)-1]} {
		l.work(sketches, d)
		if l.enough(sketches) {
			break
		}
	}
	if l.kept == 0 {
		l.missed(sketches)
	} else {
		l.widen(sketches)
	}
	return laidOf(sketches)
}

// laidOf are the layouts of sketches, the best first.
func laidOf(sketches []sketch) (list []*Layout) {
	for i := range sketches {
		if laid := sketches[i].laid; laid != nil {
			list = append(list, laid)
		}
	}
	slices.SortFunc(list, better)
	return list
}

// wider are how much more than is asked the runs of the best layouts are tried with, mm, the most that can be had first.
var wider = []float64{30, 10}

// widen lays those that are going to be proposed anew with more room about their runs, where they can have it: the shortest runs graze what
// they pass.
func (l *layouting) widen(sketches []sketch) {
	best := chosen(laidOf(sketches))
	share(len(sketches), l.workers, func(i int) {
		s := &sketches[i]
		if s.laid == nil || s.laid.Verdict() == Foul || !slices.ContainsFunc(best, func(b Layout) bool { return better(s.laid, &b) == 0 }) {
			return
		}
		for _, s.room = range wider {
			was := s.laid
			if l.lay(s, s.rough.demand); s.laid != was || l.wanted.Err() != nil {
				return
			}
		}
	})
}

// sketches are the spots with the ways from them, the easiest first.
func (l *layouting) sketches() (list []sketch) {
	spots := l.spots()
	edges := []Edge{AnyEdge}
	if l.fixed {
		edges = Edges
	}
	l.know(spots, edges)
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

// ends are where a run may end along an edge, and whether that keeps what is asked of an end.
type ends struct {
	goals []route.Goal
	keep  bool
}

// know finds where a clear exhaust may end along each edge: that rests on the van alone, whatever the place of the cut.
func (l *layouting) know(spots []spot, edges []Edge) {
	known := map[Edge]ends{}
	for _, edge := range edges {
		for _, s := range spots {
			if placed, ok := l.placed(&s); ok && l.wanted.Err() == nil {
				k := newSeeker(l.wanted, &placed, vehicles.ExhaustRun, Target{Edge: edge}, nil)
				goals, keep := k.goals(demands[0].judged)
				known[edge] = ends{goals, keep}
				break
			}
		}
	}
	l.ends = known
}

// placed is the job with cut and heater at a spot, judged, and with an exhaust that is still to be laid; ok is false where it can't be.
func (l *layouting) placed(s *spot) (placed Result, ok bool) {
	job := l.result.Job
	if !l.fixed {
		job = s.taken(job)
	}
	exhaust := *job.Exhaust
	exhaust.Path, exhaust.Clips, exhaust.Drains = nil, nil, nil
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
		k.foul = k.foul || placed.Findings[i].Verdict == Foul && placed.Findings[i].Subject.onCut()
	}
	k.placed = &placed
	k.rough = l.rough(&placed, vehicles.ExhaustRun, Target{Edge: edge}, demands[0])
	k.hard = k.rough.hard(placed.Job.Exhaust.Muffler)
	return k
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
	k := &rough{seeker: newSeeker(l.wanted, r, of, to, nil), demand: d}
	d.less -= to.Room
	ends, known := l.ends[to.Edge]
	if of != vehicles.ExhaustRun || d.aims != ToBeClear || !known {
		ends.goals, ends.keep = k.goals(d.judged)
	}
	if len(ends.goals) == 0 || !ends.keep {
		return k
	}
	k.course = newCourse(k.judge, of, ends.goals, d)
	k.ways = route.Find(l.wanted, &k.course.query, roughWays, nil)
	k.ways = slices.DeleteFunc(k.ways, func(w route.Way) bool { return len(w.Corners) > mostCorners })
	return k
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

// worked is the best of the ways worked out, nil for none.
func (k *rough) worked() (best *attempt) {
	for _, w := range k.ways {
		for lower := range k.mufflerLegs() {
			if best.keeps() || k.ctx.Err() != nil {
				return best
			}
			a := k.straightened(w.Corners, k.course, k.demand.judged, lower, coarsely)
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

// coarsely is how a run of a layout is straightened, to whole steps that nobody sees; closely how one that falls short by little is mended.
var (
	coarsely = route.Straightener{Steps: []float64{32, 8}, Tries: 40}
	closely  = route.Straightener{Steps: []float64{2, 1}, Tries: 40}
)

// nearlyKept is how little a run may fall short, mm, for small moves to be worth trying.
const nearlyKept = 10

// batch is how many sketches are worked on before it is asked whether there are enough: a number that rests on nothing of the machine.
const batch = 4

// work works out the sketches that have not come to anything, until there are enough layouts that keep every rule.
func (l *layouting) work(sketches []sketch, d demand) {
	for from := 0; from < len(sketches) && !l.enough(sketches); from += batch {
		if !l.goesOn(AtLayouts, from, len(sketches)) {
			return
		}
		some := sketches[from:min(from+batch, len(sketches))]
		share(len(some), l.workers, func(i int) {
			if s := &some[i]; (!s.foul || l.fixed) && (s.laid == nil || s.laid.Verdict() == Foul) && (d.aims == ToKeepRules || !math.IsInf(s.hard, 1)) {
				l.lay(s, d)
			}
		})
		l.count(sketches)
	}
}

func (l *layouting) count(sketches []sketch) {
	l.kept = 0
	for i := range sketches {
		if laid := sketches[i].laid; laid != nil && laid.Verdict() != Foul {
			l.kept++
		}
	}
}

// enough tells whether three keep every rule that differ by more than a heading.
func (l *layouting) enough(sketches []sketch) bool {
	var unlike []*Layout
	for i := range sketches {
		a := sketches[i].laid
		if a == nil || a.Verdict() == Foul || a.Beyond || slices.ContainsFunc(unlike, a.near) {
			continue
		}
		unlike = append(unlike, a)
	}
	return len(unlike) >= mostLayouts
}

// lay works a sketch out: the exhaust, then the intake beside it, then the fuel line beside both. It gives up at the first that does not
// keep what is asked; and before any where one has no way, as there will be no more room.
func (l *layouting) lay(s *sketch, d demand) {
	if d.aims == ToKeepRules || s.rough.course == nil || s.room > 0 {
		s.rough = l.rough(s.placed, vehicles.ExhaustRun, Target{Edge: s.edge, Room: s.room}, d)
	}
	for _, of := range [...]vehicles.RunKind{vehicles.FuelRun, vehicles.IntakeRun} {
		if k := l.next(s.placed, of, d, s.room); k != nil && len(k.ways) == 0 {
			return
		}
	}
	at := *s.placed
	for _, of := range vehicles.RunKinds {
		k := s.rough
		if of != vehicles.ExhaustRun {
			k = l.next(&at, of, d, s.room)
		}
		if k == nil {
			continue
		}
		best := k.worked()
		if !best.keeps() || l.wanted.Err() != nil {
			return
		}
		at = putRun(at, of, k.told(best).Run)
	}
	l.take(s, at.Job)
}

// next is the search for an intake or a fuel line; nil for one that is not sought.
func (l *layouting) next(at *Result, of vehicles.RunKind, d demand, room float64) *rough {
	run := l.result.Job.Run(of)
	if run == nil {
		return nil
	}
	to := Target{Edge: AnyEdge, Room: room}
	if of == vehicles.FuelRun {
		to = FuelTarget(run) // it begins at what holds the fuel: no more room there
	}
	put := putRun(*at, of, run)
	return l.rough(&put, of, to, d)
}

// putRun is a result with another run in its job and its plan, and not judged anew.
func putRun(r Result, of vehicles.RunKind, run *vehicles.Run) Result {
	r.Job = r.Job.WithRun(of, run)
	r.Plan, _ = r.Plan.WithRun(&r.Job, of)
	return r
}

// take judges a job laid out and has it as the sketch's layout, where it is better than that.
func (l *layouting) take(s *sketch, job vehicles.Job) {
	if l.result.Job.Fuel == nil {
		job = job.WithRun(vehicles.FuelRun, nil) // that one only kept room
	}
	after, faults := Judge(job, l.result.Book)
	if len(faults) > 0 {
		return
	}
	a := &Layout{Result: after, At: after.Plan.Cut.At, Yaw: s.yaw, Away: s.away}
	a.Beyond = l.result.Job.Wish != nil && a.Away > l.within
	a.Edge = edgeOf(&after)
	for _, of := range vehicles.RunKinds {
		if run := after.Plan.Run(of); run != nil {
			a.Length += run.Line.Length()
		}
	}
	for i := range after.Findings {
		f := &after.Findings[i]
		if f.Verdict != Clear {
			a.Misses = append(a.Misses, *f)
		}
		near := f.Rule.ByKind == AnObstruction || f.Subject.onCut()
		if near && f.Rule.Unit == MM && f.Margin.Set && (!a.Least.Set || f.Margin.Value < a.Least.Value) {
			a.Least, a.LeastOf = f.Margin, f.About()
		}
	}
	if s.laid == nil || better(a, s.laid) < 0 {
		s.laid = a
	}
}

// edgeOf is the edge that an exhaust's outlet is nearest to.
func edgeOf(r *Result) Edge {
	path := r.Job.Exhaust.Path
	out := path[len(path)-1]
	best, edge := math.Abs(r.Job.OutlineLeft()-out.Y), LeftEdge
	if d := math.Abs(r.Job.OutlineRight() + out.Y); d < best {
		best, edge = d, RightEdge
	}
	if rear, ok := r.Job.OutlineRear(); ok && math.Abs(out.X-rear) < best {
		edge = RearEdge
	}
	return edge
}

// mostMissed is how many sketches the nearest misses are sought of.
const mostMissed = 3

// missed works out the nearest misses, of the easiest sketches that differ.
func (l *layouting) missed(sketches []sketch) {
	var done []geometry.Point
	for i := range sketches {
		s := &sketches[i]
		if len(done) == mostMissed || !l.goesOn(AtMisses, len(done), mostMissed) {
			return
		}
		if slices.ContainsFunc(done, func(at geometry.Point) bool { return !l.fixed && s.at.Sub(at).Norm() < LayoutsApart }) {
			continue
		}
		done = append(done, s.at)
		if s.laid == nil {
			l.nearest(s)
		}
	}
}

// nearest lays the nearest miss of each run in turn.
func (l *layouting) nearest(s *sketch) {
	at := *s.placed
	for _, of := range vehicles.RunKinds {
		to := Target{Edge: s.edge}
		switch of {
		case vehicles.IntakeRun:
			to.Edge = AnyEdge
		case vehicles.FuelRun:
			if l.result.Job.Fuel == nil {
				continue
			}
			to = FuelTarget(l.result.Job.Fuel)
		}
		if of != vehicles.ExhaustRun {
			at = putRun(at, of, l.result.Job.Run(of))
		}
		found := FindRoute(l.wanted, &at, of, to, nil)
		if found.Run == nil {
			return
		}
		at = putRun(at, of, found.Run)
	}
	l.take(s, at.Job)
}
