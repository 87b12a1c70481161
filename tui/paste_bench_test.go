package tui

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// junk is a random text of so many bytes, as a terminal library reads it: what is no letter is left out.
func junk(bytes int) string {
	random := rand.New(rand.NewPCG(1, 2))
	b := make([]byte, bytes)
	for i := range b {
		b[i] = byte(random.UintN(256))
	}
	return strings.ToValidUTF8(string(b), "")
}

// toFirstPoint go to the first reading of a new line.
var toFirstPoint = []string{"1", "n", "b"}

// A slip of the finger pastes what was copied last: the screen must answer as to any key, within 0.1 s, whatever it is.
func BenchmarkPaste(b *testing.B) {
	full := form.LongestPaste / 100
	for _, c := range []struct {
		name, text string
		marked     bool
	}{
		{"64 KB random", junk(64 << 10), true},
		{"64 KB letters, not marked as pasted", strings.Repeat("x", 64<<10), false},
		{"1 MB random", junk(1 << 20), true},
		{"1 MB in one line", strings.Repeat("x", 1<<20), true},
		{"1 MB of newlines", strings.Repeat("\n", 1<<20), true},
		{"1 MB of lines", strings.Repeat("652\n", 1<<18), true},
		{"all one field takes", strings.Repeat("x", 1999), true},
		{"100 lines that can't be read", strings.Repeat(strings.Repeat("?", full-1)+"\n", 100), true},
		{"100 readings", points(50), true},
		{"as many letters as may be typed at once", strings.Repeat("7", mostTyped), false},
	} {
		b.Run(c.name, func(b *testing.B) {
			r := crowded(b)
			for b.Loop() {
				r.pressAll(append(toFirstPoint, "space")...)
				r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(c.text), Paste: c.marked})
				_ = r.View()
				b.StopTimer()
				r.pressAll("esc")
				for r.desk.Undo() {
				}
				b.StartTimer()
			}
		})
	}
}

// points are so many points of a line, a reading a line.
func points(n int) string {
	var out strings.Builder
	for i := range n {
		fmt.Fprintf(&out, "%d\nL %d\n", 1000+10*i, 400+i%7)
	}
	return out.String()
}

// crowded is the program on a job with 60 obstructions.
func crowded(b *testing.B) *Root {
	r := working(b, jobOfCases(b, "24-everything.toml"))
	r.desk.Begin(withObstructions(r.desk.State.Job, 60), true)
	r.Update(tea.WindowSizeMsg{Width: 160, Height: 50})
	return r
}

func (r *Root) pressAll(names ...string) {
	for _, name := range names {
		msg, _ := keyNamed(name)
		r.Update(msg)
	}
}

// A fitter types on while texts are refused, however many: each key must be answered as any other.
func BenchmarkKeyBesideRefusedTexts(b *testing.B) {
	for _, n := range []int{0, vehicles.MostRefused, 20000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			r := crowded(b)
			thing := r.desk.State.Job.Obstructions[0]
			var all []vehicles.Refusal
			for i := range n {
				all = append(all, vehicles.Refusal{
					Of: "obstruction " + thing.Name, Name: thing.Name, Field: fmt.Sprintf("p%dx", i), Label: "point", Text: strings.Repeat("?", 80),
				})
			}
			job, err := vehicles.ParseJob(r.desk.State.Job.WithRefused(all).Format(), "refused.toml")
			require.NoError(b, err)
			r.desk.Begin(job, true)
			r.pressAll("1", "home", "enter", "down", "down", "down")
			keys := []string{"x", "7", "x", "backspace", "backspace", "backspace"}
			i := 0
			for b.Loop() {
				r.pressAll(keys[i%len(keys)])
				_ = r.View()
				i++
			}
		})
	}
}
