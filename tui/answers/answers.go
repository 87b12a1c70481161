// Package answers takes what a terminal answers out of what it sends, so that nobody takes it for keys: one reader for whoever asks.
package answers

import (
	"bytes"
	"io"
	"time"
)

// Awaiter is somebody who asks a terminal something.
type Awaiter interface {
	// Awaits tells whether an answer is still to come, and whether one is so likely that a key which it may begin with waits for the rest.
	Awaits() (any, soon bool)
	// Hears takes the answer that a text begins with and returns its length; 0 where it begins with none that is awaited.
	Hears(text []byte) int
	// Begins tells whether a text is how an answer begins, and no more of one.
	Begins(text []byte) bool
}

// Reader reads what is no answer; that comes through as it came.
type Reader struct {
	From io.Reader
	For  []Awaiter
	// More tells whether more can be read within a time, so that an answer cut in two is told from a key that is how an answer begins; nil
	// where nobody knows.
	More       func(within time.Duration) bool
	held, rest []byte // what may begin an answer; what comes through and was not asked for yet
}

// pause is for how long a key that an answer may begin with waits for the rest of that.
const pause = 40 * time.Millisecond

// Read reads what is no answer; nothing where there was only an answer, so that whoever reads is not held up. A read that filled p may be cut
// anywhere: what is taken out of it is made up for with what follows.
func (r *Reader) Read(p []byte) (int, error) {
	for cut := true; cut && len(r.rest) < len(p); {
		n, err := r.From.Read(p)
		if err != nil {
			r.rest, r.held = append(r.rest, r.held...), nil
			n = copy(p, r.rest)
			if r.rest = r.rest[n:]; len(r.rest) > 0 {
				return n, nil
			}
			return n, err
		}
		cut = n == len(p) && r.more(0)
		r.rest = append(r.rest, r.through(p[:n])...)
	}
	n := copy(p, r.rest)
	r.rest = r.rest[n:]
	return n, nil
}

func (r *Reader) more(within time.Duration) bool { return r.More != nil && r.More(within) }

// through returns what is no answer of bytes just read, and of what was held before.
func (r *Reader) through(read []byte) (out []byte) {
	text := append(r.held, read...)
	r.held = nil
	for {
		at := bytes.IndexByte(text, '\x1b')
		if at < 0 || !r.awaits() {
			return append(out, text...)
		}
		out, text = append(out, text[:at]...), text[at:]
		switch n := r.hears(text); {
		case n > 0:
			text = text[n:]
		case r.holds(text):
			r.held = bytes.Clone(text)
			return out
		default:
			out, text = append(out, text[0]), text[1:]
		}
	}
}

// awaits tells whether anybody awaits an answer.
func (r *Reader) awaits() bool {
	for _, of := range r.For {
		if any, _ := of.Awaits(); any {
			return true
		}
	}
	return false
}

// hears has whoever it is for take the answer that a text begins with.
func (r *Reader) hears(text []byte) (n int) {
	for _, of := range r.For {
		if any, _ := of.Awaits(); any && n == 0 {
			n = of.Hears(text)
		}
	}
	return n
}

// holds tells whether a text is kept back until more has come: the beginning of an answer, and a key, Esc or Alt with one of the signs that
// answers begin with, where more comes at once.
func (r *Reader) holds(text []byte) bool {
	key, begins := len(text) <= 2, false
	for _, of := range r.For {
		any, soon := of.Awaits()
		begins = begins || any && (soon || !key) && of.Begins(text)
	}
	return begins && (!key || r.more(pause))
}
