package runs

import (
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

const (
	// roundLaid is how much is seen round runs that were put in, mm.
	roundLaid = 60
	// sayingRows is how many rows what is said of them may take: with one more plan and profile have no room together on the smallest screen.
	sayingRows = 2
)

// putIn puts in what was found, in one undo step, and says what that is.
func (m screen) putIn(s desk.State) (screen, desk.Change) {
	job, f := s.Job, m.finder
	var put []vehicles.RunKind
	for i, route := range f.found.Said {
		if route.Run == nil || route.Here {
			continue
		}
		m.of = f.quest.runs[i]
		job = job.WithRun(m.of, route.Run)
		put = append(put, m.of)
	}
	if len(f.quest.runs) > 1 {
		m.of = f.quest.runs[0]
	}
	say, rest := m.saysLaid(s)
	m.finder, m.picked, m.top, m.laid, m.rest = f.closed(), part{}, moving.Scroll{}, true, toTell{rest, runsOf(&job)}
	return m, desk.Change{Job: &job, Called: asProposed(put), Camera: m.wholeView(put, &job, s), Say: say}
}

// asProposed is what undo calls runs that were put in together.
func asProposed(runs []vehicles.RunKind) string {
	switch len(runs) {
	case 0:
		return ""
	case len(vehicles.RunKinds):
		return "the three runs as proposed"
	}
	names := make([]string, len(runs))
	for i, of := range runs {
		names[i] = of.String()
	}
	return strings.Join(names, " and ") + " as proposed"
}

// wholeView is a view of the plan that shows all of the runs that were put in, where the one there is does not; nil where it does.
func (m screen) wholeView(runs []vehicles.RunKind, job *vehicles.Job, s desk.State) *desk.Camera {
	if m.aside > 0 || m.w == 0 {
		return nil
	}
	if result, faults := rules.Rejudge(&s.Result, *job, s.Book); len(faults) == 0 {
		s.Job, s.Plan, s.Result = result.Job, result.Plan, result // the pictures stand as they do with these runs
	}
	a := m.arranged(s, m.w, max(1, m.h-(sayingRows-1))) // a row is there for what is said in any case
	where := m.pane.Sized(a.plan.W, a.plan.H).Cells(s, m.shown(s))
	var places []geometry.Point3
	whole := true
	for _, of := range runs {
		for _, p := range job.Run(of).Path {
			places = append(places, inSpace(p))
			_, _, seen := where(inSpace(p))
			whole = whole && seen
		}
	}
	if whole || len(places) == 0 {
		return nil
	}
	camera := canvas.Fit(s.Camera.View, places, roundLaid, a.plan.W, a.plan.H, s.Settings.Units)
	return &camera
}
