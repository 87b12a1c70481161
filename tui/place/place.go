// Package place is the screen for putting the heater in its place: the plan large, the cut and the points of the runs
// moved with the arrows in the direction seen, typed or tapped, and what that does to the clearances beside it. It
// judges nothing: places come from vehicles, verdicts from rules.
package place

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/plan"
)

// movable is what the arrows move.
type movable uint8

const (
	hole movable = iota
	exhaust
	intake
	movables // how many there are
)

func (t movable) String() string { return [...]string{"cut", "exhaust", "intake"}[t] }

type screen struct {
	pane   plan.Pane
	moving movable
	point  int // of the run that is moved, from 0
	step   int // index of steps
	prompt prompt
	w, h   int

	explaining bool   // what would explain the pilot hole is listed
	tapes      taping // the direct tapes from it

	unshaded bool // the floor is not shaded by the room it leaves
	staying  bool // the arrows keep the cut on open floor
	area     int  // the open area whose best place comes next

	shielding bool     // what a heat shield stands before is listed
	listed    []string // what was in that list when it was opened: no row goes from under a thumb
	shield    int      // the one of it picked

	choosing bool           // the places where the heater fits are listed
	seeking  bool           // they have to be worked out
	sought   *rules.Finding // the first finding of the result they are for: no other has it
	search   *search        // that works them out
	progress string         // how far it was when it was last looked at
	places   assisted       // what came of it
}

// New returns the screen.
func New() desk.Screen { return screen{pane: plan.New(), step: 1} }

func (m screen) Title() string { return "Place" }

func (m screen) Typing() bool { return m.prompt.kind != nothing || m.listing() }

// listing tells whether a list has the keys.
func (m screen) listing() bool { return m.explaining || m.choosing || m.shielding || m.tapes.open }

// Update answers one message.
func (m screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	m = m.current(s)
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = msg.Width, msg.Height
		m.pane = m.pane.Sized(sizes(m.w, m.h))
		return m, desk.Change{}, nil
	case tea.KeyMsg:
		m, change := m.keys(msg, s)
		if m.seeking {
			m.seeking = false
			search, find := seek(s)
			m.search = search
			return m, change, tea.Batch(find, watch(search))
		}
		return m, change, nil
	case glanced:
		m, cmd := m.looked(msg)
		return m, desk.Change{}, cmd
	case assisted:
		return m.heard(msg), desk.Change{}, nil
	case tea.MouseMsg:
		m, change := m.mouse(msg, s)
		return m, change, nil
	}
	return m, desk.Change{}, nil
}

// current is the screen for the job as it is now: an undo may have taken away what a field is of.
func (m screen) current(s desk.State) screen {
	run := m.run(s)
	gone := s.Job.Cut == nil
	if m.prompt.kind == pointAt || m.prompt.kind == pipe {
		gone = run == nil || len(run.Path) == 0
	}
	if gone {
		m.prompt = prompt{}
	}
	if m.explaining {
		p, _ := pilotOf(s)
		m.explaining = len(p.Slips) > 0
	}
	m.shielding = m.shielding && len(shieldable(s, m.listed...)) > 0
	if m.tapes.open && len(tapeFields(s)) == 0 {
		m.tapes = taping{}
	}
	if m.outdated(s) {
		m = m.left()
	}
	m.point = m.index(s)
	return m
}

// keys answers a key or a pasted text.
func (m screen) keys(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	var change desk.Change
	switch {
	case k.Paste && m.tapes.open:
		m, change = m.tapesPasted(k.Runes, s)
	case m.tapes.open:
		m, change = m.tape(k, s)
	case k.Paste && m.prompt.kind == nothing: // no field has the keys
	case m.explaining:
		m, change = m.explain(k, s)
	case m.choosing:
		m, change = m.pick(k, s)
	case m.shielding:
		m, change = m.pressShields(k, s)
	case k.Paste:
		m, change = m.pasted(k.Runes, s)
	case m.Typing():
		m, change = m.typed(k, s)
	default:
		m, change = m.press(k, s)
	}
	return m, m.followed(besideHole(change, s), s)
}

// press answers one key outside the fields.
func (m screen) press(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	switch {
	case key.Matches(k, keyThing):
		return m.turnTo((m.moving + 1) % movables), desk.Change{}
	case key.Matches(k, keyThing2):
		return m.turnTo((m.moving + movables - 1) % movables), desk.Change{}
	case key.Matches(k, keyStep):
		m.step = (m.step + 1) % len(steps(s))
		return m, desk.Change{}
	case key.Matches(k, keyUpright) && len(leaning(s)) > 0:
		return m, upright(s)
	case key.Matches(k, keyMove) && !k.Alt:
		return m, m.move(k.String(), s)
	}
	if m.moving == hole {
		return m.pressCut(k, s)
	}
	return m.pressRun(k, s)
}

// turnTo changes what the arrows move, and starts at its first point.
func (m screen) turnTo(t movable) screen {
	m.moving, m.point = t, 0
	return m
}

// pressCut answers the keys of the cut and the heater on it.
func (m screen) pressCut(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	if next, change, mine := m.pressPilot(k, s); mine {
		return next, change
	}
	if next, change, mine := m.pressRoom(k, s); mine {
		return next, change
	}
	switch {
	case s.Job.Cut == nil && key.Matches(k, keyHere):
		return m, placeCut(s, m.middle(s))
	case key.Matches(k, keyType) && s.Job.Cut != nil:
		return m.ask(cutAt, s), desk.Change{}
	case key.Matches(k, keyPilot) && s.Job.Cut != nil:
		return m.ask(drilled, s), desk.Change{}
	case key.Matches(k, keyCollar) && s.Job.Cut != nil:
		return m.ask(collar, s), desk.Change{}
	case key.Matches(k, keyTurn):
		return m, turn(s, 1)
	case key.Matches(k, keyTurn2):
		return m, turn(s, -1)
	}
	return m.passOn(k, s)
}

// pressRun answers the keys of a run.
func (m screen) pressRun(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	if key.Matches(k, keyAdd) {
		return m.add(s)
	}
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return m.passOn(k, s)
	}
	switch {
	case key.Matches(k, keyNext):
		m.point = min(m.point+1, len(run.Path)-1)
	case key.Matches(k, keyBack):
		m.point = max(m.point-1, 0)
	case key.Matches(k, keyRaise):
		return m, m.lower(s, -1)
	case key.Matches(k, keyLower):
		return m, m.lower(s, 1)
	case key.Matches(k, keyInsert):
		return m, m.insert(s)
	case key.Matches(k, keyDelete):
		return m, m.remove(s)
	case key.Matches(k, keyType):
		return m.ask(pointAt, s), desk.Change{}
	case key.Matches(k, keyPipe):
		return m.ask(pipe, s), desk.Change{}
	case key.Matches(k, keyShields) && m.moving == exhaust:
		return m.openShields(s)
	default:
		return m.passOn(k, s)
	}
	return m, desk.Change{}
}

// passOn gives the plan the keys that are its own.
func (m screen) passOn(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	pane, change, _ := m.pane.Update(k, s, m.shown(s))
	m.pane = pane
	return m, change
}
