package marks

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// stage says what stands before the next mark.
type stage uint8

const (
	faulty  stage = iota // the job has no result
	noCut                // nothing to mark
	asking               // a kind was neither entered nor looked for
	warning              // the place is not clear
	ready                // nothing in the way but the cautions
	marking
)

// gate is what the fitter has answered before the first mark. It holds for one place of the cut only: at another
// place the looking and the verdict are others.
type gate struct {
	ref     string
	at      [2]float64
	later   bool // the kinds still open stay open
	started bool
	agreed  rules.Verdict // with what verdict the marking was started
}

// passed is the gate as far as it holds for the job as it is now.
func (m screen) passed(s desk.State) gate {
	now := gate{ref: s.Job.Ref}
	if s.Job.Cut != nil {
		now.at = s.Job.Cut.At
	}
	if m.gate.ref == now.ref && m.gate.at == now.at {
		return m.gate
	}
	return now
}

func (m screen) stage(s desk.State) stage {
	g := m.passed(s)
	switch {
	case len(s.Faults) > 0:
		return faulty
	case s.Job.Cut == nil || len(s.Marks.Marks) == 0:
		return noCut
	case g.started && s.Result.Verdict <= g.agreed:
		return marking
	case len(s.Result.Open()) > 0 && !g.later:
		return asking
	case s.Result.Verdict != rules.Clear:
		return warning
	}
	return ready
}

var (
	keyPlace       = bind("Enter", "go to Place", "enter")
	keyNone        = bind("n", "looked, none there", "n")
	keyThere       = bind("e", "there is one: enter it", "e")
	keyLater       = bind("l", "leave open", "l")
	keyAll         = bind("m", "mark all the same", "m")
	keyShow        = bind("Enter", "show the worst on the plan", "enter")
	keyUnclearDown = bind("↓", "down what is not clear", "down", "pgdown")
	keyUnclearUp   = bind("↑", "up it", "up", "pgup")
	keyStart       = bind("Enter", "read the cautions and start", "enter")
)

func gateKeys(st stage) []key.Binding {
	switch st {
	case noCut:
		return []key.Binding{keyPlace}
	case asking:
		return []key.Binding{keyNone, keyThere, keyLater}
	case warning:
		return []key.Binding{keyShow, keyAll, keyUnclearDown, keyUnclearUp}
	case ready:
		return []key.Binding{keyStart}
	}
	return nil
}

// gateFoot are the bindings in few words: all of them fit the foot of the narrowest window.
func gateFoot(st stage) []key.Binding {
	switch st {
	case asking:
		return []key.Binding{desk.Named(keyNone, "none there"), desk.Named(keyThere, "enter it"), keyLater}
	case warning:
		return []key.Binding{desk.Named(keyShow, "shows the worst"), keyAll, desk.Named(keyUnclearDown, "more"), desk.Named(keyUnclearUp, "back")}
	}
	return gateKeys(st)
}

func (m screen) answerGate(st stage, k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	m.gate = m.passed(s)
	switch {
	case st == noCut && key.Matches(k, keyPlace):
		return m, desk.Change{Goto: "Place"}
	case st == asking:
		return m.answerKind(k, s)
	case st == warning && key.Matches(k, keyUnclearDown, keyUnclearUp):
		by := 1
		if strings.HasPrefix(k.String(), "pg") {
			by = max(1, m.unclearRoom(s)-1)
		}
		if key.Matches(k, keyUnclearUp) {
			by = -by
		}
		m = m.unclearBy(by, s)
	case st == warning && key.Matches(k, keyShow):
		return m, showWorst(s)
	case st == warning && key.Matches(k, keyAll), st == ready && key.Matches(k, keyStart):
		m.gate.started, m.gate.agreed = true, s.Result.Verdict
		return m, desk.Change{Ask: desk.BeforeDrilling}
	}
	return m, desk.Change{}
}

// unclearRoom is how many of what is not clear are seen at once.
func (m screen) unclearRoom(s desk.State) int {
	return startRoom(startHead(warning, s, m.w, m.h), startFoot(warning, s, m.w), notClear(s), m.h)
}

// unclearBy is the screen with what is not clear scrolled by so many.
func (m screen) unclearBy(by int, s desk.State) screen {
	m.unclear = max(0, min(m.unclear+by, len(notClear(s))-m.unclearRoom(s)))
	return m
}

// showWorst goes to the worst finding there is: the first of those that are listed.
func showWorst(s desk.State) desk.Change {
	all := rules.ForPeople(s.Result.Findings)
	if len(all) == 0 {
		return desk.Change{Goto: "Checks"}
	}
	return desk.Show(all[0])
}

// answerKind takes the answer for the first kind still open.
func (m screen) answerKind(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	kind := s.Result.Open()[0]
	switch {
	case key.Matches(k, keyNone):
		job := s.Job.WithLooked(kind, true)
		return m, desk.Change{Job: &job, Say: kind + ": looked for, none there. " + desk.KeyUndo.Help().Key + " takes it back."}
	case key.Matches(k, keyThere):
		return m, desk.Change{Goto: "Underneath", Say: "Enter the " + kind + ", then come back to Marks."}
	case key.Matches(k, keyLater):
		m.gate.later = true
	}
	return m, desk.Change{}
}

func (m screen) viewGate(st stage, s desk.State, w, h int) string {
	return desk.Fit(strings.Join(gateRows(st, m.unclear, s, w, h), "\n"), w, h)
}

// gateRows are what stands before the next mark, as far as it has to be seen in h rows; what is not clear from one on.
func gateRows(st stage, from int, s desk.State, w, h int) []string {
	switch st {
	case faulty:
		return faultRows(s, w)
	case noCut:
		return noCutRows(s, w)
	case asking:
		return askRows(s, w, h)
	}
	return startRows(st, from, s, w, h)
}
