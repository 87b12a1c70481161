package rules

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// run is a run in its place, nil when it is not there.
func (j *judge) run(of Sort) *vehicles.LaidRun { return j.plan.Run(runKind(of)) }

var runKinds = map[Sort]vehicles.RunKind{
	TheExhaust: vehicles.ExhaustRun, TheIntake: vehicles.IntakeRun, TheFuel: vehicles.FuelRun,
}

// runKind is which run a sort stands for; a rule that takes anything else for a run is wrong wherever it is asked.
func runKind(of Sort) vehicles.RunKind {
	kind, is := runKinds[of]
	if !is {
		panic(of.String() + " is no run")
	}
	return kind
}

// clearances judges what a run fills against every obstruction that has a limit: swages have none.
func (j *judge) clearances(subject Sort, limit func(i int) *Limit) {
	m := j.measuring(subject)
	for n := range j.plan.Obstructions {
		i := j.haste.nth(n)
		if j.is(i, vehicles.InSheetMetal) {
			continue
		}
		l := limit(i)
		if l == nil || j.haste.spares(m.fills(), i, l, 0) {
			continue
		}
		thing := &j.plan.Obstructions[i]
		f := j.open(l, the(subject), j.obstruction(i))
		s := m.gap(i)
		j.measured(f, surfaceOf(s.Separation3, s.Radius), thing)
		if j.haste.settles(i, f) {
			return
		}
	}
}

// byKindOf are the limits of a rule by obstruction.
func (j *judge) byKindOf(r *Rule) func(i int) *Limit {
	limits := j.book.ofEachKind(r)
	return func(i int) *Limit {
		if r.ByFuel && j.is(i, vehicles.VanTank) {
			return j.book.ofKinds(r).of(fuelled(j.job, i))
		}
		return limits[j.kinds[i]]
	}
}

// measured ends a finding between a run and something measured.
func (j *judge) measured(f *Finding, s surface, thing *vehicles.Placed) {
	f.Value = s.value
	f.between(s.A, s.B)
	j.close(f, j.spread(f, putting{mark: j.runMark(s.A)}, thing, false, s.B.Plan(), s.N))
}

// put ends a finding between two runs: both marks count.
func (j *judge) put(f *Finding, s surface) {
	f.Value, f.N = s.value, s.N
	p, q := j.runMark(s.A), j.runMark(s.B)
	f.Spread.Mark = p.along(s.N) + q.along(s.N)
	f.Spread.Height = s.N.Z * s.N.Z * (p[2] + q[2])
	f.between(s.A, s.B)
	j.close(f, 0)
}

// ofRun holds a run to a value that nothing measured enters.
func ofRun(run Sort, value func(*vehicles.LaidRun) float64) func(*judge, *Rule) {
	return func(j *judge, r *Rule) {
		if laid := j.run(run); laid != nil {
			j.plain(r, the(run), Thing{}, value(laid))
		}
	}
}

// lowPoints holds a run to the low points that nothing drains, of which it shows the first.
func lowPoints(run Sort) func(*judge, *Rule) {
	return func(j *judge, r *Rule) {
		laid := j.run(run)
		if laid == nil {
			return
		}
		low := undrained(laid, j.hanging(run).Drains)
		f := j.open(j.book.of(r), the(run), Thing{})
		if f.Value = float64(len(low)); len(low) > 0 {
			f.at(laid.Path[low[0]])
			f.Why = waterStands(laid, low)
		}
		j.close(f, 0)
	}
}

// waterStands says where water stands in a run: in its low points, which are points of its path.
func waterStands(laid *vehicles.LaidRun, low []int) string {
	where := "at its stub"
	if low[0] > 0 {
		where = survey.InMM(laid.CornerAlong(low[0])) + " along it"
	}
	if n := len(low); n > 1 {
		return fmt.Sprintf("%d low points without a drain, the first %s: drain holes there, or let it fall", n, where)
	}
	return "1 low point without a drain, " + where + ": a drain hole there, or let it fall"
}

// hanging is what hangs on a run, which there is.
func (j *judge) hanging(run Sort) *vehicles.Hanging { return &j.job.Run(runKind(run)).Hanging }

// facing holds the last leg of a run to its angle from a direction, degrees.
func facing(run Sort, from geometry.Point3) func(*judge, *Rule) {
	return func(j *judge, r *Rule) {
		laid := j.run(run)
		if laid == nil || len(laid.Path) < 2 {
			return
		}
		last := len(laid.Path) - 1
		if along := laid.Path[last].Sub(laid.Path[last-1]); along != (geometry.Point3{}) {
			j.plain(r, the(run), Thing{}, geometry.Angle(along, from)*180/math.Pi)
		}
	}
}

// shortLegs holds a run to its legs that are too short for their bends.
func shortLegs(run Sort) func(*judge, *Rule) {
	return func(j *judge, r *Rule) {
		if laid := j.run(run); laid != nil {
			n, what := len(laid.Line.ShortLegs), "legs"
			if n == 1 {
				what = "leg"
			}
			j.counted(r, the(run), Thing{}, n, fmt.Sprintf("%d %s too short", n, what))
		}
	}
}

func lengthOf(r *vehicles.LaidRun) float64 { return r.Line.Length() }
func turnsOf(r *vehicles.LaidRun) float64  { return r.Line.Turns() }

// belowFloor holds a run to its distance below the floor, from behind its first bend.
func belowFloor(run Sort) func(*judge, *Rule) {
	return func(j *judge, r *Rule) {
		laid := j.run(run)
		if laid == nil {
			return
		}
		if at, above, ok := highest(laid); ok {
			j.level(r, run, TheFloor, at, -at.Z-above)
		}
	}
}

// aboveGround holds a run to its distance above the ground.
func aboveGround(run Sort) func(*judge, *Rule) {
	return func(j *judge, r *Rule) {
		if laid := j.run(run); laid != nil {
			at, below := lowest(laid)
			j.level(r, run, TheGround, at, j.job.Floor.Ground+at.Z-below)
		}
	}
}

// level is a finding about a height of a run at a point: only the run's own height is uncertain.
func (j *judge) level(r *Rule, subject, against Sort, at geometry.Point3, value float64) {
	f := j.open(j.book.of(r), the(subject), the(against))
	f.Value, f.N = value, geometry.Point3{Z: 1}
	f.Spread.Height = j.runMark(at)[2]
	f.at(at)
	j.close(f, 0)
}

// legTilt returns how a leg falls: mm per m of plan length, a vertical one 1000000 down or up, and its tilt in degrees.
// ok is false for a leg without length.
func legTilt(from, to geometry.Point3) (fall, degrees float64, ok bool) {
	down, plan := from.Z-to.Z, to.Plan().Sub(from.Plan()).Norm()
	if plan < marginNoise {
		return math.Copysign(Upright, down), 90, math.Abs(down) >= marginNoise
	}
	return 1000 * down / plan, math.Atan2(math.Abs(down), plan) * 180 / math.Pi, true
}

// Upright is the fall of a leg that goes straight down, mm per m; of one straight up less that.
const Upright = 1e6
