package vehicles

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is there already, a file, a folder or a link wherever it leads, is neither written over nor written through.
func TestANewFileIsWrittenOnlyWhereThereIsNone(t *testing.T) {
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	require.NoError(t, WriteNew(in("new"), []byte("work")))
	info, err := os.Stat(in("new"))
	require.NoError(t, err)
	if runtime.GOOS != "windows" {
		assert.Equal(t, os.FileMode(0o600), info.Mode().Perm(), "nobody else may read it")
	}
	require.NoError(t, os.Mkdir(in("folder"), 0o700))
	require.NoError(t, os.Symlink(in("new"), in("link")))
	require.NoError(t, os.Symlink(in("nowhere"), in("loose link")))
	for _, name := range []string{"new", "folder", "link", "loose link"} {
		err := WriteNew(in(name), []byte("other"))
		require.Error(t, err, name)
		assert.NotContains(t, err.Error(), "\n", "one line")
	}
	held, err := os.ReadFile(in("new"))
	require.NoError(t, err)
	assert.Equal(t, "work", string(held))
	assert.NoFileExists(t, in("nowhere"))
	require.Error(t, WriteNew(filepath.Join(dir, "no folder", "new"), nil))
}

// A file of the program's own is replaced, with its mode; it is never written through a link, or into what is no file.
func TestTheProgramsOwnFilesArePlainFiles(t *testing.T) {
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	require.NoError(t, os.WriteFile(in("own"), []byte("old"), 0o644))
	require.NoError(t, WriteOwn(in("own"), []byte("new"), 0o600))
	info, err := os.Stat(in("own"))
	require.NoError(t, err)
	if runtime.GOOS != "windows" {
		assert.Equal(t, os.FileMode(0o600), info.Mode().Perm(), "what was open to others is no longer")
	}
	require.NoError(t, os.Mkdir(in("folder"), 0o700))
	require.NoError(t, os.Symlink(in("own"), in("link")))
	for name, plain := range map[string]bool{"own": true, "nothing": true, "folder": false, "link": false} {
		assert.Equal(t, plain, PlainOrNone(in(name)) == nil, name)
		assert.Equal(t, plain, WriteOwn(in(name), []byte("again"), 0o600) == nil, name)
	}
	held, err := os.ReadFile(in("own"))
	require.NoError(t, err)
	assert.Equal(t, "again", string(held))
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	for _, e := range left {
		assert.False(t, strings.HasPrefix(e.Name(), "."), "nothing half written is left: %s", e.Name())
	}
}
