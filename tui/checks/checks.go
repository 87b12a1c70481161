// Package checks is the screen with every finding, worst first: what was found, what is asked for, how much there is
// to spare, how sure that is and why no surer, and who says so; and with what to measure next. What was not checked and not looked for stays in sight. It judges
// nothing: the findings are those of rules.Judge.
package checks

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/plan"
)

// filter says which findings are listed.
type filter uint8

const (
	all filter = iota
	notClear
	foulOnly
	filters // how many there are
)

func (f filter) String() string { return [...]string{"all", "foul and doubtful", "foul only"}[f] }

type screen struct {
	pane  plan.Pane
	at    int // the finding picked, among those listed
	top   int // the first of what is listed in sight
	only  filter
	next  bool // what to measure next is listed in place of the findings
	to    int  // the advice picked then
	from  bool // of the picked finding it is shown where its ± comes from
	large bool // the plan has the whole screen
	w, h  int
}

// New returns the screen.
func New() desk.Screen { return screen{pane: plan.New()} }

func (m screen) Title() string { return "Checks" }

// Typing is false: this screen has no fields.
func (m screen) Typing() bool { return false }

func bind(name, what string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, what))
}

var (
	keyShow   = bind("Enter", "show on the plan", "enter")
	keyBack   = bind("Enter", "back to the list", "enter", "esc")
	keyFilter = bind("w", "all / not clear / foul", "w")
	keyPlace  = bind("p", "go and mend it", "p")
	keyNext   = bind("n", "what to measure next", "n")
	keyFrom   = bind("e", "where the ± comes from", "e")
	keyDown   = bind("↓", "next", "down")
	keyUp     = bind("↑", "before", "up")
)

// Keys are the bindings that hold now.
func (m screen) Keys(desk.State) []key.Binding {
	show := keyShow
	if m.large {
		show = keyBack
	}
	if m.next {
		return nextKeys
	}
	keys := []key.Binding{show, keyPlace, keyNext, keyFrom, keyFilter, keyDown, keyUp,
		desk.KeyPageUp, desk.KeyPageDown, desk.KeyHome, desk.KeyEnd}
	if m.large {
		keys = append(keys, m.pane.Keys()...)
	}
	return keys
}

// listed are the findings the filter lets through, worst first.
func (m screen) listed(s desk.State) []*rules.Finding {
	least := map[filter]rules.Verdict{all: rules.Clear, notClear: rules.Doubtful, foulOnly: rules.Foul}[m.only]
	list := rules.ForPeople(s.Result.Findings)
	for i, f := range list {
		if f.Verdict < least { // they are sorted, worst first
			return list[:i]
		}
	}
	return list
}

// picked is the finding the keys act on, nil when none is listed.
func (m screen) picked(s desk.State) *rules.Finding {
	listed := m.listed(s)
	if len(listed) == 0 {
		return nil
	}
	return listed[m.index(s)]
}

func (m screen) index(s desk.State) int { return max(0, min(m.at, len(m.listed(s))-1)) }

// Update answers one message.
func (m screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h, m.top = msg.Width, msg.Height, 0
		m.pane = m.sized()
	case tea.MouseMsg:
		m, change := m.scrolled(s).mouse(msg, s)
		return m.scrolled(s), change, nil
	case tea.KeyMsg:
		m, change := m.scrolled(s).press(msg, s)
		return m.filled(s), change, nil
	}
	return m, desk.Change{}, nil
}

func (m screen) press(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	if m.next {
		return m.pressNext(k, s)
	}
	if pane, mine := m.sized().Legend(k, s, m.shown(s)); mine && m.large {
		m.pane = pane
		return m, desk.Change{}
	}
	m.at = m.index(s)
	last := max(0, len(m.listed(s))-1)
	page := max(1, m.listRows(s))
	switch {
	case m.large && key.Matches(k, keyBack):
		m.large = false
		m.pane = m.sized()
	case key.Matches(k, keyShow):
		return m.enlarge(s)
	case key.Matches(k, keyDown):
		m.at = min(m.at+1, last)
	case key.Matches(k, keyUp):
		m.at = max(m.at-1, 0)
	case key.Matches(k, desk.KeyPageDown):
		m.at = min(m.at+page, last)
	case key.Matches(k, desk.KeyPageUp):
		m.at = max(m.at-page, 0)
	case key.Matches(k, desk.KeyHome):
		m.at = 0
	case key.Matches(k, desk.KeyEnd):
		m.at = last
	case key.Matches(k, keyNext):
		m.next, m.to, m.top, m.large = true, 0, 0, false
		m.pane = m.sized()
	case key.Matches(k, keyFrom):
		m.from = !m.from
	case key.Matches(k, keyFilter):
		m.only, m.at, m.top = (m.only+1)%filters, 0, 0
	case key.Matches(k, keyPlace) && m.picked(s) != nil:
		return m, desk.Show(m.picked(s))
	default:
		return m.passOn(k, s)
	}
	return m, desk.Change{}
}
