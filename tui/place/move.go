package place

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// millimetreSteps and inchSteps are how far an arrow moves, mm: marks that a tape of those units has.
var (
	millimetreSteps = [...]float64{1, 10, 50}
	inchSteps       = [...]float64{survey.Inch / 16, survey.Inch * 3 / 8, survey.Inch * 2}
)

func steps(s desk.State) [3]float64 {
	if s.Settings.Units == desk.Inches {
		return inchSteps
	}
	return millimetreSteps
}

// ways are how far to the right and up the arrows point in the picture.
var ways = map[string][2]float64{"right": {1, 0}, "left": {-1, 0}, "up": {0, 1}, "down": {0, -1}}

// stepped is the step in space, as long as the arrows' steps are now, that is seen from a place as the way an arrow points.
func (m screen) stepped(arrow string, at geometry.Point3, s desk.State) geometry.Point3 {
	seen, way := s.Camera.View.Projection(), ways[arrow]
	return seen.Step(at, way[0], way[1]).Scale(steps(s)[m.step])
}

// move moves the cut, or the point of the run, one step the way the arrow points.
func (m screen) move(arrow string, s desk.State) desk.Change {
	if m.moving == hole {
		if s.Job.Cut == nil {
			return desk.Change{Say: "No cut to move yet: " + keyHere.Help().Key + " places one in the middle."}
		}
		at := plan2(s.Job.Cut.At)
		by := m.stepped(arrow, at.At(0), s).Plan()
		if m.staying && refused(s).Say == "" {
			to, ok := slid(s, by)
			if !ok {
				return desk.Change{Say: "Not on open floor: " + keyNearest.Help().Key + " goes to the nearest, " + keyStay.Help().Key + " lets the arrows move freely."}
			}
			return moveCut(s.Job, to, "move cut")
		}
		return moveCut(s.Job, at.Add(by), "move cut")
	}
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return desk.Change{Say: "No " + m.moving.String() + " to move yet: " + keyAdd.Help().Key + " adds a point."}
	}
	p := run.Path[m.point]
	by := m.stepped(arrow, inSpace(p), s)
	return m.setPoint(s, vehicles.RunPoint{X: p.X + by.X, Y: p.Y + by.Y, Drop: p.Drop - by.Z}, fmt.Sprintf("move %s point %d", m.moving, m.point+1))
}

// moveCut puts the cut of a job that has one at a place of the plan.
func moveCut(job vehicles.Job, at geometry.Point, step string) desk.Change {
	cut := *job.Cut
	cut.At = [2]float64{bounded(at.X), bounded(at.Y)}
	job = job.WithCut(cut)
	return desk.Change{Job: &job, Step: step}
}

// placeCut places a first cut, or moves the one there is.
func placeCut(s desk.State, at geometry.Point) desk.Change {
	job := s.Job
	if job.Cut == nil {
		job = job.WithCut(vehicles.Cut{Across: vehicles.UsualAcross})
	}
	return moveCut(job, geometry.Point{X: math.Round(at.X), Y: math.Round(at.Y)}, "")
}

// noHeater is said where a key needs one.
const noHeater = "No heater is chosen yet: choose one on the Job screen."

// turn turns the heater on its cut, anticlockwise as seen for 1, clockwise for -1.
func turn(s desk.State, way float64) desk.Change {
	if s.Job.Heater == nil {
		return desk.Change{Say: noHeater}
	}
	if s.Camera.View.Projection().Over {
		way = -way
	}
	heater := *s.Job.Heater
	heater.Yaw = geometry.WithinHalfTurn(heater.Yaw + way*desk.TurnStep)
	heater.Given |= vehicles.HasYaw
	job := s.Job.WithHeater(heater)
	return desk.Change{Job: &job, Step: "turn heater"}
}

// setPoint returns the job with another place for the point that is moved.
func (m screen) setPoint(s desk.State, p vehicles.RunPoint, step string) desk.Change {
	change := m.rerouted(s, m.run(s).Path.With(m.point, held(p)), "moved")
	change.Step = step
	return change
}

// lower moves the point of the run down by one step, or up for -1.
func (m screen) lower(s desk.State, way float64) desk.Change {
	p := m.run(s).Path[m.point]
	p.Drop += way * steps(s)[m.step]
	return m.setPoint(s, p, fmt.Sprintf("height of %s point %d", m.moving, m.point+1))
}

// held brings a point of a run back to what a job may hold.
func held(p vehicles.RunPoint) vehicles.RunPoint {
	return vehicles.RunPoint{X: bounded(p.X), Y: bounded(p.Y), Drop: bounded(p.Drop)}
}

// bounded brings a coordinate or a drop back to what a job may hold.
func bounded(v float64) float64 { return max(-survey.Longest, min(survey.Longest, v)) }

// inSpace is where a point of a run is.
func inSpace(p vehicles.RunPoint) geometry.Point3 { return geometry.Point3{X: p.X, Y: p.Y, Z: -p.Drop} }

func plan2(at [2]float64) geometry.Point { return geometry.Point{X: at[0], Y: at[1]} }
