package vehicles

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// WriteFile writes a file, all of it or nothing, with the mode it had or that of any new file; a link stays a link.
// What is no plain file, a terminal or a pipe that somebody reads, is written to as it stands. The error is one line.
func WriteFile(path string, data []byte) error { return WriteLike("", path, data) }

// WriteLike is WriteFile for what is made of another file: a new one is as private as that.
func WriteLike(other, path string, data []byte) error {
	target, err := followLink(path)
	if err != nil {
		return notWritten(path, err)
	}
	info, err := os.Stat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		err = replaceFile(target, data, modeLike(other), false)
	case err != nil:
	case info.IsDir():
		err = errFolder
	case info.Mode().IsRegular():
		err = replaceFile(target, data, info.Mode().Perm(), false)
	default:
		err = writeInto(target, data)
	}
	if err != nil {
		return notWritten(path, err)
	}
	return nil
}

// modeLike is the mode of a new file that is made of another: who may not read the one may not read the other. "" is none, or one that has no file.
func modeLike(other string) fs.FileMode {
	const usual, mine = 0o644, 0o600
	if info, err := os.Stat(other); err == nil && other != "" {
		return info.Mode().Perm()&0o666 | mine
	}
	return usual
}

// writeInto writes to what is no plain file. A pipe that nobody reads is not waited for.
func writeInto(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|syscall.O_NONBLOCK, 0)
	if errors.Is(err, syscall.ENXIO) {
		return errUnread
	}
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}

// WriteOwn writes a file of the program's own, all of it or nothing, with just that mode. It never follows a link and
// writes into nothing that is no plain file: who put one there did not mean well. The error is one line.
func WriteOwn(path string, data []byte, mode fs.FileMode) error {
	err := PlainOrNone(path)
	if err == nil {
		err = replaceFile(path, data, mode, true)
	}
	if err != nil {
		return notWritten(path, err)
	}
	return nil
}

// WriteNew writes a file that nobody else may read, where there is none yet; a link is not followed. The error is one line.
func WriteNew(path string, data []byte) error {
	if err := writeNew(path, data, 0o600); err != nil {
		return notWritten(path, err)
	}
	return nil
}

// writeNew writes a file where there is none, whole or not at all.
func writeNew(path string, data []byte, mode fs.FileMode) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		return errors.Join(err, os.Remove(path))
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// PlainOrNone returns an error when there is something at path that is no plain file, a link among them.
func PlainOrNone(path string) error {
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return errNoFile
	}
	return nil
}
