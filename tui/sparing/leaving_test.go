package sparing

import (
	"bytes"
	"errors"
	"io"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shut is written on by nobody until it is opened.
type shut struct {
	opens chan struct{}
	got   chan string
}

func (s *shut) Write(p []byte) (int, error) {
	<-s.opens
	s.got <- string(p)
	return len(p), nil
}

// What nobody reads is waited for until the program leaves, and then no more; what is written is what was asked, whatever becomes of it behind.
func TestWhoLeavesWaitsForNobody(t *testing.T) {
	to, l := &shut{make(chan struct{}), make(chan string, 200)}, NewLeaving()
	w, text := l.Writer(to), []byte("first")
	done := make(chan int, 1)
	go func() { n, _ := w.Write(text); done <- n }()
	select {
	case <-done:
		require.Fail(t, "it does not wait")
	case <-time.After(2 * atLast):
	}
	l.Leave()
	l.Leave()
	assert.Equal(t, len(text), <-done)
	copy(text, "FIRST")
	for range 100 { // each would else wait a moment
		n, err := w.Write([]byte("more"))
		assert.Equal(t, 4, n)
		assert.NoError(t, err)
	}
	close(to.opens)
	require.Equal(t, "first", <-to.got, "as it was when it was to be written")
}

type brokenOff struct{}

func (brokenOff) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

// What can be written is, also at the end, and what went wrong is told.
func TestWhatIsReadIsWrittenAlsoAtTheEnd(t *testing.T) {
	var to bytes.Buffer
	l := NewLeaving()
	w := l.Writer(&to)
	for _, text := range []string{"a", "b"} {
		n, err := w.Write([]byte(text))
		assert.Equal(t, 1, n)
		assert.NoError(t, err)
		l.Leave()
	}
	assert.Equal(t, "ab", to.String())
	_, err := l.Writer(brokenOff{}).Write([]byte("c"))
	assert.True(t, errors.Is(err, io.ErrClosedPipe))
}
