package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// edit is a change that a document shows: the lines that stand in a file, and those that shall.
type edit struct{ file, was, is string }

// firstChange are the edits of DEVELOPERS' first change, in its order.
func firstChange(t *testing.T) (edits []edit) {
	text, err := os.ReadFile(filepath.Join("..", "..", "DEVELOPERS.md"))
	require.NoError(t, err)
	_, section, found := strings.Cut(string(text), "\n## A first change")
	require.True(t, found)
	section, _, _ = strings.Cut(section, "\n## ")
	block := regexp.MustCompile(`(?m)^ {7}(\S+\.go)\n((?: {7}[-+ ].*\n)+)`)
	for _, found := range block.FindAllStringSubmatch(section, -1) {
		e := edit{file: found[1]}
		for line := range strings.Lines(found[2]) {
			line = strings.TrimPrefix(line, "       ")
			if line[0] != '+' {
				e.was += line[1:]
			}
			if line[0] != '-' {
				e.is += line[1:]
			}
		}
		e.was, e.is = strings.TrimSuffix(e.was, "\n"), strings.TrimSuffix(e.is, "\n")
		edits = append(edits, e)
	}
	return edits
}

// testedWith runs the tests of the readings with edits made in memory, and returns what they say.
func testedWith(t *testing.T, edits []edit) (said string, failed bool) {
	root, err := filepath.Abs(filepath.Join("..", ".."))
	require.NoError(t, err)
	dir, texts, instead := t.TempDir(), map[string]string{}, map[string]string{}
	for _, e := range edits {
		file := filepath.Join(root, filepath.FromSlash(e.file))
		if texts[file] == "" {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			texts[file] = string(text)
		}
		require.Equal(t, 1, strings.Count(texts[file], e.was), "%s has it, once: %s", e.file, e.was)
		texts[file] = strings.Replace(texts[file], e.was, e.is, 1)
		instead[file] = filepath.Join(dir, filepath.Base(file))
		require.NoError(t, os.WriteFile(instead[file], []byte(texts[file]), 0o600))
	}
	overlay, err := json.Marshal(map[string]any{"Replace": instead})
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "overlay.json"), overlay, 0o600))
	out, err := exec.Command("go", "test", "-vet=off", "-overlay", filepath.Join(dir, "overlay.json"), "../../geometry/survey").CombinedOutput()
	return string(out), err != nil
}

// Whoever makes the first change that DEVELOPERS shows sees what it says: the test fails for its reason, and passes with the rest.
func TestTheFirstChangeIsAsItIsShown(t *testing.T) {
	notRaced(t)
	t.Parallel()
	edits := firstChange(t)
	require.Len(t, edits, 4)
	said, failed := testedWith(t, edits[:1])
	assert.True(t, failed)
	assert.Contains(t, said, "6.52dm")
	assert.Contains(t, said, `the unit is not mm, cm, m, in or "`)
	said, failed = testedWith(t, edits)
	assert.False(t, failed, said)
}
