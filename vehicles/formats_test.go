package vehicles

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// keysOf puts the paths of all keys of a file's values into a set, lists without their numbers. Beside the program's own keys those that a person chooses are one.
func keysOf(value any, path string, into map[string]bool) {
	switch v := value.(type) {
	case map[string]any:
		for key, below := range v {
			at := strings.TrimPrefix(path+"."+key, ".")
			if slices.Contains([]string{"extra", "rules", "looked", "looked_runs", "looked_openings"}, path) {
				at = path + ".*"
			}
			into[at] = true
			if path != "extra" {
				keysOf(below, at, into)
			}
		}
	case []map[string]any:
		for _, below := range v {
			keysOf(below, path, into)
		}
	case []any:
		for _, below := range v {
			keysOf(below, path, into)
		}
	}
}

// Every key that the program writes stands in one of the files that all later versions have to read (testdata/formats): whoever adds one adds a file.
func TestEveryKeyThatIsWrittenIsPromised(t *testing.T) {
	const jobs = 400
	promised, written := map[string]bool{}, map[string]bool{}
	files, err := filepath.Glob(filepath.Join("..", "testdata", "formats", "*.toml"))
	require.NoError(t, err)
	texts := make([]string, 0, len(files)+jobs)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		texts = append(texts, string(text))
	}
	for seed := range jobs {
		job := rapid.Custom(anyJob).Example(seed)
		texts = append(texts, string(job.Format()))
	}
	for i, text := range texts {
		var values map[string]any
		_, err := toml.Decode(text, &values)
		require.NoError(t, err)
		keysOf(values, "", map[bool]map[string]bool{true: promised, false: written}[i < len(files)])
	}
	require.Greater(t, len(written), 200)
	maps.DeleteFunc(written, func(key string, _ bool) bool { return promised[key] })
	assert.Empty(t, slices.Sorted(maps.Keys(written)))
}
