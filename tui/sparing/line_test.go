package sparing

import (
	"io"
	"strings"
	"sync"
	"testing"
	"testing/iotest"
	"testing/synctest"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/answers"
)

// paper is a terminal that keeps what is written on it.
type paper struct {
	term.File
	mu    sync.Mutex
	wrote []string
}

func (p *paper) Write(text []byte) (int, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.wrote = append(p.wrote, string(text))
	return len(text), nil
}

// shows says what was written since it was asked last.
func (p *paper) shows() string {
	synctest.Wait()
	p.mu.Lock()
	defer p.mu.Unlock()
	all := strings.Join(p.wrote, "|")
	p.wrote = nil
	return all
}

// painted is a terminal whose first picture stands.
func painted(t *testing.T) (*Terminal, *paper) {
	p := &paper{}
	to := On(p)
	ticket(t, to, "first")
	require.Contains(t, p.shows(), "first")
	return to, p
}

// ticket has the library ask for a picture.
func ticket(t *testing.T, to *Terminal, text string) {
	_, err := to.WriteString(ansi.CursorHomePosition + to.hold(text, size{wide, high}))
	require.NoError(t, err)
}

// A key that comes a while after the picture before has its own at once; of keys that come faster than the library asks, it asks for the newest.
func TestAPictureAWhileAfterAnotherIsPaintedAtOnce(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		to, p := painted(t)
		to.hold("soon", size{wide, high})
		assert.Empty(t, p.shows(), "another was painted just now")
		time.Sleep(apart)
		to.hold("later", size{wide, high})
		assert.Contains(t, p.shows(), "later")
		ticket(t, to, "later")
		assert.Empty(t, p.shows(), "it stands")
		ticket(t, to, "asked for")
		assert.Contains(t, p.shows(), "asked for")
	})
}

// Where the library's screen isn't there, or is to be painted anew, it says when.
func TestNothingIsPaintedAtOnceWhereTheLibraryPaintsAnew(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		to, p := painted(t)
		_, err := to.WriteString(ansi.ResetModeAltScreenSaveCursor)
		require.NoError(t, err)
		p.shows()
		time.Sleep(apart)
		to.hold("away", size{wide, high})
		assert.Empty(t, p.shows(), "the shell's screen is there")
		ticket(t, to, "back")
		assert.Contains(t, p.shows(), "back")
		time.Sleep(apart)
		to.hold("wider", size{2 * wide, high})
		assert.Empty(t, p.shows())
		time.Sleep(apart)
		to.hold("wider still", size{2 * wide, high})
		assert.Contains(t, p.shows(), "wider still")
	})
}

// typed is what a terminal sends, a piece at a read.
type typed struct{ pieces []string }

func (k *typed) Read(p []byte) (int, error) {
	if len(k.pieces) == 0 {
		return 0, io.EOF
	}
	n := copy(p, k.pieces[0])
	if k.pieces[0] = k.pieces[0][n:]; k.pieces[0] == "" {
		k.pieces = k.pieces[1:]
	}
	return n, nil
}

func (k *typed) more(time.Duration) bool { return len(k.pieces) > 0 }

// reader takes the answers to a terminal out of what is typed.
func reader(to *Terminal, k *typed) io.Reader {
	return &answers.Reader{From: k, For: []answers.Awaiter{to.Asks()}, More: k.more}
}

// A picture waits until the terminal has answered the one before, and of those that came meanwhile the newest is painted.
func TestAPictureWaitsUntilTheOneBeforeIsSeen(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		to, p, k := On(nil), &paper{}, &typed{}
		to.File = p
		keys := reader(to, k)
		answer := func(text string) string {
			k.pieces = append(k.pieces, text)
			read := make([]byte, 100)
			n, _ := keys.Read(read)
			return string(read[:n])
		}
		ticket(t, to, "first")
		shown := p.shows()
		assert.True(t, strings.HasPrefix(shown, question) && strings.HasSuffix(shown, question), "asked before and after")
		ticket(t, to, "second")
		assert.Contains(t, p.shows(), "second", "nobody knows whether it answers")
		assert.Equal(t, "ab", answer("a\x1b[0nb"))
		ticket(t, to, "third")
		ticket(t, to, "fourth")
		assert.Empty(t, p.shows(), "the second is under way")
		assert.Empty(t, answer("\x1b[?0n"), "as for a private mode")
		shown = p.shows()
		assert.Contains(t, shown, "fourth")
		assert.NotContains(t, shown, "third")
		assert.True(t, strings.HasSuffix(shown, question), "asked once")
		assert.False(t, strings.HasPrefix(shown, question))
		ticket(t, to, "fifth")
		_, err := to.WriteString("\a")
		require.NoError(t, err)
		assert.Contains(t, p.shows(), "ifth", "what is no picture is in a hurry")
		ticket(t, to, "more")
		assert.True(t, strings.HasPrefix(p.shows(), question), "somebody else may have had the answer")
		answer("\x1b[0n")
		begun := time.Now()
		to.Settle()
		assert.Equal(t, atQuit, time.Since(begun), "nobody waits for ever")
		ticket(t, to, "sixth")
		assert.Contains(t, p.shows(), "sixth", "it does not answer any more")
		answer("\x1b[0n")
		ticket(t, to, "seventh")
		p.shows()
		ticket(t, to, "eighth")
		assert.Empty(t, p.shows(), "it does again")
		assert.Less(t, to.line.longest, time.Second)
		time.Sleep(slower * time.Second)
		assert.Contains(t, p.shows(), "eighth", "an answer was lost, where none took long")
	})
}

// Only what was asked for is taken out of what is read; a key that an answer may begin with comes through.
func TestOnlyAnswersAreTakenOutOfWhatIsRead(t *testing.T) {
	read := func(asked int, pieces ...string) string {
		to, k := On(&paper{}), &typed{pieces}
		keys := reader(to, k)
		to.line.asked = asked
		text, err := io.ReadAll(keys)
		require.NoError(t, err)
		assert.LessOrEqual(t, to.line.asked, asked)
		return string(text)
	}
	assert.Equal(t, "a\x1b[0nb", read(0, "a\x1b[0nb"))
	assert.Equal(t, "ab\x1b[0n", read(1, "a\x1b[0nb\x1b[0n"), "asked once")
	assert.Equal(t, "abc", read(2, "a\x1b[3nb\x1b[?0nc"))
	assert.Equal(t, "ab", read(1, "a\x1b", "[", "?0", "nb"), "cut in pieces")
	assert.Equal(t, "\x1b[C\x1b", read(1, "\x1b", "[C\x1b"), "keys")
	assert.Equal(t, "\x1b", read(1, "\x1b"), "Esc")
	to, k := On(&paper{}), &typed{[]string{"a\x1b[C\x1b[0nb"}}
	to.line.asked = 1
	text, err := io.ReadAll(iotest.OneByteReader(reader(to, k)))
	require.NoError(t, err)
	assert.Equal(t, "a\x1b[Cb", string(text), "read byte by byte")
}

// Whoever reads takes a read that fills all its room for one that may be cut, and any other for a whole one: what is taken out must not make one
// of the other.
func TestAReadThatIsCutIsFullWhateverIsTakenOut(t *testing.T) {
	const arrow, room = "\x1b[C", 256
	keys := "a" + strings.Repeat(arrow, 200)
	to, k := On(&paper{}), &typed{[]string{"\x1b[0n" + keys}}
	from := reader(to, k)
	to.line.asked = 1
	var all string
	for p := make([]byte, room); ; {
		n, err := from.Read(p)
		all += string(p[:n])
		if n < room && n > 0 {
			assert.True(t, strings.HasSuffix(all, arrow), "cut: %q", p[:n])
		}
		if err != nil {
			break
		}
	}
	assert.Equal(t, keys, all)
}
