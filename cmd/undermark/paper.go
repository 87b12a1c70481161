package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/charmbracelet/x/term"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles/harmless"
)

// width is how many columns the terminal has that standard output goes to; 0 when it goes elsewhere.
func (s streams) width() int { return columns(s.terminal) }

// columns is how many a terminal has; 0 of what is none.
func columns(to io.Writer) int {
	out, isFile := to.(*os.File)
	if !isFile || !term.IsTerminal(out.Fd()) {
		return 0
	}
	w, _, err := term.GetSize(out.Fd())
	if err != nil || w < aloud.LeastWidth {
		return aloud.UsualWidth
	}
	return w
}

// paper is what an answer is written on: width columns of a terminal, or lines of any length at 0, for a pipe or a file.
type paper struct {
	strings.Builder
	width int
}

// paperFor is what people read an answer on: the terminal, if that is where it goes.
func (f *answerFlags) paperFor(s streams) *paper {
	if f.file() != "" {
		return &paper{}
	}
	return &paper{width: s.width()}
}

// line writes a line; what is too long goes on below where its text begins. What others wrote is harmless in it, and can't end it.
func (p *paper) line(format string, args ...any) {
	text := harmless.Text(fmt.Sprintf(format, args...))
	begin := len(text) - len(strings.TrimLeft(text, " "))
	p.hung(text[:begin], text[begin:], begin)
}

func (p *paper) lines(texts []string) {
	for _, text := range texts {
		p.line("%s", text)
	}
}

// item writes a line of a list, which goes on below further in.
func (p *paper) item(text string) { p.hung("  ", harmless.Text(text), 4) }

func (p *paper) blank() { p.WriteByte('\n') }

// hung writes harmless text behind what it begins with; it goes on below at a column.
func (p *paper) hung(begin, text string, column int) {
	rows := []string{text}
	if p.width > 0 {
		rows = hungRows(begin, text, column, p.width)
	}
	for i, row := range rows {
		if i > 0 {
			begin = strings.Repeat(" ", column)
		}
		p.WriteString(strings.TrimRight(begin+row, " ") + "\n")
	}
}

// hungRows breaks text that begins behind something and goes on at a column.
func hungRows(begin, text string, column, width int) []string {
	if desk.Width(begin)+desk.Width(text) <= width {
		return []string{text}
	}
	rows := desk.Wrap(text, width-max(column, desk.Width(begin)))
	for i := range rows {
		rows[i] = strings.TrimLeft(rows[i], " ")
	}
	return rows
}

// pairs writes words with what they mean behind them, or below where little room is left.
func (p *paper) pairs(pairs [][2]string) {
	const indent, below = 2, 6
	column := 0
	for _, pair := range pairs {
		column = max(column, indent+desk.Width(pair[0])+2)
	}
	for _, pair := range pairs {
		begin := strings.Repeat(" ", indent) + pair[0]
		switch {
		case pair[1] == "":
			p.line("%s", begin)
		case p.width-column < leastText:
			p.line("%s", begin)
			p.hung(strings.Repeat(" ", below), pair[1], below)
		default:
			p.hung(begin+strings.Repeat(" ", column-desk.Width(begin)), pair[1], column)
		}
	}
}

// list writes a title with what is under it: in a row on a terminal, elsewhere a line each.
func (p *paper) list(title string, items []string) {
	if len(items) == 0 {
		return
	}
	p.blank()
	if p.width > 0 {
		p.line("%s: %s.", title, strings.Join(items, ", "))
		return
	}
	for _, item := range items {
		p.line("%s: %s", title, item)
	}
}

// leastText is the fewest columns that text is broken to beside other columns: a few words.
const leastText = 24
