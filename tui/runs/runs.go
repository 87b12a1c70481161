// Package runs is the screen for laying what runs under the floor: exhaust and intake, their points moved with the arrows in the
// direction seen, typed or tapped, and what that does to the clearances beside it. It judges nothing: places come from vehicles,
// verdicts from rules.
package runs

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/vehicles"
)

type screen struct {
	pane   plan.Pane
	of     vehicles.RunKind // the run at hand
	point  int              // of it that is moved, from 0
	step   moving.Step
	prompt moving.Prompt
	w, h   int

	top moving.Scroll // of the list of the worst

	shielding bool     // what a heat shield stands before is listed
	listed    []string // what was in that list when it was opened: no row goes from under a thumb
	shield    int      // the one of it picked
}

// New returns the screen.
func New() desk.Screen { return screen{pane: plan.New(), step: moving.Usual} }

func (m screen) Title() string { return "Runs" }

func (m screen) Typing() bool { return m.prompt.Kind != nothing || m.shielding }

// Update answers one message.
func (m screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	m = m.current(s)
	var change desk.Change
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = msg.Width, msg.Height
		m.pane = m.pane.Sized(moving.Sizes(m.w, m.h))
	case tea.KeyMsg:
		m, change = m.keys(msg, s)
	case tea.MouseMsg:
		m, change = m.mouse(msg, s)
	case desk.Reveal:
		m, change = m.revealed(s)
	}
	return m, change, nil
}

// current is the screen for the job as it is now: an undo may have taken away what a field is of.
func (m screen) current(s desk.State) screen {
	if run := m.run(s); run == nil || len(run.Path) == 0 {
		m.prompt = moving.Prompt{}
	}
	m.shielding = m.shielding && len(shieldable(s, m.listed...)) > 0
	m.point = m.index(s)
	return m
}

// keys answers a key or a pasted text.
func (m screen) keys(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	var change desk.Change
	switch {
	case m.shielding && !k.Paste:
		m, change = m.pressShields(k, s)
	case m.prompt.Kind != nothing:
		m, change = m.typed(k, s)
	case !k.Paste: // no field has the keys
		m, change = m.press(k, s)
	}
	return m, m.followed(change, s)
}

// press answers one key outside the fields.
func (m screen) press(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	if top, mine := m.worst(s).Press(k, m.top, s, m.beside(s)); mine {
		m.top = top
		return m, desk.Change{}
	}
	switch {
	case key.Matches(k, keyRun):
		return m.turnTo((m.of + 1) % laid), desk.Change{}
	case key.Matches(k, keyRun2):
		return m.turnTo((m.of + laid - 1) % laid), desk.Change{}
	case key.Matches(k, moving.KeyStep):
		m.step = m.step.Next()
		return m, desk.Change{}
	case key.Matches(k, moving.KeyUpright) && len(moving.Leaning(s)) > 0:
		return m, moving.Upright(s)
	case key.Matches(k, moving.KeyMove) && !k.Alt:
		return m, m.move(k.String(), s)
	case key.Matches(k, keyAdd):
		return m.add(s)
	}
	if run := m.run(s); run == nil || len(run.Path) == 0 {
		return m.passOn(k, s)
	}
	return m.pressPoint(k, s)
}

// laid are how many runs are laid on the screen: those before it.
const laid = vehicles.FuelRun

// turnTo changes the run at hand, and starts at its first point.
func (m screen) turnTo(of vehicles.RunKind) screen {
	m.of, m.point, m.top = of, 0, 0
	return m
}

// pressPoint answers the keys of the point that is moved.
func (m screen) pressPoint(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	switch {
	case key.Matches(k, keyNext):
		m.point = min(m.point+1, len(m.run(s).Path)-1)
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
	case key.Matches(k, keyShields) && m.of == vehicles.ExhaustRun:
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
