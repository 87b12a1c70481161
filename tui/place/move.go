package place

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// move moves the cut one step the way the arrow points.
func (m screen) move(arrow string, s desk.State) desk.Change {
	if s.Job.Cut == nil {
		return desk.Change{Say: "No cut to move yet: " + keyHere.Help().Key + " places one in the middle."}
	}
	if m.holds(s) {
		return heldFast(s)
	}
	at := plan2(s.Job.Cut.At)
	by := m.step.Seen(arrow, at.At(0), s).Plan()
	if m.staying && refused(s).Say == "" {
		to, ok := slid(s, by)
		if !ok {
			return desk.Change{Say: "Not on open floor: " + keyNearest.Help().Key + " goes to the nearest, " + keyStay.Help().Key + " lets the arrows move freely."}
		}
		return moveCut(s.Job, to, "move cut")
	}
	return moveCut(s.Job, at.Add(by), "move cut")
}

// moveCut puts the cut of a job that has one at a place of the plan.
func moveCut(job vehicles.Job, at geometry.Point, step string) desk.Change {
	cut := *job.Cut
	cut.At = [2]float64{moving.Bounded(at.X), moving.Bounded(at.Y)}
	job = job.WithCut(cut)
	return desk.Change{Job: &job, Step: step}
}

// placeCut places a first cut, or moves the one there is.
func placeCut(s desk.State, at geometry.Point) desk.Change {
	return moveCut(withCut(s.Job), geometry.Point{X: math.Round(at.X), Y: math.Round(at.Y)}, "")
}

// withCut is the job with a cut of the usual width, somewhere, where it has none.
func withCut(job vehicles.Job) vehicles.Job {
	if job.Cut != nil {
		return job
	}
	return job.WithCut(vehicles.Cut{Across: vehicles.UsualAcross})
}

func plan2(at [2]float64) geometry.Point { return geometry.Point{X: at[0], Y: at[1]} }
