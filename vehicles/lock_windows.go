package vehicles

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/gofrs/flock"
)

// savesLock is a file among the user's own temporary ones, as a folder can't be locked here.
func savesLock(target string) (*flock.Flock, error) {
	dir, err := filepath.Abs(filepath.Dir(target))
	if err != nil {
		return nil, err
	}
	name := fmt.Sprintf("undermark-%x.lock", sha256.Sum256([]byte(strings.ToLower(dir))))
	return flock.New(filepath.Join(os.TempDir(), name)), nil
}
