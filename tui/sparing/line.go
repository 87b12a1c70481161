package sparing

import (
	"regexp"
	"sync"
	"time"

	"bench.example/undermark/tui/answers"
)

// question is whether the terminal is well: what is meant is when it says so. Source: ECMA-48, 8.3.35 (device status report). Some
// answer as they would for a private mode, with a question mark.
const question = "\x1b[5n"

var (
	answer = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\A\x1b\[\??[0-9]n`) })
	begun  = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\A\x1b(?:\[\??[0-9]?)?\z`) })
)

const (
	// patience is how long an answer is waited for before a picture: at 9600 bit/s a whole one of 29 kB is sent meanwhile. Where none took long so far
	// it is slower times as long as the longest, soon at the least: an answer that was lost is no slow line.
	patience, slower, soon = 30 * time.Second, 20, 3 * time.Second
	// atQuit is how long one is waited for before a program ends, so that no shell takes it for keys.
	atQuit = 250 * time.Millisecond
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

// Hears notes an answer.
func (l *line) Hears(text []byte) int {
	n := len(answer().Find(text))
	if n == 0 {
		return 0
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	l.asked, l.answers, l.longest = max(0, l.asked-1), true, max(l.longest, time.Since(l.begun))
	l.heard.Broadcast()
	return n
}

// Begins tells whether a text is how an answer begins.
func (l *line) Begins(text []byte) bool { return begun().Match(text) }

// Awaits tells whether an answer is still to come; it always comes soon.
func (l *line) Awaits() (any, soon bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.asked > 0, l.asked > 0
}

// Asks has the terminal asked behind each picture, so that the next waits until that is seen, and returns who has to hear the answers.
func (t *Terminal) Asks() answers.Awaiter {
	t.line.listens = true
	return &t.line
}

// Settle waits, a moment at the most, for the answer to the last question.
func (t *Terminal) Settle() { t.line.wait(atQuit) }
