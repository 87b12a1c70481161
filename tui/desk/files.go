package desk

import (
	"path/filepath"

	"bench.example/undermark/vehicles"
)

// WriteFile writes a small file that a person may have a hand in (settings), all or nothing: after a power cut there is
// the old file or the new one. It makes the folder. The error is one line.
func WriteFile(path string, data []byte) error {
	if err := vehicles.MakeFolder(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return vehicles.WriteFile(path, data)
}

// WriteState is WriteFile for what the program keeps for itself: nobody else may read it, and a link is not followed.
func WriteState(path string, data []byte) error {
	if err := vehicles.MakeFolder(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	return vehicles.WriteOwn(path, data, 0o600)
}
