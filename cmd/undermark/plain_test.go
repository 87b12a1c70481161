//go:build !windows

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"
	"unicode"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// said waits until the program has written a text behind what it wrote before mark, and returns what that was.
func (s *terminal) said(t *testing.T, mark int, want string) string {
	t.Helper()
	said := func() string { return strings.ReplaceAll(s.output()[mark:], "\r\n", "\n") }
	if !s.comes(patience, func() bool { return strings.Contains(said(), want) }) {
		require.Fail(t, "never said: "+want, said())
	}
	return said()
}

// press presses keys in lines and returns what was said up to a text.
func (s *terminal) press(t *testing.T, want string, keys ...string) string {
	t.Helper()
	mark := len(s.output())
	s.keys(t, keys...)
	return s.said(t, mark, want)
}

// The main job by ear, in a real terminal: the sample's cut is foul, is moved until it is clear, marks are taken, and the job is
// saved. The terminal gets lines and nothing else.
func TestTheMainJobInLines(t *testing.T) {
	t.Parallel()
	const right = "\x1b[C"
	h := newHome(t)
	s := h.start(t, 80, 24, "--plain")
	s.said(t, 0, "Read this before working on a van")
	for said := ""; !strings.Contains(said, "Screen 1 of 10: Underneath"); { // a page an Enter
		said = s.press(t, "\n", "\r")
		s.comes(patience, func() bool { return strings.HasSuffix(s.output(), "\n") })
	}
	s.said(t, 0, "6 foul, 6 doubtful: worst (can kill) cut: brake pipe across, 84.6 mm short")
	said := s.press(t, "Down to the left", "4")
	assert.True(t, strings.HasPrefix(said, "Screen 4 of 10: Place\n"), said)
	assert.Contains(t, s.press(t, "Area A", "\x0c"), "brake pipe across (brake line): in the cut, 24.6 mm inside its rim; towards the")
	s.press(t, "step 50 mm", "s")
	said = s.press(t, "3 foul, 5 doubtful", right)
	assert.Contains(t, said, "At x 1305, 195 mm left")
	assert.NotContains(t, said, "step")
	s.press(t, "1 foul, 5 doubtful", right)
	s.press(t, "5 doubtful: worst intake: reductant tank", right)

	s.press(t, "within 300 mm of the cut, is there any", "6")
	s.press(t, "still open: 1", "n")
	s.press(t, "m; mark all the same", "n")
	s.press(t, "Read this before drilling", "m")
	for said := ""; !strings.Contains(said, "cut centre, not made"); {
		said = s.press(t, "\n", "\r")
		s.comes(patience, func() bool { return strings.HasSuffix(s.output(), "\n") })
	}
	s.said(t, 0, "from the left edge")
	time.Sleep(takenIn)
	s.press(t, "cut centre, made", " ")

	file := filepath.Join(h.dir, "mine.toml")
	s.press(t, "in which file?", "\x13")
	s.keys(t, strings.Repeat("\x7f", 20), file)
	s.press(t, "Saved", "\r")
	assert.Zero(t, s.quit(t))
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(text, file, rules.Builtin())
	require.NoError(t, err)
	assert.InDelta(t, 1405, job.Cut.At[0], 1e-9, "moved three times 50 mm")
	inLinesOnly(t, s.output(), 80)
}

// pasting is what a terminal must be told so that what is pasted is known for that.
var pasting = regexp.MustCompile(`\x1b\[\?2004[hl]`)

// inLinesOnly asks that nothing was drawn: no sequence but those of pasting, no sign of a drawing, no line wider than w.
func inLinesOnly(t *testing.T, output string, w int) {
	t.Helper()
	assert.Equal(t, 2, len(pasting.FindAllString(output, -1)), "on, and off")
	text := pasting.ReplaceAllString(strings.ReplaceAll(output, "\r\n", "\n"), "")
	for line := range strings.SplitSeq(text, "\n") {
		assert.LessOrEqual(t, ansi.StringWidth(line), w, line)
		assert.Equal(t, strings.TrimRight(line, " "), line)
		for _, r := range line {
			assert.False(t, unicode.IsControl(r) || r >= 0x2190 && r <= 0x21FF || r >= 0x2300 && r <= 0x25FF || r >= 0x2800 && r <= 0x28FF, "%q in %q", r, line)
		}
	}
}

// A reading that is typed is written once, as it is typed.
func TestAReadingIsTypedInLines(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s := h.start(t, 80, 24, "--plain")
	s.said(t, 0, "1 of 32")
	s.press(t, "letter; again: the next", "n")
	s.press(t, "near edge, mm: nothing, needed", "c")
	mark := len(s.output())
	for _, k := range []string{"6", "5", "2"} {
		s.keys(t, k)
		s.said(t, mark, k)
	}
	assert.Equal(t, "652", s.output()[mark:])
	assert.Contains(t, s.press(t, "far edge, mm: nothing, needed", "\r"), "\n")
	s.press(t, "3 lines taken", "\x1b[200~+84\n-850\n850\x1b[201~")
	s.press(t, "Screen 1 of 10: Underneath. Job", "\x0c")
	s.press(t, "There is work that is not saved.", "\x03")
	s.keys(t, "2")
	assert.Zero(t, s.ended(t))
}

// Whatever ends the program, the work is kept and the terminal is as it was, as with the screens.
func TestWorkInLinesSurvives(t *testing.T) {
	t.Parallel()
	for _, sig := range []syscall.Signal{syscall.SIGHUP, syscall.SIGTERM, syscall.SIGKILL} {
		h := readHome(t)
		s := h.start(t, 80, 24, "--plain")
		s.said(t, 0, "Screen 1 of 10")
		s.press(t, "At x 1265", "4", "\x1b[C")
		require.True(t, s.comes(patience, func() bool { return len(h.journals(t)) == 1 }), "the journal is written")
		s.signal(t, sig)
		s.ended(t)
		if sig != syscall.SIGKILL {
			assert.Contains(t, s.output(), "\x1b[?2004l", "%v", sig)
			assert.Contains(t, s.output(), "Unsaved work is kept in ", "%v", sig)
		}
		s = h.start(t, 80, 24, "--plain")
		s.said(t, 0, "1: Take it up")
		s.press(t, "Screen 1 of 10", "1")
		s.press(t, "At x 1265", "4")
	}
}

// Without a terminal all screens are written once.
func TestLinesIntoAPipe(t *testing.T) {
	h := newHome(t)
	file := filepath.Join(cases, "24-everything.toml")
	cmd := exec.Command(program, "--plain", file)
	cmd.Env = h.env()
	out, err := cmd.Output()
	require.NoError(t, err)
	text := string(out)
	for i, title := range []string{"Underneath", "On top", "Match", "Place", "Runs", "Marks", "Checks", "Job", "Work", "Sizing"} {
		assert.Equal(t, 1, strings.Count(text, fmt.Sprintf("Screen %d of 10: ", i+1)+title+". Job "), title)
	}
	assert.NotContains(t, text, "\x1b")
	assert.NotContains(t, text, "\r")
	assert.Empty(t, h.journals(t), "nothing is written beside it")

	cmd = exec.Command(program, "--plain", filepath.Join(h.dir, "none.toml"))
	cmd.Env = h.env()
	out, err = cmd.CombinedOutput()
	assert.Error(t, err)
	assert.Equal(t, exitFailed, cmd.ProcessState.ExitCode())
	assert.Equal(t, 1, strings.Count(string(out), "\n"), string(out))
	if full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0); err == nil {
		cmd = exec.Command(program, "--plain")
		cmd.Env, cmd.Stdout = h.env(), full
		assert.Error(t, cmd.Run(), "what can't be written is no success")
		_ = full.Close()
	}
}

// A terminal that says it can't draw is offered lines, in one line; it may have the screens all the same.
func TestADumbTerminalIsOfferedLines(t *testing.T) {
	t.Parallel()
	for answer, want := range map[string]string{"\n": "Screen 1 of 10: Underneath", "n\n": "[1 Underneath]"} {
		h := readHome(t)
		s := h.begin(t, &terminal{dumb: true}, 120, 30)
		said := s.said(t, 0, "all the same.")
		assert.NotContains(t, said, "\x1b")
		assert.Equal(t, 1, strings.Count(strings.TrimSpace(said), "\n")+1)
		s.keys(t, answer)
		s.said(t, 0, want)
		if answer == "\n" {
			assert.NotContains(t, s.output(), "\x1b", "nothing that such a terminal would show as letters")
		}
		assert.Zero(t, s.quit(t))
	}
}

// A program in lines that is suspended gives the terminal back as it was, and says where one is when it goes on.
func TestASuspendedProgramInLinesGivesTheTerminalBack(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s := h.start(t, 80, 24, "--plain")
	s.said(t, 0, "1 of 32")
	require.False(t, s.cooked(t), "keys work singly")
	s.signal(t, syscall.SIGTSTP)
	s.stopped(t)
	assert.True(t, s.cooked(t))
	assert.True(t, s.comes(patience, func() bool { return strings.HasSuffix(s.output(), "\x1b[?2004l") }), "the last it writes")
	mark := len(s.output())
	s.signal(t, syscall.SIGCONT)
	assert.Contains(t, s.said(t, mark, "84.6 mm short"), "Screen 1 of 10: Underneath\n")
	assert.False(t, s.cooked(t))
	s.press(t, "Screen 2 of 10: On top", "2")
	assert.Zero(t, s.quit(t))
}
