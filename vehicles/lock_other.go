//go:build !windows

package vehicles

import (
	"os"
	"path/filepath"

	"github.com/gofrs/flock"
)

// savesLock is the folder itself: it is there before the file is, and a lock on it leaves nothing behind.
func savesLock(target string) (*flock.Flock, error) {
	return flock.New(filepath.Dir(target), flock.SetFlag(os.O_RDONLY)), nil
}
