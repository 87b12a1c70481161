package runs

import (
	"cmp"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// shieldNear is how near to the exhaust, mm, a thing must come to be asked about: what lies farther off needs no shield in any rule of the book.
const shieldNear = 500

var (
	keyShields = bind("h", "heat shields", "h")
	keyShield  = bind("Space", "a shield stands before it: yes / no", " ", "enter")
)

// shieldable are the findings of the exhaust with what a shield may stand before, the nearest first: what is near to it, what is said
// to have one already, and those of listed.
func shieldable(s desk.State, listed ...string) (list []*rules.Finding) {
	if s.Job.Exhaust == nil {
		return nil
	}
	for i := range s.Result.Findings {
		f := &s.Result.Findings[i]
		if !f.Of(rules.ExhaustClearance) || f.Against.Sort != rules.AnObstruction {
			continue
		}
		if name := f.Against.Name; f.Value <= shieldNear || slices.Contains(s.Job.Exhaust.Shielded.Names, name) || slices.Contains(listed, name) {
			list = append(list, f)
		}
	}
	slices.SortStableFunc(list, func(a, b *rules.Finding) int { return cmp.Compare(a.Value, b.Value) })
	return list
}

// openShields lists what a shield may stand before, or says why it can't.
func (m screen) openShields(s desk.State) (screen, desk.Change) {
	switch {
	case len(s.Faults) > 0:
		return m, desk.Change{Say: desk.PutRight}
	case len(shieldable(s)) == 0:
		return m, desk.Change{Say: desk.NoneWithin(shieldNear, "exhaust", s.Settings.Units)}
	}
	m.shielding, m.shield, m.shieldTop, m.listed = true, 0, 0, nil
	for _, f := range shieldable(s) {
		m.listed = append(m.listed, f.Against.Name)
	}
	return m, desk.Change{}
}

// pressShields answers a key while the list is open.
func (m screen) pressShields(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	list := shieldable(s, m.listed...)
	m.shield = max(0, min(m.shield, len(list)-1))
	if to, moved := form.MoveIn(k.String(), m.shield, len(list), moving.PanelHeight); moved {
		m.shield = to
		return m.keptShields(s), desk.Change{}
	}
	switch {
	case key.Matches(k, desk.KeyLeave):
		m.shielding = false
	case key.Matches(k, keyShield) && len(s.Faults) > 0:
		return m, desk.Change{Say: desk.PutRight}
	case key.Matches(k, keyShield):
		return m, shielded(s, list[m.shield].Against.Name)
	default:
		return m, desk.Change{Say: m.listTakes(s)}
	}
	return m, desk.Change{}
}

// shielded says the other thing of whether a shield stands before an obstruction. While one is said to stand before all there is, it then stands
// before all others that are there.
func shielded(s desk.State, name string) desk.Change {
	run := *s.Job.Exhaust
	names, say := slices.Clone(run.Shielded.Names), "A shield stands before "+name+"."
	switch {
	case run.Shielded.All:
		names = nil
		for _, o := range s.Job.Obstructions {
			names = append(names, o.Name)
		}
		fallthrough
	case run.Shielded.For(name):
		names = slices.DeleteFunc(names, func(n string) bool { return n == name })
		say = "No shield stands before " + name + "."
	default:
		names = append(names, name)
	}
	if len(names) == 0 {
		names = nil
	}
	run.Shielded = vehicles.Shields{Names: names}
	job := s.Job.WithRun(vehicles.ExhaustRun, &run)
	return desk.Change{Job: &job, Say: say}
}

// shieldsHead is what the list asks.
const shieldsHead = "Does a heat shield stand before it? A wrap on the pipe is none."

// shieldRows are the list in h rows.
func (m screen) shieldRows(s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	head := desk.Wrapped(st.Title, shieldsHead, w)
	rows := m.shieldList(s)
	at := max(0, min(m.shield, len(rows)-1))
	return append(head, strings.Split(form.PaintRows(rows, m.shieldTop, at, w, max(1, h-len(head)), st), "\n")...)
}

// keptShields is the screen with that list where it shows the row picked: from there it goes on.
func (m screen) keptShields(s desk.State) screen {
	_, _, w, h := m.arranged(s, m.w, m.h).body.PanelIn()
	head := len(desk.Wrapped(s.Settings.Styles().Title, shieldsHead, w))
	m.shieldTop = form.Top(m.shieldList(s), m.shieldTop, m.shield, max(1, h-head), true)
	return m
}

// shieldList is what is listed, a row each.
func (m screen) shieldList(s desk.State) (rows []form.Row) {
	u := s.Settings.Units
	for _, f := range shieldable(s, m.listed...) {
		mark, right := "", desk.Length(f.Value, u)+", no"
		if s.Job.Exhaust.Shielded.For(f.Against.Name) {
			right = desk.Length(f.Value, u) + ", YES"
		}
		if f.Weight == rules.Kills {
			mark = words.Deadly
		}
		rows = append(rows, form.Row{Mark: mark, Text: f.Against.Name, Right: right})
	}
	return rows
}

// tapShields says the other thing of the row that is tapped.
func (m screen) tapShields(y, w, h int, s desk.State) (screen, desk.Change) {
	list := shieldable(s, m.listed...)
	head := len(desk.Wrapped(s.Settings.Styles().Title, shieldsHead, w))
	rows := make([]form.Row, len(list))
	i, ok := form.RowAt(rows, m.shieldTop, max(0, min(m.shield, len(list)-1)), max(1, h-head), y-head)
	switch {
	case !ok || y < head:
		m.shielding = false
		return m, desk.Change{}
	case len(s.Faults) > 0:
		return m, desk.Change{Say: desk.PutRight}
	}
	m.shield = i
	return m.keptShields(s), shielded(s, list[i].Against.Name)
}
