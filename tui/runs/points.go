package runs

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// Where the points of a new run go until the fitter moves them, mm: common practice, no source.
const (
	firstFall = 65  // from the stub's mouth to the first point, straight down
	newLeg    = 200 // from the last point to one that is added
)

// run is the run at hand, nil when the job has none.
func (m screen) run(s desk.State) *vehicles.Run { return s.Job.Run(m.of) }

// noStub is said where a key needs the place that a run starts from.
const noStub = "A run starts at its stub: " + moving.PlaceCutAndChooseHeater

// add puts a point behind the last one, on in the same direction, or the first one below the stub, and picks it. A fuel line that
// is begun goes from its tank to the heater, and points are added before the last, which is at the heater.
func (m screen) add(s desk.State) (screen, desk.Change) {
	mouth, there := moving.Stub(s, m.of)
	if !there {
		return m, desk.Change{Say: noStub}
	}
	run := m.run(s)
	switch {
	case m.of == vehicles.FuelRun && run == nil:
		line, say := m.begun(s, mouth)
		job := s.Job.WithRun(m.of, &line)
		m.picked = part{}
		return m, desk.Change{Job: &job, Say: say}
	case m.of == vehicles.FuelRun:
		m.picked = part{sort: point, index: len(run.Path) - 1}
		return m.insert(s, len(run.Path)-1)
	}
	next, say := vehicles.UsualRun(m.of), ""
	if run != nil {
		next = *run
	} else {
		say = fmt.Sprintf("Taken as a pipe %s across: %s changes it.", desk.Length(next.Across, s.Settings.Units), keyPipe.Help().Key)
	}
	m.picked = part{sort: point, index: len(next.Path)}
	path := next.Path.Insert(len(next.Path), following(mouth, next.Path))
	s.Job = s.Job.WithRun(m.of, &next)
	change := m.rerouted(s, path, len(next.Path), "added")
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

// move moves a point one step the way the arrow points in the picture that is seen.
func (m screen) move(arrow string, i int, s desk.State) desk.Change {
	p := m.run(s).Path[i]
	by := m.step.Along(arrow, inSpace(p), s, m.seen(s))
	return m.setPoint(s, i, vehicles.RunPoint{X: moving.Hundredth(p.X + by.X), Y: moving.Hundredth(p.Y + by.Y), Drop: moving.Hundredth(p.Drop - by.Z)},
		fmt.Sprintf("move %s point %d", m.of, i+1))
}

// setPoint returns the job with another place for a point.
func (m screen) setPoint(s desk.State, i int, p vehicles.RunPoint, step string) desk.Change {
	change := m.rerouted(s, m.run(s).Path.With(i, held(p)), i, "moved")
	change.Step = step
	return change
}

// lower moves a point of the run down by one step, or up for -1.
func (m screen) lower(s desk.State, i int, way float64) desk.Change {
	p := m.run(s).Path[i]
	p.Drop += way * m.step.Length(s)
	return m.setPoint(s, i, p, fmt.Sprintf("height of %s point %d", m.of, i+1))
}

// held brings a point of a run back to what a job may hold.
func held(p vehicles.RunPoint) vehicles.RunPoint {
	return vehicles.RunPoint{X: moving.Bounded(p.X), Y: moving.Bounded(p.Y), Drop: moving.Bounded(p.Drop)}
}

// inSpace is where a point of a run is.
func inSpace(p vehicles.RunPoint) geometry.Point3 { return geometry.Point3{X: p.X, Y: p.Y, Z: -p.Drop} }

// insert puts a point halfway between the one before and a point, and picks it.
func (m screen) insert(s desk.State, i int) (screen, desk.Change) {
	run := *m.run(s)
	here := run.Path[i]
	before, there := moving.Stub(s, m.of)
	switch {
	case i > 0:
		before = run.Path[i-1]
	case m.of == vehicles.FuelRun:
		return m, desk.Change{Say: "The line begins here: a point goes before one of the others, " + keyNext.Help().Key + " picks it."}
	case !there:
		return m, desk.Change{Say: noStub}
	}
	if thing := over(run.Hanging, i+1, inSpace(here).Sub(inSpace(before)).Norm()/2); thing != "" {
		return m, desk.Change{Say: "The " + thing + " is where the point would go: insert the point on another leg."}
	}
	half := vehicles.RunPoint{X: (before.X + here.X) / 2, Y: (before.Y + here.Y) / 2, Drop: (before.Drop + here.Drop) / 2}
	m.picked = part{sort: point, index: i}
	return m, m.rerouted(s, run.Path.Insert(i, half), i, "inserted")
}

// over is what lies over a place of a leg, and so must stay on one; "" for nothing.
func over(hanging vehicles.Hanging, leg int, along float64) string {
	for _, thing := range hanging.OnLegs().Things() {
		if thing.Leg() == leg && thing.Start() < along && along < thing.Start()+thing.Length() {
			return thing.Name()
		}
	}
	return ""
}

// fewest is how many points the run at hand can't do without: with the last of them the run goes.
func (m screen) fewest() int {
	if m.of == vehicles.FuelRun {
		return 2
	}
	return 1
}

// removePoint takes a point out.
func (m screen) removePoint(s desk.State, i int) desk.Change {
	change := m.rerouted(s, m.run(s).Path.Without(i), i, "deleted")
	if change.Job != nil {
		change.Say += fmt.Sprintf(". %s takes it back.", desk.KeyUndo.Help().Key)
	}
	return change
}

// rerouted gives the run another path, and says what was done to a point and what of that which hangs on the run could not
// stay where it was. Of a point that is only moved nothing is said when all stays.
func (m screen) rerouted(s desk.State, path vehicles.List[vehicles.RunPoint], i int, done string) desk.Change {
	job, shifts, ok := s.Job.WithPath(m.of, path)
	if !ok {
		return desk.Change{Say: moving.HangsFromTheStubOn}
	}
	change := desk.Change{Job: &job}
	switch {
	case done == "moved" && len(shifts) > 0:
		change.Say = fmt.Sprintf("%s point %d moved%s", m.of, i+1, moving.Shifted(shifts, s))
	case done == "deleted" || len(shifts) > 0:
		change.Say = fmt.Sprintf("%s point %d %s%s", m.of, i+1, done, rehungSo(shifts, s))
	}
	return change
}

// rehungSo goes on with what could not stay on another path: with where that is now of which a run has one, and of the others how many.
func rehungSo(shifts []vehicles.Rehung, s desk.State) (text string) {
	var others []vehicles.Rehung
	for i := range shifts {
		if shifts[i].Kind.Many() && len(shifts) > 1 {
			others = append(others, shifts[i])
			continue
		}
		text += "; " + moving.WhereNow(&shifts[i], s)
	}
	if len(others) > 0 {
		text += "; " + moving.Kinds(others) + " elsewhere"
	}
	return text
}

// toSide leads the exhaust out at the nearer side of the van, level across it and falling as the book asks: from its last point
// on, or with the last point itself where the last leg goes that way already.
func (m screen) toSide(s desk.State) (screen, desk.Change) {
	run := m.run(s)
	last := len(run.Path) - 1
	end := run.Path[last]
	edge := s.Job.Floor.Width / 2
	if v := s.Job.Floor.Outline.Left; end.Y >= 0 && v.Set {
		edge = v.Value
	}
	if v := s.Job.Floor.Outline.Right; end.Y < 0 && v.Set {
		edge = v.Value
	}
	to := math.Copysign(edge, end.Y)
	before, fall := end, 0.0
	if l, ok := limit(s, rules.ExhaustFall); ok {
		fall = l / 1000
	}
	across := last > 0 && run.Path[last-1].X == end.X && run.Path[last-1].Y != end.Y
	if across {
		before = run.Path[last-1]
	}
	p := held(vehicles.RunPoint{X: end.X, Y: to, Drop: moving.Hundredth(max(before.Drop+math.Ceil(math.Abs(to-before.Y)*fall), end.Drop))})
	if across {
		m.picked = part{sort: point, index: last}
		change := m.setPoint(s, last, p, "")
		change.Say = "The outlet is at the van's side."
		return m, change
	}
	m.picked = part{sort: point, index: last + 1}
	change := m.rerouted(s, run.Path.Insert(last+1, p), last+1, "added")
	change.Say = "Out at the van's side, falling as the book asks."
	return m, change
}

// limit is what the book in force asks under a rule in general.
func limit(s desk.State, rule *rules.Rule) (v float64, ok bool) {
	if s.Result.Book == nil {
		return 0, false
	}
	l, ok := s.Result.Book.Lookup(rule.ID, "")
	return l.Value.Value, ok && l.Value.Set
}
