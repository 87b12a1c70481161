package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// The rules of the wheels: how steep a ramp a run may meet, and what the tyres throw. A job says whether it asks them.
var (
	departure = &Rule{
		ID: "runs.departure", Unit: Degree, Sense: Least, Weight: Damages, ByKind: AStub,
		Word:   "departure angle",
		named:  subjectNamed,
		Title:  "Departure angle that a run leaves the van",
		Ask:    "Between level ground and the plane that touches the rear tyres and what hangs behind them: what hangs lower is torn off where the van leaves a ramp.",
		Advice: "raise what of it hangs behind the rear axle, or lead it nearer to that.",
		short:  degreesTooFew,
		check:  departs,
		way:    wayOverRamps(departing),
	}
	breakover = &Rule{
		ID: "runs.breakover", Unit: Degree, Sense: Least, Weight: Damages, ByKind: AStub,
		Word:   "ramp angle",
		named:  subjectNamed,
		Title:  "Ramp angle that a run leaves the van",
		Ask:    "Between the planes that touch the front and the rear tyres and meet at what hangs between them: what hangs lower grounds where the van crosses a crest.",
		Advice: "raise what of it hangs between the axles.",
		short:  degreesTooFew,
		check:  breaksOver,
		way:    wayOverRamps(breaking),
	}
	intakeSpray = &Rule{
		ID: "intake.spray", Unit: MM, Sense: Least, Weight: Damages,
		Word:   "intake mouth",
		Title:  "Intake mouth out of the wheels' spray",
		Ask:    "A tyre throws water, slush and grit straight to the rear.",
		Advice: "end the intake ahead of the wheel, or to the side of its track.",
		short:  tooClose,
		check:  sprayed,
		ends:   true,
	}
)

// sprayLength is how far behind a tyre its spray is counted, mm. common practice, no source
const sprayLength = 1000

// sprayed judges how far the intake's mouth is in plan from each tyre's track: from its front edge to a metre behind it. A wheel
// without a width is a line.
func sprayed(j *judge, r *Rule) {
	if j.plan.Intake == nil || !j.inFull() {
		return
	}
	path := j.plan.Intake.Path
	mouth := path[len(path)-1]
	for i, w := range j.job.Wheels {
		rear, half := w.At[0]-w.Across/2-sprayLength, w.Width/2
		track := geometry.NewRectangle(geometry.Point{X: rear, Y: w.At[1] - half}, geometry.Point{X: w.At[0] + w.Across/2, Y: w.At[1] + half}, 0)
		s := track.GapCircle(mouth.Plan(), 0)
		f := j.open(j.book.of(r), the(TheIntake), Thing{Sort: AWheel, Index: int32(i)})
		f.Value, f.N = s.Gap, s.N.At(0)
		f.Spread.Mark = j.runMark(mouth).along(f.N)
		f.flat(s.A, s.B)
		j.close(f, 0)
	}
}

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

// ramp is what a rule asks the steepness of at a place: degrees, for a round of a radius about that; ok is false where it asks nothing.
type ramp func(ground float64, rear, front *axle, at geometry.Point3, radius float64) (degrees float64, ok bool)

// departing is the angle of the plane that touches the rear tyre and what hangs behind it, breaking that of the two that touch
// the tyres and meet below what hangs between them. Source: from memory, ISO 612, departure angle and ramp angle.
func departing(ground float64, rear, _ *axle, at geometry.Point3, radius float64) (degrees float64, ok bool) {
	if rear == nil || at.X >= rear.x {
		return 0, false
	}
	return rear.steep(ground, at, radius), true
}

func breaking(ground float64, rear, front *axle, at geometry.Point3, radius float64) (degrees float64, ok bool) {
	if rear == nil || front == nil || at.X <= rear.x || at.X >= front.x {
		return 0, false
	}
	return rear.steep(ground, at, radius) + front.steep(ground, at, radius), true
}

// steep is the angle over level ground, degrees, of the plane that touches a tyre and a round at a place from below; 90 where that
// is beside the tyre itself. A tyre of unknown size is where it stands on the ground: the angle is then no larger than it is.
func (a *axle) steep(ground float64, at geometry.Point3, radius float64) float64 {
	along, up := math.Abs(at.X-a.x), at.Z+ground-a.radius
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
		least, there := math.Inf(1), false
		var lowest geometry.Point3
		var thick float64
		eachRound(j.run(of), func(at geometry.Point3, radius float64) {
			if degrees, ok := steep(ground, rear, front, at, radius); ok && degrees < least {
				least, lowest, thick, there = degrees, at, radius, true
			}
		})
		if !there {
			continue
		}
		f := j.open(limits.of(of.String()), the(of), Thing{})
		u := math.Sqrt(j.runMark(lowest)[2])
		above, _ := steep(ground, rear, front, lowest.Add(geometry.Point3{Z: u}), thick)
		f.Value, f.N = least, geometry.Point3{Z: 1}
		f.Spread.Height = (above - least) * (above - least)
		f.at(lowest)
		j.close(f, 0)
	}
}

// eachRound says each place along a run, with the radius of what it fills there: the pipe's, along the muffler the muffler's.
func eachRound(r *vehicles.LaidRun, say func(at geometry.Point3, radius float64)) {
	every := func(from, to, step float64) {
		for s := from; s < to; s += step {
			say(r.Line.At(s), r.Radius)
		}
	}
	stretch := func(from, to float64) {
		bend := from
		for _, leg := range r.Line.Legs {
			every(max(from, bend), min(to, leg.Begin), bendStep)
			every(max(from, leg.Begin), min(to, leg.End), rampStep)
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
	for s := 0.0; s < length; s += rampStep {
		say(axis.At(s/length), m.Radius)
	}
	say(m.Axis[1], m.Radius)
}

// rampPiece is how long the pieces of the van are over which the search keeps a run above a ramp, mm.
const rampPiece = 200.0

// wayOverRamps keeps the way of a run above what a ramp may reach, piece by piece from the rear.
func wayOverRamps(steep ramp) func(*course, *Rule) {
	return func(c *course, r *Rule) {
		limit := c.book.ofKinds(r).of(sortOf(c.kind).String())
		if !c.inFull() || !limit.Value.Set || c.uncut {
			return
		}
		rear, front := axles(c.job)
		low, high := c.query.Min, c.query.Max
		for x := low.X; x < high.X; x += rampPiece { // no more than is asked all over a piece
			top := min(c.rampAt(steep, rear, front, x, limit.Value.Value), c.rampAt(steep, rear, front, x+rampPiece, limit.Value.Value))
			if top <= low.Z-c.radius {
				continue
			}
			piece := geometry.NewRectangle(geometry.Point{X: x, Y: low.Y}, geometry.Point{X: x + rampPiece, Y: high.Y}, 0)
			c.query.Obstacles = append(c.query.Obstacles, route.Obstacle{
				Prism: geometry.Prism{Footprint: piece, Low: -c.job.Floor.Ground, High: top - c.radius + c.searched*c.tape.HeightU()},
				Need:  c.radius,
			})
		}
	}
}

// rampAt is the height, mm, below which the run's centreline would ground at x; that of the ground where nothing is asked.
func (c *course) rampAt(steep ramp, rear, front *axle, x, least float64) float64 {
	ground := c.job.Floor.Ground
	low, high := -ground, 0.0
	for high-low > 1 {
		middle := (low + high) / 2
		degrees, ok := steep(ground, rear, front, geometry.Point3{X: x, Z: middle}, c.radius)
		if !ok || degrees >= least {
			high = middle
		} else {
			low = middle
		}
	}
	return low
}
