package tui

import tea "github.com/charmbracelet/bubbletea"

// onSuspend does nothing: programs are not suspended here.
func (r *Root) onSuspend(*tea.Program) (stop func()) { return func() {} }

// stop does nothing.
func stop() error { return nil }
