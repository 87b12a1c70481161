package sparing

import (
	"bytes"
	"io"
	"sync"
	"sync/atomic"
	"time"

	"github.com/charmbracelet/x/term"
)

// Leaving lets a program end whose terminal nobody reads: what writes on it waits as ever until Leave is called, and from then on no longer than
// a moment. What then can't be written is lost, and so is all that would come behind it.
type Leaving struct {
	left chan struct{}
	once sync.Once
}

// NewLeaving is a program that goes on.
func NewLeaving() *Leaving { return &Leaving{left: make(chan struct{})} }

// Leave has nobody wait any more. It may be called again.
func (l *Leaving) Leave() { l.once.Do(func() { close(l.left) }) }

// Writer is a writer that waits for another until the program leaves.
func (l *Leaving) Writer(to io.Writer) io.Writer { return &leavingWriter{to: to, left: l.left} }

// File is Writer for a terminal.
func (l *Leaving) File(to term.File) term.File { return leavingFile{to, l.Writer(to)} }

type leavingFile struct {
	term.File
	writer io.Writer
}

func (f leavingFile) Write(p []byte) (int, error) { return f.writer.Write(p) }

type leavingWriter struct {
	to    io.Writer
	left  <-chan struct{}
	stuck atomic.Bool
}

// atLast is how long a write is waited for once the program leaves: one that is read by somebody takes no time.
const atLast = 50 * time.Millisecond

// Write writes; what is lost counts as written.
func (w *leavingWriter) Write(p []byte) (n int, err error) {
	if w.stuck.Load() {
		return len(p), nil
	}
	written, text := make(chan struct{}), bytes.Clone(p) // whoever called may change p once he is let go
	var wrote int
	var failed error
	go func() { wrote, failed = w.to.Write(text); close(written) }()
	select {
	case <-written:
		return wrote, failed
	case <-w.left:
	}
	select {
	case <-written:
		return wrote, failed
	case <-time.After(atLast):
		w.stuck.Store(true)
		return len(p), nil
	}
}
