package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
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

// rampPiece is how long the pieces of the van are over which the search keeps a run above a ramp, mm.
const rampPiece = 200.0

// wayOverRamps keeps the way of a run above what a ramp may reach, piece by piece from the rear.
func wayOverRamps(steep ramp) func(*course, *Rule) {
	return func(c *course, r *Rule) {
		limit := c.book.ofKinds(r).of(SortOf(c.kind).String())
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
		degrees, ok := steep(ground, rear, front, placeAt(geometry.Point3{X: x, Z: middle}), c.radius)
		if !ok || degrees >= least {
			high = middle
		} else {
			low = middle
		}
	}
	return low
}
