package checks

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/tui/words"
)

var (
	keyTake     = bind("Enter", "go and enter it", "enter")
	keyFindings = bind("n", "back to the findings", "n", "esc")
	nextKeys    = []key.Binding{keyTake, keyFindings, keyDown, keyUp, desk.KeyPageUp, desk.KeyPageDown, desk.KeyHome, desk.KeyEnd}
)

// advice is the picked one of what to measure next; ok is false when there is none.
func (m screen) advice(s desk.State) (a rules.Advice, ok bool) {
	if len(s.Next.Advice) == 0 {
		return a, false
	}
	return s.Next.Advice[m.picking(s)], true
}

// picking is which one is picked, kept within what there is.
func (m screen) picking(s desk.State) int { return max(0, min(m.to, len(s.Next.Advice)-1)) }

// pressNext answers a key while what to measure next is listed.
func (m screen) pressNext(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	n := len(s.Next.Advice)
	if to, moved := form.MoveIn(k.String(), m.picking(s), max(1, n), max(1, m.listRows(s))); moved {
		m.to = to
		return m, desk.Change{}
	}
	switch {
	case key.Matches(k, keyFindings):
		m.next, m.top = false, 0
	case key.Matches(k, keyTake):
		return m.take(s)
	}
	return m, desk.Change{}
}

// take goes to where the picked reading is entered. An advice on the job as it was a moment ago may be of another thing by
// now.
func (m screen) take(s desk.State) (screen, desk.Change) {
	a, ok := m.advice(s)
	switch {
	case !ok:
		return m, desk.Change{}
	case !s.Next.Known:
		return m, desk.Change{Say: "The job has changed: it is being worked out afresh."}
	}
	return m, desk.Measure(a)
}

// nextView is the list of what to measure next in h rows of w columns, its head first.
func (m screen) nextView(s desk.State, w, h int) []string {
	st, all := s.Settings.Styles(), s.Next.Advice
	rows := []string{st.Title.Render(desk.FitRow(m.Title()+": "+nextTitle(s), w))}
	if len(all) == 0 {
		return append(append(rows, ""), desk.Wrap(m.nothing(s), w)...)
	}
	rows = append(rows, st.Faint.Render(desk.FitRow(" the best first, and what it does if it comes out as expected", w)))
	first := m.firstAdvice(s, h-listHead)
	for i := first; i < len(all) && len(rows) < h; i++ {
		if i == m.picking(s) {
			rows = append(rows, st.Here.Render(adviceRow("▶", all[i], w)))
			continue
		}
		rows = append(rows, adviceRow(" ", all[i], w))
	}
	return rows
}

// nextTitle stands above the list.
func nextTitle(s desk.State) string {
	title := fmt.Sprintf("%s (%d)", keyNext.Help().Desc, len(s.Next.Advice))
	if !s.Next.Known && len(s.Faults) == 0 {
		title += ", being worked out"
	}
	return title
}

// adviceRow says what to measure, and at the right end what that does.
func adviceRow(pointer string, a rules.Advice, w int) string {
	does := "  " + a.Does
	return desk.FitRow(pointer+a.What, w-desk.Width(does)) + does
}

// nothing says why the list is empty.
func (m screen) nothing(s desk.State) string {
	switch text := words.Advice(s); {
	case len(s.Faults) > 0:
		return desk.PutRight
	case text != "":
		return words.Sentence(text)
	}
	return ""
}

// firstAdvice is the first one shown in a list with room for so many.
func (m screen) firstAdvice(s desk.State, room int) int {
	at := m.picking(s)
	return desk.InSight(m.top, at, at, len(s.Next.Advice), room)
}

// nextDetail says what the picked reading is good for.
func (m screen) nextDetail(s desk.State, w int) []string {
	a, ok := m.advice(s)
	if !ok {
		return nil
	}
	st := s.Settings.Styles()
	rows := desk.Wrapped(st.Strong, a.What+": "+a.Does, w)
	doubts := 0
	for _, f := range s.Result.Findings {
		if f.Verdict == rules.Doubtful {
			doubts++
		}
	}
	text := fmt.Sprintf("Of %d doubtful findings it would decide %d, for the better or the worse, if it comes out as expected.", doubts, a.Decides)
	if a.Decides == 0 {
		text = fmt.Sprintf("It decides none of %d doubtful findings by itself, but makes them surer.", doubts)
	}
	rows = append(rows, desk.Wrapped(st.Plain, text, w)...)
	if a.Field == rules.FieldDrilled {
		rows = append(rows, desk.Wrapped(st.Foul, "A hole can't be undone: look again from below before you drill.", w)...)
	}
	return rows
}

// pictureNext is the plan with the thing to be measured picked out, looking at the worst finding that is of it.
func (m screen) pictureNext(s desk.State, w, h int) string {
	a, ok := m.advice(s)
	if !ok {
		return m.pane.View(s, w, h, plan.Options{})
	}
	s.Selected = a.Obstruction
	for _, f := range s.Result.Findings {
		if f.Verdict == rules.Doubtful && f.Subject.Sort != rules.TheSurvey && f.Against.Is(rules.AnObstruction, a.Obstruction) {
			s.Camera = plan.LookAt(f, s.Camera.View, w, h, s.Settings.Units)
			break
		}
	}
	return m.pane.View(s, w, h, plan.Options{})
}

// tapNext picks a tapped row, and goes there when it was picked already.
func (m screen) tapNext(msg tea.MouseMsg, s desk.State) (screen, desk.Change) {
	listW, _, _ := m.sizes(m.w, m.h)
	row := msg.Y - len(m.faults(s, listW)) - listHead
	to := m.firstAdvice(s, m.listRows(s)) + row
	switch {
	case msg.X >= listW || row < 0 || row >= m.listRows(s) || to >= len(s.Next.Advice):
		return m, desk.Change{}
	case to == m.picking(s):
		return m.take(s)
	}
	m.to = to
	return m, desk.Change{}
}
