package main

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// bareEnv has the test's own binary be the bare program.
const bareEnv = "UNDERMARK_TESTS_BARE"

// counter is a bare program of the terminal library: a key changes one row of a full screen.
type counter struct{ n, w, h int }

func (c counter) Init() tea.Cmd { return nil }

func (c counter) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		c.w, c.h = msg.Width, msg.Height
	case tea.KeyMsg:
		if c.n++; msg.Type == tea.KeyCtrlC {
			return c, tea.Quit
		}
	}
	return c, nil
}

func (c counter) View() string {
	return fmt.Sprintf("keys: %d\n", c.n) + strings.Repeat(strings.Repeat("x", c.w)+"\n", max(c.h-2, 0))
}

// bare runs the bare program with as many pictures a second as ours.
func bare() int {
	if _, err := tea.NewProgram(counter{}, tea.WithAltScreen(), tea.WithFPS(120)).Run(); err != nil {
		return 1
	}
	return 0
}
