package place

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// turnStep is how far one press turns the heater, degrees.
const turnStep = 15

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

// seen is the plan direction that an arrow points in on the screen. The van's nose is to the right; from below its
// left is at the bottom, so that up and down change over.
func seen(arrow string, v scene.View) geometry.Point {
	up := 1.
	if v == scene.Below {
		up = -1
	}
	return map[string]geometry.Point{"right": {X: 1}, "left": {X: -1}, "up": {Y: up}, "down": {Y: -up}}[arrow]
}

// move moves the cut, or the point of the run, one step the way the arrow points.
func (m screen) move(arrow string, s desk.State) desk.Change {
	by := seen(arrow, s.Camera.View).Scale(steps(s)[m.step])
	if m.moving == hole {
		if s.Job.Cut == nil {
			return desk.Change{Say: "No cut to move yet: " + keyHere.Help().Key + " places one in the middle."}
		}
		if m.staying && refused(s).Say == "" {
			to, ok := slid(s, by)
			if !ok {
				return desk.Change{Say: "Not on open floor: " + keyNearest.Help().Key + " goes to the nearest, " + keyStay.Help().Key + " lets the arrows move freely."}
			}
			return moveCut(s.Job, to, "move cut")
		}
		return moveCut(s.Job, plan2(s.Job.Cut.At).Add(by), "move cut")
	}
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return desk.Change{Say: "No " + m.moving.String() + " to move yet: " + keyAdd.Help().Key + " adds a point."}
	}
	p := run.Path[m.point]
	return m.setPoint(s, vehicles.RunPoint{X: p.X + by.X, Y: p.Y + by.Y, Drop: p.Drop}, fmt.Sprintf("move %s point %d", m.moving, m.point+1))
}

// moveCut puts the cut of a job that has one at a place of the plan.
func moveCut(job vehicles.Job, at geometry.Point, step string) desk.Change {
	cut := *job.Cut
	cut.At = [2]float64{within(at.X), within(at.Y)}
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

// turn turns the heater on its cut, anticlockwise as seen for 1, clockwise for -1.
func turn(s desk.State, way float64) desk.Change {
	if s.Job.Heater == nil {
		return desk.Change{Say: "No heater is chosen yet: choose one on the Job screen."}
	}
	if s.Camera.View == scene.Below {
		way = -way
	}
	heater := *s.Job.Heater
	heater.Yaw = math.Mod(heater.Yaw+way*turnStep+720, 360)
	heater.Given |= vehicles.HasYaw
	job := s.Job.WithHeater(heater)
	return desk.Change{Job: &job, Step: "turn heater"}
}

// setPoint returns the job with another place for the point that is moved.
func (m screen) setPoint(s desk.State, p vehicles.RunPoint, step string) desk.Change {
	run := *m.run(s)
	run.Path = run.Path.With(m.point, held(p))
	job := withRun(s.Job, m.moving, run)
	return desk.Change{Job: &job, Step: step}
}

// lower moves the point of the run down by one step, or up for -1.
func (m screen) lower(s desk.State, way float64) desk.Change {
	p := m.run(s).Path[m.point]
	p.Drop += way * steps(s)[m.step]
	return m.setPoint(s, p, fmt.Sprintf("height of %s point %d", m.moving, m.point+1))
}

// held brings a point of a run back to what a job may hold.
func held(p vehicles.RunPoint) vehicles.RunPoint {
	return vehicles.RunPoint{X: within(p.X), Y: within(p.Y), Drop: within(p.Drop)}
}

// within brings a coordinate or a drop back to what a job may hold.
func within(v float64) float64 { return max(-survey.Longest, min(survey.Longest, v)) }

func plan2(at [2]float64) geometry.Point { return geometry.Point{X: at[0], Y: at[1]} }
