package runs

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/tui/desk"
)

// written is a row of words, each about a column, none over another.
type written struct {
	text string
	inks []ink
}

// ink is where a word stands, in columns, that has a style of its own.
type ink struct {
	from, to int
	style    desk.Style
}

// put writes a word with its middle at a column, or behind what stands there.
func (r *written) put(col int, word string) {
	at := max(col-desk.Width(word)/2, desk.Width(r.text)+1)
	r.text += strings.Repeat(" ", at-desk.Width(r.text)) + word
}

// putInked is put for a word that has a style of its own.
func (r *written) putInked(col int, word string, style desk.Style) {
	r.put(col, word)
	to := desk.Width(r.text)
	r.inks = append(r.inks, ink{to - desk.Width(word), to, style})
}

// painted is the row in w columns, in a style where a word has none of its own.
func (r *written) painted(w int, style desk.Style) string {
	text, at := desk.FitRow(r.text, w), 0
	var b strings.Builder
	for _, k := range r.inks {
		if k.to > w {
			break
		}
		b.WriteString(style.Render(ansi.Cut(text, at, k.from)))
		b.WriteString(k.style.Render(ansi.Cut(text, k.from, k.to)))
		at = k.to
	}
	b.WriteString(style.Render(ansi.Cut(text, at, w)))
	return b.String()
}
