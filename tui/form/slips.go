package form

import (
	"fmt"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
)

// Keys that are pressed out of habit where they would do harm: they do nothing there, and it is said why.

// slip says why a key does nothing in a field, "" for one that does what it is for. What a letter chose just before is chose.
func (f Form) slip(msg tea.KeyMsg, field Field, chose string) string {
	blank := f.input.String() == ""
	switch {
	case len(field.Choices) > 0, field.Guess && f.input.all && msg.String() == KeySo:
		return ""
	case chose != "" && msg.Type == tea.KeyEnter && blank: // the letter was Enter, too
		return fmt.Sprintf("The letter chose %s and went on. Enter again leaves %s blank.", chose, field.Label)
	case field.Unit == "mm" && (blank || f.input.all) && noReading(msg):
		return fmt.Sprintf("%q begins no reading: %s takes figures, L, R, + or nothing. Enter behind the last field goes on.", msg.String(), field.Label)
	}
	return ""
}

// noReading tells whether a key is a letter with which no length begins: most likely it was meant for another field, the kind of the next
// thing.
func noReading(msg tea.KeyMsg) bool {
	return msg.Type == tea.KeyRunes && !msg.Alt && len(msg.Runes) == 1 && unicode.IsLetter(msg.Runes[0]) && !strings.ContainsRune("lLrR", msg.Runes[0])
}
