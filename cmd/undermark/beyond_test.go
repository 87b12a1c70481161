//go:build !windows

package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
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
	b := &beyond{vt.NewEmulator(s.screen.Width()+moreCols, s.screen.Height()+moreRows), s.raw.Len()}
	go func() { _, _ = io.Copy(io.Discard, b.screen) }() // what it answers: without a reader it stops
	return b
}

// take gives it what was written since.
func (b *beyond) take(s *terminal) {
	s.mu.Lock()
	defer s.mu.Unlock()
	_, _ = b.screen.Write(s.raw.Bytes()[b.from:])
	b.from = s.raw.Len()
}

// quiet waits until the program has written nothing for so long and has nothing to do, for two seconds at most: a search tells all the time how far it
// is. One that was not given a core yet is waited for longer.
func (s *terminal) quiet(still time.Duration) {
	begun := time.Now()
	for since, last := begun, -1; time.Since(since) < still; time.Sleep(2 * time.Millisecond) {
		s.mu.Lock()
		now := s.raw.Len()
		s.mu.Unlock()
		runs := s.runs()
		if now != last || runs {
			since, last = time.Now(), now
		}
		if over := time.Since(begun); over > patience || over > 2*time.Second && !runs {
			return
		}
	}
}

// runs tells whether the program does something or waits for a core to do it on; false where the system does not say (proc(5): the state behind the
// name in brackets).
func (s *terminal) runs() bool {
	tasks, _ := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/stat", s.cmd.Process.Pid)) // the pattern is well formed
	for _, task := range tasks {
		text, err := os.ReadFile(task)
		if err == nil && strings.HasPrefix(string(text[bytes.LastIndexByte(text, ')')+1:]), " R") {
			return true
		}
	}
	return false
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
