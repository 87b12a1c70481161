package form

import (
	"errors"
	"fmt"
	"slices"
	"sort"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
)

// typing is a line being typed, and where its cursor stands, in runes. It is a plain value: what it is made into
// shares nothing with it. (The line editor of the component library keeps its runes in place, and asks for the
// system's clipboard, which the terminal's own paste makes needless.)
type typing struct {
	text []rune
	at   int
	all  bool // the whole text is selected: what is typed takes its place
}

// longestLine is how many runes a field takes: half a page of notes.
const longestLine = 2000

// unchanged ends every line that says why nothing was taken.
const unchanged = "; nothing was changed"

var errLongLine = errors.New(tooLong("characters", longestLine))

// tooLong says that something has more of its parts than may be.
func tooLong(parts string, most int) string {
	return fmt.Sprintf("too long: more than %d %s", most, parts) + unchanged
}

// typingOf is a text with the cursor at its end.
func typingOf(text string) typing {
	r := []rune(text)
	return typing{text: r, at: len(r)}
}

// selected is the line with its whole text selected.
func (t typing) selected() typing {
	t.at, t.all = len(t.text), len(t.text) > 0
	return t
}

func (t typing) String() string { return string(t.text) }

// press returns the line after a key, or the line as it is and why it takes no more. Keys that delete take away what is
// selected; those that move the cursor drop the selection and start from the text's end.
func (t typing) press(msg tea.KeyMsg) (typing, error) {
	if (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace) && !msg.Alt {
		return t.insert(msg.Runes)
	}
	return t.moved(msg), nil
}

// moved returns the line after a key that moves or deletes.
func (t typing) moved(msg tea.KeyMsg) typing {
	n := len(t.text)
	if t.all && slices.Contains(deleting, msg.String()) {
		return typing{}
	}
	switch msg.String() {
	case "left":
		return t.to(t.at - 1)
	case "right":
		return t.to(t.at + 1)
	case "home", "ctrl+a":
		return t.to(0)
	case "end", "ctrl+e":
		return t.to(n)
	case "backspace":
		return t.cut(t.at-1, t.at)
	case "delete":
		return t.cut(t.at, t.at+1)
	case "ctrl+u":
		return t.cut(0, t.at)
	case "ctrl+k":
		return t.cut(t.at, n)
	case "ctrl+w":
		return t.cut(t.wordStart(), t.at)
	}
	return t
}

// deleting are the keys that delete.
var deleting = []string{"backspace", "delete", "ctrl+u", "ctrl+k", "ctrl+w"}

func (t typing) to(at int) typing {
	t.all = false
	t.at = max(0, min(at, len(t.text)))
	return t
}

// cut takes out the runes from a up to b.
func (t typing) cut(a, b int) typing {
	a, b = max(a, 0), min(b, len(t.text))
	if a >= b {
		return t
	}
	return typing{text: slices.Concat(t.text[:a], t.text[b:]), at: a}
}

// insert puts runes in at the cursor, or in place of what is selected; what no line can hold becomes a blank. It takes all
// of them or none.
func (t typing) insert(runes []rune) (typing, error) {
	was := t
	if t.all {
		t = typing{}
	}
	if len(t.text)+len(runes) > longestLine {
		return was, errLongLine
	}
	clean := slices.Clone(runes)
	for i, r := range clean {
		if unicode.IsControl(r) {
			clean[i] = ' '
		}
	}
	return typing{text: slices.Concat(t.text[:t.at], clean, t.text[t.at:]), at: t.at + len(clean)}, nil
}

// scrolled is how many runes in front are left out so that what stands before the cursor fits w columns. It asks for few
// widths: a long line is painted at every key.
func (t typing) scrolled(w int) int {
	return sort.Search(t.at, func(from int) bool { return desk.Width(string(t.text[from:t.at])) <= w })
}

// wordStart is where the word before the cursor starts.
func (t typing) wordStart() int {
	i := t.at
	for i > 0 && t.text[i-1] == ' ' {
		i--
	}
	for i > 0 && t.text[i-1] != ' ' {
		i--
	}
	return i
}
