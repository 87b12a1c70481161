package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// keysOf is a section of the help: the bindings of a screen, or those of every screen.
type keysOf struct {
	title  string
	screen int // -1 for every screen
	keys   []key.Binding
}

// helpLine is a row of the help, and what of it does something when it is tapped.
type helpLine struct {
	text    string
	of      int      // the section's screen
	buttons []button // none: a tap does nothing
}

// newHelp makes the help: what to measure next, then the bindings themselves, those of the screen that shows, those that
// hold everywhere, and those of the other screens. A tap on a row does what its key does.
func newHelp(r *Root) *reader {
	sections := []keysOf{
		{r.screens[r.at].Title() + " (the screen you are on)", r.at, r.screens[r.at].Keys(r.desk.State)},
		{"On every screen", -1, r.everywhere()},
	}
	for i, s := range r.screens {
		if i != r.at {
			sections = append(sections, keysOf{s.Title(), i, s.Keys(r.desk.State)})
		}
	}
	help := &reader{title: "Help", text: func(_ *rules.Result, styles desk.Styles, w int) (rows []string) {
		for _, line := range r.helpLines(sections, styles, w) {
			rows = append(rows, line.text)
		}
		return rows
	}}
	help.tapped = func(x, row, w int) tea.Cmd {
		lines := r.helpLines(sections, r.desk.State.Settings.Styles(), w)
		for _, p := range lines[row].buttons {
			if p.holds(x) {
				r.shut(help)
				return r.doHelped(lines[row].of, p.key)
			}
		}
		return nil
	}
	return help
}

// doHelped does what a tapped row of the help is for. Another screen is only gone to, with the help of that one: what a key does there
// is better seen before.
func (r *Root) doHelped(screen int, name string) tea.Cmd {
	if screen >= 0 && screen != r.at {
		r.goTo(screen)
		r.open(newHelp(r))
		return nil
	}
	msg, known := keyNamed(name)
	if !known {
		return nil
	}
	if screen < 0 { // also where a field would take the letter
		if cmd, mine := r.always(msg); mine {
			return cmd
		}
		cmd, _ := r.outsideFields(msg)
		return cmd
	}
	return r.pressed(msg)
}

func (r *Root) helpLines(sections []keysOf, styles desk.Styles, w int) (lines []helpLine) {
	add := func(rows ...string) {
		for _, row := range rows {
			lines = append(lines, helpLine{text: row})
		}
	}
	add(r.helpAdvice(styles, w)...)
	for _, s := range sections {
		add(styles.Strong.Render(s.title))
		for _, b := range s.keys {
			if r.plain {
				add(keyHint(b))
				continue
			}
			for _, line := range helpRows(styles, b, w) {
				line.of = s.screen
				lines = append(lines, line)
			}
		}
		add("")
	}
	add(desk.Wrapped(styles.Faint, r.helpEnds(), w)...)
	return lines
}

// everywhere are the keys that hold on every screen.
func (r *Root) everywhere() []key.Binding {
	if !r.plain {
		return desk.Everywhere()
	}
	keys := []key.Binding{keyReadAll, keyAgain}
	for _, b := range desk.Everywhere() {
		if b.Help() != desk.KeyLook.Help() && b.Help() != desk.KeyFigures.Help() { // nothing is drawn
			keys = append(keys, b)
		}
	}
	return keys
}

// helpEnds is the last that the help says.
func (r *Root) helpEnds() string {
	if r.plain {
		return fieldKeys
	}
	return fieldKeys + " A tap on a row here does what its key does; so do the words at the foot and in the top row."
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

const (
	helpKeyWidth   = 14 // the column of the keys' names
	keyButtonWidth = 5  // of one of several keys in a row, the gap to the next with it
)

// helpRows are the rows of a binding. What names several keys, as the arrows, ends with a button for each.
func helpRows(styles desk.Styles, b key.Binding, w int) (lines []helpLine) {
	if !b.Enabled() || len(b.Keys()) == 0 {
		return nil
	}
	name := "  " + b.Help().Key
	name += strings.Repeat(" ", max(1, helpKeyWidth-desk.Width(name)))
	lead := strings.Repeat(" ", desk.Width(name))
	sent := sentBy(b)
	for i, row := range desk.Wrap(b.Help().Desc, w-desk.Width(name)) {
		line := helpLine{text: lead + row}
		if i == 0 {
			line.text = styles.Key.Render(name) + row
		}
		if len(sent) == 1 {
			line.buttons = []button{{width: w, key: sent[0]}}
		}
		lines = append(lines, line)
	}
	if len(sent) == 1 {
		return lines
	}
	if x := lipgloss.Width(lines[len(lines)-1].text) + keyButtonWidth/2; x+len(sent)*keyButtonWidth > w {
		lines = append(lines, helpLine{text: lead})
	}
	last := &lines[len(lines)-1]
	last.buttons = severalKeys(sent, lipgloss.Width(last.text)+keyButtonWidth/2)
	for _, p := range last.buttons {
		last.text += strings.Repeat(" ", p.from-lipgloss.Width(last.text)) + styles.Key.Render(p.text)
	}
	return lines
}

// severalKeys are a button for each of several keys in a row, from column x.
func severalKeys(sent []string, x int) (buttons []button) {
	for i, k := range sent {
		buttons = append(buttons, button{from: x + i*keyButtonWidth, width: 1, near: keyButtonWidth / 2, key: k, text: keySign(k)})
	}
	return buttons
}
