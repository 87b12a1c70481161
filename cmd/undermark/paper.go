package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/charmbracelet/x/term"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles/harmless"
)

// width is how many columns the terminal has that standard output goes to; 0 when it goes elsewhere.
func (s streams) width() int {
	out, isFile := s.terminal.(*os.File)
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

// line writes a line, which goes on under its second column where it is too long. What others wrote is harmless in it; line
// ends of its format are its own.
func (p *paper) line(format string, args ...any) {
	for i, arg := range args {
		if text, is := arg.(string); is {
			args[i] = harmless.Text(text)
		}
	}
	for text := range strings.SplitSeq(fmt.Sprintf(format, args...), "\n") {
		begin := len(text) - len(strings.TrimLeft(text, " "))
		p.hung(text[:begin], text[begin:], begin)
	}
}

// hung writes text behind what it begins with; it goes on below at a column.
func (p *paper) hung(begin, text string, column int) {
	rows := []string{text}
	if p.width > 0 {
		rows = desk.Wrap(text, p.width-column)
	}
	for i, row := range rows {
		if i > 0 {
			begin = strings.Repeat(" ", column)
		}
		p.WriteString(strings.TrimRight(begin+strings.TrimLeft(row, " "), " ") + "\n")
	}
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

// leastText is the fewest columns that text is broken to beside other columns: a few words.
const leastText = 24
