package place

import (
	"context"
	"fmt"
	"runtime"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

var (
	keyChoose  = bind("c", "whole layouts", "c")
	keyThrough = bind("arrows", "go through them", "up", "down", "left", "right")
	keyTakeAll = bind("Enter", "takes it whole", "enter")
)

// choose opens the whole layouts, or says why it can't.
func (m screen) choose(s desk.State) (screen, desk.Change) {
	switch {
	case s.Job.Heater == nil:
		return m, desk.Change{Say: words.Sentence(noHeater)}
	case len(s.Faults) > 0:
		return m, desk.Change{Say: roomUnknown}
	case len(s.Result.Findings) == 0:
		return m, desk.Change{Say: "Nothing is judged yet: put the floor in first."}
	}
	if err := rules.ToLayOut.May(&s.Result); err != nil {
		return m, desk.Change{Say: "No layouts: " + err.Error()}
	}
	m.choosing, m.seeking, m.at = true, true, 0
	return m, desk.Change{}
}

// seek works out whole layouts; it takes longer than a frame.
func seek(s desk.State) (moving.Search[rules.Layouts], tea.Cmd) {
	result := s.Result
	return moving.Seek(s, func(ctx context.Context, tell func(string)) rules.Layouts {
		said, _ := rules.FindLayouts(ctx, &result, runtime.GOMAXPROCS(0), func(p rules.Progress) { tell(words.SoFar(p)) }) // it was asked whether it may (choose): its only other error is that it was stopped
		return said
	})
}

// left closes the layouts; what is still sought is sought no longer.
func (m screen) left() screen {
	m.choosing, m.places = false, m.places.Stop()
	return m
}

// outdated tells whether the job has changed since the layouts were looked for.
func (m screen) outdated(s desk.State) bool {
	return m.choosing && m.places.Outdated(s)
}

// proposed are the layouts that can be gone through.
func (m screen) proposed() []rules.Layout {
	if m.choosing && m.places.Done && !m.places.Failed {
		return m.places.Said.Best
	}
	return nil
}

// pick answers a key while layouts are looked for or proposed.
func (m screen) pick(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	n := len(m.proposed())
	switch {
	case key.Matches(k, desk.KeyLeave):
		going := m.places.Going()
		if m = m.left(); going {
			return m, desk.Change{Say: desk.Stopped}
		}
	case n == 0:
		return m, desk.Change{Say: m.picks()}
	case key.Matches(k, keyTakeAll):
		return m.takeLayout(s)
	case key.Matches(k, keyThrough):
		if s := k.String(); s == "up" || s == "left" {
			m.at += n - 2
		}
		m.at = (m.at + 1) % n
	default:
		return m, desk.Change{Say: m.picks()}
	}
	return m, desk.Change{}
}

// picks is what a key is told that does nothing to the layouts as they are; "" while none are looked for or proposed.
func (m screen) picks() string {
	leave := desk.KeyLeave.Help().Key
	switch {
	case !m.choosing:
		return ""
	case m.places.Going():
		return "No layouts yet: they are still looked for. " + leave + " stops it."
	case len(m.proposed()) == 0:
		return "There is no layout to take. " + leave + " leaves."
	}
	return keyTakeAll.Help().Key + " takes the layout that is shown, the arrows go through them, " + leave + " leaves."
}

// takeLayout takes the layout that is shown, in one undo step, and says what was laid.
func (m screen) takeLayout(s desk.State) (screen, desk.Change) {
	l := m.proposed()[m.at]
	if l.AsItIs {
		return m.left(), desk.Change{Say: "The layout stays as it is. Nothing was changed."}
	}
	job := l.Result.Job
	return m.left(), desk.Change{Job: &job, Called: fmt.Sprintf("layout %d", m.at+1), Say: m.saysLaidOut(&l, s)}
}

// saysLaidOut says what taking a layout laid. Under a plan that is a row: with more *Runs* would have no room for both its pictures, and where the cut
// is stands in the panel. Only why there is no fuel line may take another.
func (m screen) saysLaidOut(l *rules.Layout, s desk.State) string {
	names, sizes := laidOut(l, s)
	undo := desk.KeyUndo.Help().Key + " "
	if 0 < m.w && m.w < desk.SideBySide {
		return survey.Joined(" ", laysOut+strings.Join(names, ", ")+".", undo+"undoes it.", noFuelLaid(l, s))
	}
	return survey.Joined(" ", laysOut+strings.Join(sizes, ", ")+".", noFuelLaid(l, s), undo+"takes all of it back.")
}

// laysOut begins what is said of it.
const laysOut = "Laid out: "

// laidOut are the things that a layout lays, by name and with where or how long they are.
func laidOut(l *rules.Layout, s desk.State) (names, sizes []string) {
	u := s.Settings.Units
	if !l.Result.CutStays() {
		names = append(names, "cut")
		sizes = append(sizes, "cut at "+desk.AtX(l.At.X, u)+", "+desk.Across(l.At.Y, s.Settings), "warm air "+facing(l.Yaw, s))
	}
	for _, of := range vehicles.RunKinds {
		if run := l.Result.Plan.Run(of); run != nil {
			names = append(names, of.String())
			sizes = append(sizes, of.String()+" "+desk.Length(run.Line.Length(), u)+" long")
		}
	}
	return names, sizes
}

// noFuelLaid says why a layout has no fuel line, and what asks for what is wanting to one.
func noFuelLaid(l *rules.Layout, s desk.State) string {
	text := ""
	if none := words.NoFuelLine(l, s.Settings.Units); none != "" {
		text = words.Sentence(none)
	}
	if l.Result.Job.Fuel == nil && rules.FuelLacks(&l.Result.Job) != "" {
		text += " Runs asks where one begins."
	}
	return text
}
