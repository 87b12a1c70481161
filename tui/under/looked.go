package under

import (
	"fmt"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// lookedKeys hold while the kinds that were looked for are shown.
var lookedKeys = []key.Binding{
	key.NewBinding(key.WithKeys("enter"), key.WithHelp("letter or Enter", "looked, none here")),
	desk.Named(desk.KeyLeave, "to the list"), desk.KeyUp, desk.KeyDown,
}

// looked is how a kind stands.
type looked struct {
	kind          string
	entered       int
	looked, asked bool // asked: the rules want it looked for
}

// kinds are how all kinds stand, in the order of lists.
func kinds(s desk.State) []looked {
	out, asked := make([]looked, len(vehicles.Kinds)), rules.NotLookedFor(&s.Job)
	for i, kind := range vehicles.Kinds {
		here := s.Job.Looked[kind] && !slices.Contains(s.Result.LookedElsewhere, kind)
		out[i] = looked{kind: kind, looked: here, asked: slices.Contains(asked, kind)}
		for _, o := range s.Job.Obstructions {
			if o.Kind == kind {
				out[i].entered++
			}
		}
	}
	return out
}

// says is how the kind stands, in few words or fewer.
func (l looked) says(short bool) string {
	switch {
	case l.entered > 0:
		return fmt.Sprintf("entered %d", l.entered)
	case l.looked:
		return "looked, none"
	}
	if short {
		return "not yet"
	}
	return "not looked yet"
}

// left is how many kinds the rules want looked for that are neither entered nor looked for round where the cut is now.
func left(s desk.State) int { return len(rules.NotLookedFor(&s.Job)) + len(s.Result.LookedElsewhere) }

// look answers a message while the kinds are shown: a letter, Enter or a tap takes one as looked for.
func (m Screen) look(msg tea.Msg, s desk.State) (Screen, desk.Change) {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		return m.lookKey(msg, s)
	case tea.MouseMsg:
		a := m.entry.Panel(s)
		if !entryscreen.IsTap(msg) || !a.Holds(msg.X, msg.Y) {
			break
		}
		if i, ok := lookedAt(m.kind, msg.X-a.X, msg.Y-a.Y, a.W, a.H, s); ok {
			m.kind = i
			return m, toggle(kinds(s)[i], s)
		}
	}
	return m, desk.Change{}
}

func (m Screen) lookKey(msg tea.KeyMsg, s desk.State) (Screen, desk.Change) {
	if msg.Paste {
		return m, desk.Change{} // no field has the keys
	}
	all := kinds(s)
	if to, moved := form.MoveIn(msg.String(), m.kind, len(all), m.entry.Height()/2); moved {
		m.kind = to
		return m, desk.Change{}
	}
	switch {
	case key.Matches(msg, desk.KeyLeave), key.Matches(msg, desk.KeyNext), key.Matches(msg, desk.KeyPrevious):
		m.looking = false
		return m, desk.Change{}
	case key.Matches(msg, desk.KeyEnter), msg.Type == tea.KeySpace:
		return m, toggle(all[m.kind], s)
	case msg.Type == tea.KeyRunes && len(msg.Runes) == 1:
		return m.lookLetter(msg.Runes[0], all, s)
	}
	return m, desk.Change{}
}

// lookLetter takes the kind of a letter as looked for. Where several kinds have the letter it goes to the next of them.
func (m Screen) lookLetter(letter rune, all []looked, s desk.State) (Screen, desk.Change) {
	var of []int
	for i, l := range all {
		if vehicles.KindOf(l.kind).Letter == letter {
			of = append(of, i)
		}
	}
	switch next := slices.IndexFunc(of, func(i int) bool { return i > m.kind }); {
	case len(of) == 0:
		return m, desk.Change{}
	case next < 0:
		m.kind = of[0]
	default:
		m.kind = of[next]
	}
	if len(of) > 1 {
		return m, desk.Change{}
	}
	return m, toggle(all[m.kind], s)
}

// toggle notes that a kind was looked for and is not there, or takes the note back.
func toggle(l looked, s desk.State) desk.Change {
	if l.entered > 0 {
		return desk.Change{Say: fmt.Sprintf("%s: %d entered already, so there is one here", l.kind, l.entered)}
	}
	job := s.Job.WithLooked(l.kind, !l.looked)
	say := fmt.Sprintf("%s: looked for within %d mm of the cut, none here", l.kind, vehicles.LookRound)
	if l.looked {
		say = l.kind + ": not looked for yet"
	}
	return desk.Change{Job: &job, Step: "looked for " + l.kind, Say: say}
}

// lookedRows are the kinds as they are painted.
func lookedRows(s desk.State, short bool) []form.Row {
	all := kinds(s)
	out := make([]form.Row, len(all))
	for i, l := range all {
		out[i] = form.Row{
			Mark: string(vehicles.KindOf(l.kind).Letter), Text: l.kind, Right: l.says(short),
			Fault: l.asked && l.entered == 0 && !l.looked,
		}
	}
	return out
}

// paintLooked paints the kinds.
func (m Screen) paintLooked(s desk.State, w, h int) string {
	look := s.Settings.Styles()
	title := look.Title.Render(fmt.Sprintf("Looked for within %d mm of the cut", vehicles.LookRound)) +
		look.Faint.Render(fmt.Sprintf("   %d left", left(s)))
	two := inTwo(w, h)
	rows := lookedRows(s, two)
	if !two {
		return desk.FitPainted(title, w) + "\n" + form.PaintRows(rows, m.kind, w, h-1, look)
	}
	n := (len(rows) + 1) / 2
	first := form.PaintRows(rows[:n], m.kind, w/2-1, h-1, look)
	second := form.PaintRows(rows[n:], m.kind-n, w-w/2, h-1, look)
	return desk.FitPainted(title, w) + "\n" + lipgloss.JoinHorizontal(lipgloss.Top, first, " ", second)
}

// inTwo says whether the kinds stand in two columns: where the rows do not hold them and the columns do.
func inTwo(w, h int) bool { return h-1 < len(vehicles.Kinds) && w >= 56 }

// lookedAt is the kind at column x and row y of the kinds as painted.
func lookedAt(at, x, y, w, h int, s desk.State) (kind int, ok bool) {
	rows := lookedRows(s, false)
	n := (len(rows) + 1) / 2
	switch {
	case y == 0:
		return 0, false
	case !inTwo(w, h):
		return form.RowAt(rows, at, h-1, y-1)
	case x < w/2:
		return form.RowAt(rows[:n], at, h-1, y-1)
	}
	kind, ok = form.RowAt(rows[n:], at-n, h-1, y-1)
	return kind + n, ok
}
