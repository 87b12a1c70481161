package form

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// Pieces takes a message apart into what fields can take one by one. Letters typed fast arrive together, and the
// first of them may go on to another field. Pasted lines are typed with Enter between them.
func Pieces(msg tea.Msg) []tea.Msg {
	k, isKey := msg.(tea.KeyMsg)
	if !isKey || k.Type != tea.KeyRunes {
		return []tea.Msg{msg}
	}
	if k.Paste {
		return lines(string(k.Runes))
	}
	out := make([]tea.Msg, len(k.Runes))
	for i, r := range k.Runes {
		out[i] = tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: k.Alt}
	}
	return out
}

// lines are the keys of a pasted text.
func lines(text string) []tea.Msg {
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	var out []tea.Msg
	for i, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		if i > 0 {
			out = append(out, tea.KeyMsg{Type: tea.KeyEnter})
		}
		if line != "" {
			out = append(out, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(line), Paste: true})
		}
	}
	return out
}
