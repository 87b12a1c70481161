package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

func TestNewJobs(t *testing.T) {
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	load := func(name string) vehicles.Job {
		document, err := vehicles.Load(in(name))
		require.NoError(t, err)
		return document.Job
	}
	code, out, complaint := call("", "new", in("TL-10.toml"))
	assert.Zero(t, code, complaint)
	assert.Contains(t, out, "TL-10.toml: a new job")
	assert.Equal(t, "TL-10", load("TL-10.toml").Ref)
	assert.Empty(t, load("TL-10.toml").Obstructions)

	code, out, complaint = call("", "new", "--van", "short-van", in("TL-11.toml"))
	assert.Zero(t, code, complaint)
	assert.Contains(t, out, "not confirmed on this van")
	van := load("TL-11.toml")
	assert.Equal(t, "TL-11", van.Ref)
	assert.NotEmpty(t, van.Obstructions)

	code, _, complaint = call("", "new", "--from", filepath.Join(cases, "24-everything.toml"), in("TL-12.toml"))
	assert.Zero(t, code, complaint)
	carried := load("TL-12.toml")
	assert.Equal(t, "TL-12", carried.Ref)
	assert.Nil(t, carried.Cut)
	assert.Equal(t, len(carried.Obstructions)+len(carried.Openings), unconfirmed(carried))

	placed := carried.WithCut(vehicles.Cut{At: [2]float64{1210, 240}, Across: 127})
	require.NoError(t, os.WriteFile(in("TL-13.toml"), placed.Format(), 0o644))
	code, _, _ = call("", "check", in("TL-13.toml"))
	assert.NotZero(t, code, "nothing is clear before it is confirmed")
}

func TestNewWritesOverNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "TL-10.toml")
	require.NoError(t, os.WriteFile(path, []byte("mine\n"), 0o644))
	code, out, complaint := call("", "new", path)
	assert.Equal(t, exitFailed, code)
	assert.Empty(t, out)
	assert.Contains(t, complaint, path)
	assert.Contains(t, complaint, "left as it is")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "mine\n", string(text))
}

func TestNewRefusesWhatItCantStartFrom(t *testing.T) {
	path := filepath.Join(t.TempDir(), "TL-10.toml")
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"--van", "spaceship"}, exitFailed, `no van "spaceship" in the library; there are: crew-van, high-roof, long-van`},
		{[]string{"--from", "nowhere.toml"}, exitFailed, "nowhere.toml"},
		{[]string{"--van", "minibus", "--from", "x.toml"}, exitUsage, "--from and --van both"},
		{[]string{"twice.toml"}, exitUsage, "one job file"},
	} {
		code, _, complaint := call("", append(append([]string{"new"}, c.args...), path)...)
		assert.Equal(t, c.code, code, c.args)
		assert.Contains(t, complaint, c.says)
		assert.NoFileExists(t, path)
	}
}

// Reading the library takes longer than all the rest of a start, so only help and manual do, whichever way they are asked.
func TestHelpAndManualTellTheLibrary(t *testing.T) {
	for _, args := range [][]string{{"new", "--help"}, {"help", "new"}, {"man"}} {
		code, out, complaint := call("", args...)
		require.Zero(t, code, complaint)
		for _, van := range vehicles.Library() {
			told := strings.ReplaceAll(out, `\-`, "-") // as roff has it
			assert.Regexp(t, `(?m)^( +|\.B )`+van.Name+`( +|\n)`+van.Title+`$`, told, "%v", args)
		}
	}
	c, _, err := newRoot(streams{}).Find([]string{"new"})
	require.NoError(t, err)
	for _, van := range vehicles.Library() {
		assert.NotContains(t, c.Long+c.Example, van.Name, "nobody has asked")
	}
}

// A folder is called one, whatever a job in it would be called.
func TestNoNewJobIsWrittenOverAFolder(t *testing.T) {
	for _, folder := range []string{".", "..", t.TempDir()} {
		code, out, complaint := call("", "new", folder)
		assert.Equal(t, exitFailed, code)
		assert.Empty(t, out)
		assert.Equal(t, folder+": it is a folder: say which job file to write in it\n", complaint)
	}
}
