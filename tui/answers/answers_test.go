package answers

import (
	"io"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// one awaits a text so many times, or for ever with -1.
type one struct {
	text  string
	still int
	soon  bool
}

func (o *one) Awaits() (any, soon bool) { return o.still != 0, o.soon }

func (o *one) Hears(text []byte) int {
	if !strings.HasPrefix(string(text), o.text) {
		return 0
	}
	o.still--
	return len(o.text)
}

func (o *one) Begins(text []byte) bool { return strings.HasPrefix(o.text, string(text)) }

// pieces gives a text in these.
type pieces []string

func (k *pieces) Read(p []byte) (int, error) {
	if len(*k) == 0 {
		return 0, io.EOF
	}
	n := copy(p, (*k)[0])
	if (*k)[0] = (*k)[0][n:]; (*k)[0] == "" {
		*k = (*k)[1:]
	}
	return n, nil
}

func (k *pieces) more(time.Duration) bool { return len(*k) > 0 }

// Two who ask at the same time each hear their own answers, in whatever order and pieces these come, and no more of them than they asked for;
// the rest comes through in its order.
func TestEachHearsItsOwn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := &one{text: "\x1b[0n", soon: true}, &one{text: "\x1b[6;24;12t", soon: true}
		a.still, b.still = rapid.IntRange(0, 3).Draw(t, "a awaits"), rapid.IntRange(0, 3).Draw(t, "b awaits")
		leftA, leftB := a.still, b.still
		var sent, want string
		for _, text := range rapid.SliceOf(rapid.SampledFrom([]string{a.text, b.text, "x", "\x1b[C", "\x1b[6~", "\x1bOP"})).Draw(t, "sent") {
			sent += text
			switch {
			case text == a.text && leftA > 0:
				leftA--
			case text == b.text && leftB > 0:
				leftB--
			default:
				want += text
			}
		}
		var k pieces
		for rest := sent; rest != ""; {
			n := rapid.IntRange(1, len(rest)).Draw(t, "piece")
			k, rest = append(k, rest[:n]), rest[n:]
		}
		got, err := io.ReadAll(&Reader{From: &k, For: []Awaiter{a, b}, More: k.more})
		require.NoError(t, err)
		assert.Equal(t, want, string(got))
		assert.Equal(t, [2]int{leftA, leftB}, [2]int{a.still, b.still})
	})
}

// A key that an answer begins with waits only for an answer that comes soon; of the beginning of an answer that never goes on nothing is lost.
func TestWhatOnlyBeginsLikeAnAnswerIsAKey(t *testing.T) {
	for _, text := range []string{"\x1b", "\x1b[", "\x1b[0"} {
		k := pieces{text}
		got, err := io.ReadAll(&Reader{From: &k, For: []Awaiter{&one{text: "\x1b[0n", still: 1, soon: true}}, More: k.more})
		require.NoError(t, err)
		assert.Equal(t, text, string(got))
	}
	k := pieces{"\x1b", "x"}
	late := &Reader{From: &k, For: []Awaiter{&one{text: "\x1b[0n", still: 1}}, More: func(time.Duration) bool { t.Error("it waits"); return true }}
	p := make([]byte, 9)
	n, err := late.Read(p)
	require.NoError(t, err)
	assert.Equal(t, "\x1b", string(p[:n]))
}
