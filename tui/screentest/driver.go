package screentest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// Driver drives a screen with a job on its desk the way the program does: messages in, changes applied, the job judged again, undo
// steps counted.
type Driver struct {
	T      testing.TB
	Screen desk.Screen
	State  desk.State
	Steps  []string // the undo steps made, those in a row with one name counted once
	Said   string   // the last line said
	Asked  desk.Ask
	past   []vehicles.Job
}

// New puts a job before a screen of w columns and h rows.
func New(t testing.TB, screen desk.Screen, job vehicles.Job, w, h int) *Driver {
	r := &Driver{T: t, Screen: screen, State: desk.State{Job: job, Selected: -1}}
	r.judge()
	r.Send(tea.WindowSizeMsg{Width: w, Height: h})
	return r
}

func (r *Driver) judge() {
	result, faults := rules.Judge(r.State.Job, rules.Builtin())
	r.State.Plan, r.State.Faults = result.Plan, faults
	if len(faults) == 0 {
		r.State.Result, r.State.Marks = result, rules.Marks(result)
	}
}

// Send gives the screen a message and does what it asks for.
func (r *Driver) Send(msg tea.Msg) {
	screen, change, _ := r.Screen.Update(msg, r.State)
	r.Screen = screen
	if change.Job != nil {
		if n := len(r.Steps); n == 0 || change.Step == "" || r.Steps[n-1] != change.Step {
			r.Steps, r.past = append(r.Steps, change.Step), append(r.past, r.State.Job)
		}
		r.State.Job = *change.Job
		r.judge()
	}
	if change.Select != nil {
		r.State.Selected = *change.Select
	}
	if change.Camera != nil {
		r.State.Camera = *change.Camera
	}
	if change.Settings != nil {
		r.State.Settings = *change.Settings
	}
	if change.Say != "" {
		r.Said = change.Say
	}
	r.Asked = change.Ask
}

// Undo takes the last undo step back.
func (r *Driver) Undo() {
	n := len(r.past)
	require.NotZero(r.T, n, "nothing to undo")
	r.State.Job, r.past, r.Steps = r.past[n-1], r.past[:n-1], r.Steps[:n-1]
	r.judge()
}

// bracketed are the keys that Type knows by a name in angle brackets.
var bracketed = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab, "up": tea.KeyUp,
	"down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight, "back": tea.KeyBackspace, "wipe": tea.KeyCtrlU,
	"home": tea.KeyHome, "end": tea.KeyEnd, "space": tea.KeySpace, "delete": tea.KeyDelete,
}

// Type presses keys one by one, those with a name in angle brackets: "n", "c652<enter>". It returns how many.
func (r *Driver) Type(keys string) int {
	n := 0
	for keys != "" {
		n++
		if name, rest, ok := strings.Cut(keys[1:], ">"); ok && keys[0] == '<' {
			kind, known := bracketed[name]
			require.True(r.T, known, name)
			msg := tea.KeyMsg{Type: kind}
			if kind == tea.KeySpace {
				msg.Runes = []rune{' '}
			}
			r.Send(msg)
			keys = rest
			continue
		}
		letter := []rune(keys)[0]
		r.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{letter}})
		keys = keys[len(string(letter)):]
	}
	return n
}

// Paste pastes a text.
func (r *Driver) Paste(text string) {
	r.Send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
}

// Tap taps column x of row y.
func (r *Driver) Tap(x, y int) {
	r.Send(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
}

// View is the screen without colours; it must be exactly w columns wide and h rows high.
func (r *Driver) View(w, h int) string {
	text := r.Screen.View(r.State, w, h)
	rows := strings.Split(text, "\n")
	require.Len(r.T, rows, h)
	for y, row := range rows {
		require.Equal(r.T, w, ansi.StringWidth(row), "row %d: %q", y, ansi.Strip(row))
	}
	return ansi.Strip(text)
}

// Golden compares the screen with testdata/name.txt, where row ends are marked; with UPDATE_GOLDEN=1 it writes it.
func (r *Driver) Golden(name string, w, h int) {
	r.T.Helper()
	got := strings.ReplaceAll(r.View(w, h), "\n", "|\n") + "|\n"
	path := filepath.Join("testdata", name+".txt")
	if os.Getenv("UPDATE_GOLDEN") != "" {
		require.NoError(r.T, os.MkdirAll("testdata", 0o755))
		require.NoError(r.T, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(r.T, err)
	require.Equal(r.T, string(want), got)
}
