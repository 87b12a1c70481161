package vehicles

import (
	"fmt"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// AlongNoise is the rounding that a place worked out along a run may carry, mm: a thousand times the 1e-9 to which lengths are
// good, and far below what anybody enters.
const AlongNoise = 1e-6

// runs puts the runs in their places. Exhaust and intake start at stubs, so they need a cut and a heater.
func (r *reducer) runs(plan *Plan) {
	if h := r.job.Heater; h != nil && r.job.Cut != nil {
		plan.Exhaust = layRun(r.job.Exhaust, StubMouth(*r.job, *plan, h.ExhaustStub))
		plan.Intake = layRun(r.job.Intake, StubMouth(*r.job, *plan, h.IntakeStub))
	}
	if plan.Exhaust != nil {
		plan.Exhaust.Muffler = r.muffler(plan.Exhaust)
		r.clips(plan.Exhaust)
	}
	plan.Fuel = r.fuel()
}

// StubMouth returns where the mouth of a stub at (u, v) of the heater's frame is.
func StubMouth(job Job, plan Plan, stub [2]float64) geometry.Point3 {
	at := geometry.Point{X: stub[0], Y: stub[1]}.Turn(job.Heater.Yaw).Add(plan.Cut.At)
	return at.At(-job.Heater.StubDrop)
}

func layRun(run *Run, mouth geometry.Point3) *LaidRun {
	if run == nil {
		return nil
	}
	path := append([]geometry.Point3{mouth}, inSpace(run.Path)...)
	return &LaidRun{Path: path, Line: geometry.Rounded(path, run.Bend.Value), Radius: run.Across / 2}
}

func inSpace(points []RunPoint) []geometry.Point3 {
	path := make([]geometry.Point3, len(points))
	for i, p := range points {
		path[i] = geometry.Point3{X: p.X, Y: p.Y, Z: -p.Drop}
	}
	return path
}

// muffler puts the muffler on its leg; nil when there is none or it does not fit there.
func (r *reducer) muffler(run *LaidRun) *LaidMuffler {
	m := r.job.Exhaust.Muffler
	if m == nil {
		return nil
	}
	if m.Leg < 1 || m.Leg >= len(run.Path) {
		r.fault("exhaust.muffler.leg", "the muffler is on leg %d, and the exhaust has legs 1 to %d: choose one of them",
			m.Leg, len(run.Path)-1)
		return nil
	}
	leg := geometry.Segment3{A: run.Path[m.Leg-1], B: run.Path[m.Leg]}
	length, end := leg.B.Sub(leg.A).Norm(), m.Start+m.Length
	if length == 0 || end > length+AlongNoise {
		r.fault("exhaust.muffler.start", "the muffler ends %s mm along leg %d, which is %s mm long: "+
			"start it earlier, or make the leg longer", survey.Figure(end), m.Leg, survey.Figure(length))
		return nil
	}
	return &LaidMuffler{
		Leg: m.Leg - 1, Radius: m.Across / 2,
		Axis: []geometry.Point3{leg.At(m.Start / length), leg.At(end / length)},
		From: run.Line.Along(m.Leg-1, m.Start), To: run.Line.Along(m.Leg-1, end),
	}
}

func (r *reducer) clips(run *LaidRun) {
	for i, clip := range r.job.Exhaust.Clips {
		if clip > run.Line.Length()+AlongNoise {
			r.fault(fmt.Sprintf("exhaust.clips[%d]", i), "clip %d is %s mm along the exhaust, which is %s mm long: "+
				"take it out, or move it", i+1, survey.Figure(clip), survey.Figure(run.Line.Length()))
		}
	}
}

// fuel puts the fuel line and its pump in their places.
func (r *reducer) fuel() *LaidLine {
	f := r.job.Fuel
	if f == nil {
		return nil
	}
	line := &LaidLine{Path: inSpace(f.Path), Radius: f.Across.Value / 2}
	p := f.Pump
	if p == nil {
		return line
	}
	if p.Leg < 1 || p.Leg >= len(line.Path) {
		r.fault("fuel.pump.leg", "the pump is on leg %d, and the fuel line has legs 1 to %d: choose one of them",
			p.Leg, len(line.Path)-1)
		return line
	}
	if length := line.Path[p.Leg].Sub(line.Path[p.Leg-1]).Norm(); p.Start > length+AlongNoise {
		r.fault("fuel.pump.start", "the pump is %s mm along leg %d, which is %s mm long: start it earlier, "+
			"or choose another leg", survey.Figure(p.Start), p.Leg, survey.Figure(length))
		return line
	}
	line.Pump = Some(geometry.PathLength(line.Path[:p.Leg]) + p.Start)
	return line
}
