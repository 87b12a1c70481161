package vehicles

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Document is a job and the file it was read from or written to.
type Document struct {
	Path       string
	Job        Job
	KeepBefore bool // the file says what Format would not, comments say: the first save keeps a copy of it

	onDisk bool // the file was there; sum is then of what it held
	sum    [sha256.Size]byte
}

// SaveReport says what a save did beside writing the job.
type SaveReport struct {
	Before string // where what the file held before was kept, "" when there was nothing to keep
}

// ErrChangedOnDisk is in the error of a save that was not done because the file is no longer what was read. The
// ways on are SaveAs, which writes over it and keeps what was there, and Load, which takes up what is there now.
var ErrChangedOnDisk = errors.New("the file has changed on disk since it was read; nothing was written")

// Load reads a job file, with checks as ParseJob does. The error is of type FileErrors when the file could be read but is wrong, and the document
// beside it may still be whole: see FileErrors.WholeJob. It is fs.ErrNotExist, on one line, when there is no file.
func Load(path string, checks ...Check) (Document, error) {
	data, err := readFile(path)
	if err != nil {
		return Document{Path: path}, err
	}
	job, err := ParseJob(data, path, checks...)
	return Document{Path: path, Job: job}.holding(data), err
}

// OnDisk says whether the document has a file.
func (d Document) OnDisk() bool { return d.onDisk }

// holding is the document with its file holding data.
func (d Document) holding(data []byte) Document {
	d.onDisk, d.sum = true, sha256.Sum256(data)
	d.KeepBefore = !bytes.Equal(data, d.Job.Format())
	return d
}

// Save writes the job to the document's file, all of it or nothing, and returns the document as it is then. A file
// that has vanished is written anew.
func (d Document) Save(job Job) (Document, SaveReport, error) { return d.save(job, false) }

// SaveAs writes the job to a file, over what is there; what is there is kept beside it.
func SaveAs(path string, job Job) (Document, SaveReport, error) {
	return Document{Path: path, KeepBefore: true}.save(job, true)
}

func (d Document) save(job Job, over bool) (Document, SaveReport, error) {
	data, err := readsBack(job, d.Path)
	if err != nil {
		return d, SaveReport{}, err
	}
	target, err := followLink(d.Path)
	if err != nil {
		return d, SaveReport{}, notWritten(d.Path, err)
	}
	there, mode, err := presentFile(target)
	if err != nil {
		return d, SaveReport{}, notWritten(d.Path, err)
	}
	if there != nil && !over && (!d.onDisk || sha256.Sum256(there) != d.sum) {
		return d, SaveReport{}, fmt.Errorf("%s: %w", oneLine(d.Path), ErrChangedOnDisk)
	}
	var report SaveReport
	if there != nil && d.KeepBefore && !bytes.Equal(there, data) {
		if report.Before, err = keepBefore(target, there, mode); err != nil {
			return d, SaveReport{}, notWritten(d.Path, fmt.Errorf("what it held before could not be kept: %w", err))
		}
	}
	if err := replaceFile(target, data, mode); err != nil {
		return d, report, notWritten(d.Path, err)
	}
	return Document{Path: d.Path, Job: job}.holding(data), report, nil
}

// readsBack returns the job's file, or why it would not read back as the same job.
func readsBack(job Job, path string) ([]byte, error) {
	data := job.Format()
	again, faults := parse(data, path)
	switch {
	case len(faults) > 0:
		return nil, fmt.Errorf("%s: not saved, as it could not be read again: %s", oneLine(path), faults[0].Text)
	case !bytes.Equal(again.Format(), data):
		return nil, fmt.Errorf("%s: not saved, as it would not be read again as the same job", oneLine(path))
	}
	return data, nil
}

// presentFile returns what a file holds and its mode, nil when there is none.
func presentFile(path string) ([]byte, fs.FileMode, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, 0o644, nil
	case err != nil:
		return nil, 0, err
	case !info.Mode().IsRegular():
		return nil, 0, errNoFile
	case info.Mode().Perm()&0o222 == 0:
		return nil, 0, errProtected
	}
	data, err := os.ReadFile(path)
	if data == nil {
		data = []byte{} // an empty file is a file
	}
	return data, info.Mode().Perm(), err
}

// keepBefore writes what a file held beside it, as NAME.before, or as NAME.before-2 and on when that is taken by
// something else. Nothing is ever written over.
func keepBefore(path string, data []byte, mode fs.FileMode) (string, error) {
	for n := 1; ; n++ {
		name := path + ".before"
		if n > 1 {
			name = fmt.Sprintf("%s-%d", name, n)
		}
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode|0o200)
		if errors.Is(err, fs.ErrExist) {
			if kept, err := os.ReadFile(name); err == nil && bytes.Equal(kept, data) {
				return name, nil
			}
			continue
		}
		if err != nil {
			return "", err
		}
		_, err = f.Write(data)
		if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
			return "", errors.Join(err, os.Remove(name))
		}
		return name, nil
	}
}

// readFile reads a file that should be a job file, no further than a job file can be.
func readFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, notRead(path, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, notRead(path, errFolder)
	}
	data, err := io.ReadAll(io.LimitReader(f, LargestFile+1))
	if err != nil {
		return nil, notRead(path, err)
	}
	return data, nil
}

// followLink returns the file behind a path's links; a link to a file that is not there leads to where it would be.
func followLink(path string) (string, error) {
	if path == "" {
		return "", errNoName
	}
	real, err := filepath.EvalSymlinks(path)
	if !errors.Is(err, fs.ErrNotExist) {
		return real, err
	}
	to, err := os.Readlink(path)
	switch {
	case err != nil:
		return path, nil
	case filepath.IsAbs(to):
		return to, nil
	}
	return filepath.Join(filepath.Dir(path), to), nil
}
