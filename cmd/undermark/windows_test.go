//go:build !windows

package main

import (
	"bytes"
	"fmt"
	"math"
	"net"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/gofrs/flock"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// floorJob is a job file that may be written to, and how many steps of the cut one that it was has gone from there.
func floorJob(t *testing.T) (file string, steps func(path string) int) {
	file = wideFloor(t)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	begun := cutAt(t, text)
	return file, func(path string) int {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		return int(math.Round(moved(t, text, begun) / killStep))
	}
}

// works is a window on a job that has moved its cut so many steps, which its journal has: one more than there were.
func (h home) works(t *testing.T, file string, steps int) *terminal {
	before := len(h.journals(t))
	s := h.start(t, 120, 40, file)
	s.wait(t, "[1 Underneath]")
	s.keys(t, "4")
	s.wait(t, "[4 Place]")
	s.keys(t, strings.Repeat("\x1b[C", steps))
	require.True(t, s.comes(patience, s.dirty), s.picture())
	require.True(t, s.comes(patience, func() bool { return len(h.journals(t)) == before+1 }), s.picture())
	return s
}

// leftBehind has a window work and die, and returns its journal, which has all of it.
func (h home) leftBehind(t *testing.T, file string, steps func(string) int, n int) (journal string) {
	s := h.works(t, file, n)
	journal = h.journals(t)[0]
	require.True(t, s.comes(patience, func() bool { return steps(journal) == n }))
	s.signal(t, syscall.SIGKILL)
	s.ended(t)
	return journal
}

// Three windows on one job: the first saves, the second is told and saves elsewhere, the third writes over the file, and what that held lies beside it, behind what it held at first.
func TestThreeWindowsOnOneJobLoseNothing(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h := readHome(t)
	file, steps := floorJob(t)
	one, two, three := h.works(t, file, 1), h.works(t, file, 2), h.works(t, file, 3)
	one.keys(t, "\x13")
	one.wait(t, "Saved")

	const changed = "was changed by somebody else since it was read here"
	for _, s := range []*terminal{two, three} {
		s.keys(t, "\x13")
		require.True(t, s.comes(patience, func() bool { return strings.Contains(strings.Join(strings.Fields(s.picture()), " "), changed) }), s.picture())
	}
	assert.Equal(t, 1, steps(file), "nothing is written before somebody answers")
	two.keys(t, "1")
	two.wait(t, "in which file?")
	other := filepath.Join(filepath.Dir(file), "other.toml")
	two.keys(t, "\x15", other, "\r")
	two.wait(t, "Saved in other.toml")
	three.keys(t, "3")
	require.True(t, three.comes(patience, func() bool { return !three.dirty() }), three.picture())
	assert.Equal(t, []int{0, 1, 2, 3}, []int{steps(file + ".before"), steps(file + ".before-2"), steps(other), steps(file)})
	for _, s := range []*terminal{one, two, three} {
		assert.Zero(t, s.quit(t))
	}
	assert.Empty(t, h.journals(t))
}

// A clock that was set back, or on, between two writes makes no work older: what a job was begun from says that, no time.
func TestAClockThatWasSetLosesNothing(t *testing.T) {
	notRaced(t)
	t.Parallel()
	past, future := time.Date(1971, 1, 1, 12, 0, 0, 0, time.UTC), time.Now().AddDate(30, 0, 0)
	for name, times := range map[string]struct{ job, journal time.Time }{
		"the file is of the future":    {future, time.Now()},
		"the journal is of the past":   {time.Now(), past},
		"the journal is of the future": {past, future},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			h := readHome(t)
			file, steps := floorJob(t)
			journal := h.leftBehind(t, file, steps, 2)
			require.NoError(t, os.Chtimes(file, times.job, times.job))
			require.NoError(t, os.Chtimes(journal, times.journal, times.journal))
			s := h.start(t, 120, 40, file)
			s.wait(t, "Unsaved work from ")
			s.keys(t, "1", "4", "\x1b[C")
			require.True(t, s.comes(patience, func() bool { return steps(journal) == 3 }), s.picture())
			s.keys(t, "\x13")
			s.wait(t, "Saved")
			assert.Equal(t, 3, steps(file))
			assert.Zero(t, s.quit(t))
			assert.Empty(t, h.journals(t))
		})
	}
}

const mostJournals = 16 // tui.mostWindows

// Sixteen windows left work behind: it is offered piece by piece, the newest first; who leaves all of it where it is is told that this window has no
// journal, and saves.
func TestSixteenJournalsAreOffered(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h := readHome(t)
	file, steps := floorJob(t)
	journal := h.leftBehind(t, file, steps, 1)
	text, err := os.ReadFile(journal)
	require.NoError(t, err)
	for n := 2; n <= mostJournals; n++ {
		again := strings.TrimSuffix(journal, "-1.toml") + fmt.Sprintf("-%d.toml", n)
		require.NoError(t, os.WriteFile(again, text, 0o600))
	}
	s := h.start(t, 120, 40, file)
	s.wait(t, "15 other windows left work behind too")
	s.keys(t, "3")
	s.waitGone(t, "15 other windows")
	s.keys(t, editKeys...)
	s.wait(t, "Unsaved work is in this window only: none of its 16 journals is free")
	s.keys(t, "\x13")
	s.wait(t, "Saved")
	assert.Equal(t, 1, steps(file))
	assert.Zero(t, s.quit(t))
	assert.Len(t, h.journals(t), mostJournals, "all of them wait")

	s = h.start(t, 120, 40, file)
	s.wait(t, "[1 Underneath]")
	assert.NotContains(t, s.picture(), "Unsaved work")
	assert.Zero(t, s.quit(t))
	assert.Empty(t, h.journals(t), "all of them are in the file by now")
}

// Of what several windows left behind the newest work is offered first, whichever of them it is of.
func TestTheNewestOfManyJournalsIsOfferedFirst(t *testing.T) {
	notRaced(t)
	t.Parallel()
	for _, newest := range []int{1, 7, mostJournals} {
		t.Run(fmt.Sprint(newest), func(t *testing.T) {
			t.Parallel()
			h := readHome(t)
			file, steps := floorJob(t)
			name := func(n int, journal string) string {
				return strings.TrimSuffix(journal, "-1.toml") + fmt.Sprintf("-%d.toml", n)
			}
			texts, journal := [4][]byte{}, ""
			for _, done := range []int{1, 3} {
				journal = h.leftBehind(t, file, steps, done)
				text, err := os.ReadFile(journal)
				require.NoError(t, err)
				texts[done] = text
				require.NoError(t, os.Remove(journal))
			}
			for n := 1; n <= mostJournals; n++ {
				text, at := texts[1], time.Now().Add(-time.Hour-time.Duration(n)*time.Minute)
				if n == newest {
					text, at = texts[3], time.Now().Add(-time.Minute)
				}
				require.NoError(t, os.WriteFile(name(n, journal), text, 0o600))
				require.NoError(t, os.Chtimes(name(n, journal), at, at))
			}
			s := h.start(t, 120, 40, file)
			s.wait(t, "15 other windows left work behind too")
			s.keys(t, "1")
			s.waitGone(t, "15 other windows")
			s.keys(t, "\x13")
			s.wait(t, "Saved")
			assert.Equal(t, 3, steps(file))
			assert.Zero(t, s.quit(t))
		})
	}
}

// A seventeenth window has no journal, says so before anything else, and can be saved from.
func TestASeventeenthWindowIsTold(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h := readHome(t)
	file, steps := floorJob(t)
	journal := h.leftBehind(t, file, steps, 1)
	require.NoError(t, os.Remove(journal))
	for n := 1; n <= mostJournals; n++ {
		lock := flock.New(strings.TrimSuffix(journal, "-1.toml") + fmt.Sprintf("-%d.toml.lock", n))
		got, err := lock.TryLock()
		require.NoError(t, err)
		require.True(t, got)
		t.Cleanup(func() { _ = lock.Close() })
	}
	s := h.start(t, 120, 40, file)
	s.wait(t, "none of its 16 journals is free")
	s.keys(t, "1")
	s.keys(t, editKeys...)
	s.wait(t, "Unsaved work is in this window only")
	s.keys(t, "\x13")
	s.wait(t, "Saved")
	assert.Equal(t, 1, steps(file))
	assert.Zero(t, s.quit(t))
}

// A journal that holds what the file holds is not offered, and goes; one that can't be read, or is no plain file, is named and stays, and the window works
// in another.
func TestStaleAndForeignJournals(t *testing.T) {
	notRaced(t)
	t.Parallel()
	h := readHome(t)
	file, steps := floorJob(t)
	journal := h.leftBehind(t, file, steps, 1)
	text, err := os.ReadFile(journal)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(text, journal, rules.Builtin())
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(file, job.Format(), 0o600))
	s := h.start(t, 120, 40, file)
	s.wait(t, "[1 Underneath]")
	assert.NotContains(t, s.picture(), "Unsaved work")
	assert.Zero(t, s.quit(t))
	assert.Empty(t, h.journals(t), "it is in the file")

	other := vehicles.Demo()
	other.Ref = "of another van"
	for name, try := range map[string]struct {
		text []byte
		says string
	}{
		"of another job":     {[]byte("# unsaved work on \"/nowhere/other.toml\"\n" + string(other.Format())), "was found: of another van"},
		"of a later program": {[]byte(strings.Replace(string(text), "format = 1", "format = 1\nlater = true", 1)), "can't be read"},
		"noise":              {[]byte("\x00\x01\x1b[31m\xff\xfe"), "can't be read"},
		"torn":               {text[:bytes.Index(text, []byte("kind ="))+3], "can't be read"},
		"of no end":          {make([]byte, vehicles.LargestFile+1), "can't be read"},
	} {
		require.NoError(t, os.WriteFile(journal, try.text, 0o600))
		s := h.start(t, 120, 40, file)
		if !s.comes(patience, func() bool { return strings.Contains(s.picture(), try.says) }) {
			require.Fail(t, name, s.picture())
		}
		s.keys(t, map[bool]string{true: "3", false: "1"}[name == "of another job"])
		s.waitGone(t, try.says)
		s.keys(t, "4", "\x1b[C")
		require.True(t, s.comes(patience, func() bool { return len(h.journals(t)) == 2 }), "%s: it works in another\n%s", name, s.picture())
		s.keys(t, "\x1a")
		require.True(t, s.comes(patience, func() bool { return !s.dirty() }), name)
		assert.Zero(t, s.quit(t), name)
		left, err := os.ReadFile(journal)
		require.NoError(t, err)
		assert.Equal(t, string(try.text), string(left), "%s: it stays", name)
	}
	require.NoError(t, os.Remove(journal))
	for what, put := range noFiles {
		beforehand := len(h.journals(t))
		put(t, journal)
		s := h.start(t, 120, 40, file)
		require.True(t, s.comes(patience, func() bool {
			return strings.Contains(strings.Join(strings.Fields(s.picture()), ""), filepath.Base(journal)+":notwritten:itisnoplainfile.")
		}), "%s: %s", what, s.picture())
		s.keys(t, "\r")
		s.wait(t, "[1 Underneath]")
		s.waitGone(t, "no plain file")
		s.keys(t, editKeys...)
		require.True(t, s.comes(patience, func() bool { return len(h.journals(t)) == beforehand+2 }), "beside a %s: %s", what, s.picture())
		s.keys(t, "\x1a")
		require.True(t, s.comes(patience, func() bool { return !s.dirty() }), what)
		assert.Zero(t, s.quit(t), what)
		info, err := os.Lstat(journal)
		require.NoError(t, err)
		assert.False(t, info.Mode().IsRegular(), "%s: it stays", what)
		require.NoError(t, os.Remove(journal))
	}
}

// noFiles put something at a path that is no plain file.
var noFiles = map[string]func(*testing.T, string){
	"pipe":             func(t *testing.T, path string) { require.NoError(t, syscall.Mkfifo(path, 0o600)) },
	"link to a device": func(t *testing.T, path string) { require.NoError(t, os.Symlink(os.DevNull, path)) },
	"link to no place": func(t *testing.T, path string) { require.NoError(t, os.Symlink(path+"-gone", path)) },
	"folder":           func(t *testing.T, path string) { require.NoError(t, os.Mkdir(path, 0o700)) },
	"socket":           listens,
}

// listens leaves a socket at a path, which may be longer than a socket's name can be: it is made under a short one.
func listens(t *testing.T, path string) {
	short, err := os.MkdirTemp("", "s")
	require.NoError(t, err)
	defer os.RemoveAll(short)
	listener, err := net.ListenUnix("unix", &net.UnixAddr{Name: filepath.Join(short, "s"), Net: "unix"})
	require.NoError(t, err)
	listener.SetUnlinkOnClose(false)
	require.NoError(t, listener.Close())
	require.NoError(t, os.Rename(filepath.Join(short, "s"), path))
}
