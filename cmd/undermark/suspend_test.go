//go:build !windows

package main

import (
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// stopped waits until the program stands still.
func (s *terminal) stopped(t *testing.T) {
	t.Helper()
	require.True(t, s.comes(patience, func() bool {
		var status syscall.WaitStatus
		pid, err := syscall.Wait4(s.cmd.Process.Pid, &status, syscall.WUNTRACED|syscall.WNOHANG, nil)
		return err == nil && pid == s.cmd.Process.Pid && status.Stopped()
	}), "it goes on")
}

// cooked says whether the terminal is as a shell wants it: lines, echoed.
func (s *terminal) cooked(t *testing.T) bool {
	t.Helper()
	state, err := unix.IoctlGetTermios(int(s.tty.Fd()), getTermios)
	require.NoError(t, err)
	return state.Lflag&unix.ICANON != 0 && state.Lflag&unix.ECHO != 0
}

const mouseOn, mouseOff = "\x1b[?1002h", "\x1b[?1002l"

func TestASuspendedProgramLeavesTheTerminalAsItWas(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s, _ := edited(t, h)
	require.False(t, s.cooked(t))
	for round := 1; round <= 3; round++ {
		s.signal(t, syscall.SIGTSTP)
		s.stopped(t)
		require.True(t, s.comes(patience, func() bool { return strings.Count(s.output(), "\x1b[?1049l") == round }), "the shell's own screen is back: %d of %d", strings.Count(s.output(), "\x1b[?1049l"), round)
		assert.True(t, s.cooked(t))
		assert.Equal(t, round, strings.Count(s.output(), mouseOff))

		s.signal(t, syscall.SIGCONT)
		require.True(t, s.comes(patience, func() bool { return strings.Count(s.output(), mouseOn) > round }), "the mouse is back")
		s.wait(t, "● not saved")
		assert.False(t, s.cooked(t))
	}
	s.keys(t, "2")
	s.wait(t, "[2 On top]")
}

// Who suspends a program may never come back to it: what was done a moment before is in the journal while it stands still.
func TestWhatWasDoneJustBeforeASuspensionIsKept(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h := readHome(t)
	file, steps := floorJob(t)
	s := h.works(t, file, 1)
	journal := h.journals(t)[0]
	for done := 2; done <= 6; done++ {
		shown := s.picture()
		s.keys(t, "\x1b[C")
		require.True(t, s.comes(patience, func() bool { return s.picture() != shown }), shown)
		s.signal(t, syscall.SIGTSTP)
		s.stopped(t)
		require.Equal(t, done, steps(journal))
		s.signal(t, syscall.SIGCONT)
		require.True(t, s.comes(patience, func() bool { return strings.Count(s.output(), mouseOn) >= done }), "it goes on")
		s.wait(t, "[4 Place]")
	}
}

// A program that is stopped without being asked can tidy nothing away; when it goes on it paints over what others wrote.
func TestAStoppedProgramPaintsItselfAgain(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s, _ := edited(t, h)
	s.signal(t, syscall.SIGSTOP)
	s.stopped(t)
	s.mu.Lock()
	_, _ = s.screen.WriteString("\x1b[5;1Hwritten by a shell\x1b[?1049l\x1b[?1002l")
	s.mu.Unlock()
	cooked, err := unix.IoctlGetTermios(int(s.tty.Fd()), getTermios)
	require.NoError(t, err)
	cooked.Lflag |= unix.ICANON | unix.ECHO
	require.NoError(t, unix.IoctlSetTermios(int(s.tty.Fd()), setTermios, cooked))

	s.signal(t, syscall.SIGCONT)
	s.waitGone(t, "written by a shell")
	s.wait(t, "● not saved")
	s.keys(t, "2")
	s.wait(t, "[2 On top]")
	assert.False(t, s.cooked(t))
}
