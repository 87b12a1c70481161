package runs

import (
	"slices"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// View paints the screen.
func (m screen) View(s desk.State, w, h int) string {
	m = m.current(s)
	a, seen := m.arranged(s, w, h), m.typedSo(s)
	var picture string
	switch a.sees {
	case together:
		picture = m.picture(seen, a.plan) + "\n" + m.fall(seen, a.profile)
	case fallAlone:
		picture = m.fall(seen, a.profile)
	default:
		picture = m.picture(seen, a.plan)
	}
	return a.body.Beside(picture, func(w, h int) []string { return m.panel(s, w, h) }, s)
}

// typedSo is the desk with the point that is being typed where its fields have it, as far as they can be read: the pictures go along with each
// figure. The job has it once it is taken.
func (m screen) typedSo(s desk.State) desk.State {
	here, ok := m.here(s)
	if !ok || here.sort != point || m.prompt.Kind != asked(here) || s.Result.Book == nil || len(s.Faults) > 0 {
		return s
	}
	values, err := m.prompt.Values(m.asks(here, s), s)
	if err != nil {
		return s
	}
	change, err := m.takenPoint(here, values, s)
	if err != nil || change.Job == nil {
		return s
	}
	if result, faults := rules.Rejudge(&s.Result, *change.Job, s.Book); len(faults) == 0 {
		s.Job, s.Plan, s.Result = result.Job, result.Plan, result
	}
	return s
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
	rows := []string{m.head(s)}
	if h < leastListed {
		rows[0] += " " + s.Settings.Styles().Key.Render(moreOfIt)
	} else {
		rows = append(rows, m.list(s, w, max(1, h/3))...)
	}
	if !m.laid || h >= leastRows {
		rows = append(rows, m.toldHere(s, w, h < leastListed)...)
	}
	if h >= leastListed {
		rows = append(rows, m.rest.rows(s, w)...)
	}
	if h >= leastListed {
		return moving.Leaned(append(rows, moving.Notes(s, w)...), s, w)
	}
	unshown := s
	unshown.Focus = nil
	bare := moving.Leaned(slices.Concat(rows, moving.NotesInFew(unshown, w, keyProfile)), s, w)
	if list, left := m.worst(s), h-len(bare); s.Focus == nil || list.Least(s, m.top, w) <= left && list.Shows(s.Focus, s, m.top, w, left) {
		return bare // what is shown has its row whole, and its verdict and figures stand there
	}
	return moving.Leaned(append(rows, moving.NotesInFew(s, w, keyProfile)...), s, w)
}

// under is where that list stands.
func (m screen) under(s desk.State) moving.Panel {
	return moving.Panel{Body: m.arranged(s, m.w, m.h).body, Above: func(w, h int) int { return len(m.above(s, w, h)) }}
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

// toldHere says of what is picked where it is and what it is, where rows are few in as few words as leave it one.
func (m screen) toldHere(s desk.State, w int, few bool) []string {
	st := s.Settings.Styles()
	here, ok := m.here(s)
	if !ok {
		return desk.Wrapped(st.Strong, "No "+m.of.String()+" yet: "+keyAdd.Help().Key+" begins it at its stub, "+keyFind.Help().Key+" finds it.", w)
	}
	text := m.told(here, s)
	if few && desk.Width(text) > w {
		text = m.toldBriefly(here, s)
	}
	return desk.Wrapped(st.Plain, text, w)
}

// concerns says whether a finding is of the run at hand.
func (m screen) concerns(f *rules.Finding) bool {
	of := rules.SortOf(m.of)
	return f.Subject.Sort == of || f.Against.Sort == of
}
