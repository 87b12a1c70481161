//go:build !windows

package main

import (
	"fmt"
	"os"
	"regexp"
	"strconv"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// inUse is how much memory the program has, in kB; 0 where the system does not say.
func (s *terminal) inUse() int {
	text, _ := os.ReadFile(fmt.Sprintf("/proc/%d/status", s.cmd.Process.Pid)) // there is none everywhere
	found := regexp.MustCompile(`VmRSS:\s+(\d+) kB`).FindSubmatch(text)
	if found == nil {
		return 0
	}
	kB, _ := strconv.Atoi(string(found[1])) // figures
	return kB
}

// A terminal that nobody reads holds the program up, no longer: no key is lost, memory does not grow, and the whole picture stands once it is read again.
func TestATerminalThatNobodyReadsLosesNoKey(t *testing.T) {
	notRaced(t)
	t.Parallel()
	const keys, apart, mostGrown = 150, 20 * time.Millisecond, 40 << 10
	file := wideFloor(t)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	begun := cutAt(t, text)
	var unread atomic.Bool
	s := readHome(t).begin(t, &terminal{reads: func() int {
		for unread.Load() {
			time.Sleep(time.Millisecond)
		}
		return 1 << 16
	}}, 100, 30, file)
	s.wait(t, "[1 Underneath]")
	s.keys(t, "4")
	s.wait(t, "[4 Place]")
	before := s.inUse()
	unread.Store(true)
	for range keys {
		s.keys(t, "\x1b[C")
		time.Sleep(apart)
	}
	assert.Less(t, s.inUse(), before+mostGrown)
	unread.Store(false)
	s.quiet(5 * still)
	stood := s.picture()
	s.keys(t, "\x13")
	s.wait(t, "Saved")
	text, err = os.ReadFile(file)
	require.NoError(t, err)
	assert.InDelta(t, keys*killStep, moved(t, text, begun), 0.01)
	at := cutAt(t, text)
	assert.Contains(t, stood, fmt.Sprintf("x %v", at[0]), "the last picture stood")
	assert.Zero(t, s.quit(t))
}
