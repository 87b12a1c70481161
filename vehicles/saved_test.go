package vehicles

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each way in which a file can't be read or written says where, what and what to do, on one line, and still is the error
// it came of.
func TestWhyAFileWasNotWritten(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{&fs.PathError{Op: "open", Path: "/x", Err: syscall.ENOENT}, "there is no such file or folder"},
		{&fs.PathError{Op: "open", Path: "/x", Err: syscall.EACCES}, "that is not permitted: look at who owns the file and its folder"},
		{&os.LinkError{Op: "rename", Old: "/x", New: "/y", Err: syscall.ENOSPC}, "no space is left there: make room, or save elsewhere"},
		{fmt.Errorf("wrapped: %w", syscall.EROFS), "the disk can only be read: save elsewhere"},
		{&fs.PathError{Op: "open", Path: "/x", Err: syscall.ELOOP}, syscall.ELOOP.Error()},
		{&os.LinkError{Op: "rename", Old: "/x", New: "/y", Err: syscall.EXDEV}, syscall.EXDEV.Error()},
		{errors.New("two\nlines"), "two␊lines"},
		{errNoName, "it has no name: give it one"},
		{errProtected, "it is write-protected: take the protection off, or save under another name"},
	} {
		written, read := notWritten("a.toml", c.err), notRead("a\nb.toml", c.err)
		assert.Equal(t, "a.toml: not written: "+c.want, written.Error())
		assert.Equal(t, "a␊b.toml: can't be read: "+c.want, read.Error())
		assert.ErrorIs(t, written, c.err)
		assert.ErrorIs(t, read, c.err)
	}
}

// A job that its own reader would refuse is not saved, and is told what is wrong with it.
func TestAJobThatCouldNotBeReadAgainIsNotSaved(t *testing.T) {
	path := onDisk(t, commented)
	d := load(t, path)
	for _, c := range []struct {
		change func(*Job)
		says   string
	}{
		{func(j *Job) { j.Floor.Width = -1 }, "floor: width is -1; it must be more than 0"},
		{func(j *Job) { j.Ref = " " }, `job: ref is " "`},
		{func(j *Job) { j.Cut = &Cut{At: [2]float64{1, 2}, Across: 127, Pilot: Some(200)} }, "pilot is 200"},
		{func(j *Job) { j.Obstructions = List[Obstruction]{{Name: "a", Kind: "unheard of"}} }, `kind is "unheard of"`},
	} {
		job := d.Job
		c.change(&job)
		_, _, err := d.Save(job)
		require.ErrorContains(t, err, path+": not saved, as it would be refused when it is read again: ")
		assert.ErrorContains(t, err, c.says)
		assert.Equal(t, commented, content(t, path))
	}
}

// A save that finds the job in the file already changes nothing and keeps no copy.
func TestSavingTheSameTwiceKeepsNoCopy(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tl.toml")
	d, report, err := Document{Path: path}.Save(NewJob("TL-09"))
	require.NoError(t, err)
	assert.Empty(t, report.Before)
	assert.False(t, d.KeepBefore)
	before, err := os.Stat(path)
	require.NoError(t, err)
	d, report, err = SaveAs(path, d.Job)
	require.NoError(t, err)
	assert.Empty(t, report.Before, "what is there is what was to be written")
	after, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, before.Mode(), after.Mode())
	if runtime.GOOS != "windows" {
		assert.Equal(t, fs.FileMode(0o644), after.Mode().Perm(), "a new file is for all to read")
	}
	assert.True(t, d.OnDisk())
}

// An empty file is a file: what somebody left there is not taken for nothing.
func TestAnEmptyFileIsAFile(t *testing.T) {
	path := onDisk(t, "")
	_, _, err := Document{Path: path}.Save(NewJob("TL-09"))
	require.ErrorIs(t, err, ErrChangedOnDisk)
	_, report, err := SaveAs(path, NewJob("TL-09"))
	require.NoError(t, err)
	assert.Equal(t, path+".before", report.Before)
	assert.Empty(t, content(t, report.Before))
}

// A file of just the largest size is read, one byte more is not; brackets and points stand a hundred deep and no deeper.
func TestHowLargeAndHowDeepAFileMayBe(t *testing.T) {
	fill := func(n int) []byte {
		note := "\n# "
		return append([]byte(head+note), bytes.Repeat([]byte("x"), n-len(head+note))...)
	}
	_, faults := parse(fill(LargestFile), "a.toml")
	assert.Empty(t, faults)
	_, faults = parse(fill(LargestFile+1), "a.toml")
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Text, "more than 4 MiB")
	path := onDisk(t, string(fill(LargestFile+1)))
	_, err := Load(path)
	require.ErrorContains(t, err, "more than 4 MiB", "and no more of it is read than that")

	for depth, ok := range map[int]bool{deepest - 1: true, deepest: true, deepest + 1: false} {
		lists := "[extra]\na = " + strings.Repeat("[", depth) + strings.Repeat("]", depth)
		points := "[extra]\na" + strings.Repeat(".a", depth) + " = 1"
		for _, text := range []string{lists, points} {
			assert.Equal(t, ok, tooDeep([]byte(head+text)) == 0, "%d deep", depth)
		}
	}
	assert.Zero(t, tooDeep([]byte(strings.Repeat("a = [1]\nb.c = { d = 2 }\n", 300))), "what is closed again is not deep")
	assert.NotZero(t, tooDeep([]byte(strings.Repeat("[[]", deepest+1))), "what is closed by halves is deep")
	assert.Equal(t, 3, tooDeep([]byte("\n\n"+strings.Repeat("[", deepest+1))), "on its line")
}

// Names of copies go on counting, and a folder's own name is no job.
func TestCopiesGoOnCounting(t *testing.T) {
	path := onDisk(t, commented)
	for n := range 4 {
		theirs := fmt.Sprintf("# %d\n%s", n, commented)
		require.NoError(t, os.WriteFile(path, []byte(theirs), 0o600))
		d := load(t, path)
		_, report, err := d.Save(d.Job)
		require.NoError(t, err)
		want := path + ".before"
		if n > 0 {
			want = fmt.Sprintf("%s-%d", want, n+1)
		}
		assert.Equal(t, want, report.Before)
		assert.Equal(t, theirs, content(t, want))
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, entries, 5)
	_, _, err = SaveAs(filepath.Dir(path), NewJob("a"))
	assert.ErrorIs(t, err, errNoFile)
}
