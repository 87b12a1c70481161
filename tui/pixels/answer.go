package pixels

import (
	"image"
	"regexp"
	"strconv"
	"sync"
	"time"
)

const (
	// longestAnswer is how long an answer may be, bytes: whatever is longer is none.
	longestAnswer = 96
	// soonest is for how long after the question a key that an answer may begin with waits for the rest of that.
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

// Awaits tells whether an answer is still to come, and whether it is so soon after the question that a key waits for it.
func (t *Terminal) Awaits() (any, soon bool) {
	waits, soon := t.waits()
	return waits != (answers{}), soon
}

// Hears takes the answer that a text begins with.
func (t *Terminal) Hears(text []byte) int {
	waits, _ := t.waits()
	a, n, ok := answered(text, waits)
	if !ok {
		return 0
	}
	t.heard(a)
	return n
}

// Begins tells whether a text is how an answer begins.
func (t *Terminal) Begins(text []byte) bool { return len(text) <= longestAnswer && begun().Match(text) }

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
