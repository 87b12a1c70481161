package vehicles

import (
	"bench.example/undermark/geometry"
)

// runs puts the runs and what hangs on them in their places. Exhaust and intake start at stubs, so they need a cut and a
// heater.
func (r *reducer) runs(plan *Plan) {
	for _, k := range RunKinds {
		run := r.job.Run(k)
		if run == nil {
			continue
		}
		path, there := r.job.corners(k, run.Path, plan.Cut.At)
		if !there {
			continue
		}
		laid := layRun(run, path)
		*plan.run(k) = laid
		hanging := run.Hanging
		for _, h := range hanging.things() {
			if fault, wrong := laid.misfit(k, &h); wrong {
				r.faults = append(r.faults, fault)
			} else if h.lay != nil {
				h.lay(laid)
			}
		}
	}
}

// Run is the run of a kind in its place, nil when it has none.
func (p *Plan) Run(k RunKind) *LaidRun { return *p.run(k) }

func (p *Plan) run(k RunKind) **LaidRun { return [...]**LaidRun{&p.Exhaust, &p.Intake, &p.Fuel}[k] }

// corners are the points of a run's unrounded line along a path, the mouth of its stub before them for exhaust and intake;
// these have none without a cut, which is at the place given, and a heater.
func (j *Job) corners(k RunKind, path []RunPoint, cut geometry.Point) (points []geometry.Point3, there bool) {
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
