package runs

import (
	"slices"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

const (
	// roundLaid is how much is seen round runs that were put in, mm.
	roundLaid = 60
	// sayingRows is how many rows what is said of them may take from the pictures.
	sayingRows = 3
)

// wholeView is a view of the plan that shows all of the runs that were put in, where the one there is does not; nil where it does.
func (m screen) wholeView(runs []vehicles.RunKind, job *vehicles.Job, s desk.State) *desk.Camera {
	if m.aside > 0 || m.w == 0 {
		return nil
	}
	a := m.arranged(s, m.w, max(1, m.h-sayingRows))
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

// doubtsOf says what is doubtful of runs that were found together, a thing once.
func doubtsOf(routes []rules.Route) string {
	var named []string
	for i := range routes {
		r := &routes[i]
		if r.Here || r.Verdict != rules.Doubtful || len(r.Misses) == 0 {
			continue
		}
		if name := against(&r.Misses[0]); !slices.Contains(named, name) {
			named = append(named, name)
		}
	}
	if len(named) == 0 {
		return ""
	}
	return " " + words.Upper(desk.VerdictWord(rules.Doubtful)) + ": " + strings.Join(named, ", ") + "."
}

// against names what a finding has a run beside, or all of what it is of.
func against(f *rules.Finding) string {
	if _, other, is := f.Apart(); is {
		return other
	}
	return f.About()
}
