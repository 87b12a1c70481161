package tui

import (
	"errors"
	"sync"
	"sync/atomic"

	tea "github.com/charmbracelet/bubbletea"
)

// jotting writes down something small of the program's own, the settings or the ticked marks, and always the latest of it: commands
// run beside each other, and of two writes the older one may come to its turn last.
type jotting struct {
	disk   sync.Mutex                   // one writer at a time; never taken in Update
	latest atomic.Pointer[func() error] // nil: all is written
}

// keep is the command that writes, or that finds a later one written already.
func (j *jotting) keep(write func() error) tea.Cmd {
	j.latest.Store(&write)
	return func() tea.Msg { return noted{j.write()} }
}

// write writes what is not written yet.
func (j *jotting) write() error {
	j.disk.Lock()
	defer j.disk.Unlock()
	if write := j.latest.Swap(nil); write != nil {
		return (*write)()
	}
	return nil
}

// jotted writes what is not written down yet; the error is what could not be.
func (r *Root) jotted() error { return errors.Join(r.settings.write(), r.ticks.write()) }

// noted is what came of writing down something small of the program's own.
type noted struct{ err error }

func (m noted) happened(r *Root) tea.Cmd {
	if m.err != nil {
		r.tell(m.err.Error())
	}
	return nil
}
