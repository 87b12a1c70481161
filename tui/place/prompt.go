package place

import (
	"errors"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// What the prompts ask for.
const (
	nothing = iota
	cutAt   // where the cut is to be, as the tape reads from below
	drilled // where the pilot hole came out, as the tape reads from below
	collar  // the collar's depth, the hole's width, and how wide what burns is cut back
)

// headings say what a prompt asks for.
var headings = [...]string{
	cutAt:   "The cut, read from below; now ",
	drilled: "Where did the pilot hole come out? As the tape reads from below. Both blank: not drilled.",
	collar:  "How deep is the collar, how wide the hole, how wide are wood, foam and lining cut back?",
}

// heading is what stands above the fields: of a place, where that is now, as the tape says it in these fields, and as the other screens do. Where the pilot hole should be is not said before it has
// been read, or it would be copied.
func (m screen) heading(s desk.State) string {
	text := headings[m.prompt.Kind]
	if m.prompt.Kind == cutAt {
		at, u := s.Job.Cut.At, s.Settings.Units
		if len(s.Faults) == 0 && len(s.Marks.Marks) > 0 {
			now := rules.ReadBelow(&s.Job, plan2(at))
			text += fromDatum(now.Bumper, s) + ", L " + survey.Format(now.Left, u) + ": "
		}
		text += desk.AtX(at[0], u) + ", " + desk.Across(at[1], s.Settings) + "."
	}
	return text
}

// marked says what the tape was to say at the pilot hole's mark, as it was typed, and where the hole is seen from there.
func (m screen) marked(s desk.State) string {
	at, err := m.prompt.Place(s, 0)
	if len(s.Faults) > 0 || len(s.Marks.Marks) == 0 || err != nil {
		return ""
	}
	mark, u := &s.Marks.Marks[0], s.Settings.Units
	across, _ := survey.Typed(m.prompt.Text(1), survey.Y)
	text, side := "; marked at "+survey.Format(mark.Below.Bumper, u)+", ", ""
	switch across.Start {
	case survey.FromLeft:
		side = "L " + survey.Format(mark.Below.Left, u)
	case survey.FromRight:
		side = "R " + survey.Format(mark.Below.Right, u)
	default:
		side = survey.Format(mark.Plan.Y, u)
	}
	if figures(m.prompt.Text(1)) < figures(side) {
		return "" // it is not typed yet, and would be copied
	}
	text += side
	if way := words.Way(at.Sub(mark.Plan), s.Settings); way != "" {
		return text + ": it is " + way
	}
	return text + ": it is there"
}

// ask opens a prompt.
func (m screen) ask(kind int, s desk.State) screen {
	m.back = ""
	m.prompt = m.prompt.Ask(kind, m.asks(kind, s))
	return m
}

// asks are the fields of a prompt.
func (m screen) asks(kind int, s desk.State) []moving.Ask {
	along, across := "", ""
	switch kind {
	case collar:
		depth := vehicles.Number{}
		if s.Job.Heater != nil {
			depth = s.Job.Heater.Turret
		}
		return []moving.Ask{
			{Label: "collar depth", Text: depth.Text(), Reads: moving.Size, Unit: "mm", Blank: vehicles.NotMeasured},
			{Label: "hole across", Text: survey.Exact(s.Job.Cut.Across), Reads: moving.Size, Unit: "mm", Blank: vehicles.NotMeasured},
			{Label: "cut back to", Text: s.Job.Cut.Relieved.Text(), Reads: moving.Size, Unit: "mm", Blank: vehicles.NotSaid, Pass: true}, // steel has nothing to be cut back
		}
	case drilled:
		if d := s.Job.Cut.Drilled; d != nil {
			along, across = d[0].Text, d[1].Text
		}
	}
	note := ""
	if m.prompt.Kind == kind {
		note = m.prompt.Note(s, 0)
	}
	if kind == drilled && note != "" {
		note += m.marked(s)
	}
	asks := moving.PlaceAsks(s, along, across, note)
	if kind == drilled {
		asks[0].Blank, asks[1].Blank = vehicles.NotMeasured, vehicles.NotMeasured
	}
	return asks
}

// figures is how many the first number of a text has, before a point or a fraction.
func figures(text string) int {
	text = strings.TrimLeftFunc(text, func(r rune) bool { return !unicode.IsDigit(r) })
	return len(text) - len(strings.TrimLeftFunc(text, unicode.IsDigit))
}

// typed answers a key or a pasted text while the fields have the keys.
func (m screen) typed(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	return m.answered(s)(m.prompt.Press(k, m.asks(m.prompt.Kind, s), s))
}

// answered goes on after a prompt has answered a key or a tap.
func (m screen) answered(s desk.State) func(prompt moving.Prompt, change desk.Change, taken bool) (screen, desk.Change) {
	return func(prompt moving.Prompt, change desk.Change, taken bool) (screen, desk.Change) {
		m.prompt = prompt
		if taken {
			return m.take(s)
		}
		return m, change
	}
}

// take puts what was typed into the job, or says why it can't be.
func (m screen) take(s desk.State) (screen, desk.Change) {
	change, err := m.taken(s)
	if err != nil {
		return m, desk.Change{Say: err.Error()}
	}
	if m.back != "" && change.Job.Cut.Drilled != nil && explainedIn(*change.Job, s) {
		change.Goto, change.Say = m.back, change.Say+" "+words.Sentence(tapesExplain)
	}
	m.prompt = moving.Prompt{}
	return m, change
}

// explainedIn tells whether the readings of a job explain where its pilot hole is: otherwise there is more to be done about it first.
func explainedIn(job vehicles.Job, s desk.State) bool {
	result, faults := rules.Judge(job, s.Book)
	if len(faults) > 0 {
		return false
	}
	p, ok := rules.PilotCheck(result)
	return ok && p.Explained
}

// taken is the change that a prompt comes to.
func (m screen) taken(s desk.State) (desk.Change, error) {
	values, err := m.prompt.Values(m.asks(m.prompt.Kind, s), s)
	switch {
	case err != nil:
		return desk.Change{}, err
	case m.prompt.Kind == collar:
		return takeCollar(s, values[0].Number, values[1].Number, values[2].Number)
	case m.prompt.Kind == drilled && m.prompt.Blank():
		return undrilled(s), nil
	}
	at, err := m.prompt.Place(s, 0)
	switch {
	case err != nil:
		return desk.Change{}, err
	case m.prompt.Kind == drilled:
		job, say := s.Job.WithDrilled(&vehicles.Pair{values[0].Reading, values[1].Reading}), "From now on every check is for where the hole is."
		if !explainedIn(job, s) {
			say = "Until it is explained where the hole is, what is checked at the cut is held back."
		}
		return desk.Change{Job: &job, Tick: drilledMark(s), Say: say}, nil
	}
	return moveCut(s.Job, geometry.Point{X: moving.Hundredth(at.X), Y: moving.Hundredth(at.Y)}, ""), nil
}

// drilledMark is the mark that was made by drilling the hole, "" where it counts as made.
func drilledMark(s desk.State) string {
	if s.Job.Cut.Drilled != nil || len(s.Marks.Marks) == 0 || s.Ticked[s.Marks.Marks[0].Name] {
		return ""
	}
	return s.Marks.Marks[0].Name
}

// undrilled takes the pilot hole back.
func undrilled(s desk.State) desk.Change {
	job := s.Job.WithDrilled(nil)
	say := "The pilot counts as not drilled."
	if len(s.Job.Cut.Direct) > 0 {
		say += " The tapes straight from it are gone with it: " + desk.KeyUndo.Help().Key + " brings all back."
	}
	return desk.Change{Job: &job, Say: say}
}

func takeCollar(s desk.State, depth, across, back vehicles.Number) (desk.Change, error) {
	switch {
	case s.Job.Heater == nil:
		return desk.Change{}, errors.New(noHeater)
	case !across.Set:
		return desk.Change{}, errors.New("the hole's width is wanted")
	case across.Value <= s.Job.Cut.PilotAcross():
		return desk.Change{}, errors.New("the hole must be wider than its pilot, " + survey.InMM(s.Job.Cut.PilotAcross()))
	case back.Set && back.Value < across.Value:
		return desk.Change{}, errors.New("wood is cut back to at least the hole's width")
	}
	cut, heater := *s.Job.Cut, *s.Job.Heater
	heater.Turret, cut.Across, cut.Relieved = depth, across.Value, back
	heater.Given |= vehicles.HasTurret
	job := s.Job.WithCut(cut).WithHeater(heater)
	return desk.Change{Job: &job}, nil
}
