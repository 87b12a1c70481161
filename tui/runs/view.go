package runs

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// size is columns and rows.
type size struct{ W, H int }

// arrangement is how much room the pictures have.
type arrangement struct {
	plan, profile size
	together      bool // one above the other; else one stands in the other's place
}

// leastBoth is from how many rows on plan and profile stand one above the other, as many each as a picture takes; with less one stands in
// the other's place.
const leastBoth = canvas.MinHeight + leastProfile

// leastProfile is how many rows the profile has there at least, with its falls below it; it has two fifths.
const leastProfile = canvas.MinHeight + 1

// arranged is how the pictures stand in a body of w by h.
func arranged(w, h int) arrangement {
	planW, planH := moving.Sizes(w, h)
	whole := size{planW, planH}
	if planH < leastBoth {
		return arrangement{whole, whole, false}
	}
	low := max(leastProfile, planH*2/5)
	return arrangement{size{planW, planH - low}, size{planW, low}, true}
}

// both tells whether plan and profile are seen together.
func (a arrangement) both() bool { return a.together }

// View paints the screen.
func (m screen) View(s desk.State, w, h int) string {
	m = m.current(s)
	a := arranged(w, h)
	var picture string
	switch {
	case a.both():
		picture = m.picture(s, a.plan) + "\n" + m.fall(s, a.profile)
	case m.profile:
		picture = m.fall(s, a.profile)
	default:
		picture = m.picture(s, a.plan)
	}
	return moving.Beside(picture, func(w, h int) []string { return m.panel(s, w, h) }, s, w, h)
}

// panel is what stands beside the pictures or under them.
func (m screen) panel(s desk.State, w, h int) []string {
	switch {
	case m.finder.open():
		return m.finderPanel(s, w, h)
	case m.cutting:
		return m.cutListPanel(s, w, h)
	case m.shielding:
		return m.shieldRows(s, w, h)
	case m.Typing():
		here, _ := m.here(s)
		return m.prompt.Rows(m.heading(here, s), m.asks(here, s), s, w, h)
	}
	rows := m.above(s, w, h)
	return append(rows, m.worst(s).Rows(s, m.top, w, h-len(rows))...)
}

// above is what stands above the list of the worst.
func (m screen) above(s desk.State, w, h int) []string {
	rows := append([]string{m.head(s)}, m.list(s, w, max(1, h/3))...)
	rows = append(rows, m.toldHere(s, w)...)
	return moving.Leaned(append(rows, moving.Notes(s, w)...), s, w)
}

// under is where that list stands.
func (m screen) under(s desk.State) moving.Panel {
	return moving.Panel{W: m.w, H: m.h, Above: func(w, h int) int { return len(m.above(s, w, h)) }}
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

// tab is a run's name in the head, and the columns it takes.
type tab struct {
	of       vehicles.RunKind
	text     string
	from, to int
}

// tabs are the names of the runs in the head.
func (m screen) tabs() (all []tab) {
	at := 0
	for _, of := range vehicles.RunKinds {
		text := " " + of.String() + " "
		if of == m.of {
			text = strings.ToUpper(text)
		}
		all = append(all, tab{of, text, at, at + len(text)})
		at += len(text)
	}
	return all
}

// head names the runs, the one at hand in capitals, and the step.
func (m screen) head(s desk.State) string {
	st, row := s.Settings.Styles(), ""
	for _, t := range m.tabs() {
		if t.of == m.of {
			row += st.Here.Render(t.text)
		} else {
			row += st.Faint.Render(t.text)
		}
	}
	return row + " " + st.Faint.Render("step ") + st.Strong.Render(desk.Length(m.step.Length(s), s.Settings.Units))
}

// toldHere says of what is picked where it is and what it is.
func (m screen) toldHere(s desk.State, w int) []string {
	st := s.Settings.Styles()
	here, ok := m.here(s)
	if !ok {
		return desk.Wrapped(st.Strong, "No "+m.of.String()+" yet: "+keyAdd.Help().Key+" begins it at its stub, "+keyFind.Help().Key+" finds it.", w)
	}
	return desk.Wrapped(st.Plain, m.told(here, s), w)
}

// sorts are what the findings of a run are of.
var sorts = map[vehicles.RunKind]rules.Sort{
	vehicles.ExhaustRun: rules.TheExhaust, vehicles.IntakeRun: rules.TheIntake, vehicles.FuelRun: rules.TheFuel,
}

// concerns says whether a finding is of the run at hand.
func (m screen) concerns(f *rules.Finding) bool {
	return f.Subject.Sort == sorts[m.of] || f.Against.Sort == sorts[m.of]
}
