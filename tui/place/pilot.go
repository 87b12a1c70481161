package place

import (
	"fmt"
	"strings"
	"sync/atomic"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

var (
	keyExplain = bind("e", "what would explain the pilot", "e")
	keyBest    = bind("w", "the best move of the centre", "w")
	keyAssume  = bind("letter", "put this right", "a")
)

// worthMoving is the margin, mm, that a move of the centre must win to be advised: less is not seen on a tape.
const worthMoving = 1

// checked is the report on the pilot hole of one result.
type checked struct {
	of     *rules.Finding // the first finding of the result: no other has it
	report rules.PilotReport
	ok     bool
}

// lastChecked is the report that was asked for last: it takes milliseconds, and is asked for several times a key.
var lastChecked atomic.Pointer[checked]

// pilotOf is what the drilled pilot hole says; ok is false without one, and while the job can't be judged.
func pilotOf(s desk.State) (p rules.PilotReport, ok bool) {
	if s.Job.Cut == nil || s.Job.Cut.Drilled == nil || len(s.Faults) > 0 || len(s.Result.Findings) == 0 {
		return p, false
	}
	of := &s.Result.Findings[0]
	if last := lastChecked.Load(); last != nil && last.of == of {
		return last.report, last.ok
	}
	p, ok = rules.PilotCheck(s.Result)
	lastChecked.Store(&checked{of, p, ok})
	return p, ok
}

// better says whether there is a better place for the centre near the pilot hole.
func better(p rules.PilotReport) bool { return p.Move.Margin-p.Move.Before >= worthMoving }

// pilotKeys are the keys that the pilot hole calls for.
func pilotKeys(s desk.State) []key.Binding {
	p, ok := pilotOf(s)
	if !ok {
		return nil
	}
	var keys []key.Binding
	if p.Held {
		keys = append(keys, keyDirect)
	}
	if len(p.Slips) > 0 {
		keys = append(keys, keyExplain)
	}
	if better(p) && !sawn(s) {
		keys = append(keys, keyBest)
	}
	if !p.Held {
		keys = append(keys, keyDirect)
	}
	return keys
}

// pressPilot answers them; mine is false for any other key.
func (m screen) pressPilot(k tea.KeyMsg, s desk.State) (next screen, change desk.Change, mine bool) {
	if !key.Matches(k, keyExplain, keyBest, keyDirect) {
		return m, change, false
	}
	p, ok := pilotOf(s)
	switch {
	case !ok:
		return m, change, false
	case key.Matches(k, keyDirect):
		m, change = m.tapesOpened(s)
	case key.Matches(k, keyExplain) && len(p.Slips) > 0:
		m.explaining, m.slip = true, 0
	case key.Matches(k, keyBest) && better(p):
		change = moveFromPilot(s, p)
	}
	return m, change, true
}

// moveFromPilot puts the cut's centre on the best place.
func moveFromPilot(s desk.State, p rules.PilotReport) desk.Change {
	change := moveCut(s.Job, geometry.Point{X: moving.Hundredth(p.Move.To.X), Y: moving.Hundredth(p.Move.To.Y)}, "")
	change = besideHole(change, s)
	change.Say = "Mark the centre " + words.Way(p.Move.By, s.Settings) + " of the pilot hole. " + change.Say
	return change
}

// besideHole makes of an edit that moves the cut's centre away from its pilot hole what that is: the hole is an old one from then on, so that
// the checks are for the new centre. What becomes of the hole is said at this move and at each later one.
func besideHole(change desk.Change, s desk.State) desk.Change {
	if change.Job == nil || change.Say != "" || len(s.Faults) > 0 || s.Job.Cut == nil {
		return change
	}
	before, after, hole := s.Job.Cut, change.Job.Cut, s.Plan.Cut.Old
	if holeOf(s).there() {
		hole = &s.Plan.Cut.At
	}
	if hole == nil || after == nil || after.At == before.At || before.Drilled != nil && after.Drilled == nil {
		return change
	}
	by := plan2(after.At).Sub(*hole).Norm()
	if before.Drilled != nil && rules.BesidePilot(after, by) != rules.OnTheHole {
		job := change.Job.LeavingPilot(after.At)
		job.Notes = strings.TrimPrefix(job.Notes+tapedFrom(before), "\n")
		change.Job = &job
	}
	change.Say = words.MovedBeside(after, by)
	return change
}

// tapedFrom notes the tapes that were taken straight from a hole that the centre leaves, "" for none.
func tapedFrom(cut *vehicles.Cut) string {
	if len(cut.Direct) == 0 {
		return ""
	}
	note := fmt.Sprintf("\nTaped straight from the old pilot hole at %s, %s:", cut.Drilled[0], cut.Drilled[1])
	for i, tape := range cut.Direct {
		note += map[bool]string{true: ",", false: ""}[i > 0] + fmt.Sprintf(" %s to %s", tape.Gap, tape.To)
	}
	return note + "."
}

// pilotRows say where the hole is, whether the tapes explain that, and how far the centre may still go.
func pilotRows(p rules.PilotReport, s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	at, off := desk.AtX(p.Is.X, u)+", "+desk.Across(p.Is.Y, s.Settings), "where it was meant"
	if way := words.Way(p.Off, s.Settings); way != "" {
		off = desk.Length(p.Away, u) + " off (" + way + ")"
	}
	off += ": " + explained(p, u)
	var rows []string
	if p.Held { // on a small screen that leaves room for what is to be done
		rows = desk.Wrapped(st.Fault, "Pilot at "+at+": "+off, w)
	} else {
		rows = append(desk.Wrapped(st.Plain, "Judged at the hole: "+at+".", w), desk.Wrapped(st.Strong, "Pilot "+off, w)...)
	}
	return append(rows, desk.Wrapped(st.Plain, mayMove(p, s), w)...)
}

// pilotBrief says the same in few rows, so that clearances are seen below them. Where the hole is stands above.
func pilotBrief(p rules.PilotReport, s desk.State, w int) (rows []string) {
	st, u := s.Settings.Styles(), s.Settings.Units
	off := "Where it was meant"
	if way := words.Way(p.Off, s.Settings); way != "" {
		off = "Off " + desk.Length(p.Away, u) + " (" + way + ")"
	}
	switch {
	case p.Held:
		off += ", the tapes explain " + desk.Length(p.MostAway(), u) + ". Cut, plate, body, bolts: held back. " + keyPilot.Help().Key + ": measure it again; " + keyDirect.Help().Key + ": tape from it straight"
		if n := len(p.Slips); n > 0 {
			off += fmt.Sprintf("; %s: what would explain it (%d)", keyExplain.Help().Key, n)
		}
		return desk.Wrapped(st.Fault, off+".", w)
	case !p.Explained:
		off += ", direct tapes confirm it"
	default:
		off += ": tapes explain it"
	}
	rows = desk.Wrapped(st.Strong, off, w)
	switch {
	case sawn(s):
		return append(rows, desk.Wrapped(st.Plain, mayMove(p, s), w)...)
	case better(p):
		return append(rows, desk.Wrapped(st.Plain, keyBest.Help().Key+": "+words.Way(p.Move.By, s.Settings)+": "+spareThere(p, u), w)...)
	}
	return append(rows, desk.Wrapped(st.Plain, "Centre may move "+desk.Length(p.MayMove, u)+", with guide board or new pilot.", w)...)
}

// explained says whether readings or direct tapes explain where the hole is, and what to do where they don't.
func explained(p rules.PilotReport, u desk.Units) string {
	switch {
	case p.Explained && p.Statistic > 0:
		return tapesExplain + ", up to " + desk.Length(p.MostAway(), u) + " that way."
	case p.Explained:
		return tapesExplain + "."
	case !p.Held:
		return "more than the readings explain, but direct tapes confirm the hole there."
	}
	text := "more than the tapes explain (" + desk.Length(p.MostAway(), u) + " at most)"
	if len(p.Slips) == 0 {
		text += ", nor would any single slip"
	}
	text += fmt.Sprintf(". Cut, plate, body, bolts: held back. Measure it again (%s) or tape from it straight (%s).",
		keyPilot.Help().Key, keyDirect.Help().Key)
	if n := len(p.Slips); n > 0 {
		text += fmt.Sprintf(" %s: what would (%d)", keyExplain.Help().Key, n)
	}
	return text
}

// mayMove says how far the centre may go and what that takes, and where it is best; while the place of the hole is in doubt, nobody
// knows that.
func mayMove(p rules.PilotReport, s desk.State) string {
	if sawn(s) {
		return "The hole is sawn: its centre stays."
	}
	u := s.Settings.Units
	text := words.BesidePilot(s.Job.Cut, s.Settings)
	switch {
	case p.Held:
		return text + "."
	case !better(p):
		return text + "; nowhere there is better."
	}
	return text + fmt.Sprintf(". Best %s: %s. %s: move it", words.Way(p.Move.By, s.Settings), spareThere(p, u), keyBest.Help().Key)
}

// spareThere says how much is to spare where the centre is best, and how much here.
func spareThere(p rules.PilotReport, u desk.Units) string {
	text := words.Spare(p.Move.Margin, u)
	if p.Move.Before < 0 {
		return text + ", here " + words.Spare(p.Move.Before, u)
	}
	return text + ", here " + survey.Format(p.Move.Before, u)
}

// bestPlaces are the places to show on the plan where the cut would be better.
func bestPlaces(s desk.State) []geometry.Point {
	if p, ok := pilotOf(s); ok && better(p) {
		return []geometry.Point{p.Move.To}
	}
	return nil
}

// tapesExplain is said of a hole that is off by no more than the tapes may be.
const tapesExplain = "the tapes explain it"
