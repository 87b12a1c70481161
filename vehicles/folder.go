package vehicles

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// A name is on the disk once its folder is (fsync(2)): a file that was synced can still be without a name after a power cut,
// and one that was taken away be there again.

// MakeFolder makes a folder and those above it that are not there, and has the disk hold them. The error is one line.
func MakeFolder(dir string, mode fs.FileMode) error {
	var made []string
	for d := filepath.Clean(dir); ; d = filepath.Dir(d) {
		if _, err := os.Lstat(d); err == nil || d == filepath.Dir(d) {
			break
		}
		made = append(made, d)
	}
	if err := os.MkdirAll(dir, mode); err != nil {
		return notWritten(dir, err)
	}
	for _, d := range made {
		syncFolder(filepath.Dir(d))
	}
	return nil
}

// Remove takes a file away and has the disk forget it. It is no error when there is none. The error is one line.
func Remove(path string) error {
	err := os.Remove(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return notRemoved(path, err)
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// syncFolder has the disk hold the names in a folder. Not every file system can be asked for that, and a file is whole
// either way.
func syncFolder(dir string) {
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync()
		_ = d.Close()
	}
}
