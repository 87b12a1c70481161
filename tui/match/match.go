// Package match is the screen for matching points: features seen from both sides of the floor, which tie what was
// measured below to what is marked above. It shows both readings of each, how well they fit, what each would say if it
// were left out, and which reading to look at again. It fits nothing itself: that is survey's, the verdict is rules'.
package match

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/plan"
)

// Screen is the screen "Match". It is a plain value.
type Screen struct{ entry entryscreen.Entry }

// New returns the screen.
func New() desk.Screen { return Screen{entryscreen.New(&spec)} }

func bind(name, what string) key.Binding {
	return key.NewBinding(key.WithKeys(name), key.WithHelp(name, what))
}

var (
	keyUse   = bind("o", "in or out of the fit")
	keyBelow = bind("s", "swap the sides of the readings below")
	keyAbove = bind("t", "swap the sides of those above")
)

var spec = entryscreen.Spec{
	Title: title, Row: row, Warn: wrongs, Beside: beside, Tells: told, Under: report, Plan: shown,
	Records: func(s desk.State) []form.Record { return features.Ties.Records(s.Job) },
	Empty:   "No matching point yet. n: a new one, read from below and from above.",
	Fresh:   []entryscreen.Fresh{{Key: bind("n", "new matching point"), List: features.Ties}},
}

// Title is what the header calls the screen.
func (m Screen) Title() string { return "Match" }

// Typing says whether letters belong to a field.
func (m Screen) Typing() bool { return m.entry.Typing() }

// Update answers one message.
func (m Screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	if size, ok := msg.(tea.WindowSizeMsg); ok {
		m.entry = m.entry.Sized(size.Width, size.Height)
		return m, desk.Change{}, nil
	}
	m, change := m.step(msg, s)
	return m, change, nil
}

// step answers one key or tap.
func (m Screen) step(msg tea.Msg, s desk.State) (Screen, desk.Change) {
	if press, isKey := msg.(tea.KeyMsg); isKey && !m.Typing() {
		switch {
		case key.Matches(press, keyUse):
			return m, m.use(s)
		case key.Matches(press, keyBelow, keyAbove):
			if fit := matched(s); fit.swapped || fit.oneSided >= 0 {
				return m, swap(s, fit.oneSided, key.Matches(press, keyBelow))
			}
		}
	}
	var change desk.Change
	m.entry, change = m.entry.Update(msg, fitted(s))
	return m, change
}

// use takes the point the keys act on out of the fit, or puts it back. Its readings stay.
func (m Screen) use(s desk.State) desk.Change {
	record, ok := m.entry.Synced(s).Here(s)
	thing, isThing := record.(features.Record)
	if !ok || !isThing || !thing.Real(s.Job) {
		return desk.Change{Say: "Only a point with all its readings can be in the fit or out of it."}
	}
	tie := s.Job.Ties[thing.Row]
	tie.Use = !tie.Use
	job := s.Job
	job.Ties = job.Ties.With(thing.Row, tie)
	say := tie.Name + ": in the fit again"
	if !tie.Use {
		say = tie.Name + ": left out of the fit; its readings are kept"
	}
	return desk.Change{Job: &job, Step: thing.ID() + " use", Say: say}
}

// swap changes left and right of the readings on one side over: of one point, or of all of them for -1.
func swap(s desk.State, one int, below bool) desk.Change {
	if one >= 0 {
		job := s.Job.WithTieSideSwapped(one, below)
		return desk.Change{Job: &job, Step: "swap sides", Say: job.Ties[one].Name + ": its side is changed over."}
	}
	job := s.Job.WithTieSidesSwapped(below)
	say := "Sides of the readings above swapped. What else was read above with them is in doubt too."
	if below {
		say = "Sides of the readings below swapped. What else was read below with them is in doubt too."
	}
	return desk.Change{Job: &job, Step: "swap sides", Say: say}
}

// Records are those of all its forms.
func (m Screen) Records(s desk.State) []form.Record { return features.Ties.Records(s.Job) }

// View paints the screen.
func (m Screen) View(s desk.State, w, h int) string { return m.entry.View(fitted(s), w, h, nil) }

// Keys are the bindings that hold now.
func (m Screen) Keys(s desk.State) []key.Binding {
	fit := matched(s)
	switch {
	case fit.swapped || fit.oneSided >= 0:
		return m.entry.Keys(s, keyBelow, keyAbove, keyUse)
	case len(s.Job.Ties) > 0:
		return m.entry.Keys(s, keyUse)
	}
	return m.entry.Keys(s)
}

func title(s desk.State) string {
	in, out := 0, 0
	for _, t := range s.Job.Ties {
		if t.Use {
			in++
		} else {
			out++
		}
	}
	text := fmt.Sprintf("Matching points: %d in the fit", in)
	if out > 0 {
		text += fmt.Sprintf(", %d left out", out)
	}
	return text
}

// row is a point's readings below and above side by side under its name, and what is left over of it.
func row(record form.Record, s desk.State) form.Row {
	thing := record.(features.Record)
	name, _ := thing.Name(s.Job)
	out := form.Row{Head: name}
	if !thing.Real(s.Job) {
		return out
	}
	t := s.Job.Ties[thing.Row]
	out.Text = fmt.Sprintf("%s, %s │ %s, %s", t.Below[0], t.Below[1], t.Above[0], t.Above[1])
	fit := matched(s)
	switch off, known := fit.left(t.Name); {
	case fit.swapped || thing.Row == fit.oneSided:
		out.Right, out.Fault = "! swapped?", true
	case !t.Use && known:
		out.Right = "out, " + survey.Format(off.Norm(), s.Settings.Units) + " off"
	case !t.Use:
		out.Right = "left out"
	case known:
		out.Right = "left over " + survey.Format(off.Norm(), s.Settings.Units)
		if t.Name == fit.Suspect {
			out.Right, out.Fault = "! "+out.Right, true
		}
	}
	return out
}

// wrongs says what else keeps the job from being judged.
func wrongs(s desk.State) []string {
	var out []string
	for _, fault := range s.Faults {
		if !desk.Misfit(fault) {
			out = append(out, fault.Text)
		}
	}
	return out
}

// shown are the arrows on the plan.
func shown(e entryscreen.Entry, s desk.State) plan.Options {
	tie := -1
	if name, ok := picked(e, s); ok {
		for i, t := range s.Job.Ties {
			if t.Name == name {
				tie = i
			}
		}
	}
	return plan.Options{LeftOver: &drawing.LeftOver{Times: drawing.Times(matched(s).Fit), Tie: tie}}
}
