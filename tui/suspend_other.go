//go:build !windows

package tui

import (
	"os"
	"os/signal"
	"sync/atomic"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// standing says that the program stands still of its own accord and waits to hear on goesOn that it goes on.
var (
	standing atomic.Bool
	goesOn   = make(chan struct{}, 1)
)

// onSuspend passes on that the program is to be suspended from outside, and that it goes on after it was stopped without
// having been asked.
func (r *Root) onSuspend(p *tea.Program) (stop func()) {
	heard, done := make(chan os.Signal, 4), make(chan struct{})
	signal.Notify(heard, syscall.SIGTSTP, syscall.SIGCONT)
	go func() {
		for {
			select {
			case <-done:
				return
			case s := <-heard:
				on := s == syscall.SIGCONT
				if on && standing.CompareAndSwap(true, false) {
					goesOn <- struct{}{}
					continue
				}
				p.Send(suspended{goesOn: on})
			}
		}
	}()
	return func() { signal.Stop(heard); close(done) }
}

// stop stops the program until somebody has it go on.
func stop() error {
	standing.Store(true)
	err := syscall.Kill(os.Getpid(), syscall.SIGSTOP)
	select { // the kernel may take a moment; nobody waits for ever for a signal that was missed
	case <-goesOn:
	case <-time.After(time.Second):
		if !standing.CompareAndSwap(true, false) {
			<-goesOn // it came at the last moment
		}
	}
	return err
}
