//go:build linux

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// failing is a system that answers some calls with an error (strace's --inject).
func failing(t *testing.T, calls string) []string {
	return append(tracer(t, os.DevNull), "-e", "trace="+traceCalls+",flock", "-e", "inject="+calls)
}

// Whatever a disk refuses, the fitter reads why, the file stays as it was, the work goes on and is saved once the disk lets it.
func TestADiskThatRefusesIsToldOfAndLosesNothing(t *testing.T) {
	t.Parallel()
	notRaced(t)
	sh, err := exec.LookPath("sh")
	require.NoError(t, err)
	for name, try := range map[string]struct {
		through []string
		why     string
	}{
		"full when synced":     {failing(t, "fsync:error=ENOSPC:when=1+"), "no space is left there"},
		"full when written":    {[]string{sh, "-c", `ulimit -f 0; exec "$@"`, "limited"}, "file too large"},
		"broken when synced":   {failing(t, "fsync:error=EIO:when=1+"), "input/output error"},
		"read-only":            {failing(t, "renameat:error=EROFS:when=1+"), "the disk can only be read"},
		"beyond its quota":     {failing(t, "renameat:error=EDQUOT:when=1+"), "quota exceeded"},
		"a mount that is gone": {failing(t, "renameat:error=ESTALE:when=1+"), "stale"},
	} {
		t.Run(name, func(t *testing.T) {
			h := readHome(t)
			file := wideFloor(t)
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			s := h.begin(t, &terminal{through: try.through}, 120, 40, file)
			s.wait(t, "[1 Underneath]")
			s.keys(t, editKeys...)
			s.wait(t, "Unsaved work is in this window only")
			s.wait(t, try.why)
			s.keys(t, "\x13")
			s.wait(t, "The job was not saved.")
			s.wait(t, "Nor can unsaved work be kept safe")
			now, err := os.ReadFile(file)
			require.NoError(t, err)
			assert.Equal(t, string(text), string(now))
			s.keys(t, "2")
			s.waitGone(t, "The job was not saved.")
			s.wait(t, "● not saved")
		})
	}
}

// What the disk refused goes through once there is room again.
func TestADiskThatHasRoomAgainIsSavedTo(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s := h.start(t, 120, 40, wideFloor(t))
	s.wait(t, "[1 Underneath]")
	s.mayWrite(t, 0)
	s.keys(t, editKeys...)
	s.wait(t, "Unsaved work is in this window only")
	s.keys(t, "\x13")
	s.wait(t, "The job was not saved.")
	s.mayWrite(t, 1<<20)
	s.keys(t, "2", "\x1b[C")
	s.waitGone(t, "in this window only")
	require.Len(t, h.journals(t), 1)
	s.keys(t, "\x13")
	s.wait(t, "Saved")
	assert.Zero(t, s.quit(t))
	assert.Empty(t, h.journals(t))
}

// mayWrite sets how large a file the program may write, in bytes.
func (s *terminal) mayWrite(t *testing.T, size uint64) {
	limit := unix.Rlimit{Cur: size, Max: unix.RLIM_INFINITY}
	require.NoError(t, unix.Prlimit(s.cmd.Process.Pid, unix.RLIMIT_FSIZE, &limit, nil))
}

// The folder of the job may go while it is open, as a card or a mount does: the work is kept, and saved elsewhere.
func TestAFolderThatGoesIsNoEnd(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s, file := edited(t, h)
	require.NoError(t, os.RemoveAll(filepath.Dir(file)))
	s.keys(t, "\x13")
	s.wait(t, "The job was not saved.")
	s.wait(t, "the work is kept safe until it is saved")
	s.keys(t, "1")
	s.wait(t, "in which file?")
	elsewhere := filepath.Join(t.TempDir(), "v.toml")
	s.keys(t, "\x15", elsewhere, "\r")
	s.wait(t, "Saved in v.toml")
	assert.Zero(t, s.quit(t))
	assert.Empty(t, h.journals(t))
	assert.FileExists(t, elsewhere)
}

// So may the folder in which unsaved work is kept: it is made again.
func TestAFolderOfJournalsThatGoesIsMadeAgain(t *testing.T) {
	t.Parallel()
	h := readHome(t)
	s, _ := edited(t, h)
	require.NoError(t, os.RemoveAll(filepath.Join(h.dir, "state")))
	s.keys(t, "\x1b[C")
	require.True(t, s.comes(patience, func() bool { return len(h.journals(t)) == 1 }), s.picture())
	assert.NotContains(t, s.picture(), "in this window only")
}

// A home without file locks, on a network say, keeps no journals; that is said, and what to do.
func TestAHomeWithoutLocksIsToldOf(t *testing.T) {
	notRaced(t)
	h := readHome(t)
	file := wideFloor(t)
	s := h.begin(t, &terminal{through: failing(t, "flock:error=ENOLCK:when=1+")}, 120, 40, file)
	s.wait(t, "no file locks")
	s.wait(t, "XDG_STATE_HOME")
	s.keys(t, "1", "4", "\x1b[C")
	s.wait(t, "● not saved")
	s.keys(t, "\x13") // the folder of the job has none either: it is written without
	s.wait(t, "Saved")
	assert.Zero(t, s.quit(t))
}
