//go:build !windows

package main

import (
	"bytes"
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

// Whoever stops reading an answer ends the command, whichever it is (those that seek for seconds aside: what they found goes the same way), as a pipe does: quietly or with one line, never with a trace.
func TestAnAnswerThatNobodyReadsEndsTheCommand(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h := newHome(t)
	dir := t.TempDir()
	for _, name := range []string{"job.toml", "van.toml"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), vehicles.Demo().Format(), 0o600))
	}
	tried := map[string]bool{}
	for _, line := range documented(t) {
		args, _ := splitAsShell(line)
		if _, opens := opening[line]; opens || tried[args[0]] || slices.Contains(args, "both") || args[0] == "layout" || slices.Contains(args, "-o") || slices.Contains(args, "COMMAND") || slices.Contains(args, "--van") {
			continue
		}
		from, to, err := os.Pipe()
		require.NoError(t, err)
		require.NoError(t, from.Close())
		var complaint bytes.Buffer
		c := exec.Command(program, args...)
		c.Dir, c.Env, c.Stdout, c.Stderr = dir, h.env(), to, &complaint
		err = c.Run()
		require.NoError(t, to.Close())
		status := c.ProcessState.Sys().(syscall.WaitStatus)
		assert.Error(t, err, "%s: nobody was told", line)
		if status.Signaled() {
			assert.Equal(t, syscall.SIGPIPE, status.Signal(), line)
		} else {
			assert.Equal(t, exitFailed, c.ProcessState.ExitCode(), line)
		}
		assert.NotContains(t, complaint.String(), "goroutine", line)
		assert.LessOrEqual(t, strings.Count(complaint.String(), "\n"), 1, "%s: %s", line, complaint.String())
		tried[args[0]] = true
	}
	assert.Greater(t, len(tried), 12, "most commands answer on standard output")
}
