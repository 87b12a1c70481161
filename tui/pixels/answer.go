package pixels

import (
	"bytes"
	"io"
)

// Reader takes the answers to Query out of what a terminal sends, so that nobody takes them for keys. All else comes through as it
// came.
type Reader struct {
	From io.Reader
	To   *Terminal
	held []byte // the beginning of what may be an answer
	rest []byte // what comes through and has not been asked for yet
}

// begins is how an answer of any kind begins (APC of ECMA-48, and the protocol's letter), ends how it ends (ST).
const (
	begins = "\x1b_G"
	ends   = "\x1b\\"
)

// longest is how long an answer may be, bytes: whatever is longer is none.
const longest = 256

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
	if len(r.held) == 0 && !bytes.Contains(read, []byte(begins[:2])) {
		return read // as nearly all there is
	}
	text := append(r.held, read...)
	r.held = nil
	var out []byte
	for {
		at := bytes.Index(text, []byte(begins))
		if at < 0 {
			return append(out, text...)
		}
		out = append(out, text[:at]...)
		text = text[at:]
		end := bytes.Index(text, []byte(ends))
		switch {
		case end >= 0:
			r.heard(text[:end])
			text = text[end+len(ends):]
		case len(text) > longest:
			return append(out, text...)
		default:
			r.held = append([]byte(nil), text...)
			return out
		}
	}
}

// heard takes an answer.
func (r *Reader) heard(text []byte) {
	if bytes.HasPrefix(text, []byte(answer)) {
		r.To.shows.Store(true)
	}
}
