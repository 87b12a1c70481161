package sparing

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/pixels"
)

const wide, high = 40, 8

// screen is a terminal that shows what it was sent, and keeps the last of it.
type screen struct {
	*vt.Emulator
	last []byte
}

func newScreen() *screen {
	s := &screen{Emulator: vt.NewEmulator(wide, high)}
	go func() { _, _ = io.Copy(io.Discard, s.Emulator) }() // what it answers; else it waits for a reader
	return s
}

func (s *screen) Fd() uintptr { return ^uintptr(0) }

func (s *screen) Write(p []byte) (int, error) {
	s.last = bytes.Clone(p)
	return s.Emulator.Write(p)
}

// cells is what the screen shows, with its colours.
func (s *screen) cells() []string {
	var all []string
	for y := range high {
		for x := range wide {
			c := s.CellAt(x, y)
			all = append(all, fmt.Sprintf("%d,%d %q %v", x, y, c.Content, c.Style))
		}
	}
	return all
}

// both is what the library writes on: one screen as it is, one through a Terminal.
type both struct {
	*Terminal
	mu          sync.Mutex // held while it writes, or while somebody looks
	plain, thin *screen
	frames      chan struct{}
}

func newBoth() *both {
	thin := newScreen()
	return &both{Terminal: On(thin), plain: newScreen(), thin: thin, frames: make(chan struct{}, 1000)}
}

func (b *both) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if _, err := b.plain.Write(p); err != nil {
		return 0, err
	}
	n, err := b.Terminal.Write(p)
	if _, _, is := frame(string(p)); is {
		b.frames <- struct{}{}
	}
	return n, err
}

func (b *both) WriteString(s string) (int, error) { return b.Write([]byte(s)) }

// shows tells whether a text stands in the first row.
func (b *both) shows(text string) bool {
	b.mu.Lock()
	defer b.mu.Unlock()
	return strings.HasPrefix(b.plain.String(), text+"\n")
}

// shown is a program that shows what it is told.
type shown struct{ view string }

func (m shown) Init() tea.Cmd { return nil }
func (m shown) View() string  { return m.view }

func (m shown) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if view, is := msg.(string); is {
		return shown{view}, nil
	}
	return m, nil
}

// Whatever rows the library paints one after the other, the screen shows what it would without a Terminal, with the same colours.
func TestTheScreenIsThatOfTheLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	b := newBoth()
	p := tea.NewProgram(shown{"first"}, tea.WithOutput(b), tea.WithInput(nil), tea.WithAltScreen(), tea.WithFPS(120), tea.WithoutSignals())
	ended := make(chan error)
	go func() { _, err := p.Run(); ended <- err }()
	p.Send(tea.WindowSizeMsg{Width: wide, Height: high})
	<-b.frames
	rows := make([]string, high)
	for i := range 120 {
		for range 1 + r.IntN(4) {
			rows[1+r.IntN(high-1)] = randomRow(r)
		}
		switch r.IntN(15) {
		case 0:
			p.Send(tea.ClearScreen())
		case 1:
			p.Send(tea.WindowSizeMsg{Width: wide, Height: high})
		}
		rows[0] = fmt.Sprint("picture ", i)
		p.Send(strings.Join(rows, "\n"))
		for !b.shows(rows[0]) {
			<-b.frames
		}
		b.mu.Lock()
		require.Equal(t, b.plain.cells(), b.thin.cells(), "picture %d: %q", i, rows)
		b.mu.Unlock()
	}
	p.Quit()
	require.NoError(t, <-ended)
	assert.Equal(t, b.plain.cells(), b.thin.cells())
}

// randomRow is a row of a few stretches: plain, coloured, with colours on top of others, rarely with runes whose width is doubtful,
// as long as the screen is wide or shorter.
func randomRow(r *rand.Rand) string {
	looks := []string{"", plain, "\x1b[m", "\x1b[1m", "\x1b[0;38;2;1;2;3m", "\x1b[48;2;9;8;7m", "\x1b[7;31m"}
	texts := []string{"a", "b", " ", "⣿", "─", "≤", "a", "b", " ", partOf(r.IntN(pixels.Most), r.IntN(pixels.Most))}
	if r.IntN(6) == 0 {
		texts = append(texts, "\U0010eeee", "\U0010eeee\u0305", partOf(3, 4)+"\u0305", "界", "e\u0301", "🇩🇪", "क्ष")
	}
	var out strings.Builder
	for n := 0; n < 3+r.IntN(wide); n++ {
		if r.IntN(4) == 0 {
			out.WriteString(looks[r.IntN(len(looks))])
		}
		out.WriteString(texts[r.IntN(len(texts))])
	}
	return out.String() + plain
}

// A key that changes a word sends that word, not its row.
func TestWhatDidNotChangeIsNotSent(t *testing.T) {
	row := func(word string) string {
		return "\x1b[38;2;1;2;3mto the left\x1b[0m " + word + " to the right of it....."
	}
	send := func(b *both, y int, row string) string {
		_, err := b.Write([]byte(ansi.CursorHomePosition + strings.Repeat("\n", y) + row + "\r\n" + ansi.CursorPosition(0, high)))
		require.NoError(t, err)
		return string(b.thin.last)
	}
	end := ansi.CursorPosition(0, high)
	b := newBoth()
	assert.Contains(t, send(b, 3, row("100")), row("100"), "a row that nobody knows is sent whole")
	assert.Equal(t, "\x1b[4;14H25"+end, send(b, 3, row("125")))
	assert.Equal(t, "\x1b[4;13H\x1b[0m\x1b[1m9\x1b[0m"+end, send(b, 3, row("\x1b[1m9\x1b[0m25")))
	assert.Equal(t, "\x1b[4;13H"+partOf(7, 2)+end, send(b, 3, row(partOf(7, 2)+"25")))
	assert.Equal(t, "\x1b[4;13H"+partOf(8, 2)+end, send(b, 3, row(partOf(8, 2)+"25")), "another part of the picture")
	assert.Contains(t, send(b, 3, row("界")), row("界"), "columns are doubtful beside a wide rune")
	assert.Contains(t, send(b, 3, row("100")), row("100"), "what stood there was not known")
	_, err := b.WriteString(ansi.EraseEntireScreen)
	require.NoError(t, err)
	assert.Contains(t, send(b, 3, row("101")), row("101"), "the screen was cleared")
	send(b, 3, "short"+ansi.EraseLineRight)
	assert.NotContains(t, b.thin.String(), "right of it")
	send(b, 3, row("102"))
	assert.Equal(t, b.plain.cells(), b.thin.cells())
}

// partOf is the text of a cell that shows a part of the picture.
func partOf(col, row int) string { return string(pixels.AppendPlaceholder(nil, col, row)) }
