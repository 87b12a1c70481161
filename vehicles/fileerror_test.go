package vehicles

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
)

// A file of something else has thousands of faults: the first are told, and how many more there are.
func TestTwentyFaultsAreToldAndHowManyMore(t *testing.T) {
	for _, n := range []int{1, 20, 21, 5000} {
		text := head
		for i := range n {
			text += fmt.Sprintf("%q = 1\n", fmt.Sprintf("key %d", i))
		}
		_, err := ParseJob([]byte(text), "a.toml")
		var faults FileErrors
		require.ErrorAs(t, err, &faults)
		assert.Len(t, faults, n, "the program has them all")
		lines := strings.Split(err.Error(), "\n")
		assert.Len(t, lines, min(n, 21))
		for i, line := range lines[:min(n, 20)] {
			assert.True(t, strings.HasPrefix(line, fmt.Sprintf("a.toml:%d: ", 10+i)), line)
		}
		if n > 20 {
			assert.Equal(t, fmt.Sprintf("a.toml: and %s: mend these first, then read it again", survey.Counted(n-20, "more fault")), lines[20])
		}
	}
}

func TestAnErrorLineIsHarmless(t *testing.T) {
	_, err := ParseJob([]byte(head+"\"\u202e\u200b\" = 1\n"), "a\x1b[31m\n\u202e.toml")
	assert.Regexp(t, `^a␛\[31m␊▯\.toml:10: [^\x1b\n\x{202e}\x{200b}]+$`, err.Error())
	_, err = Load(filepath.Join(t.TempDir(), "a\x1b[31m\n\u202e.toml"))
	assert.Regexp(t, `^[^\n]+a␛\[31m␊▯\.toml: [^\x1b\n\x{202e}]+$`, err.Error())
}

// Whatever reads a file of TOML gives the line of what it finds wrong.
func TestFaultsGetTheLinesOfTheirKeys(t *testing.T) {
	text := []byte("units = \"mm\"\n\n[[rule]]\nid = \"a\"\n[[rule]]\nid = \"b\"\n")
	err := FaultsIn(text, "f.toml", []Fault{{Key: "rule[1].id", Text: "second"}, {Key: "units", Text: "first"}, {Key: "rule[0].value", Text: "third"}})
	require.EqualError(t, err, "f.toml:1: first\nf.toml:3: third\nf.toml:6: second")
	assert.NoError(t, FaultsIn(text, "f.toml", nil))
}

func TestAFileOfTOMLIsReadOrSaysWhere(t *testing.T) {
	path := filepath.Join(t.TempDir(), "f.toml")
	require.NoError(t, os.WriteFile(path, []byte("units = \"mm\"\n"), 0o644))
	data, values, err := ReadTOML(path)
	require.NoError(t, err)
	assert.Equal(t, map[string]any{"units": "mm"}, values)
	assert.Equal(t, "units = \"mm\"\n", string(data))
	require.NoError(t, os.WriteFile(path, []byte("units = \"mm\"\nsides =\n"), 0o644))
	_, _, err = ReadTOML(path)
	assert.Regexp(t, `f\.toml:2: not TOML: [^\n]+$`, err)
	_, _, err = ReadTOML(path + ".not")
	assert.ErrorIs(t, err, os.ErrNotExist)
	assert.NotContains(t, err.Error(), "\n")
}
