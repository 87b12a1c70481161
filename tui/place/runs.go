package place

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
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

// kinds are the runs among the things.
var kinds = map[movable]vehicles.RunKind{exhaust: vehicles.ExhaustRun, intake: vehicles.IntakeRun}

// runOf is the exhaust or the intake of a job, nil when it has none, and for the cut.
func runOf(job vehicles.Job, t movable) *vehicles.Run {
	if kind, isRun := kinds[t]; isRun {
		return job.Run(kind)
	}
	return nil
}

func (m screen) run(s desk.State) *vehicles.Run { return runOf(s.Job, m.moving) }

func withRun(job vehicles.Job, t movable, run vehicles.Run) vehicles.Job {
	return job.WithRun(kinds[t], &run)
}

// index is the number of the point that is moved, kept within what there is.
func (m screen) index(s desk.State) int {
	run := m.run(s)
	if run == nil {
		return 0
	}
	return max(0, min(m.point, len(run.Path)-1))
}

// start is the mouth of a run's stub; without a heater there is none, and without a cut neither.
func start(s desk.State, t movable) (p vehicles.RunPoint, there bool) {
	h := s.Job.Heater
	if h == nil || s.Job.Cut == nil || len(s.Faults) > 0 {
		return p, false
	}
	stub := h.ExhaustStub
	if t == intake {
		stub = h.IntakeStub
	}
	at := s.Result.Plan.Cut.At.Add(plan2(stub).Turn(h.Yaw))
	return vehicles.RunPoint{X: at.X, Y: at.Y, Drop: h.StubDrop}, true
}

// noStub is said where a key needs the place that a run starts from.
const noStub = "A run starts at its stub: place a cut and choose a heater first."

// add puts a point behind the last one, on in the same direction, or the first one below the stub, and picks it.
func (m screen) add(s desk.State) (screen, desk.Change) {
	stub, there := start(s, m.moving)
	if !there {
		return m, desk.Change{Say: noStub}
	}
	var say string
	var run vehicles.Run
	if old := m.run(s); old != nil {
		run = *old
	} else {
		run = vehicles.Run{Across: exhaustAcross, Bend: vehicles.Some(firstBend)}
		if m.moving == intake {
			run.Across = intakeAcross
		}
		say = fmt.Sprintf("Taken as a pipe %s across: %s changes it.", desk.Length(run.Across, s.Settings.Units), keyPipe.Help().Key)
	}
	m.point = len(run.Path)
	path := run.Path.Insert(m.point, following(stub, run.Path))
	s.Job = withRun(s.Job, m.moving, run)
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

// insert puts a point halfway between the point before and the one that is moved.
func (m screen) insert(s desk.State) desk.Change {
	run := *m.run(s)
	here := run.Path[m.point]
	before, there := start(s, m.moving)
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
	change := desk.Change{Say: fmt.Sprintf("%s point %d deleted", m.moving, m.point+1)}
	if path := m.run(s).Path; len(path) > 1 {
		change = m.rerouted(s, path.Without(m.point), "deleted")
	} else {
		job := s.Job.WithRun(kinds[m.moving], nil)
		change.Job = &job
	}
	if change.Job != nil {
		change.Say += fmt.Sprintf(". %s takes it back.", desk.KeyUndo.Help().Key)
	}
	return change
}

// unstubbed is said when it is not known where what hangs on a run hangs.
const unstubbed = "What hangs on a run has its place from the stub on: place a cut and choose a heater first."

// rerouted gives the run another path, and says what was done to the point and what of that which hangs on the run could not
// stay where it was. Of a point that is only moved nothing is said when all stays.
func (m screen) rerouted(s desk.State, path vehicles.List[vehicles.RunPoint], done string) desk.Change {
	job, shifts, ok := s.Job.WithPath(kinds[m.moving], path)
	if !ok {
		return desk.Change{Say: unstubbed}
	}
	change := desk.Change{Job: &job}
	if len(shifts) > 0 || done == "deleted" {
		change.Say = fmt.Sprintf("%s point %d %s%s", m.moving, m.point+1, done, shifted(shifts, s))
	}
	return change
}

// shifted says where things that could not stay are now.
func shifted(shifts []vehicles.Rehung, s desk.State) string {
	var text strings.Builder
	for _, shift := range shifts {
		text.WriteString("; " + shift.Name + ": ")
		if shift.Leg > 0 {
			fmt.Fprintf(&text, "leg %d, ", shift.Leg)
		}
		text.WriteString(desk.Length(shift.Along, s.Settings.Units) + " along")
	}
	return text.String()
}

// lean is how far a run's first point lies beside its stub in plan, mm.
type lean struct {
	of    movable
	aside float64
}

// leanSeen is how far aside, mm, a first point must lie to be spoken of.
const leanSeen = 1

// leaning tells which runs' first points do not lie under their stubs, as when the cut was moved: a path does not
// follow it.
func leaning(s desk.State) []lean {
	var all []lean
	for _, t := range []movable{exhaust, intake} {
		run := runOf(s.Job, t)
		stub, there := start(s, t)
		if run == nil || len(run.Path) == 0 || !there {
			continue
		}
		first := run.Path[0]
		aside := geometry.Point{X: first.X - stub.X, Y: first.Y - stub.Y}.Norm()
		if aside > leanSeen {
			all = append(all, lean{t, aside})
		}
	}
	return all
}

// upright puts the first points of the leaning runs straight under their stubs.
func upright(s desk.State) desk.Change {
	var say []string
	for _, l := range leaning(s) {
		stub, _ := start(s, l.of)
		run := runOf(s.Job, l.of)
		first := vehicles.RunPoint{X: hundredth(stub.X), Y: hundredth(stub.Y), Drop: run.Path[0].Drop}
		change := screen{moving: l.of}.rerouted(s, run.Path.With(0, first), "moved")
		if change.Say != "" {
			say = append(say, change.Say)
		}
		if change.Job != nil {
			s.Job = *change.Job
		}
	}
	return desk.Change{Job: &s.Job, Say: strings.Join(say, ". ")}
}
