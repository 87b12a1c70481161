package vehicles

import (
	"fmt"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// AlongNoise is the rounding that a place worked out along a run may carry, mm: a thousand times the 1e-9 to which lengths are
// good, and far below what anybody enters.
const AlongNoise = 1e-6

// LaidRun is a run in its place: its centreline, exhaust and intake from the stub's mouth, and what hangs on it.
type LaidRun struct {
	Path    []geometry.Point3 // unrounded
	Line    geometry.Run      // rounded
	Radius  float64
	Muffler *LaidMuffler // nil when there is none
	Filter  Number       // how far along the run the filter sits, mm; not set when there is none
	Pump    Number       // how far along the run the pump sits, mm; not set when there is none
}

// LaidMuffler is the muffler on its leg.
type LaidMuffler struct {
	Leg      int // from 0
	Axis     []geometry.Point3
	Radius   float64
	From, To float64 // its ends along the rounded run, mm
	// Begin and End are between which places along the run it is the pipe: what of it lies on its leg's straight part. In a bend
	// the pipe goes another way than the muffler is said to, and both are taken to be there.
	Begin, End float64
}

// Station returns the point of the centreline, bends rounded, that lies s mm along the run, to 1e-9 mm; before its beginning
// the beginning, past its end the end.
func (r *LaidRun) Station(s float64) RunPoint {
	p := r.Line.At(s)
	return RunPoint{X: p.X, Y: p.Y, Drop: -p.Z}
}

// layRun lays a run along its corners.
func layRun(run *Run, path []geometry.Point3) *LaidRun {
	return &LaidRun{Path: path, Line: geometry.Rounded(path, run.Bend.Value), Radius: run.Across / 2}
}

func (m *Muffler) lay(run *LaidRun) {
	end, leg := m.Start+m.Length, run.Line.Legs[m.Leg-1]
	laid := LaidMuffler{
		Leg: m.Leg - 1, Radius: m.Across / 2,
		Axis: []geometry.Point3{run.onLeg(m.Leg, m.Start), run.onLeg(m.Leg, end)},
		From: run.Line.Along(m.Leg-1, m.Start), To: run.Line.Along(m.Leg-1, end),
	}
	laid.Begin, laid.End = min(max(laid.From, leg.Begin), leg.End), min(max(laid.To, leg.Begin), leg.End)
	run.Muffler = &laid
}

func (f *Filter) lay(run *LaidRun) { run.Filter = Some(run.Line.Along(f.Leg-1, f.Start)) }

func (p *Pump) lay(run *LaidRun) { run.Pump = Some(run.Line.Along(p.Leg-1, p.Start)) }

// onLeg is the point of an unrounded leg, from 1, that lies so many mm along it.
func (r *LaidRun) onLeg(leg int, along float64) geometry.Point3 {
	l, length := geometry.Segment3{A: r.Path[leg-1], B: r.Path[leg]}, r.legLength(leg)
	if length == 0 {
		return l.A
	}
	return l.At(along / length)
}

// legLength is the length of an unrounded leg, from 1, mm.
func (r *LaidRun) legLength(leg int) float64 { return r.Path[leg].Sub(r.Path[leg-1]).Norm() }

// hasLeg tells whether the run has a leg of that number, from 1.
func (r *LaidRun) hasLeg(leg int) bool { return leg >= 1 && leg < len(r.Path) }

// misfit says where and why a thing can't hang where it is said to; wrong is false when it can.
func (r *LaidRun) misfit(on RunKind, h *Hung) (f Fault, wrong bool) {
	f.Key = on.Table() + "." + h.key()
	if h.leg == nil {
		return r.misfitAlong(f, on, h)
	}
	if !r.hasLeg(*h.leg) {
		f.Key += ".leg"
		f.Text = fmt.Sprintf("the %s is on leg %d, and the %s has legs 1 to %d: choose one of them", h.Name(), *h.leg, on, len(r.Path)-1)
		return f, true
	}
	end, length := *h.start+h.Length(), r.legLength(*h.leg)
	if end <= length+AlongNoise && (length > 0 || h.Length() == 0) {
		return f, false
	}
	f.Key += ".start"
	does, or := "is", ChooseAnotherLeg
	if h.Length() > 0 {
		does, or = "ends", "make the leg longer"
	}
	f.Text = "the " + h.Name() + " " + does + " " + PastLeg(survey.InMM(end), *h.leg, survey.InMM(length)) + or
	return f, true
}

// PastLeg says of what comes to an end past that of its leg how far that is along it, and what mends it; what else does goes on behind.
func PastLeg(end string, leg int, length string) string {
	return fmt.Sprintf("%s along leg %d, which is %s long: start it earlier, or ", end, leg, length)
}

// ChooseAnotherLeg is what else mends it.
const ChooseAnotherLeg = "choose another leg"

func (r *LaidRun) misfitAlong(f Fault, on RunKind, h *Hung) (Fault, bool) {
	length := r.Line.Length()
	if *h.start <= length+AlongNoise {
		return f, false
	}
	f.Text = fmt.Sprintf("%s is %s along the %s, which is %s long: take it out, or move it", h.Name(), survey.InMM(*h.start), on, survey.InMM(length))
	return f, true
}
