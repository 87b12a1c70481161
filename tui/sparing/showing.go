package sparing

import tea "github.com/charmbracelet/bubbletea"

// Showing returns a model that does what another does, and whose pictures go to the terminal past the library, which must write on it.
func (t *Terminal) Showing(m tea.Model) tea.Model { return showing{Model: m, on: t} }

// showing is a model whose pictures are held by a terminal.
type showing struct {
	tea.Model
	on   *Terminal
	size size
}

// Update is that of the model.
func (s showing) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if now, is := msg.(tea.WindowSizeMsg); is {
		s.size = size{now.Width, now.Height}
	}
	var cmd tea.Cmd
	s.Model, cmd = s.Model.Update(msg)
	return s, cmd
}

// View is the ticket of the model's picture.
func (s showing) View() string { return s.on.hold(s.Model.View(), s.size) }
