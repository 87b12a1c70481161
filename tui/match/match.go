// Package match is the screen for matching points: features seen from both sides of the floor, which tie what was
// measured below to what is marked above. It shows both readings of each, how well they fit, what each would say if it
// were left out, and which reading to look at again. It fits nothing itself: that is survey's, the verdict is rules'.
package match

import (
	"fmt"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/vehicles"
)

// Screen is the screen "Match". It is a plain value.
type Screen struct {
	entry entryscreen.Entry
	own   desk.Camera // where the plan was moved by hand at the point that is picked out
}

// New returns the screen.
func New() desk.Screen { return Screen{entry: entryscreen.New(&spec)} }

func bind(name, what string) key.Binding {
	return key.NewBinding(key.WithKeys(name), key.WithHelp(name, what))
}

// What the keys do that are asked for where sides are swapped.
const (
	swapBelow = "swap the sides of the readings below"
	swapAbove = "of those above"
)

var (
	keyUse   = bind("o", "in or out of the fit")
	keyBelow = bind("s", swapBelow)
	keyAbove = bind("t", "swap the sides "+swapAbove)
)

var spec = entryscreen.Spec{
	Title: title, Row: row, Warn: wrongs, Beside: beside, Tells: told, Under: report, Plan: shown,
	Records: func(s desk.State) []form.Record { return features.Ties.Records(s.Job) },
	Form:    usualForm,
	Empty:   "No matching point yet. n: a new one, read from below and from above.",
	Fresh:   []entryscreen.Fresh{{Key: bind("n", "new matching point"), List: features.Ties}},
}

// usualForm is how many rows the form of a point takes, with its title and a blank one.
const usualForm = 8

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
	if _, ok := msg.(desk.Reveal); ok {
		m, change := m.revealed(s)
		return m, change, nil
	}
	m, change := m.step(msg, s)
	return m, change, nil
}

// revealed goes to the point that does not fit, else to the one of which most is left over.
func (m Screen) revealed(s desk.State) (Screen, desk.Change) {
	var change desk.Change
	m.entry, change = m.entry.Reveal(func(of form.Record) bool {
		feature, ok := of.(features.Record)
		return ok && feature.Row == unfitting(s)
	}, fitted(s))
	return m, change
}

// unfitting is the point to look at first, -1 for none: the one that is swapped or suspected, else that of which most is left over.
func unfitting(s desk.State) int {
	fit := matched(s)
	if fit.oneSided >= 0 {
		return fit.oneSided
	}
	worst, most := -1, -1.0
	for i, t := range s.Job.Ties {
		off, known := fit.left(t.Name)
		switch {
		case t.Name == fit.Suspect:
			return i
		case t.Use && known && off.Norm() > most:
			worst, most = i, off.Norm()
		}
	}
	return worst
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
	was, _ := picked(m.entry, s)
	var change desk.Change
	m.entry, change = m.entry.Update(msg, m.seeing(fitted(s)))
	if is, _ := picked(m.entry, s); is != was {
		m.own = desk.Camera{}
	}
	if change.Camera != nil {
		m.own = *change.Camera
	}
	return m, change
}

// seeing is the state with the point that is picked out in the picture, unless the plan was moved away from it by hand.
func (m Screen) seeing(s desk.State) desk.State {
	at := tieOf(m.entry, s)
	if at < 0 || at >= len(s.Plan.Ties) {
		return s
	}
	return m.entry.Seeing(s.Plan.Ties[at].Below, m.own, s)
}

// use takes the point the keys act on out of the fit, or puts it back. Its readings stay.
func (m Screen) use(s desk.State) desk.Change {
	record, ok := m.entry.Synced(s).Here(s)
	feature, isFeature := record.(features.Record)
	if !ok || !isFeature || !feature.Real(s.Job) {
		return desk.Change{Say: "Only a point with all its readings can be in the fit or out of it."}
	}
	tie := s.Job.Ties[feature.Row]
	tie.Use = !tie.Use
	job := s.Job
	job.Ties = job.Ties.With(feature.Row, tie)
	say := tie.Name + ": in the fit again"
	if !tie.Use {
		say = tie.Name + ": left out of the fit; its readings are kept"
	}
	return desk.Change{Job: &job, Step: feature.ID() + " use", Say: say}
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
func (m Screen) View(s desk.State, w, h int) string {
	return m.entry.View(m.seeing(fitted(s)), w, h, nil)
}

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
	feature := record.(features.Record)
	name, _ := feature.Name(s.Job)
	out := form.Row{Head: name}
	if !feature.Real(s.Job) {
		return out
	}
	t := s.Job.Ties[feature.Row]
	out.Text = readings(t, s.Job.Ties)
	fit := matched(s)
	switch off, known := fit.left(t.Name); {
	case fit.swapped || feature.Row == fit.oneSided:
		out.Right, out.Fault = "! swapped?", true
	case !t.Use && known:
		out.Right = "out, " + survey.Format(off.Norm(), s.Settings.Units) + " off"
	case !t.Use:
		out.Right = "left out"
	case known:
		out.Right = "left over " + fit.column(s).Write(survey.Format(off.Norm(), s.Settings.Units))
		if t.Name == fit.Suspect {
			out.Right, out.Fault = "! "+out.Right, true
		}
	}
	return out
}

// readings are a point's readings below and above, each under those of the other points.
func readings(t vehicles.Tie, all vehicles.List[vehicles.Tie]) string {
	texts := func(t vehicles.Tie) [4]string {
		return [4]string{t.Below[0].String(), t.Below[1].String(), t.Above[0].String(), t.Above[1].String()}
	}
	var columns [4]desk.Figures
	for _, other := range all {
		for i, text := range texts(other) {
			columns[i] = columns[i].With(text)
		}
	}
	var out [4]string
	for i, text := range texts(t) {
		out[i] = columns[i].Write(text)
	}
	return fmt.Sprintf("%s  %s │ %s  %s", out[0], out[1], out[2], out[3])
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

// tieOf is which of the job's points the keys act on, -1 for none.
func tieOf(e entryscreen.Entry, s desk.State) int {
	name, ok := picked(e, s)
	if !ok {
		return -1
	}
	return slices.IndexFunc(s.Job.Ties, func(t vehicles.Tie) bool { return t.Name == name })
}

// shown are the arrows on the plan.
func shown(e entryscreen.Entry, s desk.State) plan.Options {
	return plan.Options{LeftOver: &drawing.LeftOver{Times: drawing.Times(matched(s).Fit), Tie: tieOf(e, s)}}
}
