package sparing

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/pixels"
)

// plain takes all colours off.
const plain = "\x1b[0m"

// looks are the colours met so far, by number; 0 is none. They are as many as the program has ways to paint a cell.
type looks struct {
	text   []string // each takes off what was worn before it
	worn   []dress  // what each comes to
	blank  []int32  // what of each a blank shows
	number map[string]int32
}

func newLooks() looks {
	return looks{text: []string{plain}, worn: []dress{{plainly: true}}, blank: []int32{0}, number: map[string]int32{plain: 0}}
}

// read appends the cells of a row. It is sure when each rune takes one column whatever stands beside it, nothing but colours
// steers the terminal, and no rest of the row may still hold what stood there.
func (l *looks) read(row []cell, text string) (cells []cell, sure bool) {
	worn := int32(0)
	text = strings.TrimSuffix(text, ansi.EraseLineRight)
	for i := 0; i < len(text); {
		if text[i] == 0x1b {
			n := sequence(text[i:])
			if n == 0 {
				return row, false
			}
			worn = l.put(worn, text[i:i+n])
			i += n
			continue
		}
		r, n := utf8.DecodeRuneInString(text[i:])
		if r == pixels.First {
			col, of, long := pixels.Placed(text[i:])
			if long == 0 {
				return row, false
			}
			r, n = placed(col, of), long
		}
		if !oneColumn(r) {
			return row, false
		}
		look := worn
		if r == ' ' {
			look = l.blank[worn]
		}
		row = append(row, cell{r, look})
		i += n
	}
	return row, worn == 0
}

// sequence is how many bytes of text a sequence of colours in front of it takes; 0 when there is none.
func sequence(text string) int {
	if !strings.HasPrefix(text, "\x1b[") {
		return 0
	}
	for i := 2; i < len(text); i++ {
		switch c := text[i]; {
		case c == 'm':
			return i + 1
		case (c < '0' || c > '9') && c != ';':
			return 0
		}
	}
	return 0
}

// put is the look that is worn when a sequence comes on top of another look.
func (l *looks) put(worn int32, sequence string) int32 {
	if sequence == "\x1b[m" {
		return 0
	}
	if !strings.HasPrefix(sequence, "\x1b[0;") && sequence != plain {
		sequence = l.text[worn] + sequence
	}
	return l.of(sequence)
}

// of is the number of a look that begins from nothing.
func (l *looks) of(sequence string) int32 {
	n, met := l.number[sequence]
	if met {
		return n
	}
	n, sequence = int32(len(l.text)), strings.Clone(sequence)
	d := dressOf(sequence)
	l.text, l.worn, l.blank, l.number[sequence] = append(l.text, sequence), append(l.worn, d), append(l.blank, n), n
	if d.ofBlank() && sequence != d.onlyGround() {
		l.blank[n] = l.of(d.onlyGround())
	}
	return n
}

// placed is what stands for a placeholder in a cell: its column and row in the picture, as a number that no rune has.
func placed(col, row int) rune { return -1 - rune(row*pixels.Most+col) }

// text appends what a cell shows.
func (c cell) text(out []byte) []byte {
	if c.rune < 0 {
		at := int(-1 - c.rune)
		return pixels.AppendPlaceholder(out, at%pixels.Most, at/pixels.Most)
	}
	return utf8.AppendRune(out, c.rune)
}

// oneColumn says whether a rune surely takes one column whatever stands beside it.
func oneColumn(r rune) bool { return r < 0 || ' ' <= r && r <= '~' || desk.OneColumn(r) }
