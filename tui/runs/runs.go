// Package runs is the screen for laying what runs under the floor: exhaust, intake and fuel line. A list says what the run at hand
// has, in order along it; what is picked there is moved with the arrows in the direction seen, slid along the run, typed or tapped,
// and is marked on the plan and on the profile of the run. Beside it stands what that does to the clearances. It judges nothing:
// places come from vehicles, verdicts from rules.
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
	pane     plan.Pane
	of       vehicles.RunKind // the run at hand
	away     *vehicles.Run    // the fuel line that was taken away last; nil for none
	picked   part             // of it
	step     moving.Step
	prompt   moving.Prompt
	aside    int         // the view from the side that stands in the plan's place, from 1; 0: the plan
	camera   desk.Camera // of that view
	pictures pictures    // which are seen, where there is no room for both beside a whole panel
	w, h     int

	top    moving.Scroll // of the list of the worst
	finger int           // the row of the body at which a finding of it was tapped, from 1: it stays there; 0: none

	shielding bool     // what a heat shield stands before is listed
	listed    []string // what was in that list when it was opened: no row goes from under a thumb
	shield    int      // the one of it picked
	shieldTop int      // the first of it in sight

	finder finder // a run that is being found
	laid   bool   // what was found has just been put in: how it falls is seen first
	rest   toTell // what is still to be said of it

	cutting bool // the cut list is open
	cutTop  int  // its first row that is seen
}

// New returns the screen.
func New() desk.Screen { return screen{pane: plan.New(), step: moving.Usual} }

func (m screen) Title() string { return "Runs" }

func (m screen) Typing() bool { return m.Prompting() || m.Listing() }

// Prompting tells whether something is asked.
func (m screen) Prompting() bool { return m.prompt.Kind != nothing }

// Update answers one message. What a key was told of a list goes when it is so no more.
func (m screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	told := m.listTakes(s)
	next, change, cmd := m.did(msg, s)
	if told != next.listTakes(s) {
		change.Unsay = told
	}
	return next, change, cmd
}

// did is the screen once it has done what a message asks for.
func (m screen) did(msg tea.Msg, s desk.State) (screen, desk.Change, tea.Cmd) {
	m = m.current(s).sized(s)
	var change desk.Change
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = msg.Width, msg.Height
		m = m.sized(s)
	case tea.KeyMsg:
		m.laid = false
		m, change = m.keys(msg, s)
	case tea.MouseMsg:
		m.laid = false
		m, change = m.mouse(msg, s)
	case desk.Reveal:
		m, change = m.revealed(s)
	default:
		return m.heard(msg, s)
	}
	var cmd tea.Cmd
	if m.finder.wants {
		m, cmd = m.sought(s)
	}
	return m, change, cmd
}

// current is the screen for the job as it is now: an undo may have taken away what a field is of.
func (m screen) current(s desk.State) screen {
	here, there := m.here(s)
	if m.picked = here.part; !there {
		m.picked = part{}
	}
	if !there || m.prompt.Kind != nothing && m.prompt.Kind != asked(here) {
		m.prompt = moving.Prompt{}
	}
	m.shielding = m.shielding && len(shieldable(s, m.listed...)) > 0
	if m.finder.found.Outdated(s) {
		m.finder = m.finder.closed()
	}
	return m
}

// keys answers a key or a pasted text.
func (m screen) keys(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	var change desk.Change
	before := m.camera
	switch {
	case m.finder.open() && !k.Paste:
		m, change = m.pressFinder(k, s)
	case m.cutting && !k.Paste:
		m, change = m.pressCutList(k, s)
	case m.finder.open(), m.cutting: // no field has the keys
	case m.shielding && !k.Paste:
		m, change = m.pressShields(k, s)
	case m.prompt.Kind != nothing:
		m, change = m.typed(k, s)
	case !k.Paste: // no field has the keys
		m, change = m.press(k, s)
	}
	if m.camera != before { // the view was moved, wherever what is picked is
		return m, change
	}
	return m.followed(change, s)
}

// press answers one key outside the fields.
func (m screen) press(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	if pane, mine := m.pane.Legend(k, m.looking(s), m.shown(s)); mine {
		m.pane = pane
		return m, desk.Change{}
	}
	if top, mine := m.worst(s).Press(k, m.top, s, m.under(s)); mine {
		m.top = top
		return m, desk.Change{}
	}
	if next, change, mine := m.pressFind(k, s); mine {
		return next, change
	}
	kinds := vehicles.RunKind(len(vehicles.RunKinds))
	switch {
	case key.Matches(k, keyRun):
		return m.turnTo((m.of + 1) % kinds), desk.Change{}
	case key.Matches(k, keyRun2):
		return m.turnTo((m.of + kinds - 1) % kinds), desk.Change{}
	case key.Matches(k, moving.KeyStep):
		m.step = m.step.Next()
		return m, desk.Change{}
	case key.Matches(k, keyProfile) && !wholePanel(m.w, m.h):
		return m.nextPictures(s), desk.Change{}
	case key.Matches(k, keyCutList):
		m.cutting, m.cutTop = true, 0
		return m, desk.Change{}
	case key.Matches(k, keyAside):
		return m.turnAside(), desk.Change{}
	case key.Matches(k, moving.KeyUpright) && len(moving.Leaning(s)) > 0:
		return m, moving.Upright(s)
	case key.Matches(k, keyAdd):
		return m.add(s)
	}
	here, ok := m.here(s)
	switch {
	case !ok && key.Matches(k, moving.KeyMove) && !k.Alt:
		return m, desk.Change{Say: "No " + m.of.String() + " to move yet: " + keyAdd.Help().Key + " adds it, " + keyFind.Help().Key + " finds it."}
	case !ok && key.Matches(k, desk.KeyEnter):
		return m.add(s)
	case !ok && key.Matches(k, keySide, keyMount, keyClips, keyDrains):
		return m, desk.Change{Say: "No " + m.of.String() + " yet: " + keyAdd.Help().Key + " begins it, " + keyFind.Help().Key + " finds it."}
	case !ok:
		return m.passOn(k, s)
	}
	if why := m.notOf(k); why != "" {
		return m, desk.Change{Say: why}
	}
	return m.pressRun(k, here, s)
}

// notOf says of a key for another run why it does nothing to the one at hand; "" for any other key.
func (m screen) notOf(k tea.KeyMsg) string {
	switch {
	case key.Matches(k, keySide) && m.of == vehicles.IntakeRun:
		return "The intake's mouth stays under the van: " + keyAdd.Help().Key + " adds a point, " + keyFind.Help().Key + " finds the run."
	case key.Matches(k, keySide) && m.of == vehicles.FuelRun:
		return "The fuel line ends at the heater: " + keySide.Help().Key + " is for the exhaust (" + keyRun.Help().Key + ")."
	case key.Matches(k, keyMount) && m.of == vehicles.IntakeRun:
		return "The intake takes no muffler."
	case key.Matches(k, keyDrains) && m.of == vehicles.FuelRun:
		return "A fuel line has no drain holes."
	case key.Matches(k, keyShields) && m.of != vehicles.ExhaustRun:
		return "Heat shields stand before the exhaust (" + keyRun.Help().Key + ")."
	}
	return ""
}

// turnTo changes the run at hand, and starts at its first point.
func (m screen) turnTo(of vehicles.RunKind) screen {
	m.of, m.picked, m.top, m.prompt, m.shielding, m.finder, m.cutting = of, part{}, moving.Scroll{}, moving.Prompt{}, false, m.finder.closed(), false
	return m
}

// pressRun answers the keys of a run that is there.
func (m screen) pressRun(k tea.KeyMsg, here placed, s desk.State) (screen, desk.Change) {
	switch {
	case key.Matches(k, keyNext):
		return m.pickPoint(s, 1), desk.Change{}
	case key.Matches(k, keyBack):
		return m.pickPoint(s, -1), desk.Change{}
	case key.Matches(k, keyOn):
		return m.picking(s, 1), desk.Change{}
	case key.Matches(k, keyOff):
		return m.picking(s, -1), desk.Change{}
	case key.Matches(k, moving.KeyMove) && !k.Alt:
		return m.arrow(k.String(), here, s)
	case key.Matches(k, keyTakeAway):
		return m.takeAway(s)
	case key.Matches(k, keyMount) && (m.wants() != nil || here.alone()):
		return m.mount(here, s)
	case key.Matches(k, keyClips):
		return m.spread(s)
	case key.Matches(k, keyDrains) && m.of != vehicles.FuelRun:
		return m.drainLow(here, s)
	case key.Matches(k, keySide) && m.of == vehicles.ExhaustRun:
		return m.toSide(s)
	case key.Matches(k, keyPipe):
		m.picked = part{sort: pipe}
		return m.ask(s), desk.Change{}
	case key.Matches(k, keyShields) && m.of == vehicles.ExhaustRun:
		return m.openShields(s)
	case key.Matches(k, keyDelete):
		return m.remove(here, s)
	case key.Matches(k, keyOther):
		return m, m.other(here, s)
	case key.Matches(k, keyType):
		return m.open(here, s)
	case key.Matches(k, keyInsert) && (here.sort == clips || here.hangs() && here.kind.Many()):
		return m.oneMore(here, s)
	case here.sort == point:
		return m.pressPoint(k, here.index, s)
	case key.Matches(k, keyRaise, keyLower, keyInsert):
		return m, desk.Change{Say: "That is done to a point: " + keyNext.Help().Key + " picks one."}
	}
	return m.passOn(k, s)
}

// pressPoint answers the keys of a point alone.
func (m screen) pressPoint(k tea.KeyMsg, i int, s desk.State) (screen, desk.Change) {
	switch {
	case key.Matches(k, keyRaise):
		return m, m.lower(s, i, -1)
	case key.Matches(k, keyLower):
		return m, m.lower(s, i, 1)
	case key.Matches(k, keyInsert):
		return m.insert(s, i)
	}
	return m.passOn(k, s)
}

// arrow moves a point, slides what hangs on the run, and picks among the rest.
func (m screen) arrow(arrow string, here placed, s desk.State) (screen, desk.Change) {
	way := map[string]float64{"left": -1, "right": 1}[arrow]
	switch {
	case here.sort == point && m.alone(s) && way != 0:
		return m.pickAlong(s, int(way)), desk.Change{}
	case here.sort == point && m.alone(s):
		return m, m.lower(s, here.index, map[string]float64{"up": -1, "down": 1}[arrow])
	case here.sort == point:
		return m, m.move(arrow, here.index, s)
	case way != 0 && here.hangs():
		return m, m.slide(here, way*m.step.Length(s), s)
	case arrow == "up":
		return m.picking(s, -1), desk.Change{}
	case arrow == "down":
		return m.picking(s, 1), desk.Change{}
	case here.sort == stub:
		return m, desk.Change{Say: "The stub goes with the cut and the heater's heading: they are moved on Place."}
	}
	return m, desk.Change{}
}

// open opens the fields of a part, or gives the run what it lacks.
func (m screen) open(here placed, s desk.State) (screen, desk.Change) {
	switch {
	case here.sort == shields:
		return m.openShields(s)
	case here.sort == stub:
		return m, desk.Change{Say: "The stub goes with the cut and the heater's heading: they are moved on Place."}
	case here.sort == clips:
		return m.spread(s)
	case here.sort == burns, here.sort == from: // nothing is typed of them
		return m, m.other(here, s)
	case !here.there && here.sort != tank:
		return m.mount(here, s)
	}
	return m.ask(s), desk.Change{}
}

// passOn gives the picture the keys that are its own.
func (m screen) passOn(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	pane, change, _ := m.pane.Update(k, m.looking(s), m.shown(s))
	m.pane = pane
	return m.own(change), m.others(change)
}
