package vehicles

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"syscall"
)

var (
	errNoName    = errors.New("it has no name: give it one")
	errFolder    = errors.New("it is a folder, not a file")
	errNoFile    = errors.New("it is no plain file")
	errUnread    = errors.New("nobody reads from it")
	errBusy      = errors.New("somebody else is saving in that folder right now: try again")
	errProtected = errors.New("it is write-protected: take the protection off, or save under another name")
	errNoJob     = fmt.Errorf("it holds more than %d MiB, so it is no job file: give the job another name", LargestFile>>20)
)

// ErrPipe is why a job is not read from a pipe or a device: nobody knows whether anything will ever come.
var ErrPipe = errors.New("it is no plain file: copy what comes from it into a file first")

// fileFault is why a file could not be read or written, on one line.
type fileFault struct {
	text string
	err  error
}

func (f fileFault) Error() string { return f.text }
func (f fileFault) Unwrap() error { return f.err }

func notRead(path string, err error) error {
	return fileFault{fmt.Sprintf("%s: can't be read: %s", oneLine(path), because(err)), err}
}

// NotWritten is why a file could not be written, as one line that says what to do.
func NotWritten(path string, err error) error { return notWritten(path, err) }

func notRemoved(path string, err error) error {
	return fileFault{fmt.Sprintf("%s: can't be removed: %s", oneLine(path), because(err)), err}
}

func notWritten(path string, err error) error {
	return fileFault{fmt.Sprintf("%s: not written: %s", oneLine(path), because(err)), err}
}

// because says why a file could not be read or written and what to do.
func because(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file or folder"
	case errors.Is(err, fs.ErrPermission):
		return "that is not permitted: look at who owns the file and its folder"
	case errors.Is(err, syscall.ENOSPC):
		return "no space is left there: make room, or save elsewhere"
	case errors.Is(err, syscall.EROFS):
		return "the disk can only be read: save elsewhere"
	}
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		err = path.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return oneLine(err.Error())
}
