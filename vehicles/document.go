package vehicles

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// Document is a job and the file it was read from or written to.
type Document struct {
	Path       string
	Job        Job
	KeepBefore bool   // the file says what Format would not, comments say: the first save keeps a copy of it
	Like       string // the file that a new one is to be as private as, "" for none

	base Base // what the file held when it was read or written
}

// SaveReport says what a save did beside writing the job.
type SaveReport struct {
	Before string // where what the file held before was kept, "" when there was nothing to keep
}

// ErrChangedOnDisk is in the error of a save that was not done because the file is no longer what was read. The
// ways on are SaveAs, which writes over it and keeps what was there, and Load, which takes up what is there now.
var ErrChangedOnDisk = errors.New("the file has changed on disk since it was read; nothing was written")

// Load reads a job file, with inspectors as ParseJob does. The error is of type FileErrors when the file could be read but is
// wrong, and the document beside it may still be whole: see FileErrors.WholeJob. It is fs.ErrNotExist, on one line, when
// there is no file.
func Load(path string, inspectors ...Inspector) (Document, error) {
	data, err := ReadFile(path)
	if err != nil {
		return Document{Path: path}, err
	}
	job, err := ParseJob(data, path, inspectors...)
	return Document{Path: path, Job: job}.holding(data), err
}

// OnDisk says whether the document has a file.
func (d Document) OnDisk() bool { return d.base.there }

// Base is what the document's file held when it was read or written.
func (d Document) Base() Base { return d.base }

// BasedOn is the document of a job that was begun when the file held something else: saving it asks first.
func (d Document) BasedOn(b Base) Document {
	d.base = b
	return d
}

// holding is the document with its file holding data.
func (d Document) holding(data []byte) Document {
	d.base = baseOf(data)
	d.KeepBefore = !bytes.Equal(data, d.Job.Format())
	return d
}

// Now returns what the document's file holds at this moment. It is no error when there is no file.
func (d Document) Now() (Base, error) {
	data, err := ReadFile(d.Path)
	if errors.Is(err, fs.ErrNotExist) {
		return Base{}, nil
	}
	if data == nil {
		data = []byte{} // an empty file is a file
	}
	return baseOf(data), err
}

// Save writes the job to the document's file, all of it or nothing, and returns the document as it is then. A file
// that has vanished is written anew. A job that Load would refuse for the same inspectors is not written.
func (d Document) Save(job Job, inspectors ...Inspector) (Document, SaveReport, error) {
	return d.save(job, false, inspectors)
}

// SaveAs writes the job to a file, over what is there; what is there is kept beside it. The inspectors are those of Save.
func SaveAs(path string, job Job, inspectors ...Inspector) (Document, SaveReport, error) {
	return Document{Path: path, KeepBefore: true}.save(job, true, inspectors)
}

func (d Document) save(job Job, over bool, inspectors []Inspector) (Document, SaveReport, error) {
	data, err := readsBack(job, d.Path, inspectors)
	if err != nil {
		return d, SaveReport{}, err
	}
	target, err := followLink(d.Path)
	if err != nil {
		return d, SaveReport{}, notWritten(d.Path, err)
	}
	unlock, err := lockSaves(target)
	if err != nil {
		return d, SaveReport{}, notWritten(d.Path, err)
	}
	defer unlock()
	there, mode, err := presentFile(target, d.Like)
	if err != nil {
		return d, SaveReport{}, notWritten(d.Path, err)
	}
	if there != nil && !over && baseOf(there) != d.base {
		return d, SaveReport{}, fmt.Errorf("%s: %w", oneLine(d.Path), ErrChangedOnDisk)
	}
	var report SaveReport
	if there != nil && d.KeepBefore && !bytes.Equal(there, data) {
		if report.Before, err = keepBefore(target, there, mode); err != nil {
			return d, SaveReport{}, notWritten(d.Path, fmt.Errorf("what it held before could not be kept: %w", err))
		}
	}
	if err := replaceFile(target, data, mode, false); err != nil {
		return d, report, notWritten(d.Path, err)
	}
	return Document{Path: d.Path, Job: job}.holding(data), report, nil
}

// WouldBeRefused is why a job with faults is not saved.
const WouldBeRefused = "it would be refused when it is read again"

// readsBack returns the job's file, or why it would not read back as the same job, whole and free of faults.
func readsBack(job Job, path string, inspectors []Inspector) ([]byte, error) {
	data := job.Format()
	again, err := ParseJob(data, path, inspectors...)
	var faults FileErrors
	switch {
	case errors.As(err, &faults):
		return nil, fmt.Errorf("%s: not saved, as %s: %s", oneLine(path), WouldBeRefused, faults[0].Text)
	case !bytes.Equal(again.Format(), data):
		return nil, fmt.Errorf("%s: not saved, as it would not be read again as the same job", oneLine(path))
	}
	return data, nil
}

// presentFile returns what a file holds and its mode, nil and the mode of a new one when there is none.
func presentFile(path, like string) ([]byte, fs.FileMode, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, modeLike(like), nil
	case err != nil:
		return nil, 0, err
	case !info.Mode().IsRegular():
		return nil, 0, errNoFile
	case info.Mode().Perm()&0o222 == 0:
		return nil, 0, errProtected
	case info.Size() > LargestFile:
		return nil, 0, errNoJob
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
		err := writeNew(name, data, mode|0o200)
		if errors.Is(err, fs.ErrExist) {
			if kept, err := ReadFile(name); err == nil && bytes.Equal(kept, data) {
				return name, nil
			}
			continue
		}
		if err != nil {
			return "", err
		}
		return name, nil
	}
}

// ReadFile reads a plain file, no further than a byte more than a job file can be. What is no plain file, a pipe that
// nobody may ever write to, is not waited for. The error is one line.
func ReadFile(path string) ([]byte, error) {
	f, err := os.OpenFile(path, os.O_RDONLY|syscall.O_NONBLOCK, 0)
	if info, fault := os.Stat(path); err != nil && fault == nil && info.Mode()&fs.ModeSocket != 0 {
		err = errNoFile // each system has another word for it, and none of them helps
	}
	if err != nil {
		return nil, notRead(path, err)
	}
	defer f.Close()
	switch info, err := f.Stat(); {
	case err != nil:
		return nil, notRead(path, err)
	case info.IsDir():
		return nil, notRead(path, errFolder)
	case !info.Mode().IsRegular():
		return nil, notRead(path, ErrPipe)
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
