package tui

import (
	"io"

	tea "github.com/charmbracelet/bubbletea"
)

// suspended says that the program is to be suspended, or that it was stopped and goes on again: then the terminal is
// not as it was left, as somebody else has had it meanwhile.
type suspended struct{ goesOn bool }

func (m suspended) happened(r *Root) tea.Cmd {
	wait := standstill(func() error { return nil })
	if !m.goesOn {
		wait = func() error {
			_ = r.jotted() // who suspends a program may never come back; faults of these and of the journal are told elsewhere
			if r.journal != nil {
				_ = r.journal.sync()
			}
			return stop()
		}
	}
	return tea.Exec(wait, func(error) tea.Msg { return tea.ResumeMsg{} })
}

// standstill is what the library gives the terminal back for: it is as it was before the program while this runs, and
// painted again after it.
type standstill func() error

func (s standstill) Run() error        { return s() }
func (standstill) SetStdin(io.Reader)  {}
func (standstill) SetStdout(io.Writer) {}
func (standstill) SetStderr(io.Writer) {}
