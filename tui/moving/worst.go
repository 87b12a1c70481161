package moving

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// The keys of the list of the worst.
var (
	KeyListDown = Bind("PgDn", "down the list of the worst", "pgdown")
	KeyListUp   = Bind("PgUp", "up that list", "pgup")
)

// Dimensions is how many of the worst findings have their distance drawn on the plan.
const Dimensions = 3

// Worst is the list of findings beside the plan, worst first: those that the move changes, and in one row each those that only confirming
// ends (Parted) and what it doesn't change.
type Worst struct {
	Moved, Far, Rest []*rules.Finding
}

// Scroll is how far a list is scrolled: the first of what it has that is seen, and how many of that one's rows are not.
type Scroll struct{ First, Skip int }

// seen says which of so many are seen, "" when all are.
func (l laidOut) seen(of int) string {
	if len(l.shown) == of {
		return ""
	}
	return fmt.Sprintf("%d-%d of %d", l.top+1, l.top+len(l.shown), of) + scrolls
}

// scrolls names behind what is seen of a list the key that goes on in it.
const scrolls = " (PgDn)"

// tally is how many findings there are of each verdict.
type tally map[rules.Verdict]int

// open says how much of it is foul and how much doubtful, "" for nothing.
func (t tally) open() string {
	var counts []string
	for _, v := range [2]rules.Verdict{rules.Foul, rules.Doubtful} {
		if t[v] > 0 {
			counts = append(counts, fmt.Sprintf("%d %s", t[v], desk.VerdictWord(v)))
		}
	}
	return strings.Join(counts, ", ")
}

// tally counts the list, with what no move changes.
func (l Worst) tally() tally {
	t := tally{}
	for _, part := range [3][]*rules.Finding{l.Moved, l.Far, l.Rest} {
		for _, f := range part {
			t[f.Verdict]++
		}
	}
	return t
}

// openElsewhere counts the job's foul and doubtful findings that are not in the list; "" where all are.
func (l Worst) openElsewhere(s desk.State) string {
	if len(s.Faults) > 0 {
		return ""
	}
	left := tally{}
	for i := range s.Result.Findings {
		left[s.Result.Findings[i].Verdict]++
	}
	for v, n := range l.tally() {
		left[v] -= n
	}
	return left.open()
}

// elsewhere says it as a row.
func (l Worst) elsewhere(s desk.State) string {
	if open := l.openElsewhere(s); open != "" {
		return "Elsewhere: " + open
	}
	return ""
}

// BeforeFault is said of what was judged before a change that can't be.
const BeforeFault = "as it was before the fault"

// headed is the title: the banner's tally, in its words.
func headed(s desk.State, w int) string {
	if len(s.Faults) > 0 {
		return words.Upper(BeforeFault)
	}
	text := words.Tally(s.Result.Findings)
	for _, more := range []string{words.DeadlyIs, desk.PlusMinusHead} {
		if longer := text + ", " + more; desk.Width(longer) <= w {
			text = longer
		}
	}
	return text
}

// unmoved says in a row what no move changes, the names of what is not clear among it; "" for nothing.
func unmoved(rest []*rules.Finding, s desk.State) string {
	if len(rest) == 0 || len(s.Faults) > 0 {
		return ""
	}
	var open []string
	for _, f := range rest {
		if f.Verdict != rules.Clear {
			open = append(open, desk.VerdictWord(f.Verdict)+" "+f.About())
		}
	}
	if len(open) == 0 {
		return fmt.Sprintf("%d more that no move changes: clear", len(rest))
	}
	return "No move changes: " + strings.Join(open, ", ")
}

// counted says the same without names, where there is no room for them.
func counted(rest []*rules.Finding) string {
	if len(rest) == 0 {
		return ""
	}
	text := fmt.Sprintf("%d more that no move changes", len(rest))
	if open := (Worst{Rest: rest}).tally().open(); open != "" {
		text += ": " + open
	}
	return text
}

// Rows paint the list into w columns and at most h rows.
func (l Worst) Rows(s desk.State, top Scroll, w, h int) (rows []string) {
	if h < 1 {
		return nil
	}
	st, out := s.Settings.Styles(), l.lay(s, top, w, h)
	if len(l.Moved) == 0 {
		rows = append(rows, desk.Wrapped(st.Faint, NothingYet(s), w)...)
	} else if out.title != "" {
		rows = append(rows, st.Title.Render(desk.FitRow(out.title, w)))
	}
	u := s.Settings.Units
	for i, f := range out.shown {
		figures := out.margins.Write(words.Signed(*f, u)) + "  " + out.off.Write(words.PlusMinus(*f, u))
		if out.rows[i] > h { // there is no row below it, and it is told apart by how it begins
			return append(rows, findingRow(f, words.Named(*f), figures, st, w))
		}
		all := findingRows(f, out.names[i], figures, st, w)
		rows = append(rows, all[len(all)-out.rows[i]:]...)
	}
	for _, row := range out.foot {
		rows = append(rows, st.Plain.Render(desk.FitRow(row, w)))
	}
	return rows
}

// Scrolled is the list scrolled by so many rows.
func (l Worst) Scrolled(top Scroll, by int, s desk.State, p Panel) Scroll {
	_, _, w, h := p.area()
	out := l.lay(s, top, w, h)
	return Scroll{First: max(0, min(out.top+by, out.last))}
}

// Press answers the keys of the list; mine is false for any other.
func (l Worst) Press(k tea.KeyMsg, top Scroll, s desk.State, p Panel) (next Scroll, mine bool) {
	if !key.Matches(k, KeyListDown, KeyListUp) {
		return top, false // nothing is laid out for another key
	}
	_, _, w, h := p.area()
	page := max(1, len(l.lay(s, top, w, h).shown))
	if key.Matches(k, KeyListUp) {
		page = -page
	}
	return l.Scrolled(top, page, s, p), true
}

// Mouse answers the wheel and taps beside the plan: the list scrolls, and a finding that is tapped is shown. mine is false
// elsewhere.
func (l Worst) Mouse(msg tea.MouseMsg, top Scroll, s desk.State, p Panel) (next Scroll, change desk.Change, mine bool) {
	if !p.OnPanel(msg.X, msg.Y) {
		return top, change, false
	}
	switch {
	case msg.Button == tea.MouseButtonWheelDown:
		return l.Scrolled(top, 1, s, p), change, true
	case msg.Button == tea.MouseButtonWheelUp:
		return l.Scrolled(top, -1, s, p), change, true
	case msg.Button == tea.MouseButtonLeft && msg.Action == tea.MouseActionPress:
		_, y, w, h := p.area()
		out := l.lay(s, top, w, h)
		if out.title != "" {
			y++
		}
		switch f, below := out.at(msg.Y - y); {
		case f != nil:
			change = desk.Show(f)
		case below >= out.far[0] && below < out.far[1]: // where the first of them is confirmed
			change = desk.Show(l.Far[0])
		case below >= 0 && below < len(out.foot): // all of it is there
			change.Goto = "Checks"
		}
	}
	return top, change, true
}
