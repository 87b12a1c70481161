package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/stretchr/testify/assert"
)

// A terminal that says it has no end, or less than nothing, gets a screen that can be painted, and keys go on.
func TestAWindowOfAnySizeIsPainted(t *testing.T) {
	b, _ := demoOpened(t)
	for _, size := range []tea.WindowSizeMsg{{Width: 65535, Height: 65535}, {Width: 65535, Height: 1}, {Width: 1, Height: 65535}, {Width: 3000, Height: 2000}, {Width: -1, Height: -1}, {Width: 0, Height: 65535}} {
		b.send(size)
		for _, key := range []string{"4", "right", "1"} {
			b.press(key)
			rows := strings.Split(b.View(), "\n")
			widest := 0
			for _, row := range rows {
				widest = max(widest, lipgloss.Width(row))
			}
			assert.LessOrEqual(t, len(rows)*max(1, widest), mostCells, "%v", size)
		}
	}
	b.send(tea.WindowSizeMsg{Width: 160, Height: 50})
	assert.Len(t, strings.Split(b.View(), "\n"), 50, "and what is no larger is painted whole")
}
