package tui

import (
	"os"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
)

func TestZZShot(t *testing.T) {
	for _, c := range []struct {
		name   string
		colour desk.Colour
		w, h   int
	}{{"a", desk.TrueColour, 110, 36}, {"b", desk.NoColour, 60, 20}} {
		o := options(t)
		o.Screens = Screens()
		o.Settings.Colour = c.colour
		b := started(t, o)
		b.send(tea.WindowSizeMsg{Width: c.w, Height: c.h})
		b.press("1", "2", "enter", "enter")
		os.WriteFile("/tmp/um_"+c.name+"1.ans", []byte(b.View()), 0o644)
		b.press("esc", "down", "enter", "1", "2", "0", "esc", "1")
		for _, k := range []string{"n", "b", "1", "0", "0", "enter", "r", "4", "0", "0", "enter", "9", "0", "0", "enter", "r", "4", "0", "0", "enter", "enter", "8", "enter", "6", "enter", "1", "0"} {
			b.press(k)
		}
		os.WriteFile("/tmp/um_"+c.name+"2.ans", []byte(b.View()), 0o644)
		b.press("up", "up", "up", "up", "up", "up", "up", "up")
		os.WriteFile("/tmp/um_"+c.name+"3.ans", []byte(b.View()), 0o644)
		b.press("esc")
		os.WriteFile("/tmp/um_"+c.name+"4.ans", []byte(b.View()), 0o644)
	}
}
