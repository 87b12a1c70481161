package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// fuzzed is a program on a job file of its own, whose journal is taken up only by those who ask for it.
func fuzzed(t *testing.T, text []byte) (*bench, Options) {
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, text, 0o600))
	return started(t, o), o
}

// Whatever lies in a journal, the program starts, says what it found, and nothing of it goes before somebody answered: what can't be read stays
// to the byte, what can is on the desk once it is taken up, and saved it reads back.
func FuzzJournal(f *testing.F) {
	demo := vehicles.Demo()
	demo.Notes = "unsaved"
	begun := work{demo, vehicles.UnknownBase}
	whole := begun.text("van.toml")
	for _, seed := range [][]byte{
		nil, whole, whole[:len(whole)/2], vehicles.NewJob("TL-07").Format(), []byte(begunLine + "\n"), []byte(begunLine + "a file of 12 bytes\nformat = 1\n"),
		[]byte("# \x1b[31m\n"), []byte("format = 1\n[job]\nref = \"\\u001b[31m\"\n"), {0xff, 0xfe}, []byte(strings.Repeat("#\n", 500)),
	} {
		f.Add(seed, byte(0))
		f.Add(seed, byte(1))
	}
	f.Fuzz(func(t *testing.T, data []byte, answer byte) {
		if len(data) > 20000 {
			return
		}
		o := options(t)
		o.Screens = Screens()
		require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o600))
		path := filepath.Join(o.StateDir, "journal", journalName(o.Path)+"-1.toml")
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
		require.NoError(t, os.WriteFile(path, data, 0o600))
		left, err := vehicles.ParseJob(data, path, o.Book)
		b := started(t, o)
		if b.overlay() == nil {
			require.Equal(t, string(vehicles.NewJob("TL-07").Format()), string(left.Format()), "only what is on the desk anyway is not asked about")
			return
		}
		kept, readErr := os.ReadFile(path)
		require.NoError(t, readErr)
		require.Equal(t, string(data), string(kept), "before the answer")
		b.press([]string{"1", "2", "3"}[answer%3])
		b.View()
		switch {
		case unlessWhole(err) != nil:
			kept, readErr := os.ReadFile(path)
			require.NoError(t, readErr)
			require.Equal(t, string(data), string(kept), "what can't be read stays")
		case answer%3 == 0:
			require.Equal(t, string(left.Format()), string(b.desk.State.Job.Format()))
		}
	})
}

// Whatever lies where ticked marks are kept, the program starts, a mark counts as made or not, and what was ticked is written again.
func FuzzTicks(f *testing.F) {
	for _, seed := range []string{
		"", "[\"cut centre\"]\n", "a = " + strings.Repeat("[", 300_000), "a" + strings.Repeat(".a", 300_000) + " = 1", "cut = 1\n", "\xff\xfe", "[[a]]\n",
		"\"cut centre\" = nan\n", "\"cut centre\" = [1, 2]\n",
	} {
		f.Add([]byte(seed))
	}
	job := vehicles.NewJob("TL-07").WithCut(vehicles.Cut{At: [2]float64{1210, 240}, Across: 127})
	f.Fuzz(func(t *testing.T, data []byte) {
		o := options(t)
		require.NoError(t, os.WriteFile(o.Path, job.Format(), 0o600))
		path := filepath.Join(o.StateDir, "ticks", journalName(o.Path)+".toml")
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
		require.NoError(t, os.WriteFile(path, data, 0o600))
		b := started(t, o)
		b.View()
		made := b.desk.State.Ticked["cut centre"]
		b.do(b.apply(desk.Change{Tick: "cut centre"}))
		require.Equal(t, !made, b.desk.State.Ticked["cut centre"])
		require.Equal(t, !made, started(t, o).desk.State.Ticked["cut centre"], "the next day")
	})
}

// fuzzedJobs are what keys are pressed on: a job with everything in it, and the least there can be.
func fuzzedJobs(f *testing.F) [][]byte {
	jobs := [][]byte{vehicles.Demo().Format(), vehicles.NewJob("TL-07").Format()}
	for _, name := range []string{"24-everything.toml", "18-muffler-and-clips.toml", "21-fuel-and-pump.toml"} {
		text, err := os.ReadFile(jobOfCases(f, name))
		require.NoError(f, err)
		jobs = append(jobs, text)
	}
	return jobs
}

// fuzzedKeys are the keys that go by a name, one for each byte from 128 on; those below are letters, but for the first few.
var fuzzedKeys = []string{
	"up", "down", "left", "right", "enter", "esc", "tab", "shift+tab", "backspace", "delete", "home", "end", "pgup", "pgdown",
	"ctrl+z", "ctrl+y", "ctrl+u", "ctrl+w", "ctrl+k", "ctrl+s",
}

// searches are keys that look for whole layouts or runs: seconds of work that have their own tests.
const searches = "cjJ"

// event is what the next bytes stand for: a letter, a key with a name, a tap, a turn of the wheel, another size of the window.
func event(in []byte) (msg tea.Msg, rest []byte) {
	const taps, wheels, sizes = 0xf0, 0xf8, 0xfc
	b, rest := in[0], in[1:]
	at := func(i, span int) int {
		if i >= len(rest) {
			return 0
		}
		return int(rest[i]) % span
	}
	switch {
	case b >= sizes:
		msg, rest = tea.WindowSizeMsg{Width: 1 + at(0, 200), Height: 1 + at(1, 60)}, rest[min(2, len(rest)):]
	case b >= wheels:
		button := []tea.MouseButton{tea.MouseButtonWheelDown, tea.MouseButtonWheelUp}[b%2]
		msg, rest = tea.MouseMsg{X: at(0, 160), Y: at(1, 50), Action: tea.MouseActionPress, Button: button}, rest[min(2, len(rest)):]
	case b >= taps:
		msg, rest = tea.MouseMsg{X: at(0, 160), Y: at(1, 50), Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}, rest[min(2, len(rest)):]
	case b >= 0x80:
		msg, _ = keyNamed(fuzzedKeys[int(b-0x80)%len(fuzzedKeys)])
	case b < ' ' || b == 0x7f || strings.ContainsRune(searches, rune(b)):
		msg, _ = keyNamed(fuzzedKeys[int(b)%len(fuzzedKeys)])
	default:
		msg = tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{rune(b)}}
	}
	return msg, rest
}

// Whatever is pressed, tapped or turned on any screen and at any size, the screen is as high as the window and no wider, the job on the desk is one that can be
// judged, what is saved reads back, and undo goes back to where it began.
func FuzzKeys(f *testing.F) {
	for job := range byte(5) {
		f.Add(job, []byte("1nc652\x84+84\x84-850\x84850\x84\x85\x8e"))
		f.Add(job, []byte("4\x82\x82s\x83t1200\x84240\x84n\x8e\x8e\x8f\x93"))
		f.Add(job, []byte("5ar\x80\x80d\x81mhwq\x8e\xf0\x20\x10\xf8\x20\x10\x93"))
		f.Add(job, []byte("2\x84500\x84\x85\x93\xfc\x3c\x147\x84\x84?\x85!\x85bB8\x84zy"))
		f.Add(job, []byte("6\x84\x84d\x853n700\x84L 100\x84\x84\x859 \x84ok\x84\x8e"))
	}
	jobs := fuzzedJobs(f)
	f.Fuzz(func(t *testing.T, which byte, pressed []byte) {
		if len(pressed) > 120 {
			return
		}
		b, o := fuzzed(t, jobs[int(which)%len(jobs)])
		begun := string(b.desk.State.Job.Format())
		for rest := pressed; len(rest) > 0; {
			var msg tea.Msg
			msg, rest = event(rest)
			b.deaf = time.Time{}
			b.send(msg)
			b.quit = false
			require.False(t, slices.ContainsFunc(b.desk.State.Faults, func(f vehicles.Fault) bool { return !desk.Misfit(f) }), "%q", pressed)
			rows := strings.Split(b.View(), "\n")
			require.Len(t, rows, b.h, "%q", pressed)
			for y, row := range rows {
				require.LessOrEqual(t, ansi.StringWidth(row), b.w, "%q: row %d: %q", pressed, y, row)
			}
		}
		readsBack(t, b, o)
		b.send(tea.WindowSizeMsg{Width: 100, Height: 30}) // one that is too small takes no keys
		for n := 0; b.overlay() != nil; n++ {
			require.Less(t, n, 50, "what lies over the screens goes by Esc: %q\n%s", pressed, b.View())
			b.press("esc")
		}
		for n := 0; len(b.desk.Steps()) > 0; n++ {
			require.Less(t, n, 500, "undo comes to an end: %q\n%s", pressed, b.View())
			b.press("ctrl+z")
		}
		require.Equal(t, begun, string(b.desk.State.Job.Format()), "%q", pressed)
	})
}

// readsBack holds that the job on the desk and the one that was saved are read as they are written.
func readsBack(t *testing.T, b *bench, o Options) {
	if len(b.desk.State.Faults) == 0 {
		text := b.desk.State.Job.Format()
		again, err := vehicles.ParseJob(text, "job", rules.Builtin())
		require.NoError(t, err)
		require.Equal(t, string(text), string(again.Format()))
	}
	data, err := os.ReadFile(o.Path)
	require.NoError(t, err)
	_, err = vehicles.ParseJob(data, o.Path, rules.Builtin())
	require.NoError(t, err, "what was saved reads back")
}
