package main

import (
	"encoding/json"
	"maps"
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

// tree has the texts of the files that edits are of, by their names.
type tree map[string]string

// treeOf is how those files are now.
func treeOf(t *testing.T, edits []edit) tree {
	now := tree{}
	for _, e := range edits {
		text, err := os.ReadFile(filepath.Join("..", "..", filepath.FromSlash(e.file)))
		require.NoError(t, err)
		now[e.file] = string(text)
	}
	return now
}

// without is the tree with edits taken back that are made in it: whoever makes the first change runs this test, too.
func (tr tree) without(edits []edit) tree {
	before := maps.Clone(tr)
	for _, e := range edits {
		before[e.file] = strings.Replace(before[e.file], e.is, e.was, 1)
	}
	return before
}

// with is the tree with edits made.
func (tr tree) with(t *testing.T, edits []edit) tree {
	after := maps.Clone(tr)
	for _, e := range edits {
		require.Equal(t, 1, strings.Count(after[e.file], e.was), "%s has it, once: %s", e.file, e.was)
		after[e.file] = strings.Replace(after[e.file], e.was, e.is, 1)
	}
	return after
}

// tested runs the tests of the readings with the tree's files in place of those that are there, and returns what they say.
func (tr tree) tested(t *testing.T) (said string, failed bool) {
	root, err := filepath.Abs(filepath.Join("..", ".."))
	require.NoError(t, err)
	dir, instead := t.TempDir(), map[string]string{}
	for name, text := range tr {
		file := filepath.Join(root, filepath.FromSlash(name))
		instead[file] = filepath.Join(dir, filepath.Base(file))
		require.NoError(t, os.WriteFile(instead[file], []byte(text), 0o600))
	}
	overlay, err := json.Marshal(map[string]any{"Replace": instead})
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "overlay.json"), overlay, 0o600))
	out, err := exec.Command("go", "test", "-vet=off", "-overlay", filepath.Join(dir, "overlay.json"), "../../geometry/survey").CombinedOutput()
	return string(out), err != nil
}

// Whoever makes the first change that DEVELOPERS shows sees what it says: the test fails for its reason, and passes with the rest. This test passes
// before, between and after the steps.
func TestTheFirstChangeIsAsItIsShown(t *testing.T) {
	notRaced(t)
	t.Parallel()
	edits := firstChange(t)
	require.Len(t, edits, 4)
	before := treeOf(t, edits).without(edits)
	for made := range len(edits) + 1 {
		require.Equal(t, before, before.with(t, edits[:made]).without(edits), "where %d edits are made already", made)
	}
	said, failed := before.with(t, edits[:1]).tested(t)
	assert.True(t, failed)
	assert.Contains(t, said, "6.52dm")
	assert.Contains(t, said, `the unit is not mm, cm, m, in or "`)
	said, failed = before.with(t, edits).tested(t)
	assert.False(t, failed, said)
}
