package desk

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Whatever a settings file holds, each thing wrong with it has a line that says where, and the settings that hold are written and read
// back as they are.
func FuzzSettings(f *testing.F) {
	for _, text := range []string{
		"", "units = \"in\"\nsides = \"nearside is left\"\nlook = \"night\"\nfigures = \"big\"\nplan = \"cells\"\npaper = \"letter\"\n",
		"background = \"light\"\n", "look = 3\n", "units = \"\"\n", "look = \"\\u001b[31m\"\n", "[units]\n", "other = 1\n", "units = \"mm\"\nunits = \"in\"\n", "\xff\xfe",
	} {
		f.Add([]byte(text))
	}
	dir := f.TempDir()
	path := filepath.Join(dir, "settings.toml")
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 20000 {
			return
		}
		require.NoError(t, os.WriteFile(path, data, 0o600))
		settings, err := LoadSettings(path)
		if err != nil {
			for line := range strings.SplitSeq(err.Error(), "\n") {
				require.True(t, strings.HasPrefix(line, path+":"), "%q", line)
			}
		}
		require.NoError(t, settings.Save(path))
		again, err := LoadSettings(path)
		require.NoError(t, err)
		require.Equal(t, settings, again)
		left, err := os.ReadDir(dir)
		require.NoError(t, err)
		require.Len(t, left, 1, "the settings alone")
	})
}
