//go:build linux && amd64

package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// saving is a program with two edits that its journal has, which is told to save and may be killed just before one of the calls that change files.
type saving struct {
	home
	*terminal
	file, log string
}

// savingOn begins it in a folder of its own that is like another's, and edits.
func savingOn(t *testing.T, like home, kill int) *saving {
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(like.dir)))
	s := &saving{home: home{dir}, file: filepath.Join(dir, "van.toml"), log: filepath.Join(t.TempDir(), "calls")}
	text, err := os.ReadFile(filepath.Join(cases, "01-wide-floor.toml"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(s.file, append([]byte("# by hand\n"), text...), 0o644))
	s.terminal = &terminal{through: tampered(t, dir, s.log, kill, "kill")}
	s.begin(t, s.terminal, 120, 40, s.file)
	s.wait(t, "[1 Underneath]")
	s.keys(t, "4")
	s.wait(t, "[4 Place]")
	for n := range 2 {
		s.keys(t, "\x1b[C")
		require.True(t, s.comes(patience, func() bool { return s.newest(t) == n+1 }), "the journal has it\n%s", s.picture())
	}
	s.quiet(2 * still)
	return s
}

// newest is how many edits the job has that is found again, in its file or in a journal.
func (s *saving) newest(t *testing.T) int {
	text, err := os.ReadFile(filepath.Join(cases, "01-wide-floor.toml"))
	require.NoError(t, err)
	begun, most := cutAt(t, text), 0
	for _, path := range append(s.journals(t), s.file) {
		if text, err := os.ReadFile(path); err == nil { // a journal goes once all is saved
			most = max(most, int(moved(t, text, begun)/killStep+0.5))
		}
	}
	return most
}

// Killed just before any of the calls of a save, it leaves the work in the job's file or in the journal: there is no moment between. A few are drawn in each run, the
// changes of names always among them; KILLS, as for the kills at random moments, goes through all.
func TestKilledAtAnyCallOfASave(t *testing.T) {
	mayBeTampered(t)
	t.Parallel()
	like := readHome(t)
	s := savingOn(t, like, 0)
	before := len(fileCalls(t, s.log))
	s.keys(t, "\x13")
	s.wait(t, "Saved")
	require.True(t, s.comes(patience, func() bool { return len(s.journals(t)) == 0 }))
	s.quiet(2 * still)
	calls := fileCalls(t, s.log)
	require.Zero(t, s.quit(t))
	require.Greater(t, len(calls), before+5)

	var at []int
	draw := rand.New(rand.NewPCG(uint64(fromEnv(t, "KILLS_SEED", 1)), 5))
	for n, call := range calls[before:] {
		names := slices.Contains([]string{"rename", "unlink"}, call.name) && !strings.HasSuffix(call.path, ".lock")
		if _, all := os.LookupEnv("KILLS"); all || names || draw.IntN(4) == 0 {
			at = append(at, before+n+1)
		}
	}
	for _, n := range at {
		t.Run(fmt.Sprint(n, " ", calls[n-1].name), func(t *testing.T) {
			t.Parallel()
			s := savingOn(t, like, n)
			s.keys(t, "\x13")
			s.ended(t)
			require.Len(t, fileCalls(t, s.log), n, "it was killed there")
			require.Equal(t, 2, s.newest(t), "before %v", calls[n-1])
			_, err := vehicles.Load(s.file)
			require.NoError(t, err)
		})
	}
}
