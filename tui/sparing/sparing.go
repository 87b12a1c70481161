// Package sparing stands between the library that paints the screen and the terminal. The library sends whole rows again when a cell
// of them changed, which with colours is 10 to 50 kB a key, and looks up how wide each rune of them is. What goes on from here is the
// cells that changed, look by look: the library carries a ticket in place of each picture, and has one painted with it at the latest. That is up
// to 8 ms after a key; one that comes a while after the picture before is painted at once.
//
// A Terminal holds what is known to stand in each row. What it can't know, as something else wrote there or a rune's width is doubtful, is
// written as it came: then a row is sent once more than needed, never once too seldom.
package sparing

import (
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
)

// Terminal is a terminal that pictures are painted on, by a goroutine of its own: one that is slow, or that nobody reads, holds nobody up. Of the
// pictures that came while it was busy the newest is painted, the others are left out. Whatever else is written waits until that is done.
type Terminal struct {
	term.File
	held atomic.Pointer[picture] // the newest picture; nil for none yet

	mu     sync.Mutex // of what follows; let go of while a picture is sent
	idle   sync.Cond  // no picture is being sent
	busy   bool       // one is: what stands there is its sender's to know
	wanted bool       // another is to be sent
	anew   bool       // and all of it
	open   bool       // the last the library wrote was a ticket: a picture is what stands there
	begun  time.Time  // the newest picture
	line   line

	shown   []row  // from the top; what is below nobody knows
	on      size   // of the terminal that it was painted for
	spare   []cell // room for the next row
	looks   looks
	out     []byte
	worn    dress    // what the terminal wears at the end of out
	changed []change // of the rows that were looked at
}

// picture is what the screen is to show.
type picture struct {
	text   string
	on     size
	number int
}

// size is a terminal's, in cells; none while nobody knows it.
type size struct{ width, height int }

// row is a row as it was painted.
type row struct {
	text  string
	known bool   // the terminal shows it
	cells []cell // what stands there from the left; nil when nobody knows
}

// cell is one column of a row.
type cell struct {
	rune rune  // less than 0 for a part of a picture
	look int32 // its number in looks
}

// On returns a terminal that sends to another what changes on it.
func On(f term.File) *Terminal {
	t := &Terminal{File: f, looks: newLooks()}
	t.line.heard.L = &t.line.mu
	t.idle.L = &t.mu
	return t
}

// hold keeps a picture to be painted, and returns the ticket that the library is to carry for it: another than before when
// the picture is another.
func (t *Terminal) hold(text string, on size) (ticket string) {
	last := t.held.Load()
	switch {
	case last == nil:
		last = &picture{text: text, on: on}
		t.held.Store(last)
	case last.text != text || last.on != on:
		soon := last.on == on // the library has one of another size painted anew
		last = &picture{text: text, on: on, number: last.number + 1}
		t.held.Store(last)
		if soon {
			t.atOnce()
		}
	}
	return string(firstTicket + rune(last.number%tickets))
}

// apart is how long pictures are apart at the least that are painted at once: as long as the library's.
const apart = time.Second / 120

// atOnce paints the newest picture without a ticket, unless another was painted just now or something else is: then its ticket is waited for.
func (t *Terminal) atOnce() {
	if !t.mu.TryLock() {
		return
	}
	defer t.mu.Unlock()
	if t.open && !t.busy && time.Since(t.begun) >= apart {
		t.wanted = true
		t.start()
	}
}

// start sends what is wanted, unless that is being done.
func (t *Terminal) start() {
	if !t.busy {
		t.busy = true
		go t.send()
	}
}

// Tickets are runes for private use, which take one column: the library neither cuts one nor breaks it. Source: the Unicode Standard, 23.5.
const (
	firstTicket = 0xF0000
	tickets     = 0xFFFE
)

// Write takes what the library wrote. A picture counts as written: one that fails is found out by whoever reads the terminal.
func (t *Terminal) Write(p []byte) (int, error) { return t.WriteString(string(p)) }

// WriteString is Write.
func (t *Terminal) WriteString(text string) (int, error) {
	anew, picture := ticketed(text)
	t.mu.Lock()
	defer t.mu.Unlock()
	if picture {
		t.wanted, t.anew, t.open = true, t.anew || anew, true
		t.start()
		return len(text), nil
	}
	t.rest()
	t.shown, t.open = nil, false // it may have cleared or left the screen
	t.line.forget()
	return t.File.Write([]byte(text))
}

// rest waits until no picture is being sent.
func (t *Terminal) rest() {
	t.line.hurry(1)
	defer t.line.hurry(-1)
	for t.busy {
		t.idle.Wait()
	}
}

// send sends the newest picture, and again as long as another was wanted meanwhile.
func (t *Terminal) send() {
	t.mu.Lock()
	defer t.mu.Unlock()
	for t.wanted {
		t.mu.Unlock()
		t.line.wait(patience)
		t.mu.Lock()
		if t.anew {
			t.shown = nil
		}
		t.wanted, t.anew, t.out, t.worn = false, false, t.out[:0], t.looks.worn[0]
		now := time.Now()
		t.paint(t.held.Load())
		if len(t.out) == 0 {
			continue
		}
		t.begun, t.out = now, t.line.asks(t.out)
		t.mu.Unlock()
		_, err := t.File.Write(t.out)
		t.mu.Lock()
		if err != nil {
			t.shown = nil
		}
	}
	t.busy = false
	t.idle.Broadcast()
}

// ticketed tells whether the library wrote a ticket: home, the ticket, the cursor's last place. A return before the ticket says that nothing
// of what stood there counts any more.
func ticketed(text string) (anew, ok bool) {
	text, ok = strings.CutPrefix(text, ansi.CursorHomePosition)
	text, anew = strings.CutPrefix(text, "\r")
	for _, r := range text {
		return anew, ok && r >= firstTicket && r < firstTicket+tickets
	}
	return false, false
}

// paint writes what a picture changes, all of one for another size: the one before may have come when the terminal had this size already,
// which broke its rows then or rolled them away. Of one that is too high for the terminal the last rows are seen, and below one that is not
// as high nothing is.
func (t *Terminal) paint(p *picture) {
	if t.on != p.on {
		t.shown, t.on = nil, p.on
	}
	rows, before := strings.Split(p.text, "\n"), len(t.shown)
	if p.on.height > 0 {
		rows = rows[max(0, len(rows)-p.on.height):]
	}
	for y, text := range rows {
		if y == len(t.shown) {
			t.shown = append(t.shown, row{})
		}
		if s := &t.shown[y]; !s.known || s.text != text {
			t.row(y, text, p.on.width)
			s.text, s.known = text, true
		}
	}
	n := len(rows)
	if t.shown = t.shown[:n]; n < p.on.height && before != n {
		t.out = append(to(t.out, 0, n), ansi.EraseScreenBelow...)
	}
	t.flush()
	if len(t.out) > 0 {
		t.out = append(t.out, ansi.CursorPosition(0, n)...)
	}
}

// row notes what changed of a row, and writes all of it where not all is known.
func (t *Terminal) row(y int, text string, width int) {
	old := t.shown[y].cells
	now, sure := t.looks.read(t.spare[:0], text)
	if sure && width > 0 && len(now) > width {
		text = ansi.Truncate(text, width, "")
		now, sure = t.looks.read(now[:0], text)
	}
	if old != nil && sure {
		now = t.changes(y, old, now)
	} else {
		t.out = append(whole(to(t.out, 0, y), text, width, len(now), sure), plain...)
	}
	t.shown[y].cells, t.spare = now, old
	if !sure {
		t.shown[y].cells = nil
	}
}

// whole appends a row as it came, cut to the terminal's width, with what is right of it cleared.
func whole(out []byte, text string, width, cells int, sure bool) []byte {
	if !sure {
		if width > 0 {
			text = ansi.Truncate(text, width, "")
		}
		cells = ansi.StringWidth(text)
	}
	out = append(out, text...)
	if cells < width {
		out = append(out, ansi.EraseLineRight...)
	}
	return out
}

// to moves the cursor to a column and a row, from 0.
func to(out []byte, x, y int) []byte {
	out = append(out, "\x1b["...)
	out = append(strconv.AppendInt(out, int64(y+1), 10), ';')
	return append(strconv.AppendInt(out, int64(x+1), 10), 'H')
}
