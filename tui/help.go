package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// newHelp makes the help: what to measure next, then the bindings themselves, those of the screen that shows, those that
// hold everywhere, and those of the other screens.
func newHelp(r *Root) *reader {
	type section struct {
		title string
		keys  []key.Binding
	}
	sections := []section{
		{r.screens[r.at].Title() + " (the screen you are on)", r.screens[r.at].Keys(r.desk.State)},
		{"On every screen", r.everywhere()},
	}
	for i, s := range r.screens {
		if i != r.at {
			sections = append(sections, section{s.Title(), s.Keys(r.desk.State)})
		}
	}
	return &reader{title: "Help", text: func(_ *rules.Result, styles desk.Styles, w int) []string {
		rows := r.helpAdvice(styles, w)
		for _, s := range sections {
			rows = append(rows, styles.Strong.Render(s.title))
			for _, b := range s.keys {
				if r.plain {
					rows = append(rows, keyHint(b))
					continue
				}
				rows = append(rows, helpRows(styles, b, w)...)
			}
			rows = append(rows, "")
		}
		for _, row := range desk.Wrap(r.helpEnds(), w) {
			rows = append(rows, styles.Faint.Render(row))
		}
		return rows
	}}
}

// everywhere are the keys that hold on every screen.
func (r *Root) everywhere() []key.Binding {
	if !r.plain {
		return desk.Everywhere()
	}
	return append([]key.Binding{keyReadAll, keyAgain}, desk.Everywhere()...)
}

// helpEnds is the last that the help says.
func (r *Root) helpEnds() string {
	if r.plain {
		return fieldKeys
	}
	return fieldKeys + " The words at the foot and in the top row can be tapped."
}

// helpAdvice says what to measure next, as a low window may have no other room for it.
func (r *Root) helpAdvice(styles desk.Styles, w int) []string {
	text := words.Advice(r.desk.State)
	if text == "" {
		return nil
	}
	return append(append([]string{styles.Strong.Render("Next")}, desk.Wrap("  "+text, w)...), "")
}

const fieldKeys = "While a field is being typed in, letters and digits belong to it; Esc or a tap elsewhere leaves it."

// helpKeyWidth is the column of the keys' names.
const helpKeyWidth = 14

func helpRows(styles desk.Styles, b key.Binding, w int) []string {
	if !b.Enabled() {
		return nil
	}
	name := "  " + b.Help().Key
	name += strings.Repeat(" ", max(1, helpKeyWidth-desk.Width(name)))
	rows := desk.Wrap(b.Help().Desc, w-desk.Width(name))
	for i := range rows {
		lead := strings.Repeat(" ", desk.Width(name))
		if i == 0 {
			lead = styles.Key.Render(name)
		}
		rows[i] = lead + rows[i]
	}
	return rows
}
