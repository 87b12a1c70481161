// Package marks is the screen for marking out: one mark at a time with what the tape must say there in figures that
// can be read at arm's length, ticked as it is made; and with lengths to tape that show whether what was set out is square. Before the first mark it asks what was not looked for, says how
// the place stands and has the cautions shown. It measures nothing: the numbers are those of rules.Marks.
package marks

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// page says which page of a mark is shown.
type page uint8

const (
	tape  page = iota // the tape's readings
	pins              // the arcs from the two pins, as a check
	table             // all marks in a list
)

type screen struct {
	at      int // the mark shown
	below   bool
	page    page
	gate    gate
	w, h    int
	first   int  // the first row of the list in sight
	unclear int  // the first in sight of what is not clear, before the first mark
	drills  bool // the pilot hole is being measured for the first time: with it the mark shown is made
}

// New returns the screen.
func New() desk.Screen { return screen{} }

func (m screen) Title() string { return "Marks" }

// Typing is false: this screen has no fields.
func (m screen) Typing() bool { return false }

func bind(name, what string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, what))
}

var (
	keyMade  = bind("Enter", "made, next", "enter")
	keyTick  = bind("Space", "tick or untick", " ")
	keyNext  = bind("↓", "next mark", "down", "right")
	keyBack  = bind("↑", "mark before", "up", "left")
	keySide  = bind("v", "from above / from below", "v")
	keyPins  = bind("p", "check with two pins", "p")
	keyTable = bind("Tab", "all marks", "tab", "shift+tab")
	keyDrill = bind("d", "pilot drilled: measure it", "d")
	keyPaper = bind("t", "template on paper", "t")
)

// Keys are the bindings that hold now.
func (m screen) Keys(s desk.State) []key.Binding {
	if st := m.stage(s); st != marking {
		return gateFoot(st)
	}
	if m.page == table {
		return []key.Binding{keyMade, keyTick, keyNext, keyBack, desk.Named(keyTable, "one mark"), keyDrill, keyPaper}
	}
	if m.here(s).check != nil {
		return []key.Binding{desk.Named(keyMade, "it says so, next"), keyNext, keyBack, keyTable, keyTick, keyDrill, keyPaper}
	}
	keys := []key.Binding{keyMade, keyNext, keyBack}
	if len(onTop(s)) == 0 && s.Marks.Pilot.Drilled == nil {
		keys = []key.Binding{keyDrill, keyMade, keyNext, keyBack}
	}
	keys = append(keys, keySide)
	if m.mark(s).Above != nil {
		keys = append(keys, keyPins)
	}
	return append(keys, keyTable, keyTick, keyDrill, keyPaper)
}

// Update answers one message.
func (m screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	var change desk.Change
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = msg.Width, msg.Height
	case tea.KeyMsg:
		if !msg.Paste {
			m, change = m.key(msg, s)
		}
	case tea.MouseMsg:
		m, change = m.mouse(msg, s)
	}
	return m.settled(s), change, nil
}

func (m screen) key(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	m.at, m.drills = m.index(s), false
	if st := m.stage(s); st != marking {
		return m.answerGate(st, k, s)
	}
	return m.press(k, s)
}

func (m screen) press(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	var change desk.Change
	here := m.mark(s)
	switch last := len(items(s)) - 1; {
	case key.Matches(k, keyNext):
		m.at = min(m.at+1, last)
	case key.Matches(k, keyBack):
		m.at = max(m.at-1, 0)
	case key.Matches(k, keyTick):
		change = ticked(m.here(s), s)
	case key.Matches(k, keyMade):
		return m.made(s)
	case key.Matches(k, keyDrill):
		m.drills, change = s.Marks.Pilot.Drilled == nil, measurePilot()
	case key.Matches(k, keyPaper):
		change.Ask = desk.PrintTemplate
	case key.Matches(k, keySide, keyPins) && m.here(s).check != nil:
		change.Say = "this one is taped from mark to mark"
	case key.Matches(k, keySide) && here.Above == nil:
		change.Say = here.Words + " is marked from below only"
	case key.Matches(k, keySide):
		m.below = !m.below
	case key.Matches(k, keyPins) && here.Above == nil:
		change.Say = here.Words + " is marked from below: the pins are for marks from above"
	case key.Matches(k, keyPins):
		m.page = flip(m.page, pins)
	case key.Matches(k, keyTable):
		m.page = flip(m.page, table)
	}
	return m, change
}

// flip turns to a page, or back from it to the tape's readings.
func flip(now, to page) page {
	if now == to {
		return tape
	}
	return to
}

// index is the number of the mark shown, kept within what there is; of one that was made as the pilot was drilled, the next that is not made.
func (m screen) index(s desk.State) int {
	all := items(s)
	at := max(0, min(m.at, len(all)-1))
	if m.drills && s.Marks.Pilot.Drilled != nil && s.Ticked[all[at].id()] {
		if next, left := nextOf(s, all, at); left {
			return next
		}
	}
	return at
}

// here is what is shown: a mark, or a length to check.
func (m screen) here(s desk.State) item {
	all := items(s)
	if len(all) == 0 {
		return item{}
	}
	return all[m.index(s)]
}

// mark is the mark shown, an empty one while a length to check is.
func (m screen) mark(s desk.State) rules.Mark {
	if here := m.here(s); here.mark != nil {
		return *here.mark
	}
	return rules.Mark{}
}

// View paints the screen.
func (m screen) View(s desk.State, w, h int) string {
	if st := m.stage(s); st != marking {
		return m.viewGate(st, s, w, h)
	}
	if m.page == table {
		return desk.Fit(m.viewTable(s, w, h), w, h)
	}
	if w < desk.SideBySide {
		return desk.Fit(m.viewItem(s, w, h), w, h)
	}
	pageW := w - listWidth - 1 - desk.Margin
	list := desk.Fit(m.viewList(s, listWidth-1, h), listWidth, h)
	return desk.Beside(list, desk.Indented(desk.Fit(m.viewItem(s, pageW, h), pageW, h)), s.Settings.Styles())
}
