package vehicles

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// Rehung is where a thing that hangs on a run has come to hang, as it could not stay in its place when the path was edited.
type Rehung struct {
	Kind  *HangingKind
	Index int     // among those of its kind, from 0
	Leg   int     // from 1; 0: Along counts from the beginning of the run
	Along float64 // mm
}

// Name is what it is called: "clip 2".
func (r *Rehung) Name() string { return r.Kind.Called(r.Kind.Name, r.Index) }

// WithPath returns the job with another path for a run that it has. What hangs on a leg that both paths have stays there.
// What hangs on another is put as far along the new path, from the nearer end of what both have, as it was along the old
// one, or as near to that as it fits; rehung are the things that do not lie where they lay, in the order of the file. ok is
// false, and the job as it was, when something hangs on the run and nobody knows where: it has no stub to start from.
func (j Job) WithPath(k RunKind, path List[RunPoint]) (next Job, rehung []Rehung, ok bool) {
	run := *j.Run(k)
	before := run
	run.Path = path
	things := run.Hanging.things()
	if len(things) == 0 {
		return j.WithRun(k, &run), nil, true
	}
	old, there := j.laidAlone(k, &before)
	if !there {
		return j, nil, false
	}
	laid, _ := j.laidAlone(k, &run)
	way := newReroute(k, old, laid)
	for i := range things {
		if one, moved := way.carry(&things[i]); moved {
			rehung = append(rehung, one)
		}
	}
	return j.WithRun(k, &run), rehung, true
}

// laidAlone lays a run of the job without reducing anything but where the hole is, without what hangs on it.
func (j *Job) laidAlone(k RunKind, run *Run) (laid *LaidRun, there bool) {
	hole, ok := j.hole()
	if k != FuelRun && !ok {
		return nil, false
	}
	path, there := j.corners(nil, k, run.Path, hole)
	if !there {
		return nil, false
	}
	return layRun(run, path), true
}

// hole is where the hole is, zero in a job without a cut; ok is false while its readings can't be reduced.
func (j *Job) hole() (at geometry.Point, ok bool) {
	if j.Cut == nil {
		return at, true
	}
	r := newReducer(j)
	at = r.cut(survey.Fit{}).At
	return at, len(r.faults) == 0
}

// Laid lays a run that the job has, with what hangs on it that fits; nil where it has none, or none that can be laid.
func (j *Job) Laid(k RunKind) *LaidRun {
	run := j.Run(k)
	if run == nil {
		return nil
	}
	laid, there := j.laidAlone(k, run)
	if !there || len(laid.Path) < 2 {
		return nil
	}
	hanging := run.Hanging
	for _, h := range hanging.things() {
		if _, wrong := laid.misfit(k, &h); !wrong {
			h.lay(laid)
		}
	}
	return laid
}

// reroute is a run before and after its path was edited.
type reroute struct {
	of         RunKind
	old, laid  *LaidRun
	head, tail int // how many corners both have at the beginning, and how many behind those at the end
}

// newReroute finds what both have.
func newReroute(of RunKind, old, laid *LaidRun) *reroute {
	w := &reroute{of: of, old: old, laid: laid}
	a, b := old.Path, laid.Path
	least := min(len(a), len(b))
	for w.head < least && a[w.head] == b[w.head] {
		w.head++
	}
	for w.head+w.tail < least && a[len(a)-1-w.tail] == b[len(b)-1-w.tail] {
		w.tail++
	}
	return w
}

// carry gives a thing its place on the new path; moved says whether it lies elsewhere there than it lay.
func (w *reroute) carry(h *Hung) (now Rehung, moved bool) {
	if h.leg != nil && w.old.hasLeg(*h.leg) {
		if leg, kept := w.kept(*h.leg); kept {
			*h.leg = leg
			return Rehung{}, false
		}
	}
	if _, wrong := w.old.misfit(w.of, h); wrong || len(w.laid.Path) < 2 {
		return Rehung{}, false // it hung nowhere, or there is nothing to hang on
	}
	if h.leg == nil {
		was, to := *h.start, max(0, min(w.along(h, *h.start), w.laid.Line.Length())) // roundings of several edits may add up past the end
		if math.Abs(to-was) > AlongNoise {
			*h.start = settled(to)
		}
		return Rehung{h.Kind, h.Index, 0, *h.start}, w.old.Station(was).apart(w.laid.Station(*h.start)) > 2*AlongNoise
	}
	from, to := w.old.ends(h)
	*h.leg, *h.start = w.seat(w.along(h, w.old.Line.Along(*h.leg-1, *h.start)), h.Length())
	begin, end := w.laid.ends(h)
	return Rehung{h.Kind, h.Index, *h.leg, *h.start}, max(begin.Sub(from).Norm(), end.Sub(to).Norm()) > 2*AlongNoise
}

// kept returns the number on the new path of a leg that it has too.
func (w *reroute) kept(leg int) (number int, kept bool) {
	switch more := len(w.laid.Path) - len(w.old.Path); {
	case leg < w.head:
		return leg, true
	case leg > len(w.old.Path)-w.tail:
		return leg + more, true
	}
	return 0, false
}

// along is how far along the new run a thing goes that began at a place of the old one. What counts along the run keeps its
// way from the beginning or the end; what counts on a leg, that from the last or the first corner that both have.
func (w *reroute) along(h *Hung, from float64) float64 {
	a, b := w.between(w.old)
	newA, newB := w.between(w.laid)
	before, behind := 0.0, w.laid.Line.Length()-w.old.Line.Length()
	if h.leg != nil {
		before, behind = newA-a, newB-b
	}
	toA, toB := from-a, b-(from+h.Length())
	if w.tail == 0 || w.head > 0 && toA <= toB {
		from += before
	} else {
		from += behind
	}
	if toA < -AlongNoise || toB < -AlongNoise { // on what both have; its very end may be a rounding past it
		return from
	}
	return max(newA, min(from, newB-h.Length()))
}

// between are the places along a run, one of the two, between which it is not the other: those of the last corner that both
// have at the beginning and of the first that both have at the end, each as it counts on its leg there.
func (w *reroute) between(r *LaidRun) (a, b float64) {
	legs := len(r.Path) - 1
	a, b = 0, r.Line.Length()
	if w.head > legs {
		a = b
	} else if w.head > 0 {
		a = r.Line.Along(w.head-1, 0)
	}
	if leg := len(r.Path) - w.tail; w.tail > 0 && leg > 0 {
		b = r.Line.Along(leg-1, r.legLength(leg))
	} else if w.tail > 0 {
		b = 0
	}
	return a, b
}

// seat returns on which leg, and how far along it, a thing of a length hangs nearest to a place along the new run. Of legs
// as near as each other one that was edited is taken: on the others it would be there already.
func (w *reroute) seat(along, length float64) (leg int, start float64) {
	legs := len(w.laid.Path) - 1
	first, last := w.head, len(w.laid.Path)-w.tail // of the edited legs
	nearest := math.Inf(1)
	for i := range legs {
		l := (max(first, 1)-1+i)%legs + 1
		room, at := w.laid.legLength(l)-length, w.laid.Line.OnLeg(l-1, along)
		to := max(0, min(at, room))
		if off := math.Abs(to - at); room >= -AlongNoise && off < nearest-AlongNoise {
			nearest, leg, start = off, l, settled(to)
		}
	}
	if leg == 0 { // too long for any: on the edited one it can be said which
		leg = max(1, min(first, last, legs))
	}
	return leg, start
}

// ends are the points where a thing that hangs on a leg begins and ends.
func (r *LaidRun) ends(h *Hung) (begin, end geometry.Point3) {
	return r.onLeg(*h.leg, *h.start), r.onLeg(*h.leg, *h.start+h.Length())
}

// apart is the distance of two points of runs, mm.
func (p RunPoint) apart(q RunPoint) float64 {
	return math.Hypot(math.Hypot(p.X-q.X, p.Y-q.Y), p.Drop-q.Drop)
}

// perNoise is how many AlongNoise make a mm: figures divided by it are the nearest to what a file says.
const perNoise = 1 / AlongNoise

// settled takes the rounding off a place that was worked out: nobody says one finer than AlongNoise, and one that came back to
// where it was is written as it was said.
func settled(v float64) float64 { return math.Round(v*perNoise) / perNoise }
