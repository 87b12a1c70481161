package runs

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// View paints the screen.
func (m screen) View(s desk.State, w, h int) string {
	m = m.current(s)
	planW, planH := moving.Sizes(w, h)
	return moving.Beside(m.picture(s, planW, planH), func(w, h int) []string { return m.panel(s, w, h) }, s, w, h)
}

// panel is what stands beside the plan or under it.
func (m screen) panel(s desk.State, w, h int) []string {
	switch {
	case m.shielding:
		return m.shieldRows(s, w, h)
	case m.Typing():
		return m.prompt.Rows(m.heading(s), m.asks(m.prompt.Kind, s), s, w, h)
	}
	rows := m.above(s, w)
	return append(rows, m.worst(s).Rows(s, m.top, w, h-len(rows))...)
}

// above is what stands above the list of the worst.
func (m screen) above(s desk.State, w int) []string {
	rows := append([]string{m.head(s)}, m.wherePoint(s, w)...)
	return append(append(rows, moving.Notes(s, w)...), moving.LeanRows(s, w)...)
}

// beside is where that list stands.
func (m screen) beside(s desk.State) moving.Panel {
	return moving.Panel{W: m.w, H: m.h, Above: func(w int) int { return len(m.above(s, w)) }}
}

// worst are the findings of the run at hand.
func (m screen) worst(s desk.State) (l moving.Worst) {
	for _, f := range rules.ForPeople(s.Result.Findings) {
		if m.concerns(f) {
			l.Moved = append(l.Moved, f)
		}
	}
	return l
}

// head names the runs, the one at hand in capitals, and the step.
func (m screen) head(s desk.State) string {
	st := s.Settings.Styles()
	row := ""
	for of := range laid {
		name := " " + of.String() + " "
		if of == m.of {
			row += st.Here.Render(strings.ToUpper(name))
		} else {
			row += st.Faint.Render(name)
		}
	}
	return row + "  step " + st.Strong.Render(desk.Length(m.step.Length(s), s.Settings.Units))
}

// wherePoint says which point is moved and where it is.
func (m screen) wherePoint(s desk.State, w int) []string {
	st := s.Settings.Styles()
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return desk.Wrapped(st.Strong, "No "+m.of.String()+" yet: "+keyAdd.Help().Key+" adds its first point under the stub.", w)
	}
	return desk.Wrapped(st.Plain, fmt.Sprintf("Point %d of %d: %s", m.point+1, len(run.Path), placeOf(run.Path[m.point], s)), w)
}

// placeOf says where a point of a run is.
func placeOf(p vehicles.RunPoint, s desk.State) string {
	u := s.Settings.Units
	return "x " + survey.Format(p.X, u) + ", " + desk.Across(p.Y, s.Settings) + ", " + desk.Height(p.Drop, u)
}

// sorts are what the findings of a run are of.
var sorts = map[vehicles.RunKind]rules.Sort{
	vehicles.ExhaustRun: rules.TheExhaust, vehicles.IntakeRun: rules.TheIntake, vehicles.FuelRun: rules.TheFuel,
}

// concerns says whether a finding is of the run at hand.
func (m screen) concerns(f *rules.Finding) bool {
	return f.Subject.Sort == sorts[m.of] || f.Against.Sort == sorts[m.of]
}
