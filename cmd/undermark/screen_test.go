//go:build !windows

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// askBackground is OSC 11, the question for the background colour (xterm's control sequences).
const askBackground = "\x1b]11"

// editKeys go to the place of the cut and move it once.
var editKeys = []string{"4", "\x1b[C"}

func TestStartsOnTheSample(t *testing.T) {
	h := newHome(t)
	s := h.start(t, 100, 40)
	s.wait(t, "Read this before working on a van")
	s.readOn(t)
	h.noted(t, s)
	s.wait(t, "(sample)")
	s.wait(t, "[1 Underneath]")
	assert.Zero(t, s.quit(t))
	assert.Contains(t, s.output(), "\x1b[?1049l", "the terminal is as it was")

	again := h.start(t, 100, 40)
	again.wait(t, "(sample)")
	assert.NotContains(t, again.picture(), "Read this before working on a van", "read once")
}

// A terminal that answers nothing would hold a program that asks for its colours for five seconds.
func TestAMuteTerminalIsNotAsked(t *testing.T) {
	notRaced(t)
	h := readHome(t)
	begun := time.Now()
	s := h.begin(t, &terminal{mute: true}, 100, 30)
	s.wait(t, "[1 Underneath]")
	assert.Less(t, time.Since(begun), time.Second)
	s.keys(t, "2")
	s.wait(t, "[2 On top]")
	assert.NotContains(t, s.output(), askBackground)

	begun = time.Now()
	s = h.begin(t, &terminal{mute: true}, 100, 30, "--version")
	assert.Zero(t, s.ended(t))
	assert.Less(t, time.Since(begun), time.Second)
	assert.NotContains(t, s.output(), "\x1b")
	assert.Contains(t, s.output(), "undermark "+version())
}

// What the terminal gets of a hostile job and of a hostile book is what it would get of a harmless one: the program's own
// sequences, and stand-ins.
func TestAHostileJobReachesNoTerminal(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	file := filepath.Join(h.dir, "van\x1b[31m\u202e\u00ad.toml")
	require.NoError(t, os.WriteFile(file, []byte(hostileJob(t)), 0o644))
	s := h.start(t, 100, 30, file)
	s.wait(t, "ref▯▯▯▯▯▯▯▯")
	for _, key := range []string{"3", "4", "5", "6", "7", "9", "8"} {
		s.keys(t, key)
		s.wait(t, "["+key+" ")
	}
	s.keys(t, "w")
	s.wait(t, "in which file?")
	s.wait(t, "van␛[31m▯▯.toml")
	s.keys(t, "\x1b")
	s.waitGone(t, "in which file?")
	s.keys(t, "\x03")
	s.wait(t, "FAKE␍␉")
	s.keys(t, "1")
	assert.Zero(t, s.ended(t))
	for _, harm := range append(strings.Split(unseen, ""), "]0;owned\a", "\x1b[31m\x1b", "\u009b") {
		assert.NotContains(t, s.output(), harm)
	}
}

func TestResizeAndATooSmallWindow(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s := h.start(t, 100, 30)
	s.wait(t, "(sample)")
	s.resize(t, 50, 15)
	s.wait(t, "60 columns and 20 rows")
	s.resize(t, 60, 20)
	s.wait(t, "[Under]")
	s.waitGone(t, "60 columns")
	s.resize(t, 160, 50)
	s.wait(t, "(sample)") // there is room for it again
	assert.Zero(t, s.quit(t))
}

// wideFloor is a job file that may be written to.
func wideFloor(t *testing.T) string {
	file := filepath.Join(t.TempDir(), "van.toml")
	text, err := os.ReadFile(filepath.Join(cases, "01-wide-floor.toml"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(file, text, 0o644))
	return file
}

// edited is the program on a file of its own with one unsaved edit, safe in the journal.
func edited(t *testing.T, h home) (s *terminal, file string) {
	file = wideFloor(t)
	s = h.start(t, 120, 40, file)
	s.wait(t, "[1 Underneath]")
	s.keys(t, editKeys...)
	s.wait(t, "● not saved")
	require.True(t, s.comes(patience, func() bool { return len(h.journals(t)) == 1 }), "the journal is written")
	return s, file
}

func TestWorkSurvivesAKill(t *testing.T) {
	h := readHome(t)
	s, file := edited(t, h)
	s.signal(t, syscall.SIGKILL)
	s.ended(t)

	s = h.start(t, 120, 40, file)
	s.wait(t, "Unsaved work from today")
	s.keys(t, "1")
	s.wait(t, "● not saved")
	s.keys(t, "\x13")
	s.wait(t, "Saved.")
	assert.Zero(t, s.quit(t))
	assert.Empty(t, h.journals(t))
}

func TestWorkSurvivesALostTerminalAndAnOrderToEnd(t *testing.T) {
	t.Parallel()
	for _, sig := range []syscall.Signal{syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT} {
		h := readHome(t)
		s, file := edited(t, h)
		s.signal(t, sig)
		s.ended(t)
		assert.Contains(t, s.output(), "\x1b[?1049l", "%v: the terminal is as it was", sig)
		assert.Contains(t, s.output(), "Unsaved work is kept in ", "%v", sig)
		assert.Len(t, h.journals(t), 1, "%v", sig)
		s = h.start(t, 120, 40, file)
		s.wait(t, "Unsaved work from today")
	}
}

func TestQuitAsksForUnsavedWork(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s, file := edited(t, h)
	before, err := os.ReadFile(file)
	require.NoError(t, err)
	s.keys(t, "\x03")
	s.wait(t, "There is work that is not saved.")
	s.keys(t, "2")
	assert.Zero(t, s.ended(t))
	after, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(before), string(after))
	assert.Empty(t, h.journals(t))
}

func TestEveryScreenShowsAtEverySize(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s := h.start(t, 100, 30)
	s.wait(t, "[1 Underneath]")
	for _, size := range [][2]int{{60, 20}, {100, 30}, {160, 50}} {
		s.resize(t, size[0], size[1])
		for i, title := range []string{"Under", "On top", "Match", "Place", "Runs", "Marks", "Checks", "Job", "Work", "Sizing"} {
			digit := strconv.Itoa((i + 1) % 10)
			s.keys(t, digit)
			if size[0] < 100 { // there titles are short
				title = strings.NewReplacer("On top", "Top", "Marks", "Mark", "Checks", "Check", "Sizing", "Size").Replace(title)
			}
			if size[0] == 60 { // and without digits
				s.wait(t, "["+title)
				continue
			}
			s.wait(t, "["+digit+" "+title)
		}
	}
}

func TestTheScreensNeedATerminal(t *testing.T) {
	cmd := exec.Command(program)
	cmd.Env = newHome(t).env()
	out, err := cmd.CombinedOutput()
	assert.Error(t, err)
	assert.Equal(t, exitUsage, cmd.ProcessState.ExitCode())
	assert.Equal(t, 1, strings.Count(string(out), "\n"))
	assert.Contains(t, string(out), "the screens need a terminal")
}
