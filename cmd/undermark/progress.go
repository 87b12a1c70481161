package main

import (
	"fmt"
	"os"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"bench.example/undermark/tui/desk"
	"github.com/charmbracelet/x/term"
)

// progress says on standard error how far an answer is. Only a person at a terminal is told; nil tells nobody.
type progress struct {
	said  atomic.Pointer[string]
	ended chan struct{}
	told  sync.WaitGroup
}

// startProgress starts to tell, when standard error is a terminal and nobody asked for JSON.
func startProgress(s streams, json bool) (p *progress, stop func()) {
	to, isFile := s.watched.(*os.File)
	if json || !isFile || !term.IsTerminal(to.Fd()) {
		return nil, func() {}
	}
	ticker := time.NewTicker(desk.Glance)
	p = newProgress(lastLine{to, os.Getenv("TERM") == "dumb"}, ticker.C)
	return p, func() {
		ticker.Stop()
		p.stop()
	}
}

// newProgress shows on a line, each time there is a tick, what was said last.
func newProgress(l lastLine, ticks <-chan time.Time) *progress {
	p := &progress{ended: make(chan struct{})}
	p.told.Go(func() {
		shown := ""
		defer func() { l.show(shown, "") }()
		for {
			select {
			case <-p.ended:
				return
			case <-ticks:
				if said := p.said.Load(); said != nil {
					shown = l.show(shown, *said)
				}
			}
		}
	})
	return p
}

// say has a text shown at the next tick.
func (p *progress) say(format string, values ...any) {
	if p != nil {
		said := fmt.Sprintf(format, values...)
		p.said.Store(&said)
	}
}

// stop ends the telling and clears the line.
func (p *progress) stop() {
	close(p.ended)
	p.told.Wait()
}

// lastLine is the last line of a terminal. It is written over from its start and cleared with blanks: any terminal that
// knows a carriage return can do that. One that knows nothing is told once, in a line of its own.
type lastLine struct {
	to   interface{ WriteString(string) (int, error) }
	dumb bool
}

// show puts a text where another was and returns it.
func (l lastLine) show(old, text string) string {
	switch {
	case text == old || l.dumb && old != "":
	case l.dumb:
		_, _ = l.to.WriteString(text + "\n") // whoever can't be told waits without
	default:
		rest := max(0, len(old)-len(text))
		_, _ = l.to.WriteString("\r" + text + strings.Repeat(" ", rest) + strings.Repeat("\b", rest))
	}
	return text
}
