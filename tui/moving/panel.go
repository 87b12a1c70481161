package moving

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// Where there is room the panel stands beside the plan, a third of the columns within these bounds; on less it lies under it.
const (
	leastPanel = 42
	mostPanel  = 52

	// PanelHeight is how many rows it has there.
	PanelHeight = 8
)

// Sizes are the plan's columns and rows in a body of w by h.
func Sizes(w, h int) (planW, planH int) {
	if w >= desk.SideBySide {
		return w - 1 - max(leastPanel, min(w/3, mostPanel)), h
	}
	return w, max(1, h-PanelHeight)
}

// Under tells by its columns whether a panel lies under the plan, where rows are dear.
func Under(w int) bool { return w > mostPanel && w < desk.SideBySide }

// PanelIn is where the panel's text stands in a body of w by h: its corner, and its columns and rows.
func PanelIn(w, h int) (x, y, panelW, panelH int) {
	planW, planH := Sizes(w, h)
	if w >= desk.SideBySide {
		x = planW + 1 + desk.Margin
		return x, 0, w - x, h
	}
	return 0, planH, w, h - planH
}

// OnPanel tells whether a place of a body of w by h lies on the panel.
func OnPanel(x, y, w, h int) bool {
	planW, planH := Sizes(w, h)
	if w >= desk.SideBySide {
		return x > planW
	}
	return y >= planH
}

// Beside sets the panel beside the plan, or under it, in a body of w by h; the plan is as large as Sizes says.
func Beside(picture string, panel func(w, h int) []string, s desk.State, w, h int) string {
	_, _, panelW, panelH := PanelIn(w, h)
	text := desk.Fit(strings.Join(panel(panelW, panelH), "\n"), panelW, panelH)
	if w < desk.SideBySide {
		return picture + "\n" + text
	}
	return desk.Beside(picture, desk.Indented(text), s.Settings.Styles())
}

// Notes are what the fitter must know of a place beside its clearances: what is wrong with the job, what is dangerous about it,
// and the finding that is shown.
func Notes(s desk.State, w int) (rows []string) {
	st, u := s.Settings.Styles(), s.Settings.Units
	for _, f := range s.Faults {
		rows = append(rows, desk.Wrapped(st.Fault, f.Key+": "+f.Text, w)...)
	}
	for _, danger := range rules.Dangers(&s.Result) {
		rows = append(rows, desk.Wrapped(st.Fault, danger, w)...)
	}
	if f := s.Focus; f != nil {
		shown := "Shown: " + f.About() + ", " + desk.VerdictWord(f.Verdict) + ", " + words.Margin(*f, u)
		if from := words.Unmeasured(*f); from != "" {
			shown += ", " + from
		}
		rows = append(rows, desk.Wrapped(st.Strong, shown, w)...)
		if why := words.WhyClear(*f, u); why != "" {
			rows = append(rows, desk.Wrapped(st.Plain, words.Sentence(why), w)...)
		}
	}
	return rows
}
