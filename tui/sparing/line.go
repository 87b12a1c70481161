package sparing

import (
	"bytes"
	"io"
	"regexp"
	"sync"
	"time"
)

// question is whether the terminal is well: what is meant is when it says so. Source: ECMA-48, 8.3.35 (device status report). Some
// answer as they would for a private mode, with a question mark.
const question = "\x1b[5n"

var (
	answer = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\x1b\[\??[0-9]n`) })
	begun  = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\x1b(?:\[\??[0-9]?)?\z`) })
)

const (
	// patience is how long an answer is waited for before a picture: at 9600 bit/s a whole one of 29 kB is sent meanwhile. Where none took long so far
	// it is slower times as long as the longest, soon at the least: an answer that was lost is no slow line.
	patience, slower, soon = 30 * time.Second, 20, 3 * time.Second
	// atQuit is how long one is waited for before a program ends, so that no shell takes it for keys.
	atQuit = 250 * time.Millisecond
	// pause is for how long a key that an answer may begin with waits for the rest of that.
	pause = 40 * time.Millisecond
)

// line is what lies between the program and what shows its pictures. A slow one has the system take tens of kB ahead, and nobody tells how much of that
// was seen: whoever sends one picture after the other is seconds ahead. So each ends with a question, and the next waits for its answer.
// Of a terminal that answers nothing, nothing is waited for.
type line struct {
	mu       sync.Mutex
	heard    sync.Cond
	listens  bool          // somebody takes the answers out of what is read
	answers  bool          // the terminal does
	asked    int           // how many answers are still to come
	begun    time.Time     // when the newest question was asked
	longest  time.Duration // that an answer took
	hurrying int           // who can't wait
}

// asks appends a question, the first time before what is sent, too: a terminal that answers is known by the second picture, however slow it is.
func (l *line) asks(text []byte) []byte {
	l.mu.Lock()
	defer l.mu.Unlock()
	switch {
	case !l.listens || l.asked > 0:
		return text
	case !l.answers:
		l.asked++
		text = append([]byte(question), text...)
	}
	l.asked++
	l.begun = time.Now()
	return append(text, question...)
}

// wait waits for what was asked, a time at the most, unless somebody is in a hurry. A terminal that does not answer any more isn't waited for again
// until it does.
func (l *line) wait(most time.Duration) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if !l.waits() {
		return
	}
	most = min(most, max(soon, slower*l.longest))
	late := time.AfterFunc(most, func() {
		l.mu.Lock()
		defer l.mu.Unlock()
		l.answers = false
		l.heard.Broadcast()
	})
	defer late.Stop()
	for l.waits() {
		l.heard.Wait()
	}
}

func (l *line) waits() bool { return l.answers && l.asked > 0 && l.hurrying == 0 }

// hurry has nobody wait until it is called again with -1.
func (l *line) hurry(by int) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.hurrying += by
	l.heard.Broadcast()
}

// forget has nobody wait for what was asked: somebody else may have read the answer.
func (l *line) forget() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.asked, l.answers = 0, false
}

// answered notes an answer.
func (l *line) answered() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.asked, l.answers, l.longest = max(0, l.asked-1), true, max(l.longest, time.Since(l.begun))
	l.heard.Broadcast()
}

// awaits tells whether an answer is still to come.
func (l *line) awaits() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.asked > 0
}

// Reader takes the terminal's answers out of what it sends: with it pictures wait until the one before is seen. More tells whether more can be
// read within a time, so that an answer cut in two is told from a key that is how an answer begins.
func (t *Terminal) Reader(from io.Reader, more func(within time.Duration) bool) io.Reader {
	t.line.listens = true
	return &reader{line: &t.line, from: from, more: more}
}

// Settle waits, a moment at the most, for the answer to the last question.
func (t *Terminal) Settle() { t.line.wait(atQuit) }

type reader struct {
	*line
	from       io.Reader
	more       func(within time.Duration) bool
	held, rest []byte // what may begin an answer; what comes through and was not asked for yet
}

// Read reads what is no answer; nothing where there was only an answer, so that whoever reads is not held up. A read that filled p may be cut
// anywhere: what is taken out of it is made up for with what follows.
func (r *reader) Read(p []byte) (int, error) {
	for cut := true; cut && len(r.rest) < len(p); {
		n, err := r.from.Read(p)
		if err != nil {
			return copy(p, r.rest), err
		}
		cut = n == len(p) && r.more(0)
		r.rest = append(r.rest, r.through(append(r.held, p[:n]...))...)
	}
	n := copy(p, r.rest)
	r.rest = r.rest[n:]
	return n, nil
}

// through returns what is no answer of a text.
func (r *reader) through(text []byte) (out []byte) {
	r.held = nil
	for r.awaits() {
		at := answer().FindIndex(text)
		if at == nil {
			break
		}
		r.answered()
		out, text = append(out, text[:at[0]]...), text[at[1]:]
	}
	if !r.awaits() {
		return append(out, text...)
	}
	if at := begun().FindIndex(text); at != nil && r.more(pause) {
		r.held, text = bytes.Clone(text[at[0]:]), text[:at[0]]
	}
	return append(out, text...)
}
