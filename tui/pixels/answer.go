package pixels

import (
	"bytes"
	"image"
	"io"
	"regexp"
	"strconv"
	"sync"
	"time"
)

// Reader takes the terminal's answers out of what it sends, so that nobody takes them for keys. All else comes through as it came.
type Reader struct {
	From io.Reader
	To   *Terminal
	// More tells whether more can be read within a time: so an answer cut in two is told from a key that is how an answer begins.
	More func(within time.Duration) bool
	held []byte // the beginning of what may be an answer
	rest []byte // what comes through and has not been asked for yet
}

const (
	// longestAnswer is how long an answer may be, bytes: whatever is longer is none.
	longestAnswer = 96
	// pause is for how long a key that an answer may begin with waits for the rest of that, and soonest for how long after the
	// question keys wait at all.
	pause   = 40 * time.Millisecond
	soonest = 3 * time.Second
)

// answers say what a terminal has not answered yet.
type answers struct{ graphics, size, place bool }

// of says what an answer is of.
type of uint8

const (
	ofGraphics of = iota
	ofSize
	ofPlace
)

// answer is what a terminal said.
type answer struct {
	of   of
	text string      // of graphics
	cell image.Point // the size of a cell, pixels; where the cursor is, column and row from 1
}

// What answers look like: whole, and as much as has come of one. APC and ST are those of ECMA-48, reports those of xterm's control
// sequences. They are made once a terminal answers.
var (
	graphics = form(`\A\x1b_Gi=` + strconv.Itoa(ID) + `(?:,[^;\x1b]*)?;([^\x1b]*)\x1b\\`)
	report   = form(`\A\x1b\[(6;)?(\d{1,5});(\d{1,5})([tR])`)
	begun    = form(`\A\x1b(?:_(?:G(?:i(?:=[^\x1b]*\x1b?)?)?)?|\[(?:\d{1,5}(?:;(?:\d{1,5}(?:;\d{0,5})?)?)?)?)?\z`)
)

func form(pattern string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(pattern) })
}

// Read reads what is no answer; nothing where there was only an answer, so that whoever reads is not held up.
func (r *Reader) Read(p []byte) (int, error) {
	if len(r.rest) == 0 {
		n, err := r.From.Read(p)
		if err != nil {
			return n, err
		}
		r.rest = r.through(p[:n])
	}
	n := copy(p, r.rest)
	r.rest = r.rest[n:]
	return n, nil
}

// through returns what is no answer of bytes just read, and of what was held before.
func (r *Reader) through(read []byte) []byte {
	waits, soon := r.To.waits()
	if waits == (answers{}) || len(r.held) == 0 && bytes.IndexByte(read, '\x1b') < 0 {
		read = append(r.held, read...)
		r.held = nil
		return read
	}
	text := append(r.held, read...)
	r.held = nil
	var out []byte
	for {
		at := bytes.IndexByte(text, '\x1b')
		if at < 0 {
			return append(out, text...)
		}
		out, text = append(out, text[:at]...), text[at:]
		if a, n, ok := answered(text, waits); ok {
			r.To.heard(a)
			text = text[n:]
			waits, _ = r.To.waits()
			continue
		}
		if r.holds(text, soon) {
			r.held = bytes.Clone(text)
			return out
		}
		out, text = append(out, text[0]), text[1:]
	}
}

// holds tells whether a text is kept back until more has come.
func (r *Reader) holds(text []byte, soon bool) bool {
	if len(text) > longestAnswer || !begun().Match(text) {
		return false
	}
	key := len(text) <= 2 // Esc, or Alt with one of the signs that answers begin with
	return !key || soon && r.More != nil && r.More(pause)
}

// answered returns the answer that a text begins with and its length; ok is false when it begins with none that is awaited.
func answered(text []byte, waits answers) (a answer, n int, ok bool) {
	if m := graphics().FindSubmatch(text); m != nil && waits.graphics {
		return answer{of: ofGraphics, text: string(m[1])}, len(m[0]), true
	}
	m := report().FindSubmatch(text)
	if m == nil {
		return a, 0, false
	}
	second, _ := strconv.Atoi(string(m[2]))
	third, _ := strconv.Atoi(string(m[3]))
	a = answer{of: ofPlace, cell: image.Pt(third, second)}
	if m[4][0] == 't' {
		a.of = ofSize
		return a, len(m[0]), waits.size && len(m[1]) > 0
	}
	return a, len(m[0]), waits.place && len(m[1]) == 0
}
