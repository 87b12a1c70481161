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
	uv "github.com/charmbracelet/ultraviolet"
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
	mu    sync.Mutex // held while it is written on, or looked at
	last  []byte
	wrote chan struct{}
}

func newScreen() *screen {
	s := &screen{Emulator: vt.NewEmulator(wide, high), wrote: make(chan struct{}, 10000)}
	go func() { _, _ = io.Copy(io.Discard, s.Emulator) }() // what it answers; else it waits for a reader
	return s
}

func (s *screen) Fd() uintptr { return ^uintptr(0) }

func (s *screen) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	defer func() { s.wrote <- struct{}{} }()
	s.last = bytes.Clone(p)
	return s.Emulator.Write(p)
}

// cells is what the screen shows, with its colours. A blank has no ink to be seen, unless that is its ground.
func (s *screen) cells() []string {
	var all []string
	for y := range high {
		for x := range wide {
			c := *s.CellAt(x, y)
			if c.Content == " " && c.Style.Attrs&uv.AttrReverse == 0 && c.Style.Underline == 0 {
				c.Style = uv.Style{Bg: c.Style.Bg}
			}
			all = append(all, fmt.Sprintf("%d,%d %q %v", x, y, c.Content, c.Style))
		}
	}
	return all
}

// wait returns what the screen shows, with its colours, once a text stands in the first row.
func (s *screen) wait(text string) []string {
	for {
		s.mu.Lock()
		if strings.HasPrefix(s.String(), text+"\n") {
			defer s.mu.Unlock()
			return s.cells()
		}
		s.mu.Unlock()
		<-s.wrote
	}
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

// running is a program of the library, on a screen.
type running struct {
	screen *screen
	*tea.Program
	ended chan error
}

// run runs the program that shows what it is told; thin, through a Terminal.
func run(thin bool) *running {
	s := newScreen()
	m, to := tea.Model(shown{"first"}), io.Writer(s)
	if thin {
		t := On(s)
		m, to = t.Showing(m), t
	}
	r := &running{s, tea.NewProgram(m, tea.WithOutput(to), tea.WithInput(nil), tea.WithAltScreen(), tea.WithFPS(120), tea.WithoutSignals()), make(chan error, 1)}
	go func() { _, err := r.Run(); r.ended <- err }()
	r.Send(tea.WindowSizeMsg{Width: wide, Height: high})
	return r
}

// Whatever pictures there are one after the other, the screen shows what it would without a Terminal, with the same colours.
func TestTheScreenIsThatOfTheLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	plainly, thin := run(false), run(true)
	send := func(msg tea.Msg) { plainly.Send(msg); thin.Send(msg) }
	rows := make([]string, high)
	for i := range 120 {
		for range 1 + r.IntN(4) {
			rows[1+r.IntN(high-1)] = randomRow(r)
		}
		switch r.IntN(15) {
		case 0:
			send(tea.ClearScreen())
		case 1:
			send(tea.WindowSizeMsg{Width: wide, Height: high})
		case 2:
			send(tea.HideCursor())
		}
		rows[0] = fmt.Sprint("picture ", i)
		seen := rows
		if r.IntN(4) == 0 { // the library loses a last row that stays, or that fills the screen's width
			seen = rows[:2+r.IntN(high-2)]
			seen[len(seen)-1] = fmt.Sprint("last of picture ", i)
		}
		send(strings.Join(seen, "\n"))
		same(t, plainly.screen.wait(rows[0]), thin.screen.wait(rows[0]), fmt.Sprintf("picture %d: %q", i, seen))
	}
	for _, p := range []*running{plainly, thin} {
		p.Quit()
		require.NoError(t, <-p.ended)
	}
	same(t, plainly.screen.cells(), thin.screen.cells(), "at the end")
}

// same holds the cells of two screens to each other.
func same(t *testing.T, want, got []string, what string) {
	t.Helper()
	for i := range want {
		require.Equal(t, want[i], got[i], what)
	}
}

// A picture that is higher or wider than the terminal is cut as the library cuts it.
func TestWhatDoesNotFitIsCut(t *testing.T) {
	plainly, thin := run(false), run(true)
	for i, row := range []string{strings.Repeat("a", wide+3), "\x1b[7m" + strings.Repeat("b", wide+3) + plain, strings.Repeat("界", wide), "short"} {
		last := fmt.Sprint("picture ", i)
		view := strings.Join([]string{"nobody sees this", "nor this", last, row, "3", "4", "5", "6", "7", "8"}, "\n")
		plainly.Send(view)
		thin.Send(view)
		same(t, plainly.screen.wait(last), thin.screen.wait(last), row)
	}
	for _, p := range []*running{plainly, thin} {
		p.Kill()
		<-p.ended
	}
}

// randomRow is a row of a few stretches: plain, coloured, with colours on top of others, rarely with runes whose width is doubtful,
// as long as the screen is wide or shorter.
func randomRow(r *rand.Rand) string {
	looks := []string{"", plain, "\x1b[m", "\x1b[1m", "\x1b[0;38;2;1;2;3m", "\x1b[48;2;9;8;7m", "\x1b[7;31m", "\x1b[0;1;4;38;5;200;48;5;17m", "\x1b[2;38;5;9m", "\x1b[3m", "\x1b[0;97;104m", "\x1b[0;9;38;2;4;4;4m", "\x1b[39m"}
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

// settled waits until all is painted that was to be.
func settled(to *Terminal) {
	to.mu.Lock()
	defer to.mu.Unlock()
	to.rest()
}

// stuck is a terminal that nobody reads until it is let go.
type stuck struct {
	*screen
	goOn chan struct{}
}

func (s stuck) Write(p []byte) (int, error) {
	<-s.goOn
	return s.screen.Write(p)
}

// A terminal that nobody reads holds up nobody who has pictures for it: once it is read, the one that it was busy with comes, and the newest; those
// between do not. What is no picture waits for both.
func TestATerminalThatNobodyReadsGetsTheNewestPicture(t *testing.T) {
	s := stuck{newScreen(), make(chan struct{})}
	to := On(s)
	for i := range 100 {
		_, err := to.WriteString(ansi.CursorHomePosition + to.hold(fmt.Sprint("picture ", i), size{wide, high}))
		require.NoError(t, err)
	}
	ended := make(chan struct{})
	go func() { _, _ = to.WriteString("\a"); close(ended) }()
	close(s.goOn)
	<-ended
	assert.Equal(t, "\a", string(s.last))
	assert.Contains(t, s.String(), "picture 99")
	assert.LessOrEqual(t, len(s.wrote), 3, "two pictures, and the bell")
}

// A key that changes a word sends that word, not its row.
func TestWhatDidNotChangeIsNotSent(t *testing.T) {
	row := func(word string) string {
		return "\x1b[38;2;1;2;3mto the left\x1b[0m " + word + " to the right of it....."
	}
	s := newScreen()
	to := On(s)
	write := func(text string) string {
		s.last = nil
		_, err := to.WriteString(text)
		require.NoError(t, err)
		settled(to)
		return string(s.last)
	}
	send := func(row string) string {
		ticket := to.hold("\n\n\n"+row, size{wide, high})
		return write(ansi.CursorHomePosition + ticket + ansi.EraseLineRight + ansi.CursorPosition(0, 1))
	}
	end := ansi.CursorPosition(0, 4)
	assert.Contains(t, send(row("100")), row("100"), "a row that nobody knows is sent whole")
	assert.Empty(t, send(row("100")))
	assert.Equal(t, "\x1b[4;14H25"+end, send(row("125")))
	assert.Equal(t, "\x1b[4;13H\x1b[0m\x1b[1m9\x1b[0m"+end, send(row("\x1b[1m9\x1b[0m25")))
	assert.Equal(t, "\x1b[4;13H"+partOf(7, 2)+end, send(row(partOf(7, 2)+"25")))
	assert.Equal(t, "\x1b[4;13H"+partOf(8, 2)+end, send(row(partOf(8, 2)+"25")), "another part of the picture")
	assert.Contains(t, send(row("界")), row("界"), "columns are doubtful beside a wide rune")
	assert.Contains(t, send(row("100")), row("100"), "what stood there was not known")
	assert.Equal(t, ansi.EraseEntireScreen, write(ansi.EraseEntireScreen))
	assert.Contains(t, send(row("101")), row("101"), "the screen was cleared")
	send("short")
	assert.NotContains(t, s.String(), "right of it")
	assert.Contains(t, s.String(), "\nshort\n")
}

// Of a look only what differs from the one before is sent, and what has one look is sent together.
func TestAColourIsSentOnce(t *testing.T) {
	const white, red, floor, rail = ";38;2;255;255;255", ";38;2;246;80;72", ";48;2;22;27;33", ";48;2;129;136;145"
	row := func(a, b, c, d string) string {
		return "\x1b[0" + white + floor + "m" + a + "\x1b[0;1" + red + floor + "m" + b + "\x1b[0" + white + floor + "m" + c + "\x1b[0" + red + rail + "m" + d + plain
	}
	s := newScreen()
	to := On(s)
	send := func(rows ...string) string {
		s.last = nil
		_, err := to.WriteString(ansi.CursorHomePosition + to.hold(strings.Join(rows, "\n"), size{wide, high}))
		require.NoError(t, err)
		settled(to)
		return string(s.last)
	}
	send(row("a", "b", "c", "d"), row("e", "f", "g", "h"))
	want := "\x1b[1;4H\x1b[38;2;246;80;72;48;2;129;136;145mD\x1b[B\bH" + // all of one look
		"\x1b[1;1H\x1b[38;2;255;255;255;48;2;22;27;33mA\x1b[CC\x1b[B\b\b\bE\x1b[CG" +
		"\x1b[A\b\b\x1b[1;38;2;246;80;72mB\x1b[B\bF\x1b[0m\x1b[2;H" // the ground stays
	assert.Equal(t, want, send(row("A", "B", "C", "D"), row("E", "F", "G", "H")))
}

// Blanks that end a row are erased at once where nothing stands behind them, and no ground is worn; few are as short themselves.
func TestBlanksAtTheEndOfARowAreErased(t *testing.T) {
	const green, ground = "\x1b[38;2;1;2;3m", "\x1b[48;2;22;27;33m"
	blanks := strings.Repeat(" ", 12)
	for _, c := range []struct{ name, before, after, want string }{
		{"to the end", "one and another", "one" + blanks, "\x1b[1;5H\x1b[K"},
		{"behind a word", "one and another", green + "two" + blanks + plain, "\x1b[1;1H" + green + "two\x1b[K" + plain},
		{"left out", "one and another", "one", "\x1b[1;5H\x1b[K"},
		{"few", "one and", "one an ", "\x1b[1;7H "},
		{"before a word", "one and another!", "one" + blanks + "!", "\x1b[1;5H" + blanks[1:]},
		{"on a ground", "one and another", "one" + ground + blanks + plain, "\x1b[1;4H" + ground + blanks + plain},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newScreen()
			to := On(s)
			for _, row := range []string{c.before, c.after} {
				s.last = nil
				_, err := to.WriteString(ansi.CursorHomePosition + to.hold(row, size{wide, high}))
				require.NoError(t, err)
				settled(to)
			}
			assert.Equal(t, c.want+ansi.CursorPosition(0, 1), string(s.last))
		})
	}
}

// However often the picture changes between two looks of the library at it, the library sees that it did: as often as there are tickets, and more.
func TestEachPictureHasATicketOfItsOwn(t *testing.T) {
	to, seen := On(newScreen()), map[string]int{}
	for i := range tickets {
		ticket := to.hold(fmt.Sprint(i), size{wide, high})
		_, met := seen[ticket]
		require.False(t, met, "picture %d", i)
		seen[ticket] = i
		require.Equal(t, ticket, to.hold(fmt.Sprint(i), size{wide, high}), "it is the same")
		require.Equal(t, 1, ansi.StringWidth(ticket))
	}
	assert.Equal(t, 0, seen[to.hold("another", size{wide, high})])
	assert.NotEqual(t, to.hold("another", size{wide, high}), to.hold("another", size{wide, high - 1}))
}

// What only looks like a picture's place goes on as it came.
func TestWhatIsNoTicketGoesOn(t *testing.T) {
	s := newScreen()
	to := On(s)
	to.hold("held", size{wide, high})
	for _, text := range []string{"", "words", ansi.CursorHomePosition, ansi.CursorHomePosition + "words", string(rune(firstTicket)), ansi.CursorHomePosition + "\r", ansi.CursorHomePosition + string(rune(firstTicket+tickets))} {
		s.last = nil
		n, err := to.WriteString(text)
		require.NoError(t, err)
		assert.Equal(t, len(text), n)
		assert.Equal(t, text, string(s.last), "%q", text)
	}
}

// partOf is the text of a cell that shows a part of the picture.
func partOf(col, row int) string { return string(pixels.AppendPlaceholder(nil, col, row)) }

// A window may change while a picture is on its way: the library then asks for all of a picture, gets the one of the size before, and asks only
// for what changed of the next. What the terminal broke or rolled away of the first must not stay.
func TestAPictureOfAnotherSizeIsSentWhole(t *testing.T) {
	s := newScreen()
	to := On(s)
	write := func(all string, text string, on size) {
		_, err := to.WriteString(ansi.CursorHomePosition + all + to.hold(text, on))
		require.NoError(t, err)
		settled(to)
	}
	before := size{2 * wide, 2 * high}
	write("\r", strings.TrimSuffix(strings.Repeat(strings.Repeat("x", 2*wide)+"\n", 2*high), "\n"), before)
	now := strings.TrimSuffix(strings.Repeat(strings.Repeat("x", wide/2)+"\n", high), "\n")
	write("", now, size{wide, high})
	for y, row := range strings.Split(s.String(), "\n") {
		assert.Equal(t, strings.Repeat("x", wide/2), strings.TrimRight(row, " "), "row %d", y)
	}
}
