package moving

import (
	"cmp"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// Where there is room the panel stands beside the plan, a third of the columns within these bounds; on less it lies under it.
const (
	leastPanel = 42
	mostPanel  = 52

	// PanelHeight is how many rows it has there, where nothing else wants them.
	PanelHeight = 8
)

// Body is a screen's body of W columns and H rows. Under is how many rows a panel that lies under the plan has: PanelHeight where it is 0.
type Body struct{ W, H, Under int }

// Sizes are the plan's columns and rows.
func (b Body) Sizes() (planW, planH int) {
	if b.W >= desk.SideBySide {
		return b.W - 1 - max(leastPanel, min(b.W/3, mostPanel)), b.H
	}
	return b.W, max(1, b.H-cmp.Or(b.Under, PanelHeight))
}

// Sizes are the plan's columns and rows in a body of w by h.
func Sizes(w, h int) (planW, planH int) { return Body{W: w, H: h}.Sizes() }

// Under tells by its columns whether a panel lies under the plan, where rows are dear.
func Under(w int) bool { return w > mostPanel && w < desk.SideBySide }

// PanelIn is where the panel's text stands: its corner, and its columns and rows.
func (b Body) PanelIn() (x, y, panelW, panelH int) {
	planW, planH := b.Sizes()
	if b.W >= desk.SideBySide {
		x = planW + 1 + desk.Margin
		return x, 0, b.W - x, b.H
	}
	return 0, planH, b.W, b.H - planH
}

// OnPanel tells whether a place of the body lies on the panel.
func (b Body) OnPanel(x, y int) bool {
	planW, planH := b.Sizes()
	if b.W >= desk.SideBySide {
		return x > planW
	}
	return y >= planH
}

// Beside sets the panel beside the plan, or under it; the plan is as large as Sizes says.
func (b Body) Beside(picture string, panel func(w, h int) []string, s desk.State) string {
	_, _, panelW, panelH := b.PanelIn()
	text := desk.Fit(strings.Join(panel(panelW, panelH), "\n"), panelW, panelH)
	if b.W < desk.SideBySide {
		return picture + "\n" + text
	}
	return desk.Beside(picture, desk.Indented(text), s.Settings.Styles())
}

// Notes are what the fitter must know of a place beside its clearances: what is wrong with the job, what is dangerous about it,
// and the finding that is shown.
func Notes(s desk.State, w int) []string {
	st := s.Settings.Styles()
	rows := faulty(s, w)
	for _, danger := range rules.Dangers(&s.Result) {
		rows = append(rows, desk.Wrapped(st.Fault, danger, w)...)
	}
	if f := s.Focus; f != nil {
		rows = append(rows, desk.Wrapped(st.Strong, "Shown: "+shown(f, s), w)...)
		if why := words.WhyClear(*f, s.Settings.Units); why != "" {
			rows = append(rows, desk.Wrapped(st.Plain, words.Sentence(why), w)...)
		}
	}
	return rows
}

// NotesInFew are the same in a panel of few rows: a danger and what is shown have one each, and a key shows the panel whole.
func NotesInFew(s desk.State, w int, whole key.Binding) []string {
	st := s.Settings.Styles()
	rows := faulty(s, w)
	for _, danger := range rules.Dangers(&s.Result) {
		rows = append(rows, desk.Wrapped(st.Fault, InARow(danger, whole, w), w)...)
	}
	if f := s.Focus; f != nil {
		text := shown(f, s)
		if desk.Width(text) > w {
			text = f.About() + ", " + words.Margin(*f, s.Settings.Units)
		}
		rows = append(rows, st.Strong.Render(desk.FitRow(text, w)))
	}
	return rows
}

// faulty says what is wrong with the job.
func faulty(s desk.State, w int) (rows []string) {
	for _, f := range s.Faults {
		rows = append(rows, desk.Wrapped(s.Settings.Styles().Fault, f.Key+": "+f.Text, w)...)
	}
	return rows
}

// shown says which finding is shown, and how it is.
func shown(f *rules.Finding, s desk.State) string {
	text := f.About() + ", " + desk.VerdictWord(f.Verdict) + ", " + words.Margin(*f, s.Settings.Units)
	if from := words.Unmeasured(*f); from != "" {
		text += ", " + from
	}
	return text
}

// InARow is a text if it has room in w columns, else as much of it as has, up to a colon or a semicolon, with the key that shows all of it.
func InARow(text string, whole key.Binding, w int) string {
	row := text
	for desk.Width(row) > w {
		cut := strings.LastIndexAny(text, ":;")
		if cut < 0 {
			break
		}
		text = text[:cut]
		row = text + " (" + whole.Help().Key + ": more)"
	}
	return row
}
