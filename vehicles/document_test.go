package vehicles

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const commented = "# measured in the yard\n" + head

// onDisk writes a file into a folder of its own and returns its path.
func onDisk(t *testing.T, text string) string {
	path := filepath.Join(t.TempDir(), "tl.toml")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o640))
	return path
}

func load(t *testing.T, path string) Document {
	d, err := Load(path)
	require.NoError(t, err)
	return d
}

func content(t *testing.T, path string) string {
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

func TestTheFirstSaveKeepsWhatTheFileSaidBesideTheJob(t *testing.T) {
	path := onDisk(t, commented)
	d := load(t, path)
	assert.True(t, d.KeepBefore)
	d.Job.Fitter = "A"
	d, report, err := d.Save(d.Job)
	require.NoError(t, err)
	assert.Equal(t, path+".before", report.Before)
	assert.Equal(t, commented, content(t, report.Before))
	assert.Equal(t, string(d.Job.Format()), content(t, path))
	assert.False(t, d.KeepBefore)

	d.Job.Fitter = "B"
	d, report, err = d.Save(d.Job)
	require.NoError(t, err)
	assert.Empty(t, report.Before)
	assert.Equal(t, commented, content(t, path+".before"))
	assert.Equal(t, d, load(t, path))
}

func TestAnOlderCopyIsNeverWrittenOver(t *testing.T) {
	path := onDisk(t, commented)
	require.NoError(t, os.WriteFile(path+".before", []byte("older"), 0o600))
	d := load(t, path)
	_, report, err := d.Save(d.Job)
	require.NoError(t, err)
	assert.Equal(t, path+".before-2", report.Before)
	assert.Equal(t, "older", content(t, path+".before"))
	assert.Equal(t, commented, content(t, report.Before))

	require.NoError(t, os.WriteFile(path, []byte(commented), 0o600))
	d = load(t, path)
	_, report, err = d.Save(d.Job)
	require.NoError(t, err)
	assert.Equal(t, path+".before-2", report.Before, "the same copy serves again")
}

func TestAFileChangedByAnotherIsNotWrittenOver(t *testing.T) {
	path := onDisk(t, commented)
	d := load(t, path)
	theirs := strings.Replace(commented, "460", "461", 1)
	info, err := os.Stat(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, []byte(theirs), 0o640))
	require.NoError(t, os.Chtimes(path, info.ModTime(), info.ModTime()), "the content counts, not the time")

	_, _, err = d.Save(d.Job)
	require.ErrorIs(t, err, ErrChangedOnDisk)
	assert.Equal(t, theirs, content(t, path))

	over, report, err := SaveAs(path, d.Job)
	require.NoError(t, err)
	assert.Equal(t, theirs, content(t, report.Before))
	assert.Equal(t, string(d.Job.Format()), content(t, path))
	_, _, err = over.Save(d.Job)
	require.NoError(t, err)
}

func TestANewJobDoesNotWriteOverAFileThatCameMeanwhile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tl.toml")
	d := Document{Path: path, Job: NewJob("TL-09")}
	assert.False(t, d.OnDisk())
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	_, _, err := d.Save(d.Job)
	require.ErrorIs(t, err, ErrChangedOnDisk)

	require.NoError(t, os.Remove(path))
	d, report, err := d.Save(d.Job)
	require.NoError(t, err)
	assert.True(t, d.OnDisk())
	assert.Empty(t, report.Before)
	assert.Equal(t, d, load(t, path))
}

func TestAFileThatVanishedIsWrittenAnew(t *testing.T) {
	path := onDisk(t, head)
	d := load(t, path)
	require.NoError(t, os.Remove(path))
	_, _, err := d.Save(d.Job)
	require.NoError(t, err)
	load(t, path)
}

func TestSavingKeepsTheModeAndTheLink(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("modes and links are others there")
	}
	path := onDisk(t, commented)
	require.NoError(t, os.Chmod(path, 0o604))
	link := filepath.Join(t.TempDir(), "van.toml")
	require.NoError(t, os.Symlink(path, link))
	d := load(t, link)
	d, report, err := d.Save(d.Job)
	require.NoError(t, err)
	assert.Equal(t, link, d.Path)
	assert.Equal(t, path+".before", report.Before)
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.Equal(t, fs.ModeSymlink, info.Mode().Type())
	info, err = os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, fs.FileMode(0o604), info.Mode().Perm())

	ahead := filepath.Join(filepath.Dir(link), "new.toml")
	require.NoError(t, os.Symlink("behind.toml", ahead))
	_, _, err = SaveAs(ahead, d.Job)
	require.NoError(t, err)
	load(t, filepath.Join(filepath.Dir(link), "behind.toml"))
}

func TestWhatCannotBeWrittenIsOneLineAndLeavesAllAsItWas(t *testing.T) {
	path := onDisk(t, commented)
	d := load(t, path)
	for name, save := range map[string]func() error{
		"no name":      func() error { _, _, err := SaveAs("", d.Job); return err },
		"no folder":    func() error { _, _, err := SaveAs(filepath.Join(path+"x", "a.toml"), d.Job); return err },
		"a folder":     func() error { _, _, err := SaveAs(filepath.Dir(path), d.Job); return err },
		"under a file": func() error { _, _, err := SaveAs(filepath.Join(path, "a.toml"), d.Job); return err },
		"not to be read again": func() error {
			job := d.Job
			job.Floor.Width = -1
			_, _, err := d.Save(job)
			return err
		},
		"write-protected": func() error {
			require.NoError(t, os.Chmod(path, 0o440))
			defer func() { require.NoError(t, os.Chmod(path, 0o640)) }()
			_, _, err := d.Save(d.Job)
			return err
		},
	} {
		err := save()
		require.Error(t, err, name)
		assert.NotContains(t, err.Error(), "\n", name)
		assert.Equal(t, commented, content(t, path), name)
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, entries, 1, "nothing is left lying about")
}

func TestWhatCannotBeReadIsOneLine(t *testing.T) {
	dir := t.TempDir()
	_, err := Load(filepath.Join(dir, "none.toml"))
	require.ErrorIs(t, err, fs.ErrNotExist)
	assert.Equal(t, filepath.Join(dir, "none.toml")+": can't be read: there is no such file or folder", err.Error())
	_, err = Load(dir)
	require.ErrorContains(t, err, "it is a folder")
	_, err = Load("")
	require.Error(t, err)
}

func TestAJobOfContradictingReadingsIsLoadedWholeWithItsFault(t *testing.T) {
	d, err := Load("../testdata/cases/17-swapped-sides.toml")
	var faults FileErrors
	require.True(t, errors.As(err, &faults))
	assert.True(t, faults.WholeJob())
	assert.Equal(t, "TL-17", d.Job.Ref)
	assert.True(t, d.OnDisk())
}

func TestWriteFileReplacesFilesAndWritesToWhatIsNone(t *testing.T) {
	path := onDisk(t, "old and long")
	require.NoError(t, WriteFile(path, []byte("new")))
	assert.Equal(t, "new", content(t, path))
	require.NoError(t, WriteFile(os.DevNull, []byte("gone")))
	info, err := os.Stat(os.DevNull)
	require.NoError(t, err)
	assert.False(t, info.Mode().IsRegular())
	require.ErrorContains(t, WriteFile(filepath.Dir(path), nil), "folder")
}

// A file that can be no job, as it is larger than any, is neither read nor written over: what it holds could not be kept beside it.
func TestNothingIsSavedOverAFileThatCanBeNoJob(t *testing.T) {
	path := filepath.Join(t.TempDir(), "disk.img")
	f, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, f.Truncate(64<<20)) // without a block of its own
	require.NoError(t, f.Close())
	_, _, err = SaveAs(path, NewJob("TL-07"))
	require.Error(t, err)
	assert.Equal(t, path+": not written: it holds more than 4 MiB, so it is no job file: give the job another name", err.Error())
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.EqualValues(t, 64<<20, info.Size())
	_, err = os.Stat(path + ".before")
	assert.ErrorIs(t, err, fs.ErrNotExist)
}
