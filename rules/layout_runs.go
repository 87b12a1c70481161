package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/vehicles"
)

// all are the layouts that were worked out, whatever they are worth.
func (l *layouting) all() (list []*Layout) {
	sketches := l.sketches()
	for _, d := range []demand{uprightly(demands[0]), uprightly(keepsRules), keepsRules} {
		if l.enough(sketches) || !d.upright && l.kept > 0 {
			break
		}
		l.work(sketches, d)
	}
	if l.kept == 0 {
		l.missed(sketches)
	} else {
		sketches = append(sketches, l.headed(sketches)...)
		l.widen(sketches)
	}
	list = l.ranking(sketches)
	l.fuelled(list)
	return list
}

// ranking are the layouts of sketches and the job's own, the best first.
func (l *layouting) ranking(sketches []sketch) []*Layout {
	list := laidOf(sketches)
	if l.own != nil {
		list = append(list, l.own)
		slices.SortFunc(list, better)
	}
	return list
}

// keepsRules is the least that is demanded of the runs of a layout.
var keepsRules = demand{aims: ToKeepRules, orNone: true}

// uprightly is a demand whose runs leave their stubs straight down, as people lay them.
func uprightly(d demand) demand {
	d.upright = true
	return d
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
	if len(sketches) > 0 {
		l.know(sketches[0].placed, d)
	}
	for from := 0; from < len(sketches) && !l.enough(sketches); from += batch {
		if !l.goesOn(AtLayouts, from, len(sketches)) {
			return
		}
		some := sketches[from:min(from+batch, len(sketches))]
		hardest := d.aims == ToKeepRules && unlike(sketches, true) < mostLayouts // those without a clear way are worth their time
		share(len(some), l.workers, func(i int) {
			if s := &some[i]; (!s.foul || l.fixed) && !l.known(sketches[:from], s) && (s.laid == nil || s.laid.broken > 0) && (hardest || !math.IsInf(s.hard, 1)) {
				l.lay(s, d)
			}
		})
		l.count(sketches)
	}
}

// known tells whether a place is as good as laid out: one before it is, that it differs from by hardly more than a heading, or that, if its
// easiest exhaust is the one, would be alike and looked the more promising.
func (l *layouting) known(before []sketch, s *sketch) bool {
	out, leads := s.leadsTo()
	return !l.fixed && slices.ContainsFunc(before, func(b sketch) bool {
		if b.laid == nil || b.laid.broken > 0 || b.laid.Beyond {
			return false
		}
		like := Layout{At: s.at, Edge: out, area: l.in.at(s.at)}
		return b.at.Sub(s.at).Norm() < spotsApart || leads && !b.laid.Detour && b.laid.Alike(&like)
	})
}

func (l *layouting) count(sketches []sketch) {
	l.kept = 0
	for i := range sketches {
		if laid := sketches[i].laid; laid != nil && laid.broken == 0 {
			l.kept++
		}
	}
}

// enough tells whether three keep every rule that differ to the eye, and none of them leads its fuel line a long way round.
func (l *layouting) enough(sketches []sketch) bool { return unlike(sketches, false) >= mostLayouts }

// unlike is how many of what was laid keep every rule and differ to the eye, with those that lead their fuel lines a long way round or without.
func unlike(sketches []sketch, detours bool) int {
	var list []*Layout
	for i := range sketches {
		a := sketches[i].laid
		if a == nil || a.broken > 0 || a.Beyond || a.Detour && !detours || slices.ContainsFunc(list, a.Alike) {
			continue
		}
		list = append(list, a)
	}
	return len(list)
}

// leads tells whether each run that must be laid has a way from a sketch: where one has none, there will be no more room once others are laid.
func (l *layouting) leads(s *sketch, d demand) bool {
	if len(s.rough.ways) == 0 {
		return false
	}
	for _, of := range [...]vehicles.RunKind{vehicles.FuelRun, vehicles.IntakeRun} {
		if l.optional(of) {
			continue
		}
		if k := l.next(s.placed, of, d, 0); k != nil && len(k.ways) == 0 {
			return false
		}
	}
	return true
}

// lay works a sketch out: the exhaust, then the intake beside it, then the fuel line beside both. It gives up at the first that does not
// keep what is asked; and before any where one has no way.
func (l *layouting) lay(s *sketch, d demand) {
	if d.aims == ToKeepRules || s.rough.course == nil {
		s.rough = l.rough(s.placed, vehicles.ExhaustRun, Target{Edge: s.edge}, d)
	}
	if !l.leads(s, d) {
		return
	}
	at, fuelled := *s.placed, false
	for _, of := range vehicles.RunKinds {
		k := s.rough
		if of != vehicles.ExhaustRun {
			k = l.next(&at, of, d, 0)
		}
		if k == nil {
			continue
		}
		best := k.worked()
		if l.optional(of) && !best.keeps() {
			best = k.among(k.demand) // nobody would look elsewhere for its sake: here then with more care
		}
		switch {
		case l.wanted.Err() != nil || !best.keeps() && !l.optional(of):
			return
		case best.keeps():
			at = putRun(at, of, k.told(best).Run)
			fuelled = of == vehicles.FuelRun
		}
	}
	if !fuelled {
		at.Job = at.Job.WithRun(vehicles.FuelRun, nil) // that one only kept its place
	}
	l.take(s, at.Job)
}

// optional tells whether a layout may do without a run: without a fuel line that the job does not have.
func (l *layouting) optional(of vehicles.RunKind) bool {
	return of == vehicles.FuelRun && l.result.Job.Fuel == nil
}

// next is the search for an intake or a fuel line that keeps so much more than is asked; nil for one that is not sought. A fuel line that
// the job lacks comes from its tank.
func (l *layouting) next(at *Result, of vehicles.RunKind, d demand, spare float64) *rough {
	run := l.result.Job.Run(of)
	if l.optional(of) {
		mouth, _ := at.Job.Stub(of)
		if line, known := UsualFuel(at, mouth); known {
			run = &line
		}
	}
	if run == nil {
		return nil
	}
	to := Target{Edge: AnyEdge, Spare: spare}
	if of == vehicles.FuelRun {
		to = FuelTarget(run)
		to.Spare = spare
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
	after, faults := Judge(job, l.result.Book)
	if len(faults) > 0 {
		return
	}
	a := l.layout(&after, s.yaw, s.away)
	if s.laid == nil || better(a, s.laid) < 0 {
		s.laid = a
	}
}

// layout is a judged job as a layout at a heading, so far from the wish.
func (l *layouting) layout(r *Result, yaw, away float64) *Layout {
	a := &Layout{Result: *r, At: r.Plan.Cut.At, Yaw: yaw, Away: away, area: l.in.at(r.Plan.Cut.At)}
	a.turned = geometry.WithinHalfTurn(yaw-l.result.Job.Heater.Yaw) != 0
	a.Beyond = l.result.Job.Wish != nil && a.Away > l.within
	if l.result.Job.Wish != nil || l.result.Job.Cut != nil {
		a.pull = a.Away
	}
	a.Edge = edgeOf(r)
	a.kept = min(LeastKept(r, vehicles.ExhaustRun, vehicles.IntakeRun).Or(scene.MuchSpare), scene.MuchSpare)
	a.Detour = detour(r.Plan.Fuel)
	for _, of := range vehicles.RunKinds {
		if run := r.Plan.Run(of); run != nil {
			a.Length += run.Line.Length()
		}
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Verdict != Clear {
			a.Misses = append(a.Misses, *f)
			if f.Verdict == Foul && f.mendable() {
				a.broken++
			}
		}
		near := (f.Rule.ByKind == AnObstruction || f.Subject.onCut()) && !f.stays()
		if near && f.Rule.Unit == MM && f.Margin.Set && (!a.Least.Set || f.Margin.Value < a.Least.Value) {
			a.Least, a.LeastOf = f.Margin, f.About()
		}
	}
	return a
}

// edgeOf is the edge that an exhaust's outlet is nearest to.
func edgeOf(r *Result) Edge {
	path := r.Job.Exhaust.Path
	return nearestEdge(&r.Job, inSpace(path[len(path)-1]).Plan())
}

// nearestEdge is the edge of a van that a place is nearest to.
func nearestEdge(job *vehicles.Job, at geometry.Point) Edge {
	best, edge := math.Abs(job.OutlineLeft()-at.Y), LeftEdge
	if d := math.Abs(job.OutlineRight() + at.Y); d < best {
		best, edge = d, RightEdge
	}
	if rear, ok := job.OutlineRear(); ok && math.Abs(at.X-rear) < best {
		edge = RearEdge
	}
	return edge
}
