package vehicles

import (
	"slices"

	"bench.example/undermark/geometry"
)

// runs puts the runs and what hangs on them in their places. Exhaust and intake start at stubs, so they need a cut and a
// heater.
func (r *reducer) runs(plan *Plan) {
	for _, k := range RunKinds {
		if r.job.Run(k) != nil {
			r.faults = append(r.faults, plan.lay(&LaidRun{}, r.job, k)...)
		}
	}
}

// lay puts a run of a job and what hangs on it in their places, in the memory of another.
func (p *Plan) lay(laid *LaidRun, job *Job, k RunKind) (faults []Fault) {
	run := job.Run(k)
	if run == nil {
		return nil
	}
	path, there := job.corners(laid.Path[:0], k, run.Path, p.Cut.At)
	if !there {
		return nil
	}
	*laid = LaidRun{Path: path, Line: laid.Line, Radius: run.Across / 2}
	laid.Line.Round(path, run.Bend.Value)
	*p.run(k) = laid
	hanging := run.Hanging
	for _, h := range hanging.things() {
		if fault, wrong := laid.misfit(k, &h); wrong {
			faults = append(faults, fault)
		} else {
			h.lay(laid)
		}
	}
	return faults
}

// WithRun returns the plan of a job that differs from the plan's own in one run alone, which is laid anew; ok is false where
// something can't hang on it where it is said to.
func (p Plan) WithRun(job *Job, k RunKind) (plan Plan, ok bool) {
	return p.WithRunIn(&LaidRun{}, job, k)
}

// WithRunIn is WithRun, the run laid in the memory of one that nobody asks for any more, nor for a plan with it.
func (p Plan) WithRunIn(laid *LaidRun, job *Job, k RunKind) (plan Plan, ok bool) {
	*p.run(k) = nil
	return p, len(p.lay(laid, job, k)) == 0
}

// Mouth is where the stub is from which the exhaust or the intake starts, or at which the fuel line ends, of a job with a heater and
// a cut.
func (p *Plan) Mouth(job *Job, k RunKind) geometry.Point3 { return job.stubMouth(k, p.Cut.At) }

// Run is the run of a kind in its place, nil when it has none.
func (p *Plan) Run(k RunKind) *LaidRun { return *p.run(k) }

func (p *Plan) run(k RunKind) **LaidRun { return [...]**LaidRun{&p.Exhaust, &p.Intake, &p.Fuel}[k] }

// corners are the points of a run's unrounded line along a path, the mouth of its stub before them for exhaust and intake;
// these have none without a cut, which is at the place given, and a heater. They are in the memory of a list, where that has room.
func (j *Job) corners(points []geometry.Point3, k RunKind, path []RunPoint, cut geometry.Point) (list []geometry.Point3, there bool) {
	points = slices.Grow(points, 1+len(path))
	if k != FuelRun {
		if j.Heater == nil || j.Cut == nil {
			return nil, false
		}
		points = append(points, j.stubMouth(k, cut))
	}
	for _, p := range path {
		points = append(points, geometry.Point3{X: p.X, Y: p.Y, Z: -p.Drop})
	}
	return points, true
}

// stubMouth is where the mouth of the stub is of a run.
func (j *Job) stubMouth(k RunKind, cut geometry.Point) geometry.Point3 {
	stub := [...][2]float64{j.Heater.ExhaustStub, j.Heater.IntakeStub, j.Heater.FuelStub}[k]
	return geometry.Point{X: stub[0], Y: stub[1]}.Turn(j.Heater.Yaw).Add(cut).At(-j.Heater.StubDrop)
}
