package tui

import (
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// anything is a key, a tap or a turn of the wheel that somebody might make without thinking.
func anything(r *rand.Rand, w, h int) tea.Msg {
	named := []string{
		"up", "down", "left", "right", "enter", "enter", "esc", "tab", "shift+tab", "backspace", "delete", "home", "end", "pgup", "pgdown",
		"ctrl+z", "ctrl+y", "ctrl+u", "ctrl+w", "ctrl+k", "ctrl+s",
	}
	switch r.IntN(10) {
	case 0, 1, 2:
		msg, _ := keyNamed(named[r.IntN(len(named))])
		return msg
	case 3:
		return tea.MouseMsg{X: r.IntN(w), Y: r.IntN(h), Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}
	case 4:
		return tea.MouseMsg{X: r.IntN(w), Y: r.IntN(h), Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown}
	case 5, 6:
		const letters = "abcdefghijklmnopqrstuvwxyzLR+,.<>?-/ '\""
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{rune(letters[r.IntN(len(letters))])}}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'0' + rune(r.IntN(10))}}
}

// Whatever is pressed, the job on the desk is one that check takes, matching points that do not fit aside, what is saved reads
// back, and undo goes back to where it began.
func TestWhateverIsPressedTheJobStaysOneThatCanBeJudged(t *testing.T) {
	presses := 500
	if testing.Short() {
		presses = 200
	}
	for seed, name := range map[uint64]string{1: "", 2: "24-everything.toml", 3: "18-muffler-and-clips.toml", 4: "21-fuel-and-pump.toml"} {
		o := options(t)
		o.Screens, o.Path, o.StateDir = Screens(), filepath.Join(t.TempDir(), "van.toml"), ""
		text := vehicles.Demo().Format()
		if name != "" {
			var err error
			text, err = os.ReadFile(jobOfCases(t, name))
			require.NoError(t, err)
		}
		require.NoError(t, os.WriteFile(o.Path, text, 0o600))
		b := started(t, o)
		begun := b.desk.State.Job.Format()
		size := [][2]int{{60, 20}, {100, 30}, {160, 50}}[seed%3]
		b.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		r := rand.New(rand.NewPCG(seed, 7))
		var last []tea.Msg
		for n := range presses {
			msg := anything(r, size[0], size[1])
			last = append(last, msg)
			b.send(msg)
			if b.overlay() != nil && r.IntN(4) == 0 {
				b.press("esc")
			}
			if b.quit {
				b.quit = false
			}
			other := func(f vehicles.Fault) bool { return !desk.Misfit(f) } // matching points that do not fit are taken, and not saved
			require.False(t, slices.ContainsFunc(b.desk.State.Faults, other), "seed %d, press %d: %v", seed, n, last[max(0, len(last)-12):])
			require.Len(t, strings.Split(b.View(), "\n"), size[1], "seed %d, press %d", seed, n)
			if n%50 == 0 && len(b.desk.State.Faults) == 0 {
				_, err := vehicles.ParseJob(b.desk.State.Job.Format(), "job")
				require.NoError(t, err, "seed %d, press %d", seed, n)
			}
		}
		data, err := os.ReadFile(o.Path)
		require.NoError(t, err)
		job, err := vehicles.ParseJob(data, o.Path)
		require.NoError(t, err, "what was saved reads back")
		_, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		for b.overlay() != nil {
			b.press("esc")
		}
		for len(b.desk.Steps()) > 0 {
			b.press("ctrl+z")
		}
		require.True(t, bytes.Equal(begun, b.desk.State.Job.Format()), "seed %d: undo goes back to where it began", seed)
	}
}
