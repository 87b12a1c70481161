//go:build !windows

package main

import (
	"bytes"
	"cmp"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
	"github.com/stretchr/testify/require"
)

// home is a fitter's folder of settings and state, apart from those of whoever runs the tests.
type home struct{ dir string }

func newHome(t testing.TB) home { return home{t.TempDir()} }

// readHome is a home where the cautions have been read.
func readHome(t testing.TB) home {
	h := newHome(t)
	s := h.start(t, 100, 40)
	s.wait(t, "Read this before working on a van")
	s.readOn(t)
	h.noted(t, s)
	s.quit(t)
	return h
}

// noted waits until it is on the disk that the cautions were read.
func (h home) noted(t testing.TB, s *terminal) {
	t.Helper()
	file := filepath.Join(h.dir, "state", "undermark", "cautions-read")
	require.True(t, s.comes(patience, func() bool { data, err := os.ReadFile(file); return err == nil && len(data) > 0 }), "noted as read")
}

func (h home) env(more ...string) []string {
	env := []string{
		"TERM=xterm-256color", "COLORTERM=truecolor", "LANG=C.UTF-8", "PATH=" + os.Getenv("PATH"), "HOME=" + h.dir, "GORACE=" + os.Getenv("GORACE"),
		"XDG_CONFIG_HOME=" + filepath.Join(h.dir, "config"), "XDG_STATE_HOME=" + filepath.Join(h.dir, "state"),
	}
	return append(env, more...)
}

func (h home) journals(t testing.TB) []string {
	files, err := filepath.Glob(filepath.Join(h.dir, "state", "undermark", "journal", "*.toml"))
	require.NoError(t, err)
	return files
}

// terminal is the program in a terminal of its own.
type terminal struct {
	program string // what runs in it, "" for ours
	cmd     *exec.Cmd
	tty     *os.File
	mute    bool // it answers nothing that it is asked
	dumb    bool // it says that it can't draw
	shows   bool // it says that it shows pictures, in cells of 12 x 24 pixels
	asked   bool // it was asked whether it does
	envs    []string
	folder  string     // where it is started, "" for where the tests run
	through []string   // a program that runs it, with its arguments
	reads   func() int // waits until something may be read of what it writes, and says how much at most; nil: at once, and all
	done    chan struct{}
	mu      sync.Mutex
	screen  *vt.Emulator
	raw     bytes.Buffer
	wrote   chan struct{} // says that the program wrote, once for all of it that nobody has waited for
}

func (h home) start(t testing.TB, cols, rows int, args ...string) *terminal {
	return h.begin(t, &terminal{}, cols, rows, args...)
}

func (h home) begin(t testing.TB, s *terminal, cols, rows int, args ...string) *terminal {
	t.Helper()
	line := append(append(slices.Clone(s.through), cmp.Or(s.program, program)), args...)
	s.cmd, s.screen, s.done = exec.Command(line[0], line[1:]...), vt.NewEmulator(cols, rows), make(chan struct{})
	s.wrote = make(chan struct{}, 1)
	s.cmd.Env, s.cmd.Dir = h.env(), s.folder
	if s.dumb {
		s.cmd.Env = h.env("TERM=dumb")
	}
	s.cmd.Env = append(s.cmd.Env, s.envs...)
	var err error
	s.tty, err = pty.StartWithSize(s.cmd, &pty.Winsize{Cols: uint16(cols), Rows: uint16(rows)})
	require.NoError(t, err, "these tests need a terminal")
	answers := io.Writer(s.tty)
	if s.mute {
		answers = io.Discard
	}
	go func() { _, _ = io.Copy(answers, s.screen) }() // without a reader the emulator stops
	go func() {
		defer close(s.done)
		for b := make([]byte, 1<<16); ; {
			most := len(b)
			if s.reads != nil {
				most = min(most, s.reads())
			}
			n, err := s.tty.Read(b[:most])
			s.mu.Lock()
			s.raw.Write(b[:n])
			_, _ = s.screen.Write(b[:n])
			if s.shows && !s.asked && bytes.Contains(s.raw.Bytes(), []byte(pictureQuery)) {
				s.asked = true
				_, _ = s.tty.WriteString("\x1b[6;24;12t\x1b_Gi=30061;OK\x1b\\")
			}
			s.mu.Unlock()
			select {
			case s.wrote <- struct{}{}:
			default:
			}
			if err != nil {
				return // the program is gone
			}
		}
	}()
	t.Cleanup(func() { // the emulator is left open: closing it while its answers are read is a race within it
		_ = s.cmd.Process.Kill()
		_ = s.tty.Close()
	})
	return s
}

// picture is the text that shows.
func (s *terminal) picture() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.screen.String()
}

// output is all that the program wrote, escape sequences and all.
func (s *terminal) output() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.raw.String()
}

const patience = 20 * time.Second

func (s *terminal) wait(t testing.TB, want string) {
	t.Helper()
	if !s.comes(patience, func() bool { return strings.Contains(s.picture(), want) }) {
		require.Fail(t, "never showed: "+want, s.picture())
	}
}

func (s *terminal) waitGone(t testing.TB, unwanted string) {
	t.Helper()
	require.True(t, s.comes(patience, func() bool { return !strings.Contains(s.picture(), unwanted) }), "still shows %s", unwanted)
}

func (s *terminal) comes(within time.Duration, so func() bool) bool {
	for end := time.Now().Add(within); time.Now().Before(end); time.Sleep(2 * time.Millisecond) {
		if so() {
			return true
		}
	}
	return so()
}

func (s *terminal) keys(t testing.TB, keys ...string) {
	t.Helper()
	for _, k := range keys {
		_, err := s.tty.WriteString(k)
		require.NoError(t, err)
	}
}

// readOn turns the pages of the cautions to the end.
func (s *terminal) readOn(t testing.TB) {
	t.Helper()
	left := regexp.MustCompile(`\d+ more rows below|the end`)
	for where := ""; where != "the end"; { // one Enter a page: what comes after the last would take it too
		was := where
		require.True(t, s.comes(patience, func() bool { where = left.FindString(s.picture()); return where != was }), "the page stays")
		s.keys(t, "\r")
	}
	s.waitGone(t, "Read this before working on a van")
	time.Sleep(takenIn)
}

// takenIn is how long a hand needs at the least to see what a text that was read lay over: the program hears no Enter or Space until then.
const takenIn = 420 * time.Millisecond

func (s *terminal) resize(t testing.TB, cols, rows int) {
	t.Helper()
	s.mu.Lock()
	s.screen.Resize(cols, rows)
	s.mu.Unlock()
	require.NoError(t, pty.Setsize(s.tty, &pty.Winsize{Cols: uint16(cols), Rows: uint16(rows)}))
}

// quit leaves a program with nothing unsaved and returns its exit code.
func (s *terminal) quit(t testing.TB) int {
	t.Helper()
	s.keys(t, "\x03")
	return s.ended(t)
}

// ended waits for the program's end and returns its exit code, -1 when a signal ended it.
func (s *terminal) ended(t testing.TB) int {
	t.Helper()
	gone := make(chan struct{})
	go func() { _ = s.cmd.Wait(); close(gone) }()
	select {
	case <-gone:
	case <-time.After(patience):
		require.Fail(t, "the program does not end", s.picture())
	}
	<-s.done
	return s.cmd.ProcessState.ExitCode()
}

func (s *terminal) signal(t testing.TB, sig syscall.Signal) {
	t.Helper()
	require.NoError(t, s.cmd.Process.Signal(sig))
}
