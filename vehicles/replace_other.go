//go:build !windows

package vehicles

import (
	"io/fs"
	"path/filepath"

	"github.com/google/renameio/v2"
)

// replaceFile puts a new file in the place of path at once and has the disk hold it before it returns. A file that is
// there keeps its mode, but not a private one: that is given the mode asked for. A link is replaced, not followed.
func replaceFile(path string, data []byte, mode fs.FileMode, private bool) error {
	dir := filepath.Dir(path)
	modes := []renameio.Option{renameio.WithPermissions(mode), renameio.WithExistingPermissions()}
	if private {
		modes = []renameio.Option{renameio.WithStaticPermissions(mode)}
	}
	f, err := renameio.NewPendingFile(path, append(modes, renameio.WithTempDir(dir))...)
	if err != nil {
		return err
	}
	defer f.Cleanup() // does nothing once it is in its place
	if _, err := f.Write(data); err != nil {
		return err
	}
	if err := f.CloseAtomicallyReplace(); err != nil {
		return err
	}
	syncFolder(dir)
	return nil
}
