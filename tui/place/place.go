// Package place is the screen for putting the heater in its place: the plan large, the cut moved with the arrows in the direction
// seen, typed or tapped, the heater turned on it, and what that does to the clearances beside it. It judges nothing: places come
// from vehicles, verdicts from rules.
package place

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
)

type screen struct {
	pane   plan.Pane
	step   moving.Step
	prompt moving.Prompt
	w, h   int

	back       string // the screen that whoever measures the pilot hole came from and goes on with, "" for none
	explaining bool   // what would explain the pilot hole is listed
	slip       int    // from which of them on
	tapes      taping // the direct tapes from it

	released hole          // the pilot hole that the cut may be moved away from; its zero value for none
	top      moving.Scroll // of the list of the worst
	topOf    [2]float64    // where the cut is that it is of

	stepping bool // an arrow moved the cut last
	unshaded bool // the floor is not shaded by the room it leaves
	staying  bool // the arrows keep the cut on open floor
	area     int  // the open area whose best place comes next

	choosing bool                         // whole layouts are looked for, or gone through
	seeking  bool                         // they have to be worked out
	places   moving.Search[rules.Layouts] // that works them out, and what came of it
	at       int                          // which of them is shown
	small    []plan.Pane                  // theirs where they stand beside each other
}

// New returns the screen.
func New() desk.Screen {
	return screen{pane: plan.New(), step: moving.Usual, small: []plan.Pane{plan.New(), plan.New(), plan.New()}}
}

func (m screen) Title() string { return "Place" }

func (m screen) Typing() bool { return m.Prompting() || m.listing() }

// Prompting tells whether something is asked.
func (m screen) Prompting() bool { return m.prompt.Kind != nothing }

// Listing tells whether layouts are looked for, or listed.
func (m screen) Listing() bool { return m.choosing }

// listing tells whether a list has the keys.
func (m screen) listing() bool { return m.explaining || m.choosing || m.tapes.open }

// Update answers one message. What a key was told of the layouts goes when it is so no more.
func (m screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	told := m.picks()
	next, change, cmd := m.did(msg, s)
	if told != next.picks() {
		change.Unsay = told
	}
	return next, change, cmd
}

// did is the screen once it has done what a message asks for.
func (m screen) did(msg tea.Msg, s desk.State) (screen, desk.Change, tea.Cmd) {
	m = m.current(s)
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = msg.Width, msg.Height
		m.pane = m.pane.Sized(moving.Sizes(m.w, m.h))
		return m, desk.Change{}, nil
	case tea.KeyMsg:
		m.stepping = !m.Typing() && key.Matches(msg, moving.KeyMove)
		m, change := m.keys(msg, s)
		change = uncut(change, s)
		if m.seeking {
			m.seeking = false
			var cmd tea.Cmd
			m.places, cmd = seek(s)
			return m, change, cmd
		}
		return m, change, nil
	case desk.Open:
		if msg.Field == "drilled" && s.Job.Cut != nil {
			m = m.ask(drilled, s)
			m.back = msg.Back
		}
		return m, desk.Change{}, nil
	case desk.Reveal:
		m, change := m.revealed(s)
		return m, change, nil
	case tea.MouseMsg:
		m.stepping = false
		m, change := m.mouse(msg, s)
		return m, uncut(change, s), nil
	}
	places, again, mine := m.places.Heard(msg)
	m.places = places
	if mine && places.Done && !places.Failed {
		m.pane.Rank(s, places.Said.Areas)
	}
	return m, desk.Change{}, again
}

// current is the screen for the job as it is now: an undo may have taken away what a field is of. The list of another place begins at its
// worst.
func (m screen) current(s desk.State) screen {
	if s.Job.Cut == nil {
		m.prompt = moving.Prompt{}
	} else if m.topOf != s.Job.Cut.At {
		m.top, m.topOf = moving.Scroll{}, s.Job.Cut.At
	}
	if m.explaining {
		p, _ := pilotOf(s)
		m.explaining = len(p.Slips) > 0
	}
	if m.tapes.open && len(tapeFields(s)) == 0 {
		m.tapes = taping{}
	}
	if m.outdated(s) {
		m = m.left()
	}
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
	case k.Paste && m.prompt.Kind == nothing: // no field has the keys
	case m.explaining:
		m, change = m.explain(k, s)
	case m.choosing:
		m, change = m.pick(k, s)
		return m, m.followed(change, s)
	case m.Typing():
		m, change = m.typed(k, s)
	default:
		m, change = m.press(k, s)
	}
	return m, m.followed(carried(besideHole(change, s), s), s)
}

// press answers one key outside the fields.
func (m screen) press(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	if pane, mine := m.pane.Legend(k, s, m.shown(s)); mine {
		m.pane = pane
		return m, desk.Change{}
	}
	if next, change, mine := m.pressPilot(k, s); mine {
		return next, change
	}
	if next, change, mine := m.pressRoom(k, s); mine {
		return next, change
	}
	if top, mine := worst(s).Press(k, m.top, s, m.beside(s)); mine {
		m.top = top
		return m, desk.Change{}
	}
	switch {
	case key.Matches(k, moving.KeyStep):
		m.step = m.step.Next()
	case key.Matches(k, moving.KeyUpright) && len(moving.Leaning(s)) > 0:
		return m, moving.Upright(s)
	case key.Matches(k, moving.KeyMove) && !k.Alt:
		return m, m.move(k.String(), s)
	case s.Job.Cut == nil && key.Matches(k, keyHere):
		return m, placeCut(s, m.middle(s))
	case key.Matches(k, keyType) && s.Job.Cut != nil:
		return m.ask(cutAt, s), desk.Change{}
	case key.Matches(k, keyPilot) && s.Job.Cut != nil:
		return m.ask(drilled, s), desk.Change{}
	case key.Matches(k, keyCollar) && s.Job.Cut != nil:
		return m.ask(collar, s), desk.Change{}
	case key.Matches(k, keyRelease) && holeOf(s).there():
		return m.release(s)
	case key.Matches(k, keyTurn):
		return m, turn(s, 1)
	case key.Matches(k, keyTurn2):
		return m, turn(s, -1)
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
