package under

import (
	"fmt"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// lookedKeys hold while the kinds that were looked for are shown.
var lookedKeys = []key.Binding{
	key.NewBinding(key.WithKeys("enter"), key.WithHelp("letter or Enter", lookedNone)),
	desk.Named(desk.KeyNext, "cut, runs, openings"), desk.Named(desk.KeyLeave, "to the list"), desk.KeyUp, desk.KeyDown,
}

var (
	keyOn   = key.NewBinding(key.WithKeys("tab", "right"))
	keyBack = key.NewBinding(key.WithKeys("shift+tab", "left"))
)

// looking is which list of kinds is shown, and the kind of each that the keys act on.
type looking struct {
	shown bool
	list  vehicles.LookList
	kinds [len(vehicles.LookLists)]int
	top   int // the first line of the kinds in sight
}

// kind is the one the keys act on.
func (l looking) kind() int { return l.kinds[l.list] }

// at returns the list with the keys on another kind.
func (l looking) at(kind int) looking {
	l.kinds[l.list] = kind
	return l
}

// step goes on to another list, round the end.
func (l looking) step(by int) looking {
	n := len(vehicles.LookLists)
	return l.turnedTo(vehicles.LookLists[(int(l.list)+by+n)%n])
}

// turnedTo shows a list from its beginning.
func (l looking) turnedTo(list vehicles.LookList) looking {
	l.list, l.top = list, 0
	return l
}

// looked is how a kind stands.
type looked struct {
	kind          string
	entered       int
	looked, asked bool // asked: the rules want it looked for
}

// kinds are how all kinds of a list stand, in the order of lists.
func kinds(list vehicles.LookList, s desk.State) []looked {
	open, before := left(list, s), s.Job.LookedBefore(list, &s.Plan)
	out := make([]looked, len(list.Kinds()))
	for i, kind := range list.Kinds() {
		here := s.Job.LookedFor(list)[kind] && !slices.Contains(before, kind)
		out[i] = looked{kind: kind, entered: s.Job.Entered(list, kind), looked: here, asked: slices.Contains(open, kind)}
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

// left are the kinds of a list that the rules want looked for: neither entered nor looked for where all is now.
func left(list vehicles.LookList, s desk.State) []string { return rules.OpenIn(list, &s.Job, &s.Plan) }

// look answers a message while the kinds are shown: a letter, Enter or a tap takes one as looked for.
func (m Screen) look(msg tea.Msg, s desk.State) (Screen, desk.Change) {
	room := m.entry.Panel(s)
	m.looking = m.looking.kept(room, s)
	m, change := m.lookAnswer(msg, s)
	m.looking = m.looking.kept(room, s)
	return m, change
}

func (m Screen) lookAnswer(msg tea.Msg, s desk.State) (Screen, desk.Change) {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		return m.lookKey(msg, s)
	case tea.MouseMsg:
		a := m.entry.Panel(s)
		if !entryscreen.IsTap(msg) || !a.Holds(msg.X, msg.Y) {
			break
		}
		if list, ok := tabAt(msg.X-a.X, msg.Y-a.Y, s); ok {
			m.looking = m.looking.turnedTo(list)
		} else if i, ok := m.looking.lookedAt(msg.X-a.X, msg.Y-a.Y, a.W, a.H, s); ok {
			m.looking = m.looking.at(i)
			return m, m.looking.toggle(s)
		}
	}
	return m, desk.Change{}
}

func (m Screen) lookKey(msg tea.KeyMsg, s desk.State) (Screen, desk.Change) {
	if msg.Paste {
		return m, desk.Change{} // no field has the keys
	}
	l := &m.looking
	if to, moved := form.MoveIn(msg.String(), l.kind(), len(l.list.Kinds()), m.entry.Height()/2); moved {
		m.looking = l.at(to)
		return m, desk.Change{}
	}
	switch {
	case key.Matches(msg, desk.KeyLeave):
		l.shown = false
	case key.Matches(msg, keyOn):
		m.looking = l.step(1)
	case key.Matches(msg, keyBack):
		m.looking = l.step(-1)
	case key.Matches(msg, desk.KeyEnter):
		return m.lookOn(s)
	case msg.Type == tea.KeySpace:
		return m, l.toggle(s)
	case msg.Type == tea.KeyRunes && len(msg.Runes) == 1:
		return m.lookLetter(msg.Runes[0], s)
	}
	return m, desk.Change{}
}

// lookOn takes the kind that the keys act on as looked for and goes on to the next that nobody has; one that was looked for is taken back, and
// stays. A key that bounces takes none more.
func (m Screen) lookOn(s desk.State) (Screen, desk.Change) {
	all := kinds(m.looking.list, s)
	at := m.looking.kind()
	change := m.looking.toggle(s)
	change.Once = true
	if all[at].looked {
		return m, change
	}
	for by := 1; by < len(all); by++ {
		if next := (at + by) % len(all); all[next].asked && s.Job.HasToLookRound(m.looking.list) {
			m.looking = m.looking.at(next)
			change.Say += "; next: " + all[next].kind
			break
		}
	}
	return m, change
}

// lookLetter takes the kind of a letter as looked for. Where several kinds have the letter it goes to the next of them.
func (m Screen) lookLetter(letter rune, s desk.State) (Screen, desk.Change) {
	var of []int
	for i, kind := range m.looking.list.Kinds() {
		if m.looking.list.KindOf(kind).Letter == letter {
			of = append(of, i)
		}
	}
	if len(of) == 0 {
		return m, desk.Change{}
	}
	to := of[0]
	if next := slices.IndexFunc(of, func(i int) bool { return i > m.looking.kind() }); next >= 0 {
		to = of[next]
	}
	m.looking = m.looking.at(to)
	if len(of) > 1 {
		return m, desk.Change{}
	}
	return m, m.looking.toggle(s)
}

// toggle notes that the kind was looked for and is not there, or takes the note back.
func (l looking) toggle(s desk.State) desk.Change {
	k := kinds(l.list, s)[l.kind()]
	switch {
	case k.entered > 0:
		return desk.Change{Say: fmt.Sprintf("%s: %d entered already, so there is one here", k.kind, k.entered)}
	case !s.Job.HasToLookRound(l.list):
		return desk.Change{Say: nothingThere[l.list]}
	}
	job := s.Job.WithLookedAt(l.list, &s.Plan, k.kind, !k.looked)
	say := fmt.Sprintf("%s: looked for %s, none here", k.kind, roundWhat(l.list, s))
	if k.looked {
		say = k.kind + ": not looked for yet"
	}
	return desk.Change{Job: &job, Step: "looked for " + k.kind + " " + tabs[l.list], Say: say}
}

// nothingThere is said where the job lacks what a list is looked for round.
var nothingThere = [...]string{
	vehicles.AtRuns:   "there is no run yet to look round: lay one in Runs",
	vehicles.AtOutlet: "there is no exhaust yet: lay it in Runs, then look for openings near it",
}

// roundWhat says where the kinds of a list are looked for.
func roundWhat(list vehicles.LookList, s desk.State) string {
	u := s.Settings.Units
	cut := " of the cut"
	if s.Job.Cut == nil {
		cut = " of where the cut will be"
	}
	return [...]string{
		vehicles.AtCut:    "within " + desk.Length(vehicles.LookRound, u) + cut,
		vehicles.AtRuns:   "within " + desk.Length(vehicles.LookRound, u) + " of the runs",
		vehicles.AtOutlet: "within " + desk.Length(vehicles.LookOut, u) + " of where gas comes out",
	}[list]
}
