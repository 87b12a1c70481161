package vehicles

import (
	"errors"
	"io/fs"
	"os"
)

// WriteFile writes a file, all of it or nothing, with the mode it had or that of any new file; a link stays a link.
// What is no plain file, a terminal or a pipe, is written to as it stands. The error is one line.
func WriteFile(path string, data []byte) error {
	target, err := followLink(path)
	if err != nil {
		return notWritten(path, err)
	}
	info, err := os.Stat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		err = replaceFile(target, data, 0o644)
	case err != nil:
	case info.IsDir():
		err = errFolder
	case info.Mode().IsRegular():
		err = replaceFile(target, data, info.Mode().Perm())
	default:
		err = os.WriteFile(target, data, 0)
	}
	if err != nil {
		return notWritten(path, err)
	}
	return nil
}
