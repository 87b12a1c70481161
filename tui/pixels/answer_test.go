package pixels

import (
	"bytes"
	"io"
	"os"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	taken "bench.example/undermark/tui/answers"
)

const (
	yes   = "\x1b_Gi=30061;OK\x1b\\"
	no    = "\x1b_Gi=30061;EINVAL: no such thing\x1b\\"
	size  = "\x1b[6;24;12t"
	place = "\x1b[1;1R"
	moved = "\x1b[1;3R"
)

// asked is a terminal that was asked, and what it was sent since.
func asked(t require.TestingT) (*Terminal, func() string) {
	r, w, err := os.Pipe()
	require.NoError(t, err)
	terminal := On(w)
	terminal.Ask(func() {})
	_, err = terminal.WriteString(comes)
	require.NoError(t, err)
	return terminal, func() string {
		require.NoError(t, w.Close())
		data, err := io.ReadAll(r)
		require.NoError(t, err)
		require.NoError(t, r.Close())
		text, ok := strings.CutPrefix(string(data), comes+query)
		require.True(t, ok, "%q", data)
		return text
	}
}

// reads gives a text in these pieces.
type reads struct {
	pieces []string
	at     int
}

func (r *reads) Read(p []byte) (int, error) {
	if r.at == len(r.pieces) {
		return 0, io.EOF
	}
	n := copy(p, r.pieces[r.at])
	r.at++
	return n, nil
}

func (r *reads) more(time.Duration) bool { return r.at < len(r.pieces) }

// reader takes the answers to a terminal out of what is read.
func reader(to *Terminal, from io.Reader, more func(time.Duration) bool) io.Reader {
	return &taken.Reader{From: from, For: []taken.Awaiter{to}, More: more}
}

// Whatever keys and answers come, in whatever pieces: the keys come through, the answers don't, and are heard.
func TestAnswersAreNoKeys(t *testing.T) {
	keys := []string{"a", "\x1b[C", "\x1b", "ä", "\x1b[200~some text\x1b[201~", "\x1bx", " ", "\x1b[<0;3;4M", "\x1b[6~", "\x1b[6;5~", "\x1b[1;2R", "\x1b_", "\x1b["}
	rapid.Check(t, func(t *rapid.T) {
		all := []string{yes, size}
		if rapid.Bool().Draw(t, "no") {
			all[0] = no
		}
		if rapid.Bool().Draw(t, "the other way round") {
			all[0], all[1] = all[1], all[0]
		}
		all = all[:rapid.IntRange(0, 2).Draw(t, "answers")]
		shows := false
		for _, a := range all {
			shows = shows || a == yes
		}
		if shows {
			all = append(all, place)
		}
		var typed strings.Builder
		r := &reads{}
		for _, a := range append(all, "") {
			for range rapid.IntRange(0, 2).Draw(t, "keys before") {
				key := rapid.SampledFrom(keys).Draw(t, "key")
				if key == "\x1b[1;2R" && shows { // while it is asked where the cursor is this can't be told from an answer
					key = "b"
				}
				typed.WriteString(key)
				r.pieces = append(r.pieces, key)
			}
			cut := rapid.IntRange(0, len(a)).Draw(t, "cut")
			if whole := len(r.pieces) > 0 && strings.HasPrefix(r.pieces[len(r.pieces)-1], "\x1b") && len(r.pieces[len(r.pieces)-1]) < 3; whole {
				r.pieces = append(r.pieces, "c") // a key that answers begin with, at once before one, is taken with it
				typed.WriteString("c")
			}
			for _, piece := range []string{a[:cut], a[cut:]} {
				if piece != "" {
					r.pieces = append(r.pieces, piece)
				}
			}
		}
		terminal, sent := asked(t)
		got, err := io.ReadAll(&bare{reader(terminal, r, r.more)})
		require.NoError(t, err)
		assert.Equal(t, typed.String(), string(got))
		assert.Equal(t, shows, terminal.Shows())
		want := ""
		if shows {
			want = probe
		}
		assert.Equal(t, want, sent())
	})
}

// bare reads small pieces, as the library does.
type bare struct{ from io.Reader }

func (b *bare) Read(p []byte) (int, error) { return b.from.Read(p[:min(len(p), 256)]) }

// Esc alone is a key at once once nothing more comes, and for good when the question is long past.
func TestEscIsAKeyWhereNothingFollows(t *testing.T) {
	terminal, _ := asked(t)
	r := &reads{pieces: []string{"\x1b"}}
	got := make([]byte, 9)
	n, err := reader(terminal, r, r.more).Read(got)
	require.NoError(t, err)
	assert.Equal(t, "\x1b", string(got[:n]))

	terminal.asked = time.Now().Add(-2 * soonest)
	late := reader(terminal, &reads{pieces: []string{"\x1b"}}, func(time.Duration) bool { t.Error("it waits"); return false })
	n, err = late.Read(got)
	require.NoError(t, err)
	assert.Equal(t, "\x1b", string(got[:n]))
}

// A terminal that shows pictures at once instead of where their placeholders stand moves its cursor on: it gets none.
func TestATerminalWithoutPlaceholdersShowsNone(t *testing.T) {
	terminal, sent := asked(t)
	got, err := io.ReadAll(reader(terminal, strings.NewReader(yes+moved+size), nil))
	require.NoError(t, err)
	assert.Empty(t, got)
	assert.False(t, terminal.Shows())
	assert.Equal(t, probe, sent())
}

// A terminal that was not asked is not listened to: all of it is keys.
func TestNothingIsTakenWithoutAQuestion(t *testing.T) {
	text := yes + size + place
	terminal := On(nil)
	got, err := io.ReadAll(reader(terminal, strings.NewReader(text), nil))
	require.NoError(t, err)
	assert.Equal(t, text, string(got))
	assert.False(t, terminal.Shows())
}

// What a terminal says of its cells is taken where that can be.
func TestTheSizeOfACellIsTheTerminals(t *testing.T) {
	for text, want := range map[string][2]int{size: {12, 24}, "\x1b[6;0;0t": {10, 20}, "\x1b[6;1;1t": {10, 20}, "\x1b[6;9999;2t": {10, 20}} {
		terminal, _ := asked(t)
		got, err := io.ReadAll(reader(terminal, strings.NewReader(text), nil))
		require.NoError(t, err)
		assert.Empty(t, got)
		assert.Equal(t, want, [2]int{terminal.cell.X, terminal.cell.Y}, "%q", text)
	}
}

func TestAnErrorOfTheTerminalComesThrough(t *testing.T) {
	_, err := reader(On(nil), iotest.ErrReader(os.ErrClosed), nil).Read(make([]byte, 9))
	assert.ErrorIs(t, err, os.ErrClosed)
}

// What begins like an answer and never ends is no answer.
func TestAnEndlessAnswerComesThrough(t *testing.T) {
	terminal, _ := asked(t)
	text := "\x1b_Gi=30061;" + strings.Repeat("x", 2*longestAnswer)
	got, err := io.ReadAll(iotest.OneByteReader(reader(terminal, bytes.NewReader([]byte(text)), nil)))
	require.NoError(t, err)
	assert.Equal(t, text, string(got))
}

// A tap that the room of a read cuts in two, where no answer begins so, is one too while it is asked whether pictures are shown: what is taken out of a read that
// was full is made up for.
func TestNoTapIsCutWhereAnAnswerIsTakenOut(t *testing.T) {
	const tap, room = "\x1b[<0;3;4M", 256
	keys := "abcd" + strings.Repeat(tap, 200)
	terminal, _ := asked(t)
	k := strings.NewReader(size + keys)
	from := reader(terminal, k, func(time.Duration) bool { return k.Len() > 0 })
	var all string
	for p := make([]byte, room); ; {
		n, err := from.Read(p)
		all += string(p[:n])
		if n < room && n > 0 {
			assert.True(t, strings.HasSuffix(all, tap), "cut: %q", p[:n])
		}
		if err != nil {
			break
		}
	}
	assert.Equal(t, keys, all)
}
