package screentest

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
)

// named are the keys that go by a name.
var named = map[string]tea.KeyType{
	"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight, "enter": tea.KeyEnter, "esc": tea.KeyEsc,
	"tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab, "space": tea.KeySpace, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown,
	"home": tea.KeyHome, "end": tea.KeyEnd, "delete": tea.KeyDelete, "back": tea.KeyBackspace, "backspace": tea.KeyBackspace,
	"wipe": tea.KeyCtrlU, "shift+left": tea.KeyShiftLeft,
}

// sent is what a terminal sends for keys that go by a name (xterm's control sequences).
var sent = map[string]string{
	"up": "\x1b[A", "down": "\x1b[B", "left": "\x1b[D", "right": "\x1b[C", "enter": "\r", "esc": "\x1b", "tab": "\t", "space": " ",
	"pgup": "\x1b[5~", "pgdown": "\x1b[6~", "home": "\x1b[H", "end": "\x1b[F", "wipe": "\x15", "ctrl+s": "\x13", "ctrl+z": "\x1a",
}

// Sent is what a terminal sends for the presses of names parted by blanks, a text for each name; what is no key's name is typed.
func Sent(names string) []string {
	all := strings.Fields(names)
	for i, name := range all {
		if text, is := sent[name]; is {
			all[i] = text
		}
	}
	return all
}

// press is the press of a key that has a name.
func press(key tea.KeyType) tea.KeyMsg {
	msg := tea.KeyMsg{Type: key}
	if key == tea.KeySpace {
		msg.Runes = []rune{' '}
	}
	return msg
}

func letter(r rune) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}} }

// Keys are the presses of names parted by blanks: "down down t"; what is no key's name is typed as letters.
func Keys(names string) []tea.Msg {
	var msgs []tea.Msg
	for _, name := range strings.Fields(names) {
		if key, is := named[name]; is {
			msgs = append(msgs, press(key))
			continue
		}
		for _, r := range name {
			msgs = append(msgs, letter(r))
		}
	}
	return msgs
}

// Type presses keys one by one, those with a name in angle brackets: "n", "c652<enter>". It returns how many.
func (r *Driver) Type(keys string) int {
	n := 0
	for keys != "" {
		n++
		if name, rest, ok := strings.Cut(keys[1:], ">"); ok && keys[0] == '<' {
			key, known := named[name]
			require.True(r.T, known, name)
			r.Send(press(key))
			keys = rest
			continue
		}
		first := []rune(keys)[0]
		r.Send(letter(first))
		keys = keys[len(string(first)):]
	}
	return n
}
