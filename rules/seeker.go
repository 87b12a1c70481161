package rules

import (
	"cmp"
	"context"
	"math"
	"runtime"
	"slices"
	"sync"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// seeker is one search for a run.
type seeker struct {
	ctx     context.Context
	judge   judge
	kind    vehicles.RunKind
	to      Target
	tell    Tell
	strict  bool             // it leaves its stub straight down or is not found
	stub    string           // what blocks its stub, whatever way it takes from there; "" for nothing
	hanging vehicles.Hanging // what hangs on the run's legs in the job, to be put in its place
	own     vehicles.Run     // the job's run, with its path

	tries   [len(demands)]*attempt // at each demand, as far as it was made
	made    [len(demands)]bool
	telling sync.Mutex

	ends   map[endsAsked]ends // where the run may end, as far as somebody asked
	asking sync.Mutex
	came   straightening
}

// attempt is a run that was straightened, its stub's mouth the first of its corners.
type attempt struct {
	corners []geometry.Point3
	worth   route.Worth
	lower   int // which leg its muffler is on, as a trial counts them
}

// better tells whether an attempt is better than another, nil being none.
func (a *attempt) better(than *attempt) bool {
	return a != nil && (than == nil || a.worth.Better(than.worth))
}

// keeps tells whether an attempt keeps what was asked of it.
func (a *attempt) keeps() bool { return a != nil && a.worth.Short == 0 }

// demand is what is asked of the ways of one search.
type demand struct {
	searched float64 // by how many sigma a way keeps its distances
	judged   float64 // and a run
	less     float64 // mm by which less is asked of every distance
	aims     Aim
	upright  bool // the run leaves its stub straight down
	uncut    bool // nothing but distances is asked, and a fall
	rising   bool // not even that
	flat     bool // the run only never rises, as behind a muffler: what is to fall more is judged
	orNone   bool // nobody asks what comes of one that does not keep it
}

// demands are made in turn, each where nothing keeps the one before.
var demands = [...]demand{
	{searched: coverage, judged: coverage, orNone: true},
	{judged: coverage, orNone: true}, // the search takes the worst sigma that there can be for each
	{aims: ToKeepRules},              // no rule is broken, though it may be doubtful
}

// drained is asked of an intake where none that falls keeps every rule: it may rise, with a drain hole wherever it is lowest.
var drained = demand{aims: ToKeepRules, rising: true}

// mostWays is how many ways of one search are straightened.
const mostWays = 4

// seek is the best of what meets the first demand that can be met, and whether any can.
func (s *seeker) seek() (best *attempt, kept bool) {
	for i := range demands {
		if best = s.try(i); best.keeps() || s.ctx.Err() != nil {
			break
		}
	}
	if !best.keeps() && s.ctx.Err() == nil {
		if a := s.further(); a.keeps() {
			return a, true
		}
	}
	if s.kind == vehicles.IntakeRun && !best.keeps() && s.ctx.Err() == nil {
		if up := s.meeting(drained); up.better(best) {
			best = up
		}
	}
	return best, best.keeps()
}

// try is the best that meets one of the demands, or comes nearest to it; made once.
func (s *seeker) try(demand int) *attempt {
	if !s.made[demand] {
		s.tries[demand], s.made[demand] = s.meeting(demands[demand]), true
	}
	return s.tries[demand]
}

// meeting is that for a demand: straight down from the stub, where that is wanted and any that does so meets it.
func (s *seeker) meeting(d demand) *attempt {
	if !s.to.Upright {
		return s.among(d)
	}
	d.upright = true
	best := s.among(d)
	if best.keeps() || s.strict || s.ctx.Err() != nil {
		return best
	}
	d.upright = false
	if free := s.among(d); free.better(best) {
		return free
	}
	return best
}

// among is the best of the ways of one search, straightened, and of one that may turn before an end in the open; nil for none.
func (s *seeker) among(d demand) *attempt {
	goals, keep := s.goals(d)
	if len(goals) == 0 || !keep && !d.uncut {
		return nil // no way there helps
	}
	d.less -= s.to.Spare
	best := s.amongWays(newCourse(s.judge, s.kind, goals, d), nil)
	open := slices.DeleteFunc(slices.Clone(goals), func(g route.Goal) bool { return !g.Open })
	if len(open) == 0 || d.uncut || s.ctx.Err() != nil {
		return best
	}
	c := newCourse(s.judge, s.kind, open, d)
	c.query.TurnBefore = true
	if best.keeps() {
		c.query.MostLength = min(cmp.Or(c.query.MostLength, math.Inf(1)), s.longest(c, best))
	}
	return s.turnedOver(c, s.amongWays(c, best))
}

// turnedOver is the better of a run that ends in the open and of what comes of it with its mouth turned to the other side of the leg before, or
// down: no small move leads from one to the other.
func (s *seeker) turnedOver(c *course, best *attempt) *attempt {
	if !best.keeps() || len(best.corners) < 3 {
		return best
	}
	n := len(best.corners)
	start, at, end := best.corners[:n-1], best.corners[n-2], best.corners[n-1]
	over, last := at.Sub(best.corners[n-3]).Plan(), end.Sub(at)
	if over.Norm() == 0 {
		return best
	}
	along := over.Scale(over.Dot(last.Plan()) / over.Dot(over))
	ends := [...]geometry.Point3{at.Add(along.Scale(2).Sub(last.Plan()).At(last.Z)), at.Sub(geometry.Point3{Z: last.Norm()})}
	for _, to := range ends {
		corners := append(slices.Clone(start), to) // of the run that was turned: one that is better may have fewer
		if a := s.straighten(corners, c, c.judged, best.lower); a.better(best) {
			best = a
		}
	}
	return best
}

// amongWays is the best of the ways of a course, straightened, and of what was found before.
func (s *seeker) amongWays(c *course, best *attempt) *attempt {
	most := mostWays
	if c.uncut {
		most = mostMisses
	}
	ways := route.Find(s.ctx, &c.query, most, func(legs int) { s.tried(c.aims, legs) })
	found := make([][]*attempt, len(ways))
	from := func(first int) {
		share(len(ways)-first, runtime.GOMAXPROCS(0), func(i int) { found[first+i] = s.onEachLeg(ways[first+i], c) })
	}
	if c.uncut { // what nothing keeps is not ended by what does
		from(0)
	}
	for i := range ways {
		switch {
		case best.keeps() && ways[i].Length > s.longest(c, best) || s.ctx.Err() != nil:
			return best
		case found[i] == nil && (i == 0 || best.keeps()):
			found[i] = s.onEachLeg(ways[i], c)
		case found[i] == nil: // where the shortest does not do, all others are mostly looked at
			from(i)
		}
		for _, a := range found[i] {
			if a.better(best) {
				best = a
			}
		}
	}
	return best
}

// onEachLeg is what comes of a way with its muffler on one leg and, where that does not keep what is asked, on another.
func (s *seeker) onEachLeg(w route.Way, c *course) (list []*attempt) {
	for lower := range s.mufflerLegs() {
		a := s.straighten(c.corners(w), c, c.judged, lower)
		if list = append(list, a); a.keeps() {
			break
		}
	}
	return list
}

// longest is how long a way may be that is worth straightening beside a run that was found: an end that slides makes one shorter by more
// than its corners are cut by, one in the open as far as the next is away.
func (s *seeker) longest(c *course, found *attempt) float64 {
	switch {
	case c.query.TurnBefore:
		return found.worth.Length + underStep
	case s.to.exactly():
		return found.worth.Length * muchWorse
	}
	return found.worth.Length * muchWorseSliding
}

// tried tells how far the search is.
func (s *seeker) tried(at Aim, legs int) {
	if s.tell != nil {
		s.telling.Lock()
		defer s.telling.Unlock()
		s.tell(at, legs)
	}
}

// How much longer than a run that was found a way is that is not worth straightening: its own corners are cut by less, or by less than that
// where its end slides.
const (
	muchWorse        = 1.05
	muchWorseSliding = 1.1
)
