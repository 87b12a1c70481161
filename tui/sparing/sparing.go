// Package sparing stands between the library that paints the screen and the terminal. The library sends whole rows again when a cell
// of them changed: with colours that is 10 to 50 kB a key, which a slow line or a busy machine has to carry before the fitter
// sees anything. What goes on from here is the cells that changed.
//
// It holds what is known to stand in each row. What it can't know, as something else wrote there or a rune's width is doubtful, goes
// on as the library wrote it: then a row is sent once more than needed, never once too seldom.
package sparing

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
)

// Terminal is a terminal that the library writes on. One goroutine at a time may write, as the library does.
type Terminal struct {
	term.File
	rows  [][]cell // what stands there from the left; nil for a row that nobody knows
	spare []cell   // room for the next row
	looks looks
	out   []byte
}

// cell is one column of a row.
type cell struct {
	rune rune  // less than 0 for a part of a picture
	look int32 // its number in looks
}

// On returns a terminal that sends to another what changes on it.
func On(f term.File) *Terminal { return &Terminal{File: f, looks: newLooks()} }

// Write takes what the library wrote, and says that all of it was written unless that failed.
func (t *Terminal) Write(p []byte) (int, error) { return t.WriteString(string(p)) }

// WriteString is Write.
func (t *Terminal) WriteString(text string) (int, error) {
	t.out = t.out[:0]
	if rows, end, ok := frame(text); ok {
		t.frame(rows, end)
	} else {
		t.rows = nil // it may have cleared or left the screen
		t.out = append(t.out, text...)
	}
	if _, err := t.File.Write(t.out); err != nil {
		return 0, err
	}
	return len(text), nil
}

// frame takes apart what the library writes for a picture: home, the rows, the cursor's last place. A picture with fewer rows than
// the last one clears what is below, and does not count as one here.
func frame(text string) (rows, end string, ok bool) {
	rows, ok = strings.CutPrefix(text, ansi.CursorHomePosition)
	at := strings.LastIndex(rows, "\x1b[")
	if !ok || at < 0 || !strings.HasSuffix(rows, "H") || strings.Contains(rows, ansi.EraseScreenBelow) {
		return "", "", false
	}
	return rows[:at], rows[at:], true
}

// frame writes the rows of a picture. One that did not change is empty; a return before the first says that nothing of what stood
// there counts any more.
func (t *Terminal) frame(rows, end string) {
	if strings.HasPrefix(rows, "\r") {
		t.rows = nil
	}
	y := 0
	for text := range strings.SplitSeq(rows, "\n") {
		if y == len(t.rows) {
			t.rows = append(t.rows, nil)
		}
		if text = strings.Trim(text, "\r"); text != "" {
			t.row(y, text)
		}
		y++
	}
	t.out = append(t.out, end...)
}

// row writes a row that changed: the cells that did, or all of it where that is shorter or not all is known.
func (t *Terminal) row(y int, text string) {
	old, from := t.rows[y], len(t.out)
	now, sure := t.looks.read(t.spare[:0], text)
	if old != nil && sure {
		now = t.changes(y, old, now)
	}
	if old == nil || !sure || len(t.out)-from > len(text) {
		t.out = append(to(t.out[:from], 0, y), text...)
		t.out = append(t.out, plain...)
	}
	t.rows[y], t.spare = now, old
	if !sure {
		t.rows[y] = nil
	}
}

// changes writes what is not as it was in a row, and returns the row. What a shorter one leaves out was erased: blank.
func (t *Terminal) changes(y int, old, now []cell) []cell {
	for len(now) < len(old) {
		now = append(now, cell{rune: ' '})
	}
	worn, next := int32(0), -1 // the column that the cursor stands at
	for x, c := range now {
		if x < len(old) && old[x] == c || x >= len(old) && c == (cell{rune: ' '}) {
			continue
		}
		if x != next {
			t.out = to(t.out, x, y)
		}
		if c.look != worn {
			t.out, worn = append(t.out, t.looks.text[c.look]...), c.look
		}
		t.out = c.text(t.out)
		next = x + 1
	}
	if worn != 0 {
		t.out = append(t.out, plain...)
	}
	return now
}

// to moves the cursor to a column and a row, from 0.
func to(out []byte, x, y int) []byte {
	out = append(out, "\x1b["...)
	out = append(strconv.AppendInt(out, int64(y+1), 10), ';')
	return append(strconv.AppendInt(out, int64(x+1), 10), 'H')
}
