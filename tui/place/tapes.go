package place

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// Where the tapes do not explain a pilot hole, tapes straight from it show where it is. What the survey expects of one is said only
// once it has been read: whoever knows the answer reads no tape.

var keyDirect = bind("d", "tape straight from the hole", "d")

// taping is the list of direct tapes while it is open: a field each.
type taping struct {
	open bool
	form form.Form
	key  string // of the field with a text that was not taken yet; "" for none
	text string
}

// tapeKey is the key of the field of a tape: it stays when the tape is taken.
func tapeKey(s desk.State, all []rules.HoleTape, i int) string {
	before := 0
	for _, h := range all[:i] {
		if h.To == all[i].To {
			before++ // a file may have two to one thing
		}
	}
	return fmt.Sprintf("%s %d", s.Job.Obstructions[all[i].To].Name, before)
}

// tapeFields are a field for each tape, taken or to take.
func tapeFields(s desk.State) []form.Field {
	p, _ := pilotOf(s)
	fields := make([]form.Field, len(p.Tapes))
	for i, h := range p.Tapes {
		fields[i] = form.Field{
			Key: tapeKey(s, p.Tapes, i), Label: s.Job.Obstructions[h.To].Name, Unit: "mm", Blank: "not taped", Note: came(h, s),
		}
		if h.Direct >= 0 {
			fields[i].Text = s.Job.Cut.Direct[h.Direct].Gap.Text
		}
	}
	return fields
}

// came says what a tape that was taken comes to, "" for one to take.
func came(h rules.HoleTape, s desk.State) string {
	if h.Direct < 0 {
		return ""
	}
	u := s.Settings.Units
	off := "as the survey has it"
	if far := desk.Length(math.Abs(h.Far), u); far != desk.Length(0, u) {
		off = far + map[bool]string{true: " over", false: " under"}[h.Far > 0] + " the survey's " + survey.Format(h.Is, u)
	}
	return off + ": " + desk.VerdictWord(h.Verdict)
}

// tapesOpened opens the list at the first tape that is to be taken.
func (m screen) tapesOpened(s desk.State) (screen, desk.Change) {
	fields := tapeFields(s)
	if len(fields) == 0 {
		return m, desk.Change{Say: "A level tape from the hole reaches nothing that was measured: measure a rail, a crossmember or a pipe first, or the hole again (" +
			keyPilot.Help().Key + ")."}
	}
	first := max(0, slices.IndexFunc(fields, func(f form.Field) bool { return f.Text == "" }))
	m.tapes = taping{open: true, form: form.Form{}.Open(fields[first].Key, fields)}
	return m, m.pointed(desk.Change{}, s)
}

// pointed picks out on the plan what the tape runs to.
func (m screen) pointed(change desk.Change, s desk.State) desk.Change {
	p, _ := pilotOf(s)
	for i, h := range p.Tapes {
		if tapeKey(s, p.Tapes, i) == m.tapes.form.On() {
			change.Select = &h.To
		}
	}
	return change
}

// tape answers a key while the list is open. A text is taken when its field is left, whichever way.
func (m screen) tape(k tea.KeyMsg, s desk.State) (screen, desk.Change) {
	fields := tapeFields(s)
	next, event := m.tapes.form.Update(k, fields)
	if event.Edited {
		m.tapes.form, m.tapes.key, m.tapes.text = next.Took(event.Key, fields), event.Key, event.Text
		return m, desk.Change{Say: event.Say}
	}
	if !event.Left && !event.Past && next.On() == m.tapes.form.On() {
		m.tapes.form = next
		return m, desk.Change{Say: event.Say}
	}
	m, change, err := m.tapeTaken(s)
	switch {
	case event.Left:
		m.tapes = taping{}
		if err != nil {
			change.Say = "Not taken: " + err.Error()
		}
		return m, change
	case err != nil:
		return m, change // the field says why
	}
	m.tapes.form = next
	return m, m.pointed(change, s)
}

// tapeTaken puts the text that was typed into the job; one that is blank takes the tape out. The error says why it does not.
func (m screen) tapeTaken(s desk.State) (screen, desk.Change, error) {
	key, text := m.tapes.key, strings.TrimSpace(m.tapes.text)
	m.tapes.key, m.tapes.text = "", ""
	p, _ := pilotOf(s)
	at := slices.IndexFunc(tapeFields(s), func(f form.Field) bool { return f.Key == key })
	if key == "" || at < 0 {
		return m, desk.Change{}, nil
	}
	gap, err := gapRead(text)
	if err != nil {
		m.tapes.form = m.tapes.form.Refused(tapeFields(s)[at], text, err.Error())
		return m, desk.Change{}, err
	}
	return m, taped(s, p.Tapes[at], gap), nil
}

// taped is the job with a reading of a tape, or without the tape where there is none.
func taped(s desk.State, h rules.HoleTape, gap survey.Reading) (change desk.Change) {
	cut, name := *s.Job.Cut, s.Job.Obstructions[h.To].Name
	tape := vehicles.DirectTape{To: name, Gap: gap}
	switch {
	case gap.Text == "" && h.Direct < 0, h.Direct >= 0 && cut.Direct[h.Direct].Gap == gap:
		return change
	case gap.Text == "":
		cut.Direct = cut.Direct.Without(h.Direct)
		change.Say = "The tape to " + name + " is taken out; " + desk.KeyUndo.Help().Key + " brings it back."
	case h.Direct < 0:
		cut.Direct = cut.Direct.Insert(len(cut.Direct), tape)
	default:
		cut.Direct = cut.Direct.With(h.Direct, tape)
	}
	job := s.Job.WithCut(cut)
	change.Job = &job
	return change
}

// gapRead reads what a tape from the hole says; blank is no reading.
func gapRead(text string) (survey.Reading, error) {
	if text == "" {
		return survey.Reading{}, nil
	}
	r, err := survey.Typed(text, survey.Y)
	if err == nil && (r.Start != survey.Datum || r.Length < 0) {
		err = errors.New("no L, R, + or minus: the tape runs straight from the hole's centre, e.g. 579, 57.9cm or 22 13/16in")
	}
	return r, err
}

// tapesPasted puts pasted lines into the fields, all of them as one edit, as far as they can be read.
func (m screen) tapesPasted(text []rune, s desk.State) (screen, desk.Change) {
	fields := tapeFields(s)
	next, put, err := m.tapes.form.Paste(text, func([]form.Put) []form.Field { return fields })
	if err != nil {
		return m, desk.Change{Say: err.Error()}
	}
	m.tapes.form = next
	var all desk.Change
	for _, one := range put {
		m.tapes.key, m.tapes.text = one.Key, one.Text
		p, _ := pilotOf(s)
		at := slices.IndexFunc(fields, func(f form.Field) bool { return f.Key == one.Key })
		gap, err := gapRead(strings.TrimSpace(one.Text))
		if err != nil {
			m.tapes.form = m.tapes.form.Refused(fields[at], one.Text, err.Error())
			continue
		}
		if change := taped(s, p.Tapes[at], gap); change.Job != nil {
			s.Job, all.Job = *change.Job, change.Job
		}
	}
	m.tapes.key, m.tapes.text = "", ""
	return m, all
}
