package rules

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/vehicles"
)

// Option is a placing of the whole heater: where the cut could be and how the heater would be turned, so that cut, plate,
// body with its space and the stubs of exhaust and intake keep every distance asked for. Margin and Against are the worst of
// those, uncertainty left out.
type Option struct {
	Suggestion
	Away    float64 // from the wish, mm
	Verdict Verdict // the worst verdict on cut, plate and body there
}

// Taken returns the job with the cut and the heater placed so. Runs stay where they are.
func (o Option) Taken(job vehicles.Job) vehicles.Job {
	cut := vehicles.Cut{Across: vehicles.UsualAcross}
	if job.Cut != nil {
		cut = *job.Cut
	}
	cut.At, cut.Drilled = [2]float64{o.At.X, o.At.Y}, nil
	heater := *job.Heater
	heater.Yaw = o.Yaw.Value
	heater.Given |= vehicles.HasYaw
	return job.WithCut(cut).WithHeater(heater)
}

// mostOptions is how many options there are at the most. They are apartOptions mm or turnOptions degrees from each other.
const (
	mostOptions  = 3
	apartOptions = 50
	turnOptions  = 60
)

// What an option is worth, mm: its margin, which counts up to what the picture calls much, less a part of its distance from the wish. A
// place on the edge is worth less than one 500 mm farther off with room on all sides.
const (
	enoughMargin = scene.MuchSpare
	perAway      = 0.1
	worthWithin  = 0.05 // how close to the best that is possible at a yaw an option is
)

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

// optionsOf returns the best options near the wish of a judged job with a heater, at most three, at yaws 15 degrees apart.
func (s *seeking) optionsOf(r *Result) (options []Option) {
	found := s.placings(r)
	slices.SortStableFunc(found, func(a, b placing) int { return cmp.Compare(b.worth, a.worth) })
	for _, p := range found {
		if len(options) < mostOptions && !slices.ContainsFunc(options, p.alike) {
			options = append(options, p.judged(r))
		}
	}
	return options
}

// placing is the best place at a yaw.
type placing struct {
	Option
	worth float64
}

func (p placing) alike(o Option) bool {
	return p.At.Sub(o.At).Norm() < apartOptions && math.Abs(geometry.WithinHalfTurn(p.Yaw.Value-o.Yaw.Value)) < turnOptions
}

// placings are the best places at each yaw, where there is one.
func (s *seeking) placings(r *Result) (list []placing) {
	cut, yaws := RoomForSaw(r), yawsTried()
	for i, yaw := range yaws {
		if !s.goesOn(AtYaws, i, len(yaws)) {
			return nil
		}
		if p, ok := bestAt(r, cut, yaw); ok {
			list = append(list, p)
		}
	}
	return list
}

// bestAt returns the place that is worth most at a yaw; where that one does not hold, the roomiest; ok is false when
// not even that holds.
func bestAt(r *Result, cut Room, yaw float64) (best placing, ok bool) {
	wish, within := WishOf(r)
	room := cut.with(r.wholeAt(yaw))
	aim := field.Aim{From: wish, Within: within, Enough: enoughMargin, PerAway: perAway}
	place, ok := room.Margins.Best(aim, worthWithin)
	if ok && place.Margin < 0 {
		aim.Enough, aim.PerAway = math.Inf(1), 0
		place, ok = room.Margins.Best(aim, worthWithin)
	}
	if !ok || place.Margin < 0 {
		return best, false
	}
	best.Suggestion, best.Away = room.suggestion(place), place.At.Sub(wish).Norm()
	best.Yaw = vehicles.Some(yaw)
	best.worth = min(best.Margin, enoughMargin) - perAway*best.Away
	return best, true
}

// wholeAt is what the whole heater asks of the place of the cut at a yaw: plate, body and stubs.
func (r *Result) wholeAt(yaw float64) []keep { return append(r.heaterAt(yaw), r.stubsAt(yaw)...) }

// judged is the option with the verdict on it.
func (p placing) judged(r *Result) Option {
	o := p.Option
	job := o.Taken(r.Job)
	job.Exhaust, job.Intake, job.Fuel = nil, nil, nil // they have to follow
	after, faults := Judge(job, r.Book)
	if o.Verdict = Doubtful; len(faults) > 0 {
		return o
	}
	o.Verdict = Clear
	for i := range after.Findings {
		if f := &after.Findings[i]; f.Subject.marked() {
			o.Verdict = max(o.Verdict, f.Verdict)
		}
	}
	return o
}

// stubsAt is what the stubs of exhaust and intake ask of the place of the cut at a yaw.
func (r *Result) stubsAt(yaw float64) []keep {
	j := r.turned(yaw)
	return j.keeps(AStub)
}
