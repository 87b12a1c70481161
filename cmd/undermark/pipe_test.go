//go:build !windows

package main

import (
	"os"
	"path/filepath"
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
		case <-time.After(patience):
			require.Fail(t, "it waits for ever", args)
		}
	}
}
