//go:build !windows

package main

import (
	"net"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// A pipe that nobody writes to, or reads from, is refused with a line and never waited for.
func TestNoCommandWaitsForAPipe(t *testing.T) {
	dir := t.TempDir()
	pipe, job := filepath.Join(dir, "pipe.toml"), filepath.Join(dir, "job.toml")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	require.NoError(t, os.WriteFile(job, vehicles.Demo().Format(), 0o600))
	for _, args := range [][]string{
		{"check", pipe}, {"marks", pipe}, {"suggest", pipe}, {"route", "intake", "--edge", "left", pipe}, {"rules", pipe}, {"check", "--book", pipe, job},
		{"marks", job, "-o", pipe}, {"new", "--from", pipe, filepath.Join(dir, "new.toml")}, {"new", pipe},
	} {
		type answer struct {
			code      int
			complaint string
		}
		answered := make(chan answer, 1)
		go func() {
			code, _, complaint := call("", args...)
			answered <- answer{code, complaint}
		}()
		select {
		case a := <-answered:
			assert.Equal(t, exitFailed, a.code, args)
			assert.Equal(t, 1, strings.Count(a.complaint, "\n"), a.complaint)
			assert.Contains(t, a.complaint, pipe, args)
			if reads := args[0] != "new" && slices.Index(args, pipe) == len(args)-1 && !slices.Contains(args, "-o"); reads {
				assert.Contains(t, a.complaint, "write - for standard input", args)
			}
		case <-time.After(patience):
			require.Fail(t, "it waits for ever", args)
		}
	}
}

// A job that is no file, whatever else it is, is refused in the terminal with one message that names it, and never waited for.
func TestTheScreensOpenNothingButAFile(t *testing.T) {
	dir := t.TempDir()
	pipe, folder := filepath.Join(dir, "pipe.toml"), filepath.Join(dir, "folder.toml")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	require.NoError(t, os.Mkdir(folder, 0o700))
	t.Chdir(dir) // a socket's path can't be long
	listener, err := net.Listen("unix", "socket.toml")
	require.NoError(t, err)
	defer listener.Close()
	for path, why := range map[string]string{
		pipe: "no plain file", "socket.toml": "no plain file", folder: "a folder, not a file", "/dev/zero": "no plain file", "/dev/full": "no plain file",
	} {
		if _, err := os.Stat(path); err != nil {
			continue // not every system has each device
		}
		for _, args := range [][]string{{path}, {"--plain", path}} {
			s := newHome(t).start(t, 200, 30, args...)
			assert.Equal(t, exitFailed, s.ended(t), args)
			said := strings.TrimSpace(s.picture())
			assert.Equal(t, 0, strings.Count(said, "\n"), said)
			assert.Contains(t, said, path)
			assert.Contains(t, said, why)
			assert.NotContains(t, said, "standard input", "no screen reads that")
		}
	}
}
