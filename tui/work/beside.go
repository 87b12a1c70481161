package work

import (
	"fmt"
	"strings"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/words"
)

// saying is something said of a step, and how it is painted.
type saying struct {
	text  string
	paint func(desk.Styles) desk.Style
}

func plainly(st desk.Styles) desk.Style    { return st.Plain }
func strongly(st desk.Styles) desk.Style   { return st.Strong }
func faintly(st desk.Styles) desk.Style    { return st.Faint }
func worryingly(st desk.Styles) desk.Style { return st.Fault }

// sayings are all that is said of the step the keys act on, the first the most needed. Where there is little room the caution is named
// and not read out: ! reads it.
func sayings(e entryscreen.Entry, s desk.State, whole bool) (list []saying) {
	record, there := e.Here(s)
	r, isStep := record.(stepRecord)
	if !there || !isStep {
		return nil
	}
	all := s.WorkSteps()
	step, i := stepOf(all, r.id, &s.Job)
	if i < 0 {
		return []saying{{words.WorkElsewhere(step.Done) + ".", plainly}}
	}
	say := func(text string, paint func(desk.Styles) desk.Style) {
		if text != "" {
			list = append(list, saying{text, paint})
		}
	}
	say(step.Sentence(), strongly)
	if wrong := all.Wrong(i); wrong != "" {
		say("! "+wrong, worryingly)
	} else if !step.Ticked() {
		say(all.Warning(i), worryingly)
	}
	say(marksMade(&step, s), plainly)
	say(step.Wanted(), plainly)
	say(words.StepDefers(&step), plainly)
	switch {
	case whole:
		say(words.StepCaution(&step), plainly)
	default:
		say(words.StepCautionBrief(&step), faintly)
	}
	return list
}

// stripRows are how many rows what is said takes at most where it stands under the list.
const stripRows = 8

// besideFewFields are as many more under the form of a thing as it was made, which has few fields.
const besideFewFields = 3

// beside paints what is said about a row; rows is how many rows of w columns it needs.
func beside(e entryscreen.Entry, s desk.State, w, _ int) (text string, rows int) {
	if _, isBuilt := builtHere(e, s); isBuilt {
		return besideBuilt(e, s, w)
	}
	st, whole := s.Settings.Styles(), e.SideBySide()
	var lines []saying
	for _, said := range sayings(e, s, whole) {
		for _, line := range desk.Wrap(said.text, w-1) {
			lines = append(lines, saying{line, said.paint})
		}
	}
	if !whole && len(lines) > stripRows {
		lines = lines[:stripRows]
		last := &lines[stripRows-1]
		last.text = desk.Cut(last.text, w-3) + " …"
	}
	var out []string
	for _, line := range lines {
		out = append(out, " "+line.paint(st).Render(line.text))
	}
	return strings.Join(out, "\n"), max(1, len(out))
}

// tells is what is said beside a row, as lines.
func tells(e entryscreen.Entry, s desk.State) (lines []string) {
	if _, isBuilt := builtHere(e, s); isBuilt {
		c, otherwise := compared(s)
		if !otherwise {
			return []string{asPlanned}
		}
		return aloud.Rows(append([]string{c.head()}, c.lines(s)...)...)
	}
	for _, said := range sayings(e, s, true) {
		lines = append(lines, said.text)
	}
	return aloud.Rows(lines...)
}

// builtHere is the thing made that the keys act on.
func builtHere(e entryscreen.Entry, s desk.State) (r builtRecord, is bool) {
	record, there := e.Here(s)
	if !there {
		return r, false
	}
	r, is = record.(builtRecord)
	return r, is
}

// besideBuilt paints how the job stands as built, beside how it was planned.
func besideBuilt(e entryscreen.Entry, s desk.State, w int) (text string, rows int) {
	st := s.Settings.Styles()
	c, otherwise := compared(s)
	if !otherwise {
		out := desk.Wrapped(st.Plain, asPlanned, w-1)
		return desk.Indented(strings.Join(out, "\n")), len(out)
	}
	out := desk.Wrapped(st.Strong, c.head(), w-1)
	if c.fault == "" {
		out = append(out, c.rows(s, w-1)...)
	}
	most := stripRows
	if e.Typing() {
		most += besideFewFields
	}
	if !e.SideBySide() && len(out) > most {
		left := len(out) - most + 1
		out = append(out[:most-1], st.Faint.Render(desk.FitRow(fmt.Sprintf("and %d more: undermark check --built", left), w-1)))
	}
	return desk.Indented(strings.Join(out, "\n")), len(out)
}
