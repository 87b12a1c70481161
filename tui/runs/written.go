package runs

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/tui/desk"
)

// written is a row of words behind what leads it, each about a column, none over another.
type written struct {
	lead  string
	words []word
	more  string // behind them
}

// word is one of them; style is nil where it has that of the row.
type word struct {
	col   int
	text  string
	style *desk.Style
}

// put adds a word, with its middle at a column, or as near to that as there is room.
func (r *written) put(col int, text string) { r.words = append(r.words, word{col: col, text: text}) }

// putInked is put for a word that has a style of its own.
func (r *written) putInked(col int, text string, style desk.Style) {
	r.words = append(r.words, word{col, text, &style})
}

// ink is where a word stands, in columns, that has a style of its own.
type ink struct {
	from, to int
	style    desk.Style
}

// laid is the row in w columns, longer where its words are. What would not end within them moves back, and what is in its way with it.
func (r *written) laid(w int) (text string, inks []ink) {
	from, end := make([]int, len(r.words)), w
	for i := len(r.words) - 1; i >= 0; i-- {
		length := desk.Width(r.words[i].text)
		from[i] = min(r.words[i].col-length/2, end-length)
		end = from[i] - 1
	}
	text = r.lead
	for i, word := range r.words {
		from := max(from[i], desk.Width(text)+1)
		text += strings.Repeat(" ", from-desk.Width(text)) + word.text
		if word.style != nil {
			inks = append(inks, ink{from, desk.Width(text), *word.style})
		}
	}
	return text + r.more, inks
}

// goOn adds a text behind the words if it has room in w columns.
func (r *written) goOn(text string, w int) {
	if row, _ := r.laid(w); desk.Width(row+"  "+text) <= w {
		r.more += "  " + text
	}
}

// painted is the row in w columns, in a style where a word has none of its own.
func (r *written) painted(w int, style desk.Style) string {
	row, inks := r.laid(w)
	text, at := desk.FitRow(row, w), 0
	var b strings.Builder
	for _, k := range inks {
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
