// Package pixels shows a true picture in terminals that can show one. It asks whether one can (Kitty's graphics protocol, with
// Unicode placeholders), paints what is wanted beside the program, and sends it between two frames of cells, compressed and in
// pieces. A terminal that does not answer is sent nothing more.
//
// Where a picture is seen is a matter of cells: each of its cells holds a placeholder, which says by its marks which part of the
// picture stands there, and by its colour of which picture. So the picture lies where the cells have it, and a tap on it is a tap
// on them.
package pixels

import (
	"bytes"
	"image"
	"io"
	"reflect"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
)

// Picture is what is to be shown.
type Picture struct {
	Cols, Rows int // of the cells that it fills
	Of         any // what it is of: it is not painted anew for what is deeply equal
	// Paint paints it, in pixels: it is called by another goroutine, once or again after the terminal was away.
	Paint func(size image.Point) *image.RGBA
}

// Terminal is the terminal that the program writes on. What the library writes and pictures never run into each other. The nil
// Terminal shows no pictures.
type Terminal struct {
	term.File
	shows atomic.Bool
	want  chan Picture // the newest that was not begun
	once  sync.Once

	writing sync.Mutex // of writing, taken before mu: a terminal that nobody reads holds up whoever writes on it, and no key

	mu     sync.Mutex // of what follows
	told   func()     // called when it is known that the terminal shows pictures; nil: it is not asked
	asked  time.Time
	wants  answers     // what is still to come
	cell   image.Point // of the terminal, pixels
	up     bool        // the program's screen is there
	last   Picture     // the newest that was wanted
	sent   []byte      // the pixels that the terminal has, nil for none
	sentAs Picture
}

// usualCell is how large a cell is taken to be until the terminal says it, pixels: half as wide as high, as the plan takes it.
var usualCell = image.Pt(10, 20)

// On returns a terminal that writes on a file.
func On(f term.File) *Terminal {
	return &Terminal{File: f, want: make(chan Picture, 1), cell: usualCell}
}

// Ask has the terminal asked, once it shows the program's screen, whether it shows pictures. A Reader hears the answer; told is then
// called, by a goroutine of its own.
func (t *Terminal) Ask(told func()) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.told = told
}

// Shows tells whether the terminal has said that it shows pictures.
func (t *Terminal) Shows() bool { return t != nil && t.shows.Load() }

// WriteString is Write.
func (t *Terminal) WriteString(s string) (int, error) { return t.Write([]byte(s)) }

// The library's own words for coming and going: the program's screen is the terminal's second one.
const (
	comes = ansi.SetModeAltScreenSaveCursor
	goes  = ansi.ResetModeAltScreenSaveCursor
)

// Write writes what is no picture. A screen that comes is asked, or gets its picture again; before it goes the picture is deleted.
// The query goes out before the library clears the screen: where a terminal writes what it does not know, that is cleared too.
func (t *Terminal) Write(p []byte) (int, error) {
	t.writing.Lock()
	defer t.writing.Unlock()
	if _, err := t.File.Write(t.framed(p)); err != nil {
		return 0, err
	}
	return len(p), nil
}

// framed is what is no picture with what has to be said before or behind it when the screen comes or goes.
func (t *Terminal) framed(p []byte) []byte {
	t.mu.Lock()
	defer t.mu.Unlock()
	out := p
	if bytes.Contains(p, []byte(goes)) {
		t.up = false
		if t.sent != nil {
			out, t.sent = append([]byte(forget), p...), nil
		}
	}
	if bytes.Contains(p, []byte(comes)) {
		t.up = true
		switch {
		case t.last.Paint != nil:
			t.wish(t.last)
		case t.told != nil && t.asked.IsZero():
			out = append(append([]byte(nil), p...), query...)
			t.asked, t.wants = time.Now(), answers{graphics: true, size: true}
		}
	}
	return out
}

// Show has a picture painted and sent, beside whoever asks. One that was not begun when the next is asked for is left out.
func (t *Terminal) Show(p Picture) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if p.Of != nil && p.Cols == t.last.Cols && p.Rows == t.last.Rows && reflect.DeepEqual(p.Of, t.last.Of) {
		return
	}
	t.last = p
	t.wish(p)
}

// wish puts a picture in the place of the one that was not begun.
func (t *Terminal) wish(p Picture) {
	t.once.Do(func() { go t.send() })
	select {
	case <-t.want:
	default:
	}
	t.want <- p // whoever puts one there holds the lock
}

// send paints and sends what is wanted, one after the other.
func (t *Terminal) send() {
	for p := range t.want {
		t.mu.Lock()
		size := sizeOf(p.Cols, p.Rows, t.cell)
		t.mu.Unlock()
		pixels := rgb(p.Paint(size))
		t.put(p, size, pixels)
	}
}

// put sends a picture that the terminal does not have yet, while the program's screen is there.
func (t *Terminal) put(p Picture, size image.Point, pixels []byte) {
	data := encoded(pixels, size, p.Cols, p.Rows)
	t.writing.Lock()
	defer t.writing.Unlock()
	if !t.lacks(p, pixels) {
		return
	}
	if _, err := t.File.Write(data); err == nil { // a terminal that is gone is found out by whoever writes the cells
		t.mu.Lock()
		defer t.mu.Unlock()
		t.sent, t.sentAs = pixels, p
	}
}

// lacks tells whether the program's screen is there, and the terminal has not got that picture.
func (t *Terminal) lacks(p Picture, pixels []byte) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	same := p.Cols == t.sentAs.Cols && p.Rows == t.sentAs.Rows && bytes.Equal(pixels, t.sent)
	return t.up && !same
}

// heard takes what the terminal answered, and asks on where it shows pictures.
func (t *Terminal) heard(a answer) {
	if !t.noted(a) {
		return
	}
	t.writing.Lock()
	defer t.writing.Unlock()
	_, _ = io.WriteString(t.File, probe)
}

// noted notes what the terminal answered: that it shows pictures, how large its cells are, where its cursor is. It tells whether that is to be
// asked for.
func (t *Terminal) noted(a answer) (probes bool) {
	t.mu.Lock()
	defer t.mu.Unlock()
	switch {
	case a.of == ofGraphics && t.wants.graphics:
		t.wants.graphics = false
		t.wants.place = strings.HasPrefix(a.text, "OK")
		return t.wants.place
	case a.of == ofSize && t.wants.size:
		t.wants.size = false
		if fits(a.cell) {
			t.cell = a.cell
		}
	case a.of == ofPlace && t.wants.place:
		t.wants.place = false
		if a.cell == image.Pt(1, 1) {
			t.shows.Store(true)
			go t.told()
		}
	}
	return false
}

// fits tells whether a cell may be of that size: what a terminal without pixels says is not believed.
func fits(cell image.Point) bool {
	return cell.X >= 3 && cell.Y >= 6 && cell.X <= 200 && cell.Y <= 400 && cell.X <= 2*cell.Y && cell.Y <= 5*cell.X
}

// waits tells which answers are still to come, and whether they are so soon after the question that a key waits for them.
func (t *Terminal) waits() (a answers, soon bool) {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.wants, time.Since(t.asked) < soonest
}
