package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// axle is a tyre of an axle as the van is seen from its side.
type axle struct{ x, radius float64 }

// axles are the van's rear and front axle, as far as its wheels say: an only one is the rear axle where it stands in the rear half of
// the floor. Of several tyres of an axle the hindmost counts for what hangs behind it, and the foremost in front.
func axles(job *vehicles.Job) (rear, front *axle) {
	for _, w := range job.Wheels {
		a := &axle{w.At[0], w.Across / 2}
		switch behind := job.AtRear(w); {
		case behind && (rear == nil || a.x < rear.x):
			rear = a
		case !behind && (front == nil || a.x > front.x):
			front = a
		}
	}
	return rear, front
}

// ramp is what a rule asks the steepness of over a stretch: degrees, for a round of a radius about its places; ok is false where it asks nothing.
// It is no more than at any of them, and of a single place what it is there.
type ramp func(ground float64, rear, front *axle, over rampStretch, radius float64) (degrees float64, ok bool)

// rampStretch is between which places along the van a stretch lies, mm from the datum, and how high at the least.
type rampStretch struct{ from, to, low float64 }

// placeAt is a stretch of one place.
func placeAt(at geometry.Point3) rampStretch { return rampStretch{at.X, at.X, at.Z} }

// departing is the angle of the plane that touches the rear tyre and what hangs behind it, breaking that of the two that touch
// the tyres and meet below what hangs between them. What hangs lower, or farther from a tyre, makes it less. Source: from memory, ISO 612,
// departure angle and ramp angle.
func departing(ground float64, rear, _ *axle, over rampStretch, radius float64) (degrees float64, ok bool) {
	if rear == nil || over.from >= rear.x {
		return 0, false
	}
	return rear.steep(ground, over.from, over.low, radius), true
}

func breaking(ground float64, rear, front *axle, over rampStretch, radius float64) (degrees float64, ok bool) {
	if rear == nil || front == nil || over.to <= rear.x || over.from >= front.x {
		return 0, false
	}
	from, to := max(over.from, rear.x), min(over.to, front.x)
	return rear.steep(ground, to, over.low, radius) + front.steep(ground, from, over.low, radius), true
}

// steep is the angle over level ground, degrees, of the plane that touches a tyre and a round so far along the van and so high from below; 90
// where that is beside the tyre itself. A tyre of unknown size is where it stands on the ground: the angle is then no larger than it is.
func (a *axle) steep(ground, x, z, radius float64) float64 {
	along, up := math.Abs(x-a.x), z+ground-a.radius
	apart, rise := math.Hypot(along, up), a.radius-radius
	if apart <= math.Abs(rise) {
		return 90
	}
	return (math.Atan2(up, along) + math.Asin(rise/apart)) * 180 / math.Pi
}

// How far apart along a run its steepness is asked, mm: on straight pipe and in bends. A leg's ends are asked too. Between two places
// the angle is then less by no more than 0.01 degrees, less than the height leaves open: full_test.go holds that.
const (
	rampStep = 5
	bendStep = 1
)

func departs(j *judge, r *Rule)    { j.onRamps(r, departing) }
func breaksOver(j *judge, r *Rule) { j.onRamps(r, breaking) }

// onRamps judges each run where a ramp comes nearest to it.
func (j *judge) onRamps(r *Rule, steep ramp) {
	limits, ground := j.book.ofKinds(r), j.job.Floor.Ground
	rear, front := axles(j.job)
	for _, of := range j.runsInFull() {
		n := nearestRamp{asked: func(over rampStretch, radius float64) (float64, bool) {
			return steep(ground, rear, front, over, radius)
		}, ground: ground}
		n.along(j.run(of))
		if !n.there {
			continue
		}
		f := j.open(limits.of(of.String()), the(of), Thing{})
		u := math.Sqrt(j.runMark(n.lowest)[2])
		above, _ := n.asked(placeAt(n.lowest.Add(geometry.Point3{Z: u})), n.radius)
		f.Value, f.N = n.least, geometry.Point3{Z: 1}
		f.Spread.Height = (above - n.least) * (above - n.least)
		f.at(n.lowest)
		j.close(f, 0)
	}
}

// nearestRamp is where along a run a ramp comes nearest to it.
type nearestRamp struct {
	asked  func(over rampStretch, radius float64) (degrees float64, ok bool)
	ground float64

	most   float64 // what it is no more than at some place, degrees
	least  float64 // the least of the places so far
	lowest geometry.Point3
	radius float64 // of what the run fills there
	there  bool    // it asks something of any place
}

// along looks for it: first at the ends of legs, where it mostly is, so that most places between need no look.
func (n *nearestRamp) along(run *vehicles.LaidRun) {
	n.most = math.Inf(1)
	for _, leg := range run.Line.Legs {
		for _, s := range [...]float64{leg.Begin, leg.End} {
			if degrees, ok := n.asked(placeAt(run.Line.At(s)), run.Radius); ok {
				n.most = min(n.most, degrees)
			}
		}
	}
	eachRound(run, n.over, n.at)
}

// at looks at a place.
func (n *nearestRamp) at(at geometry.Point3, radius float64) {
	if degrees, ok := n.asked(placeAt(at), radius); ok && (!n.there || degrees < n.least) {
		n.least, n.lowest, n.radius, n.there = degrees, at, radius, true
		n.most = min(n.most, degrees)
	}
}

// over tells whether the places of a stretch need a look. Of what hangs in the ground it is not known that it is worse farther from a tyre.
func (n *nearestRamp) over(stretch rampStretch, radius float64) bool {
	degrees, ok := n.asked(stretch, radius)
	return ok && (degrees < n.most+rampNoise || stretch.low+n.ground < radius)
}

// rampNoise is how much rounding may make of an angle, degrees: a thousand times what lengths of 1e-9 mm make of it at 50 mm from a tyre.
const rampNoise = 1e-6

// eachRound says each place along a run, with the radius of what it fills there: the pipe's, along the muffler the muffler's. It leaves out
// stretches of which look says that they need none.
func eachRound(r *vehicles.LaidRun, look func(over rampStretch, radius float64) bool, say func(at geometry.Point3, radius float64)) {
	pipe := places{at: r.Line.At, radius: r.Radius, look: look, say: say}
	stretch := func(from, to float64) {
		bend := from
		for _, leg := range r.Line.Legs {
			pipe.every(max(from, bend), min(to, leg.Begin), bendStep)
			pipe.every(max(from, leg.Begin), min(to, leg.End), rampStep)
			bend = leg.End
		}
		say(r.Line.At(to), r.Radius)
	}
	m := r.Muffler
	if m == nil {
		stretch(0, r.Line.Length())
		return
	}
	stretch(0, m.Begin)
	stretch(m.End, r.Line.Length())
	axis, length := geometry.Segment3{A: m.Axis[0], B: m.Axis[1]}, m.To-m.From
	muffler := places{at: func(s float64) geometry.Point3 { return axis.At(s / length) }, radius: m.Radius, look: look, say: say}
	muffler.every(0, length, rampStep)
	say(m.Axis[1], m.Radius)
}

// places are those along a line, of one radius.
type places struct {
	at     func(s float64) geometry.Point3
	radius float64
	look   func(over rampStretch, radius float64) bool
	say    func(at geometry.Point3, radius float64)
}

// every says those so far apart from one on to before another, mm along the line, of stretches that need a look.
func (p *places) every(from, to, step float64) {
	if from >= to {
		return
	}
	if n := math.Ceil((to - from) / step); n > fewPlaces {
		end := from + step*(n-1)
		if !p.look(p.stretch(from, end), p.radius) {
			return
		}
		half := from + step*math.Floor(n/2)
		p.every(from, half, step)
		p.every(half, to, step)
		return
	}
	for s := from; s < to; s += step {
		p.say(p.at(s), p.radius)
	}
}

// fewPlaces are no more to look at than to ask whether they need it.
const fewPlaces = 3

// stretch is where a line may be between two places along it: nowhere farther from the straight way between these than it is longer.
func (p *places) stretch(from, to float64) rampStretch {
	a, b := p.at(from), p.at(to)
	straight := b.Sub(a).Norm()
	aside := math.Sqrt(max(0, (to-from)*(to-from)-straight*straight)) / 2
	return rampStretch{min(a.X, b.X) - aside, max(a.X, b.X) + aside, min(a.Z, b.Z) - aside}
}
