//go:build !windows

package main

import (
	"strings"
	"testing"
	"time"
	"unicode"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/stretchr/testify/require"
)

// How much larger than the terminal the second emulator is.
const moreCols, moreRows = 60, 10

// beyond is a larger emulator that is written what the terminal is: what a terminal would break, cut off or roll away stands there
// outside of the terminal's own columns and rows.
type beyond struct {
	screen *vt.Emulator
	from   int // how much of the output it has been given
}

// anew is a larger emulator for the terminal as it is now, which knows nothing of what was written before.
func (s *terminal) anew() *beyond {
	s.mu.Lock()
	defer s.mu.Unlock()
	return &beyond{vt.NewEmulator(s.screen.Width()+moreCols, s.screen.Height()+moreRows), s.raw.Len()}
}

// take gives it what was written since.
func (b *beyond) take(s *terminal) {
	s.mu.Lock()
	defer s.mu.Unlock()
	_, _ = b.screen.Write(s.raw.Bytes()[b.from:])
	b.from = s.raw.Len()
}

// quiet waits until the program has written nothing for so long, for two seconds at most: a search tells all the time how far it is.
func (s *terminal) quiet(still time.Duration) {
	end := time.Now().Add(2 * time.Second)
	for since, last := time.Now(), -1; time.Since(since) < still && time.Now().Before(end); time.Sleep(2 * time.Millisecond) {
		s.mu.Lock()
		now := s.raw.Len()
		s.mu.Unlock()
		if now != last {
			since, last = time.Now(), now
		}
	}
}

// within holds that the terminal shows no control characters, and that nothing was written outside of its columns and rows.
func (s *terminal) within(t *testing.T, b *beyond, about string) {
	t.Helper()
	b.take(s)
	s.mu.Lock()
	defer s.mu.Unlock()
	cols, rows := s.screen.Width(), s.screen.Height()
	for y, line := range strings.Split(b.screen.String(), "\n") {
		line = strings.TrimRight(line, " \r")
		require.LessOrEqual(t, ansi.StringWidth(line), cols, "%s: row %d is too wide: %q", about, y, line)
		require.False(t, y >= rows && line != "", "%s: row %d is below the terminal: %q", about, y, line)
		require.False(t, strings.ContainsFunc(line, unicode.IsControl), "%s: row %d: %q", about, y, line)
	}
}
