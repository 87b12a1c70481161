package tui

import (
	"slices"
	"sync"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
)

// mostTyped is how many letters in one message may have been typed: those of a key held down, which repeats 30 times a second,
// while nothing was read for three. More are a paste that the terminal does not mark as one.
const mostTyped = 100

// keyed answers a key. Letters typed fast arrive together in one message and are taken one at a time, as any of
// them may open a field that the others belong to: screens only ever get one key, or one pasted text.
func (r *Root) keyed(msg tea.KeyMsg) tea.Cmd {
	r.heard()
	if r.w == 0 {
		return nil
	}
	if then := afterEsc(msg); then != nil {
		return tea.Batch(r.pressed(tea.KeyMsg{Type: tea.KeyEsc}), r.pressed(*then))
	}
	if msg.Type != tea.KeyRunes || msg.Alt {
		return r.pressed(msg)
	}
	if msg.Paste || len(msg.Runes) > mostTyped {
		return r.pasted(msg.Runes)
	}
	var cmds []tea.Cmd
	for _, letter := range msg.Runes {
		cmds = append(cmds, r.pressed(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{letter}}))
	}
	return tea.Batch(cmds...)
}

// afterEsc is the key that was read at once with an Esc before it, as happens where a machine lags, nil for none: the two look like one with Alt
// held, which no key here has. Of others than these a slip onto Alt is likelier.
func afterEsc(msg tea.KeyMsg) *tea.KeyMsg {
	switch msg.Type {
	case tea.KeyEsc, tea.KeyCtrlS, tea.KeyCtrlZ, tea.KeyCtrlY, tea.KeyCtrlC:
		if msg.Alt {
			return &tea.KeyMsg{Type: msg.Type}
		}
	}
	return nil
}

// pasted gives pasted text to a field; outside of one it is no keys.
func (r *Root) pasted(text []rune) tea.Cmd {
	msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: text, Paste: true}
	p, prompting := r.overlay().(*prompt)
	switch {
	case !r.roomy() && !prompting: // what can't be seen can't be meant
	case prompting:
		return p.update(r, msg)
	case r.overlay() != nil:
	case r.screens[r.at].Typing():
		return r.toScreen(r.at, msg)
	default:
		r.tell(pastedOutside)
	}
	return nil
}

const pastedOutside = "pasted outside of a field; nothing was changed"

// pressed answers one key.
func (r *Root) pressed(msg tea.KeyMsg) tea.Cmd {
	if !r.roomy() && !r.answerable() && !key.Matches(msg, desk.KeyQuit, desk.KeySave) {
		return nil // what can't be seen can't be meant
	}
	if o := r.overlay(); o != nil {
		if key.Matches(msg, desk.KeyQuit) {
			return r.quit()
		}
		return o.update(r, msg)
	}
	if cmd, mine := r.always(msg); mine {
		return cmd
	}
	if msg.Type != tea.KeyEnter && msg.Type != tea.KeySpace {
		r.deaf = time.Time{} // whoever presses something else goes on
	} else if r.now().Before(r.deaf) {
		return nil
	}
	if !r.takesLetters() {
		if cmd, mine := r.outsideFields(msg); mine {
			return cmd
		}
	}
	return r.toScreen(r.at, msg)
}

// always answers the keys that the root takes also while a field has the others.
func (r *Root) always(msg tea.KeyMsg) (cmd tea.Cmd, mine bool) {
	switch {
	case key.Matches(msg, desk.KeySave):
		return r.ask(desk.Save), true
	case key.Matches(msg, desk.KeyUndo):
		return r.ask(desk.Undo), true
	case key.Matches(msg, desk.KeyRedo):
		return r.ask(desk.Redo), true
	case key.Matches(msg, desk.KeyQuit):
		return r.ask(desk.Quit), true
	}
	return nil, false
}

// outsideFields answers the letters and digits that belong to the root.
func (r *Root) outsideFields(msg tea.KeyMsg) (cmd tea.Cmd, mine bool) {
	settings := r.desk.State.Settings
	switch {
	case key.Matches(msg, desk.KeyScreens):
		r.leave() // also where its own screen is meant
		r.goTo(slices.Index(desk.KeyScreens.Keys(), msg.String()))
		return nil, true
	case key.Matches(msg, desk.KeyHelp):
		r.open(newHelp(r))
		return nil, true
	case key.Matches(msg, desk.KeyCautions):
		r.open(newCautions())
		return nil, true
	case key.Matches(msg, desk.KeyLook):
		settings.Look = settings.Look.Next()
		cmd = r.setSettings(settings)
		r.tell(lookSaid(settings))
		return cmd, true
	case key.Matches(msg, desk.KeyFigures):
		settings.Big = !settings.Big
		cmd = r.setSettings(settings)
		r.tell(bigSaid(settings))
		return cmd, true
	case key.Matches(msg, desk.KeyUnits):
		settings.Units = desk.Inches - settings.Units
		return r.setSettings(settings), true
	}
	return nil, false
}

// bigSaid is what is said once big figures are on or off.
func bigSaid(s desk.Settings) string {
	if s.Big {
		return "big figures: what is typed of the tape is shown large"
	}
	return "big figures off"
}

// lookSaid is what is said of a look that was chosen.
func lookSaid(s desk.Settings) string {
	if s.Colour == desk.NoColour {
		return s.Look.String() + " look; this terminal shows no colours (NO_COLOR or TERM says so), and all looks are alike on it"
	}
	return s.Look.String() + " look"
}

// moused answers the mouse or a finger: the header goes to a screen, the foot presses a key, the heading goes to
// the checks, what to measure next to where it is entered; the rest belongs to the body, whose top left is (0, 0) to it.
func (r *Root) moused(msg tea.MouseMsg) tea.Cmd {
	if !r.roomy() {
		return nil
	}
	tap := msg.Action == tea.MouseActionPress && msg.Button == tea.MouseButtonLeft
	foot, body, said := r.h-footRows, headRows+len(r.bandRows())+r.bodyHeight(), len(r.sayRows())
	if tap {
		r.heard()
	}
	switch {
	case tap && msg.Y >= foot:
		return r.tapped(r.hintButtons(), msg.X)
	case tap && msg.Y >= foot-said:
		r.say = ""
		return nil
	case tap && (msg.Y < headRows || msg.Y >= body) && r.overlay() != nil:
		return nil
	case tap && msg.Y >= foot-noteRows:
		return r.takeAdvice()
	case tap && msg.Y >= body:
		return r.ask(desk.Save) // the warning asks for it
	case tap && msg.Y == 0:
		for i, title := range r.titleButtons() {
			if title.holds(msg.X) {
				r.goTo(i)
			}
		}
		return nil
	case tap && msg.Y == 1:
		r.goTo(r.titled("Checks"))
		return nil
	}
	if msg.Y -= headRows + len(r.bandRows()); msg.Y < 0 && r.overlay() == nil {
		return nil // the big figures
	}
	if o := r.overlay(); o != nil {
		return o.update(r, msg)
	}
	return r.toScreen(r.at, msg)
}

// tapped presses the key of the button at column x.
func (r *Root) tapped(buttons []button, x int) tea.Cmd {
	for _, p := range buttons {
		if !p.holds(x) {
			continue
		}
		if p.key == tapKey(tapMore) { // a field would take the key
			r.open(newHelp(r))
			return nil
		}
		if msg, known := keyNamed(p.key); known {
			return r.pressed(msg)
		}
	}
	return nil
}

// keyNamed returns the key with the name that bindings use: "ctrl+s", "enter", "+".
func keyNamed(name string) (msg tea.KeyMsg, known bool) {
	if letters := []rune(name); len(letters) == 1 {
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: letters}, true
	}
	msg, known = namedKeys()[name]
	return msg, known
}

// namedKeys are all keys that the terminal library has a name for.
var namedKeys = sync.OnceValue(func() map[string]tea.KeyMsg {
	keys := map[string]tea.KeyMsg{}
	for t := tea.KeyType(-128); t < 128; t++ {
		if msg := (tea.KeyMsg{Type: t}); t != tea.KeyRunes && msg.String() != "" {
			keys[msg.String()] = msg
		}
	}
	return keys
})
