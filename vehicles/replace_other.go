//go:build !windows

package vehicles

import (
	"io/fs"
	"os"
	"path/filepath"

	"github.com/google/renameio/v2"
)

// replaceFile puts a new file in the place of path at once and has the disk hold it before it returns.
func replaceFile(path string, data []byte, mode fs.FileMode) error {
	dir := filepath.Dir(path)
	if err := renameio.WriteFile(path, data, mode, renameio.WithTempDir(dir)); err != nil {
		return err
	}
	// The new name is on disk once its folder is. Not every file system can be asked for that, and the file is
	// whole either way.
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync()
		_ = d.Close()
	}
	return nil
}
