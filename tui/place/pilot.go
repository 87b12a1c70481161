package place

import (
	"fmt"
	"math"
	"strings"
	"sync/atomic"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
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
	var keys []key.Binding
	if ok && len(p.Slips) > 0 {
		keys = append(keys, keyExplain)
	}
	if ok && better(p) {
		keys = append(keys, keyBest)
	}
	return keys
}

// pressPilot answers them; mine is false for any other key.
func (m screen) pressPilot(k tea.KeyMsg, s desk.State) (next screen, change desk.Change, mine bool) {
	if !key.Matches(k, keyExplain, keyBest) {
		return m, change, false
	}
	p, ok := pilotOf(s)
	switch {
	case !ok:
		return m, change, false
	case key.Matches(k, keyExplain) && len(p.Slips) > 0:
		m.explaining = true
	case key.Matches(k, keyBest) && better(p):
		change = moveFromPilot(s, p)
	}
	return m, change, true
}

// moveFromPilot puts the cut's centre on the best place. The hole counts as its guide no more, so that the checks are
// for the new centre; where it is stays in the notes.
func moveFromPilot(s desk.State, p rules.PilotReport) desk.Change {
	cut := *s.Job.Cut
	was := cut.Drilled
	cut.At = [2]float64{hundredth(p.Move.To.X), hundredth(p.Move.To.Y)}
	cut.Drilled = nil
	job := s.Job.WithCut(cut)
	way := words.Way(p.Move.By, desk.Settings{})
	note := fmt.Sprintf("Pilot hole at %s, %s; the cut's centre was moved from it: %s.", was[0], was[1], way)
	job.Notes = strings.TrimPrefix(job.Notes+"\n"+note, "\n")
	return desk.Change{Job: &job, Say: "Mark the centre " + words.Way(p.Move.By, s.Settings) + " of the pilot hole; it is in the notes."}
}

// explain answers a key while the explanations are listed: a letter puts one right.
func (m screen) explain(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	p, _ := pilotOf(s)
	i := -1
	if len(k.Runes) == 1 {
		i = int(k.Runes[0] - 'a')
	}
	switch {
	case key.Matches(k, desk.KeyLeave):
		m.explaining = false
	case i >= 0 && i < len(p.Slips):
		m.explaining = false
		job := p.Slips[i].Apply(s.Job)
		return m, desk.Change{Job: &job, Say: "Put right; judged again. " + desk.KeyUndo.Help().Key + " takes it back."}
	}
	return m, desk.Change{}
}

// explanations list what would explain the pilot hole, each with its letter.
func (m screen) explanations(s desk.State, w int) []string {
	st := s.Settings.Styles()
	p, _ := pilotOf(s)
	rows := desk.Wrapped(st.Title, "One of these would explain the pilot. Check it on the van before you press its letter.", w)
	for i, slip := range p.Slips {
		if i > 'z'-'a' {
			break
		}
		for n, row := range desk.Wrap(slip.Text, w-2) {
			letter := "  "
			if n == 0 {
				letter = st.Key.Render(string(rune('a'+i))) + " "
			}
			rows = append(rows, letter+row)
		}
	}
	return rows
}

// pilotRows say where the hole is, whether the tapes explain that, and how far the centre may still go.
func pilotRows(p rules.PilotReport, s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	rows := desk.Wrapped(st.Plain, "Judged at the hole: x "+survey.Format(p.Is.X, u)+", "+desk.Across(p.Is.Y, s.Settings)+".", w)
	off := "Pilot where it was meant"
	if way := words.Way(p.Off, s.Settings); way != "" {
		off = "Pilot " + desk.Length(p.Away, u) + " off (" + way + ")"
	}
	off += ", " + desk.PlusMinus95(p.Sigma, u) + ": "
	switch {
	case p.Explained:
		rows = append(rows, desk.Wrapped(st.Strong, off+"the tapes explain it.", w)...)
	case len(p.Slips) > 0:
		rows = append(rows, desk.Wrapped(st.Fault, fmt.Sprintf("%smore than the tapes explain. %s: what would (%d)",
			off, keyExplain.Help().Key, len(p.Slips)), w)...)
	default:
		rows = append(rows, desk.Wrapped(st.Fault, off+"no tape and no single slip explains it. Measure the hole again.", w)...)
	}
	return append(rows, desk.Wrapped(st.Plain, mayMove(p, s), w)...)
}

// mayMove says how far the centre may go, and where it is best.
func mayMove(p rules.PilotReport, s desk.State) string {
	u := s.Settings.Units
	text := "Centre may move " + desk.Length(math.Max(0, p.MayMove), u)
	if !better(p) {
		return text + "; nowhere there is better."
	}
	return text + fmt.Sprintf(". Best %s: %s to spare, not %s. %s: move it", words.Way(p.Move.By, s.Settings),
		survey.Format(p.Move.Margin, u), survey.Format(p.Move.Before, u), keyBest.Help().Key)
}

// bestPlaces are the places to show on the plan where the cut would be better.
func bestPlaces(s desk.State) []geometry.Point {
	if p, ok := pilotOf(s); ok && better(p) {
		return []geometry.Point{p.Move.To}
	}
	return nil
}
