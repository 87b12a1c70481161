package desk

import (
	"os"
	"path/filepath"

	"bench.example/undermark/vehicles"
)

// WriteFile writes a small file of the program's own (settings, journal), all or nothing: after a power cut
// there is the old file or the new one. It makes the folder. The error is one line.
func WriteFile(path string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return vehicles.WriteFile(path, data)
}
