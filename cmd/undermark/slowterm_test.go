//go:build !windows

package main

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
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

// A terminal that nobody reads does not hold the program up: every key counts and is kept, memory does not grow, and once it is read again the whole
// picture stands.
func TestATerminalThatNobodyReadsLosesNoKey(t *testing.T) {
	notRaced(t)
	t.Parallel()
	const first, keys, apart, mostGrown = 5, 300, 8 * time.Millisecond, 40 << 10
	file := wideFloor(t)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	begun := cutAt(t, text)
	h := readHome(t)
	var unread atomic.Bool
	s := h.begin(t, &terminal{reads: func() int {
		for unread.Load() {
			time.Sleep(time.Millisecond)
		}
		return 1 << 16
	}}, 100, 30, file)
	s.wait(t, "[1 Underneath]")
	s.keys(t, "4")
	s.wait(t, "[4 Place]")
	s.quiet(5 * still)
	x, drawn := begun[0], len(s.output())
	for n := range first {
		s.keys(t, "\x1b[C")
		s.wait(t, fmt.Sprintf("At x %v", x+float64(killStep*(n+1))))
	}
	s.quiet(5 * still)
	each, before := (len(s.output())-drawn)/first, s.inUse()
	unread.Store(true)
	for n := range keys { // every other ahead, else aside and back
		s.keys(t, []string{"\x1b[C", "\x1b[A", "\x1b[C", "\x1b[B"}[n%4])
		time.Sleep(apart)
	}
	assert.Less(t, s.inUse(), before+mostGrown)
	require.True(t, s.comes(patience, func() bool {
		text, err := os.ReadFile(h.journals(t)[0])
		return err == nil && math.Abs(moved(t, text, begun)-(first+keys/2)*killStep) < 0.01
	}), "all is kept while nobody reads")
	before = len(s.output())
	unread.Store(false)
	s.quiet(5 * still)
	stood := s.picture()
	t.Logf("a key alone takes %d bytes; %d that nobody read took %d", each, keys, len(s.output())-before)
	assert.Less(t, len(s.output())-before, keys*each*2/3, "pictures that nobody reads are left out")
	s.keys(t, "\x13")
	s.wait(t, "Saved")
	text, err = os.ReadFile(file)
	require.NoError(t, err)
	assert.InDelta(t, (first+keys/2)*killStep, moved(t, text, begun), 0.01)
	at := cutAt(t, text)
	assert.Contains(t, stood, fmt.Sprintf("x %v", at[0]), "the last picture stood")
	assert.Zero(t, s.quit(t))
}

// At the start the picture is sent once, to its last row: the window's size is asked for once more, and is what it was.
func TestTheFirstPictureIsSentOnce(t *testing.T) {
	t.Parallel()
	const asksAgain, rows = 300 * time.Millisecond, 30
	s := readHome(t).start(t, 100, rows, wideFloor(t))
	s.wait(t, "[1 Underneath]")
	time.Sleep(3 * asksAgain)
	s.quiet(5 * still)
	assert.Equal(t, 1, strings.Count(s.output(), fmt.Sprintf("\x1b[%d;1H", rows)))
}

// On a slow line pictures are left out, and keys do not queue up: after the last of many keys no more is still to come than the picture that is under way
// and the one that shows all of them. A line of 9600 baud carries 960 bytes a second.
func TestOnASlowLineKeysDoNotQueueUp(t *testing.T) {
	notRaced(t)
	t.Parallel()
	const keys, apart, bytes, ticks, asks = 100, 20 * time.Millisecond, 960, 50, "\x1b[5n"
	file := wideFloor(t)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	x := cutAt(t, text)[0]
	var slow atomic.Bool
	s := readHome(t).begin(t, &terminal{reads: func() int {
		if !slow.Load() {
			return 1 << 16
		}
		time.Sleep(time.Second / ticks)
		return bytes / ticks
	}}, 160, 50, file)
	s.wait(t, "[1 Underneath]")
	s.keys(t, "4")
	s.wait(t, "[4 Place]")
	shows := func(moves int) string { return fmt.Sprintf("At x %v", x+float64(moves*killStep)) }
	s.wait(t, shows(0))
	s.quiet(5 * still)
	slow.Store(true)
	before := len(s.output())
	for range keys {
		s.keys(t, "\x1b[C")
		time.Sleep(apart)
	}
	pressed, seen := time.Now(), len(s.output())
	require.True(t, s.comes(patience, func() bool { return strings.Contains(s.picture(), shows(keys)) }), "not at %s", shows(keys))
	largest := 0
	for picture := range strings.SplitSeq(s.output()[before:], asks) {
		largest = max(largest, len(picture)+len(asks))
	}
	t.Logf("%d keys took %d bytes, pictures of %d at the most; the last stood %v after the last key", keys, len(s.output())-before, largest, time.Since(pressed).Round(time.Millisecond))
	assert.Less(t, largest, len(s.output())-before, "there were several pictures")
	assert.LessOrEqual(t, len(s.output())-seen, 2*largest, "nothing queues up")
}
