//go:build !windows

package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// What is made of a job that nobody else may read is as private, whichever command makes it.
func TestAnAnswerIsAsPrivateAsItsJob(t *testing.T) {
	job := vehicles.Demo()
	dir := t.TempDir()
	file := filepath.Join(dir, "van.toml")
	require.NoError(t, os.WriteFile(file, job.Format(), 0o600))
	for mode, private := range map[os.FileMode]os.FileMode{0o600: 0o600, 0o640: 0o640, 0o644: 0o644} {
		require.NoError(t, os.Chmod(file, mode))
		for name, line := range map[string][]string{
			"check.txt": {"check", file}, "marks.json": {"marks", "--json", file}, "cut.csv": {"cutlist", "--csv", file}, "work.txt": {"work", file},
			"parts.txt": {"parts", file}, "sizing.txt": {"sizing", file}, "suggest.txt": {"suggest", file}, "sheet.pdf": {"sheet", file},
			"template.pdf": {"template", file}, "plan.svg": {"plan", file},
		} {
			out := filepath.Join(dir, name)
			require.NoError(t, os.RemoveAll(out))
			_, _, complaint := call("", append(line, "-o", out)...)
			info, err := os.Stat(out)
			require.NoError(t, err, "%s: %s", name, complaint)
			assert.Equal(t, private, info.Mode().Perm(), name)
		}
	}
}
