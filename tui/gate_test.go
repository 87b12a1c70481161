package tui

import (
	"bytes"
	"io"
	"math/rand/v2"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/tui/answers"
	"bench.example/undermark/tui/form"
)

// through is what comes through the gate of a text that is read in pieces of at most size bytes. Every read but the last must
// be full: to the library a short one is the end of a key.
func through(t require.TestingT, text string, size int) string {
	g := &gate{from: strings.NewReader(text)}
	var all bytes.Buffer
	short := false
	for p := make([]byte, size); ; {
		n, err := g.Read(p)
		all.Write(p[:n])
		require.False(t, n > 0 && short)
		short = n < size
		if err == io.EOF {
			return all.String()
		}
		require.NoError(t, err)
	}
}

func TestWhatIsNoLongPasteComesThroughAsItIs(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		parts := []string{pasteBegins, pasteEnds, "\x1b", "\x1b[20", "652\r", "é世", "\xff", "\x1b[<0;10;10M", strings.Repeat("7", 300)}
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(parts), 0, 40).Draw(rt, "parts"), "")
		size := rapid.IntRange(1, 300).Draw(rt, "size")
		require.Equal(rt, text, through(rt, text, size))
	})
}

func TestALongPasteIsKnownToBeTooLong(t *testing.T) {
	random := make([]byte, 1<<20)
	for i, source := 0, rand.New(rand.NewPCG(3, 4)); i < len(random); i++ {
		random[i] = byte(source.UintN(256))
	}
	for name, text := range map[string]string{
		"random": string(random), "one line": strings.Repeat("x", 1<<20), "lines": strings.Repeat("652\r", 1<<18),
		"no letters at all": strings.Repeat("\xff", 1<<20), "colours": strings.Repeat("\x1b[31m", 1<<18),
		"nearly the mark": strings.Repeat("\x1b[201", 1<<18), "a reading, then none": "652" + strings.Repeat("\xff", 1<<20),
	} {
		for _, size := range []int{1, 256} {
			typed := strings.Repeat("\x1b[A", 500)
			out := through(t, "a"+pasteBegins+text+pasteEnds+typed, size)
			require.True(t, strings.HasPrefix(out, "a"+pasteBegins), name)
			require.True(t, strings.HasSuffix(out, pasteEnds+typed), "%s: what is typed then is not lost", name)
			inside := strings.TrimSuffix(strings.TrimPrefix(out, "a"+pasteBegins), pasteEnds+typed)
			require.NotContains(t, inside, pasteEnds)
			valid := strings.ToValidUTF8(inside, "")
			assert.Greater(t, utf8.RuneCountInString(valid), form.LongestPaste, name)
			if size > len(pasteEnds) {
				assert.Less(t, len(inside), refusedPaste+2*size, "%s in reads of %d", name, size)
			}
		}
	}
}

func TestTheLongestPasteComesThrough(t *testing.T) {
	text := pasteBegins + strings.Repeat("\U0001f527", form.LongestPaste) + pasteEnds
	assert.Equal(t, text, through(t, text, 256))
}

// reached waits for the first message with more than one letter.
type reached struct{ with int }

func (reached) Init() tea.Cmd { return nil }
func (reached) View() string  { return "" }
func (r reached) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if k, ok := msg.(tea.KeyMsg); ok && len(k.Runes) > 1 {
		return reached{len(k.Runes)}, tea.Quit
	}
	return r, nil
}

// A pasted megabyte on its way from the terminal to the program.
func BenchmarkReadingAPaste(b *testing.B) {
	for name, text := range map[string]string{"letters": strings.Repeat("x", 1<<20), "colours": strings.Repeat("\x1b[31m", 1<<20/5)} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				in := &gate{from: strings.NewReader(pasteBegins + text + pasteEnds)}
				got, err := tea.NewProgram(reached{}, tea.WithInput(in), tea.WithOutput(io.Discard), tea.WithoutSignals()).Run()
				require.NoError(b, err)
				require.Greater(b, got.(reached).with, form.LongestPaste)
			}
		})
	}
}

// Two that read at a time, as after the program was stopped, take each byte once and hurt nothing of what is between them and the terminal.
func TestTwoReadersOfTheKeysTakeEachOnce(t *testing.T) {
	const keys = 20_000
	g := &gate{from: &answers.Reader{From: bytes.NewReader(bytes.Repeat([]byte{'k'}, keys))}}
	var taken atomic.Int64
	var readers sync.WaitGroup
	for range 2 {
		readers.Go(func() {
			for buffer := make([]byte, 7); ; {
				n, err := g.Read(buffer)
				if taken.Add(int64(n)); err != nil {
					return
				}
			}
		})
	}
	readers.Wait()
	assert.EqualValues(t, keys, taken.Load())
}
