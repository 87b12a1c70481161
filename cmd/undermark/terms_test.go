//go:build !windows

package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// What a terminal may be sent to colour with (ECMA-48, 8.3.117; 38 and 48 with more behind them): one of sixteen colours, of 256, any.
var (
	anyColour  = regexp.MustCompile("\x1b\\[[0-9;]*\\b([34]8;[25]|[349][0-7]|10[0-7])\\b[0-9;]*m")
	moreColour = regexp.MustCompile("\x1b\\[[0-9;]*\\b[34]8;[25]\\b[0-9;]*m")
	trueColour = regexp.MustCompile("\x1b\\[[0-9;]*\\b[34]8;2\\b[0-9;]*m")
)

// Whatever a terminal says that it is, and whatever language it speaks, the program draws there, moves the cut, saves and ends in good order; it sends no
// more colours than the terminal says it has.
func TestWhateverTheTerminalIsTheProgramWorks(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h := readHome(t)
	for name, try := range map[string]struct {
		through []string
		envs    []string
		never   *regexp.Regexp
	}{
		"no TERM":                {through: []string{"env", "-u", "TERM", "-u", "COLORTERM"}, never: anyColour},
		"an empty TERM":          {envs: []string{"TERM="}, never: anyColour},
		"dumb":                   {envs: []string{"TERM=dumb"}, never: anyColour},
		"linux":                  {envs: []string{"TERM=linux", "COLORTERM="}, never: moreColour},
		"xterm":                  {envs: []string{"TERM=xterm", "COLORTERM="}, never: moreColour},
		"xterm-256color":         {envs: []string{"TERM=xterm-256color", "COLORTERM="}, never: trueColour},
		"one that nobody knows":  {envs: []string{"TERM=../../\x1b[31mx", "COLORTERM="}, never: moreColour},
		"NO_COLOR":               {envs: []string{"NO_COLOR=1"}, never: anyColour},
		"LANG=C":                 {envs: []string{"LANG=C", "LC_ALL=C"}},
		"no UTF-8":               {envs: []string{"LANG=de_DE.ISO-8859-1", "LC_ALL=de_DE.ISO-8859-1"}},
		"no environment to name": {through: []string{"env", "-i"}, never: anyColour},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			file := wideFloor(t)
			if slices.Contains(try.through, "-i") {
				try.through = append(try.through, "HOME="+t.TempDir())
				file = filepath.Join(t.TempDir(), "van.toml") // its own folder of state has no cautions that were read
				require.NoError(t, os.WriteFile(file, vehicles.Demo().Format(), 0o600))
			}
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			begun := cutAt(t, text)
			s := h.begin(t, &terminal{through: try.through, envs: try.envs}, 100, 30, file)
			if slices.Contains(try.envs, "TERM=dumb") || name == "no UTF-8" {
				s.wait(t, "undermark --plain")
				s.keys(t, "n\r")
			}
			if slices.Contains(try.through, "-i") {
				s.wait(t, "Read this before working on a van")
				s.readOn(t)
			}
			s.wait(t, "[1 Underneath]")
			s.keys(t, editKeys...)
			require.True(t, s.comes(patience, s.dirty), s.picture())
			s.keys(t, "\x13")
			s.wait(t, "Saved")
			text, err = os.ReadFile(file)
			require.NoError(t, err)
			assert.InDelta(t, killStep, moved(t, text, begun), 0.01)
			assert.Zero(t, s.quit(t))
			if try.never != nil {
				assert.NotRegexp(t, try.never, s.output())
			}
		})
	}
}

// slowOrElsewhere are answers that the documents don't show so: those that are sought for, those that go to standard output by its name, the screens in lines.
var slowOrElsewhere = []string{
	"undermark layout job.toml", "undermark layout --json job.toml", "undermark route exhaust job.toml --edge left", "undermark check job.toml -o /dev/stdout",
	"undermark marks --json job.toml -o /dev/stdout", "undermark rules -o /dev/stdout", "undermark --plain job.toml", "undermark --version", "undermark check --help",
	"undermark help sheet", "undermark completion zsh",
}

// Whoever stops reading an answer ends the command, whichever it is, as a pipe does: quietly or with one line, never with a trace. That is so before the
// first line, and behind it, as with head.
func TestAnAnswerThatNobodyReadsEndsTheCommand(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h := newHome(t)
	dir := t.TempDir()
	for _, name := range []string{"job.toml", "van.toml"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), vehicles.Demo().Format(), 0o600))
	}
	tried := map[string]bool{}
	for _, line := range slices.Concat(documented(t), slowOrElsewhere) {
		args, _ := splitAsShell(line)
		own := slices.Contains(slowOrElsewhere, line)
		if _, opens := opening[line]; opens || !own && (tried[args[0]] || slices.Contains(args, "both") || args[0] == "layout" || slices.Contains(args, "-o") || slices.Contains(args, "COMMAND") || slices.Contains(args, "--van")) {
			continue
		}
		complaint, state := unreadAnswer(t, h, dir, args, 0)
		assert.False(t, state.Success(), "%s: nobody was told", line)
		endedQuietly(t, line, complaint, state)
		complaint, state = unreadAnswer(t, h, dir, args, 1)
		if c := state.ExitCode(); c != 0 && c != exitDoubtful && c != exitFoul { // all of it had been written
			endedQuietly(t, line, complaint, state)
		}
		tried[args[0]] = true
	}
	assert.Greater(t, len(tried), 15, "all commands answer on standard output, but for those that draw")
}

// unreadAnswer runs a command whose answer is read for so many bytes, and no further.
func unreadAnswer(t *testing.T, h home, dir string, args []string, bytesRead int) (complaint string, state *os.ProcessState) {
	from, to, err := os.Pipe()
	require.NoError(t, err)
	var told bytes.Buffer
	c := exec.Command(program, args...)
	c.Dir, c.Env, c.Stdout, c.Stderr = dir, h.env(), to, &told
	if bytesRead == 0 {
		require.NoError(t, from.Close())
	}
	require.NoError(t, c.Start())
	require.NoError(t, to.Close())
	if bytesRead > 0 {
		_, err = io.ReadFull(from, make([]byte, bytesRead))
		require.NoError(t, err, args)
		require.NoError(t, from.Close())
	}
	_ = c.Wait() // the state says it
	return told.String(), c.ProcessState
}

// endedQuietly holds that a command whose answer nobody reads was ended by its pipe, or said so in a line.
func endedQuietly(t *testing.T, line, complaint string, state *os.ProcessState) {
	if status := state.Sys().(syscall.WaitStatus); status.Signaled() {
		assert.Equal(t, syscall.SIGPIPE, status.Signal(), line)
	} else {
		assert.Equal(t, exitFailed, state.ExitCode(), line)
	}
	assert.NotContains(t, complaint, "goroutine", line)
	assert.LessOrEqual(t, strings.Count(complaint, "\n"), 1, "%s: %s", line, complaint)
}
