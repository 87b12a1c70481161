package rules

import (
	"cmp"
	"context"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/vehicles"
)

// Layout is a whole layout: a job with cut, heater, exhaust and intake in their places, and the fuel line where it has one, judged as any
// job is.
type Layout struct {
	Result   Result          // the job laid out so, judged
	At       geometry.Point  // of the cut's centre, mm
	Yaw      float64         // of the heater, degrees in (-180, 180]
	Edge     Edge            // along which the exhaust comes out
	Area     string          // the letter of the open area that the cut is in; "" for none
	Away     float64         // from the wish, mm
	Beyond   bool            // that is farther than the wish allows
	Least    vehicles.Number // the least margin, mm, of cut, heater and runs to any obstruction, and of the cut to what else limits its place; not set where nothing is near
	LeastOf  string          // what that is of, in words
	Length   float64         // of all its runs together, mm
	Misses   []Finding       // what is foul of it, or doubtful, the worst first
	AsItIs   bool            // it is the job's own, as it is
	Detour   bool            // its fuel line goes a long way round
	FuelMiss *Route          // the nearest miss of a fuel line where it has none and it is known where one begins; nil else, and for the job's own
	area     int             // which open area the cut is in, as the search counts them; -1 for none
	turned   bool            // its heading is not the job's
	kept     float64         // what exhaust and intake keep at the least, up to what the picture calls much
	pull     float64         // what of Away counts, mm: nothing where nobody has said where it is wanted
	broken   int             // how many of those are foul that another place, heading or run may mend
}

// Verdict is the judge's on the whole job.
func (l *Layout) Verdict() Verdict { return l.Result.Verdict }

// Layouts are what is proposed for a job: the best layouts, at most three, no two alike, and its open areas.
type Layouts struct {
	Best   []Layout
	Areas  []field.Area // ranked by what was laid out in them, then as Room.Areas has them, and lettered anew in that order
	Shifts []Shift      // where no layout near the wish keeps every rule: what would make room by being moved alone
}

// mostLayouts is how many layouts are proposed at the most.
const mostLayouts = 3

// Few tells whether there are fewer than could be proposed: no others were found that differ to the eye.
func (l *Layouts) Few() bool { return len(l.Best) > 0 && len(l.Best) < mostLayouts }

// LayoutsApart is how far apart the places of layouts are, mm, that differ to the eye, unless they are in different open areas or their exhausts
// come out along different edges. A heading alone makes none another.
const LayoutsApart = 300

// Alike tells whether a layout would hardly be told from another.
func (l *Layout) Alike(other *Layout) bool {
	return l.At.Sub(other.At).Norm() < LayoutsApart && l.Edge == other.Edge && l.area == other.area
}

// What counts for how much where layouts are ranked: so many mm of the way from the wish as much as a mm of margin, as where the heater
// alone is placed; less than a step, mm of margin, is not told apart, as a tape tells no less.
const (
	awayAsMargin   = 10
	marginGrade    = 5
	turnedAsMargin = marginGrade // a heater is not turned for less than is told apart
)

// mendable tells whether another layout may not have a finding: a pilot hole, a stack, a stub too wide for its cut and what of a fuel line is
// above the floor stay what they are.
func (f *Finding) mendable() bool {
	return (f.WithRun() || f.Places > 0 && f.Subject.marked()) && !f.stays()
}

// better orders layouts: nothing broken that a layout can mend, with a fuel line, the milder verdict, within the wish, no fuel line that goes a long
// way round, more room for the way from the wish, the job's heading, more room about exhaust and intake, shorter runs. It is 0 for the same
// layout only.
func better(a, b *Layout) int {
	return cmp.Or(cmp.Compare(asNumber(a.broken > 0), asNumber(b.broken > 0)),
		cmp.Compare(asNumber(a.Result.Job.Fuel == nil), asNumber(b.Result.Job.Fuel == nil)), cmp.Compare(a.Verdict(), b.Verdict()), cmp.Compare(asNumber(a.Beyond), asNumber(b.Beyond)),
		cmp.Compare(asNumber(a.Detour), asNumber(b.Detour)), -cmp.Compare(a.grade(), b.grade()), cmp.Compare(asNumber(a.turned), asNumber(b.turned)),
		-cmp.Compare(math.Floor(a.kept/marginGrade), math.Floor(b.kept/marginGrade)), cmp.Compare(a.Length, b.Length), cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y), cmp.Compare(a.Yaw, b.Yaw),
		cmp.Compare(a.Edge, b.Edge))
}

// asNumber is a condition as a number that orders.
func asNumber(is bool) int {
	if is {
		return 1
	}
	return 0
}

// grade is how good a layout's place is: its least margin, up to what the picture calls much, less what its way from the wish counts, so
// that a place near by with room enough goes before one far off with a little more, and less what another heading than the job's counts.
func (l *Layout) grade() float64 {
	margin := min(l.Least.Or(scene.MuchSpare), scene.MuchSpare) - l.pull/awayAsMargin
	return math.Floor((margin - float64(turnedAsMargin*asNumber(l.turned))) / marginGrade)
}

// Progress is how far the search for layouts is.
type Progress struct {
	At       Stage
	Done, Of int
	Kept     int // layouts found so far that break no rule
}

// FindLayouts seeks whole layouts of a judged job with a heater, by a number of goroutines that changes nothing of what comes out: cut and
// heading wherever there is room, the most promising first, the exhaust and the intake to whatever edge, the fuel line from where the job
// has it begin. A drilled cut stays where it is, and the heater on it: then the runs alone are proposed. A run that the job lacks is a
// usual one. Where none keeps every rule they are near misses, of a few places at their easiest headings. It stops with the context's error when that is done;
// among too many things it seeks nothing (ToLayOut).
func FindLayouts(ctx context.Context, r *Result, workers int, tell func(Progress)) (found Layouts, err error) {
	if r.Job.Heater == nil {
		return found, nil
	}
	if err := ToLayOut.May(r); err != nil {
		return found, err
	}
	l := newLayouting(ctx, r, workers, tell)
	all := l.all()
	found.Best = chosen(all)
	found.Areas = l.ranked(all)
	for i := range found.Best {
		found.Best[i].Area = l.letter(found.Areas, found.Best[i].At)
	}
	if !l.fixed && ctx.Err() == nil && (len(found.Best) == 0 || found.Best[0].broken > 0 || found.Best[0].Beyond) {
		found.Shifts = l.shiftsOf(r)
	}
	if err = ctx.Err(); err != nil {
		return Layouts{}, err
	}
	return found, nil
}

// chosen are the best of layouts, ranked, no two alike: those that keep every rule before what breaks one. The job's own is one of them,
// beside one alike only where that is better.
func chosen(ranked []*Layout) (best []Layout) {
	own := slices.IndexFunc(ranked, func(a *Layout) bool { return a.AsItIs })
	if own >= 0 {
		best = append(best, *ranked[own])
	}
	for i, a := range ranked {
		alike := func(b Layout) bool { return a.Alike(&b) && (!b.AsItIs || i > own) }
		if len(best) < mostLayouts && i != own && !slices.ContainsFunc(best, alike) {
			best = append(best, *a)
		}
	}
	slices.SortFunc(best, func(a, b Layout) int { return better(&a, &b) })
	return best
}

// CutStays tells whether there is a hole that the cut stays with: the pilot measured, or ticked as drilled, or the cut ticked as sawn.
func (r *Result) CutStays() bool {
	return r.Job.Cut != nil && (r.Plan.Cut.Drilled || r.Job.DoneOf(vehicles.PilotDrilled).At != "" || r.Job.DoneOf(vehicles.Sawn).At != "")
}

// layouting is one search for layouts.
type layouting struct {
	seeking
	result  *Result // of the job with all the runs that are sought
	workers int
	fixed   bool // the cut stays where it is
	wish    geometry.Point
	within  float64
	cut     Room // for the saw
	areas   []field.Area
	in      lettering
	kept    int
	ends    map[endsAsked]ends // of an exhaust
	own     *Layout            // the job's own, where it breaks nothing
}

func newLayouting(ctx context.Context, r *Result, workers int, tell func(Progress)) *layouting {
	l := &layouting{result: withRuns(r), workers: workers, fixed: r.CutStays(), cut: RoomForSaw(r), ends: map[endsAsked]ends{}}
	l.seeking = seeking{ctx, func(at Stage, done, of int) { tell(Progress{at, done, of, l.kept}) }}
	l.wish, l.within = WishOf(r)
	l.in = newLettering(l.cut, workers)
	l.areas = l.in.areas
	l.own = l.asItIs(r)
	return l
}

// asItIs is the job's own layout; nil where it is not whole, or breaks what another layout might not.
func (l *layouting) asItIs(r *Result) *Layout {
	if r.Plan.Exhaust == nil || r.Plan.Intake == nil {
		return nil
	}
	a := l.layout(r, geometry.WithinHalfTurn(r.Job.Heater.Yaw), r.Plan.Cut.At.Sub(l.wish).Norm())
	if a.AsItIs = true; a.broken > 0 {
		return nil
	}
	return a
}

// withRuns is the result of a job with the usual exhaust, with its muffler, and the usual intake where it has none.
func withRuns(r *Result) *Result {
	after := *r
	for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
		if after.Job.Run(of) != nil {
			continue
		}
		run := vehicles.UsualWhole(of)
		after.Job = after.Job.WithRun(of, &run)
	}
	return &after
}

// WishOf returns where the heater is wanted and how far from there it may be, mm: as the job says, else where its cut
// is, else the middle of the floor.
func WishOf(r *Result) (at geometry.Point, within float64) {
	switch {
	case r.Job.Wish != nil:
		return geometry.Point{X: r.Job.Wish.At[0], Y: r.Job.Wish.At[1]}, r.Job.Wish.Radius()
	case r.Job.Cut != nil:
		return geometry.Point{X: r.Job.Cut.At[0], Y: r.Job.Cut.At[1]}, vehicles.UsualWithin
	}
	return r.Plan.FloorMin.Add(r.Plan.FloorMax).Scale(0.5), vehicles.UsualWithin
}
