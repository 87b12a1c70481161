package runs

import (
	"fmt"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// What a new run starts with until the fitter says otherwise, mm: common practice, no source.
const (
	exhaustAcross = 26
	intakeAcross  = 28
	firstBend     = 60
	firstFall     = 65  // from the stub's mouth to the first point, straight down
	newLeg        = 200 // from the last point to one that is added
)

// run is the run at hand, nil when the job has none.
func (m screen) run(s desk.State) *vehicles.Run { return s.Job.Run(m.of) }

// index is the number of the point that is moved, kept within what there is.
func (m screen) index(s desk.State) int {
	run := m.run(s)
	if run == nil {
		return 0
	}
	return max(0, min(m.point, len(run.Path)-1))
}

// noStub is said where a key needs the place that a run starts from.
const noStub = "A run starts at its stub: place a cut and choose a heater first."

// add puts a point behind the last one, on in the same direction, or the first one below the stub, and picks it.
func (m screen) add(s desk.State) (screen, desk.Change) {
	stub, there := moving.Stub(s, m.of)
	if !there {
		return m, desk.Change{Say: noStub}
	}
	var say string
	var run vehicles.Run
	if old := m.run(s); old != nil {
		run = *old
	} else {
		run = vehicles.Run{Across: exhaustAcross, Bend: vehicles.Some(firstBend)}
		if m.of == vehicles.IntakeRun {
			run.Across = intakeAcross
		}
		say = fmt.Sprintf("Taken as a pipe %s across: %s changes it.", desk.Length(run.Across, s.Settings.Units), keyPipe.Help().Key)
	}
	m.point = len(run.Path)
	path := run.Path.Insert(m.point, following(stub, run.Path))
	s.Job = s.Job.WithRun(m.of, &run)
	change := m.rerouted(s, path, "added")
	if say != "" {
		change.Say = say
	}
	return m, change
}

// following is where a point that is added to a path goes.
func following(stub vehicles.RunPoint, path []vehicles.RunPoint) vehicles.RunPoint {
	if len(path) == 0 {
		return held(vehicles.RunPoint{X: stub.X, Y: stub.Y, Drop: stub.Drop + firstFall})
	}
	last, before := path[len(path)-1], stub
	if len(path) > 1 {
		before = path[len(path)-2]
	}
	way := geometry.Point{X: last.X - before.X, Y: last.Y - before.Y}
	if way.Norm() < 1 { // straight down so far: on towards the rear
		way = geometry.Point{X: -1}
	}
	way = way.Scale(newLeg / way.Norm())
	return held(vehicles.RunPoint{X: last.X + way.X, Y: last.Y + way.Y, Drop: last.Drop})
}

// move moves the point one step the way the arrow points.
func (m screen) move(arrow string, s desk.State) desk.Change {
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return desk.Change{Say: "No " + m.of.String() + " to move yet: " + keyAdd.Help().Key + " adds a point."}
	}
	p := run.Path[m.point]
	by := m.step.Seen(arrow, inSpace(p), s)
	return m.setPoint(s, vehicles.RunPoint{X: p.X + by.X, Y: p.Y + by.Y, Drop: p.Drop - by.Z}, fmt.Sprintf("move %s point %d", m.of, m.point+1))
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
	p.Drop += way * m.step.Length(s)
	return m.setPoint(s, p, fmt.Sprintf("height of %s point %d", m.of, m.point+1))
}

// held brings a point of a run back to what a job may hold.
func held(p vehicles.RunPoint) vehicles.RunPoint {
	return vehicles.RunPoint{X: moving.Bounded(p.X), Y: moving.Bounded(p.Y), Drop: moving.Bounded(p.Drop)}
}

// inSpace is where a point of a run is.
func inSpace(p vehicles.RunPoint) geometry.Point3 { return geometry.Point3{X: p.X, Y: p.Y, Z: -p.Drop} }

// insert puts a point halfway between the point before and the one that is moved.
func (m screen) insert(s desk.State) desk.Change {
	run := *m.run(s)
	here := run.Path[m.point]
	before, there := moving.Stub(s, m.of)
	switch {
	case m.point > 0:
		before = run.Path[m.point-1]
	case !there:
		return desk.Change{Say: noStub}
	}
	if muffled(run, m.point+1, inSpace(here).Sub(inSpace(before)).Norm()/2) {
		return desk.Change{Say: "The muffler is where the point would go: insert the point on another leg."}
	}
	half := vehicles.RunPoint{X: (before.X + here.X) / 2, Y: (before.Y + here.Y) / 2, Drop: (before.Drop + here.Drop) / 2}
	return m.rerouted(s, run.Path.Insert(m.point, half), "inserted")
}

// muffled tells whether the muffler lies over a place of a leg: it must be on one leg.
func muffled(run vehicles.Run, leg int, along float64) bool {
	muf := run.Muffler
	return muf != nil && muf.Leg == leg && muf.Start < along && along < muf.Start+muf.Length
}

// remove takes the point out; with its last point the run goes.
func (m screen) remove(s desk.State) desk.Change {
	change := desk.Change{Say: fmt.Sprintf("%s point %d deleted", m.of, m.point+1)}
	if path := m.run(s).Path; len(path) > 1 {
		change = m.rerouted(s, path.Without(m.point), "deleted")
	} else {
		job := s.Job.WithRun(m.of, nil)
		change.Job = &job
	}
	if change.Job != nil {
		change.Say += fmt.Sprintf(". %s takes it back.", desk.KeyUndo.Help().Key)
	}
	return change
}

// rerouted gives the run another path, and says what was done to the point and what of that which hangs on the run could not
// stay where it was. Of a point that is only moved nothing is said when all stays.
func (m screen) rerouted(s desk.State, path vehicles.List[vehicles.RunPoint], done string) desk.Change {
	job, shifts, ok := s.Job.WithPath(m.of, path)
	if !ok {
		return desk.Change{Say: moving.Unstubbed}
	}
	change := desk.Change{Job: &job}
	if len(shifts) > 0 || done == "deleted" {
		change.Say = fmt.Sprintf("%s point %d %s%s", m.of, m.point+1, done, moving.Shifted(shifts, s))
	}
	return change
}
