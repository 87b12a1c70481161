package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

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
func fuzzedJobs(t testing.TB) [][]byte {
	jobs := [][]byte{vehicles.Demo().Format(), vehicles.NewJob("TL-07").Format()}
	for _, name := range []string{"24-everything.toml", "18-muffler-and-clips.toml", "21-fuel-and-pump.toml"} {
		text, err := os.ReadFile(jobOfCases(t, name))
		require.NoError(t, err)
		jobs = append(jobs, text)
	}
	return jobs
}

// searches are keys that look for whole layouts or runs: seconds of work that have their own tests.
const searches = "cjJ"

// event is what the next bytes stand for: a letter, a key with a name, something with the mouse, a paste, another size of the window.
func event(in []byte) (msg tea.Msg, rest []byte) {
	const points, pastes, sizes = 0xf0, 0xfc, 0xfd
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
	case b == pastes:
		n := min(1+at(0, 40), len(rest))
		msg, rest = tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune(strings.ToValidUTF8(string(rest[:n]), "?"))}, rest[n:]
	case b >= points:
		msg, rest = pointed(int(b-points), at(0, 160), at(1, 50)), rest[min(2, len(rest)):]
	case b >= 0x80:
		msg = namedKey(fuzzedKeys[int(b-0x80)%len(fuzzedKeys)])
	case b < ' ' || b == 0x7f || strings.ContainsRune(searches, rune(b)):
		msg = namedKey(fuzzedKeys[int(b)%len(fuzzedKeys)])
	default:
		msg = tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{rune(b)}}
	}
	return msg, rest
}

// Whatever is pressed, tapped, dragged, turned or pasted on any screen and at any size, after each event all holds that has to (watched.holds), and undo goes back to
// where it began.
func FuzzKeys(f *testing.F) {
	for job := range byte(5) {
		f.Add(job, []byte("1nc652\x84+84\x84-850\x84850\x84\x85\x8e"))
		f.Add(job, []byte("4\x82\x82s\x83t1200\x84240\x84n\x8e\x8e\x8f\x93"))
		f.Add(job, []byte("5ar\x80\x80d\x81mhwq\x8e\xf0\x20\x10\xf8\x20\x10\x93"))
		f.Add(job, []byte("2\x84500\x84\x85\x93\xfd\x3c\x147\x84\x84?\x85!\x85bB8\x84zy"))
		f.Add(job, []byte("6\x84\x84d\x853n700\x84L 100\x84\x84\x859 \x84ok\x84\x8e"))
		f.Add(job, []byte("4\xf0\x20\x10\xf1\x24\x12\xf2\x24\x12\xf3\x20\x10\x94\x98\x9f1\x84\xfc\x07652\r+8411\x85"))
	}
	jobs := fuzzedJobs(f)
	f.Fuzz(func(t *testing.T, which byte, pressed []byte) {
		if len(pressed) > 120 {
			return
		}
		b, o := fuzzed(t, jobs[int(which)%len(jobs)])
		begun, w := b.desk.State.Job, watch(b, o)
		about := func() string { return fmt.Sprintf("%q", pressed) }
		for rest := pressed; len(rest) > 0; {
			var msg tea.Msg
			msg, rest = event(rest)
			w.does(msg, about)
		}
		w.takesBack(begun, about)
	})
}
