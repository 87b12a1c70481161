package vehicles

import (
	"fmt"
	"math"
	"sync/atomic"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// Reduce turns every reading of a job into a place with its uncertainty, once. With faults the plan holds what could
// be reduced, the places of the rest being zero: it may be drawn but not judged. Chains with an overall reading are
// held against the 99 % point, whatever a book says: whoever judges the job asks rules.Reduce, which knows the book.
func Reduce(job Job) (Plan, []Fault) { return ReduceClosing(job, ClosureLimit()) }

// Reductions counts them since the program started, those of ties alone too: tests hold by it what a key and a picture cost.
var Reductions atomic.Int64

// ReduceClosing is Reduce with the largest statistic up to which a chain's misclosure is spread over it (see Closure).
func ReduceClosing(job Job, closure float64) (Plan, []Fault) { return ReduceAfter(nil, &job, closure) }

// ReduceAfter is ReduceClosing of a job that was edited: the places of obstructions that the edit did not touch are taken over from the
// plan before it, nil for none, whatever has been done to that since.
func ReduceAfter(before *Plan, job *Job, closure float64) (Plan, []Fault) {
	Reductions.Add(1)
	r := newReducer(job)
	r.closure = closure
	half := job.Floor.Width / 2
	plan := Plan{
		FloorMin: geometry.Point{X: job.Floor.From, Y: -half},
		FloorMax: geometry.Point{X: job.Floor.From + job.Floor.Length, Y: half},
	}
	if before != nil {
		plan.Obstructions = r.obstructions(before.reduced.of(job))
	} else {
		plan.Obstructions = r.obstructions(reduced{})
	}
	plan.reduced = r.reducedOf(plan.Obstructions)
	plan.Openings = r.openings()
	plan.Ties = r.ties()
	plan.Fit = r.fit(plan.Ties)
	plan.Fittings = r.fittings(plan.Fit)
	plan.Closures = r.closures
	if job.Cut != nil {
		plan.Cut = r.cut(plan.Fit)
	}
	r.names()
	r.runs(&plan)
	return plan, append(r.faults, job.builtFaults(&plan, r.faults, closure)...)
}

// ReduceTies is Reduce of a job's ties alone: how they fit, and their faults.
func ReduceTies(job Job) (survey.Fit, []Fault) {
	Reductions.Add(1)
	r := newReducer(&job)
	fit := r.fit(r.ties())
	return fit, r.faults
}

// reducer holds what reducing one job needs, and the faults found on the way.
type reducer struct {
	job                 *Job
	tape                survey.Tape
	heightU             float64 // of any height
	below, level, above side
	faults              []Fault

	closure  float64 // the largest statistic of a chain that closes
	chains   *chains // while a table with overall readings is reduced
	closures []Closure

	trace *tracer // nil unless somebody asks what an u is made of
}

func newReducer(job *Job) *reducer {
	r := &reducer{job: job, tape: job.SurveyTape()}
	r.heightU = r.tape.HeightU()
	gauge := r.tape.Gauge()
	r.below = side{
		tape: &gauge, left: job.SideLeft(), right: job.SideRight(), bow: job.Bow, datum: job.Datum.Called(),
		hook:  survey.Slope{Hook: job.Datum.HookBelow.Value, Set: job.Datum.HookBelow.Set},
		edges: survey.Slope{Hook: job.Datum.SideBelow.Value, Set: job.Datum.SideBelow.Set},
	}
	r.level = r.below
	r.level.hook, r.level.edges = survey.Slope{}, survey.Slope{}
	r.above = side{
		tape: &gauge, left: job.AboveLeft(), right: job.AboveRight(), bow: job.Bow, above: true, datum: job.Datum.Called(),
		shift: job.Datum.ShiftAbove.Value,
		hook:  survey.Slope{Hook: job.Datum.HookAbove.Value, Set: true},
		edges: survey.Slope{Hook: job.Datum.SideAbove.Value, Set: job.Datum.SideAbove.Set},
	}
	return r
}

// faultAt is a fault with words for where it is, "" for none.
func (r *reducer) faultAt(key, where, why string) {
	text := why
	if where != "" {
		text = where + ": " + why
	}
	r.faults = append(r.faults, Fault{Key: key, Text: text, Why: why})
}

func (r *reducer) fault(key, format string, args ...any) {
	r.faults = append(r.faults, Fault{Key: key, Text: fmt.Sprintf(format, args...)})
}

func (r *reducer) obstructions(before reduced) []Placed {
	if before.all(r.job.Obstructions) {
		return before.places
	}
	placed := make([]Placed, len(r.job.Obstructions))
	r.chained(r.job.totalUnder(), func() {
		var last trail
		for i := range placed {
			if before.has(r.job.Obstructions, i) {
				placed[i] = before.places[i]
				continue
			}
			r.obstruction(&placed[i], i, &last)
		}
	})
	return placed
}

func (r *reducer) obstruction(placed *Placed, i int, last *trail) {
	o := &r.job.Obstructions[i]
	at := spot{drop: o.TapedAt.Value, known: o.TapedAt.Set}
	if !at.known {
		at.drop, at.known = o.Drop.To, o.Drop.Set
	}
	what := thing{"obstruction", i, o.Name}
	r.place(placed, &o.Place, &what, &r.below, at, last)
	r.total(placed, &o.Place, &o.Total, &what, &r.below, at)
	r.heights(placed, o.Drop)
	placed.Measured = o.Measured
}

// heights gives a thing below the floor its heights; without a drop it reaches from the floor to the ground.
func (r *reducer) heights(p *Placed, drop Span) {
	if !drop.Set {
		p.Assumed, drop = true, Span{From: 0, To: r.job.Floor.Ground}
	} else {
		p.UTop, p.ULow = r.heightU, r.heightU
	}
	p.Prism.Low, p.Prism.High = -drop.To, -drop.From
}

func (r *reducer) openings() []PlacedOpening {
	placed := make([]PlacedOpening, len(r.job.Openings))
	var last trail
	for i := range placed {
		r.opening(&placed[i].Placed, i, &last)
	}
	return placed
}

func (r *reducer) opening(placed *Placed, i int, last *trail) {
	o := &r.job.Openings[i]
	r.place(placed, &o.Place, &thing{"opening", i, o.Name}, &r.level, spot{known: true}, last)
	r.heights(placed, o.Drop)
	placed.Measured = !o.Unconfirmed
}

func (r *reducer) fittings(fit survey.Fit) []Placed {
	placed := make([]Placed, len(r.job.Fittings))
	r.chained(r.job.totalAbove(), func() {
		var last trail
		for i := range placed {
			r.fitting(&placed[i], i, &last)
		}
	})
	if fit.Tied() {
		for i := range placed {
			f := &placed[i].Prism.Footprint
			*f = f.Moved(-fit.Theta, fit.Shift.Turn(-fit.Theta).Scale(-1))
		}
	}
	return placed
}

func (r *reducer) fitting(placed *Placed, i int, last *trail) {
	f := &r.job.Fittings[i]
	what, at := thing{"fitting", i, f.Name}, spot{known: true}
	r.place(placed, &f.Place, &what, &r.above, at, last)
	r.total(placed, &f.Place, &f.Total, &what, &r.above, at)
	placed.Prism.Low, placed.Prism.High = r.job.Floor.Thickness+f.Rise.From, r.job.Floor.Thickness+f.Rise.To
	placed.UTop, placed.ULow = r.heightU, r.heightU
	placed.Measured = !f.Unconfirmed
}

func (r *reducer) ties() []survey.Tie {
	ties := make([]survey.Tie, len(r.job.Ties))
	for i := range r.job.Ties {
		t := &r.job.Ties[i]
		what := thing{"tie", i, t.Name}
		bx, by := r.point(&t.Below, &what, "below", &r.below)
		ax, ay := r.point(&t.Above, &what, "above", &r.above)
		ties[i] = survey.Tie{
			Name: t.Name, Use: t.Use,
			Below: geometry.Point{X: bx.Value, Y: by.Value}, Above: geometry.Point{X: ax.Value, Y: ay.Value},
			U:    [4]float64{bx.U, by.U, ax.U, ay.U},
			Tilt: [4]float64{bx.Tilt, by.Tilt, ax.Tilt, ay.Tilt},
		}
	}
	return ties
}

func (r *reducer) fit(ties []survey.Tie) survey.Fit {
	if len(r.faults) > 0 {
		return survey.Fit{}
	}
	fit, err := survey.FitTies(ties, r.heightU)
	if err != nil {
		r.faults = append(r.faults, Fault{Key: "tie[0].below", Text: err.Error(), Err: err})
	}
	return fit
}

func (r *reducer) cut(fit survey.Fit) CutPlace {
	c := r.job.Cut
	at := geometry.Point{X: c.At[0], Y: c.At[1]}
	place := CutPlace{Intended: at, At: at, UMark: r.job.AboveMarkU(fit.Up(at))}
	place.UX, place.UY = place.UMark[0], place.UMark[1]
	what := thing{"cut", -1, ""}
	switch {
	case c.Sawn != Pair{}:
		r.sawn(&place, &c.Sawn, &what)
	case c.Drilled != nil:
		x, y := r.point(c.Drilled, &what, "drilled", &r.below)
		place.At, place.Drilled, place.Below = geometry.Point{X: x.Value, Y: y.Value}, true, true
		place.UX, place.UY = x.U, y.U
	}
	if c.Old != nil && r.trace == nil {
		x, y := r.point(c.Old, &what, "old_pilot", &r.below)
		place.Old = &geometry.Point{X: x.Value, Y: y.Value}
	}
	return place
}

// sawn reduces where the hole as built was read. Along an axis that nobody read it is where cut.at has it, as well as a mark is.
func (r *reducer) sawn(place *CutPlace, p *Pair, what *thing) {
	onFloor := spot{known: true, y: place.At.Y}
	read := func(axis survey.Axis, at, u *float64) {
		var before, e end
		if p[axis].Text == "" {
			return
		}
		r.reading(&e, &r.below, axis, &p[axis], &onFloor, &before, what, &value{leaf: "sawn", point: -1, part: [...]string{"x", "y"}[axis]})
		*at, *u = e.Value, e.U
	}
	read(survey.Y, &place.At.Y, &place.UY)
	onFloor.y = place.At.Y
	read(survey.X, &place.At.X, &place.UX)
	place.Intended, place.Below = place.At, p[0].Text != "" && p[1].Text != ""
}

// AboveMarkU returns the standard uncertainties in x and y, mm, of a mark put from above at p, a place of the above
// frame: of the reading from the bumper that lands there, and of the distance from the nearer above side edge.
func (j *Job) AboveMarkU(p geometry.Point) [2]float64 {
	tape := j.SurveyTape()
	edge := math.Min(math.Abs(j.AboveLeft()-p.Y), math.Abs(p.Y+j.AboveRight()))
	return [2]float64{tape.MarkU(j.AboveBumper(p), j.Datum.HookAbove.Value), tape.MarkU(edge, 0)}
}

// BelowMarkU is AboveMarkU of a mark put from below at p, a place of the frame below.
func (j *Job) BelowMarkU(p geometry.Point) [2]float64 {
	tape := j.SurveyTape()
	edge := math.Min(math.Abs(j.SideLeft()-p.Y), math.Abs(p.Y+j.SideRight()))
	return [2]float64{tape.MarkU(j.BelowBumper(p), j.Datum.HookBelow.Value), tape.MarkU(edge, j.Datum.SideBelow.Value)}
}

// names holds that there is an obstruction for every name that direct tapes, shields and the fuel line say.
func (r *reducer) names() {
	named := func(key, name string) (at int, there bool) {
		if at, there = r.job.ObstructionNamed(name); !there {
			r.fault(key, "%s", KeyOf(key, "")+r.nobody(name))
		}
		return at, there
	}
	if r.job.Cut != nil {
		for i, d := range r.job.Cut.Direct {
			named(joinKey(joinIndex("cut.direct", i), "to"), d.To)
		}
	}
	if r.job.Exhaust != nil {
		for i, name := range r.job.Exhaust.Shielded.Names {
			named(joinIndex("exhaust.shielded", i), name)
		}
	}
	if r.job.Fuel == nil || r.job.Fuel.Supply.From == "" {
		return
	}
	from := r.job.Fuel.Supply
	if at, there := named("fuel.from", from.From); there {
		if holds := r.job.Obstructions[at].Holds; holds != "" && from.Kind != "" && holds != from.Kind {
			r.fault("fuel.from", "%s is %q, which holds %s, and the heater burns %s: take it from another tank, or correct one of them",
				KeyOf("fuel.from", ""), from.From, holds, from.Kind)
		}
	}
}

// nobody says that no obstruction has a name.
func (r *reducer) nobody(name string) string {
	names := make([]string, len(r.job.Obstructions))
	for i := range r.job.Obstructions {
		names[i] = r.job.Obstructions[i].Name
	}
	text := fmt.Sprintf(" is %q, and no obstruction has that name", name)
	if hint := Nearest(name, names); hint != "" {
		return text + ": did you mean " + quote(hint) + "?"
	}
	return text + ": write one as it stands there, or take this out"
}

// ObstructionNamed returns the index of the obstruction of that name; ok is false where none has it.
func (j *Job) ObstructionNamed(name string) (i int, ok bool) {
	for i := range j.Obstructions {
		if j.Obstructions[i].Name == name {
			return i, true
		}
	}
	return -1, false
}
