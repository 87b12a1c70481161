package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// demoOpened starts on the sample in a file.
func demoOpened(t *testing.T) (*bench, Options) {
	o := options(t)
	require.NoError(t, os.WriteFile(o.Path, vehicles.Demo().Format(), 0o644))
	return started(t, o), o
}

func held(t *testing.T, path string) string {
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

// Each paper lies beside the job's file under a name of its own, whole, and it is said where.
func TestPapersArePutBesideTheJob(t *testing.T) {
	b, o := demoOpened(t)
	for ask, ending := range map[desk.Ask]string{desk.PrintSheet: "sheet", desk.PrintTemplate: "template", desk.PrintCustomer: "customer"} {
		b.do(b.ask(ask))
		path := strings.TrimSuffix(o.Path, ".toml") + "-" + ending + ".pdf"
		assert.True(t, vector.Sealed([]byte(held(t, path))), "it is whole")
		assert.True(t, b.shows(" is in "), ending)
		assert.Empty(t, b.overlays)
	}
	assert.False(t, b.desk.State.Dirty, "nothing of the job has changed")
}

// What is printed is the job on the desk, saved or not; a paper that nobody has touched is printed anew unasked, on the paper of the settings.
func TestAPaperIsPrintedAnew(t *testing.T) {
	b, o := demoOpened(t)
	path := strings.TrimSuffix(o.Path, ".toml") + "-sheet.pdf"
	b.do(b.ask(desk.PrintSheet))
	first := held(t, path)
	job := b.desk.State.Job
	job.Notes = "key under the seat"
	b.do(b.apply(desk.Change{Job: &job}))
	b.do(b.ask(desk.PrintSheet))
	second := held(t, path)
	assert.NotEqual(t, first, second)
	assert.True(t, b.desk.State.Dirty)
	set := b.desk.State.Settings
	set.Letter = true
	b.do(b.setSettings(set))
	b.do(b.ask(desk.PrintSheet))
	assert.Contains(t, held(t, path), "/MediaBox [0 0 612.00 792.00]")
	assert.Contains(t, second, "/MediaBox [0 0 595.28 841.89]")
}

// A file that somebody else wrote, or wrote on, is left alone until it is said that it may go.
func TestNoPaperIsPutOverAFileOfOthers(t *testing.T) {
	b, o := demoOpened(t)
	path := strings.TrimSuffix(o.Path, ".toml") + "-sheet.pdf"
	b.do(b.ask(desk.PrintSheet))
	touched := held(t, path) + "% signed\n"
	for _, others := range []string{"mine", touched, ""} {
		require.NoError(t, os.WriteFile(path, []byte(others), 0o644))
		b.do(b.ask(desk.PrintSheet))
		assert.True(t, b.shows("is there already."))
		b.press("esc")
		assert.Equal(t, others, held(t, path))
	}
	b.do(b.ask(desk.PrintSheet))
	b.press("1")
	assert.True(t, vector.Sealed([]byte(held(t, path))))
	require.NoError(t, os.WriteFile(path, []byte("mine"), 0o644))
	require.NoError(t, os.Chmod(o.Path, 0o600))
	b.do(b.ask(desk.PrintSheet))
	require.NoError(t, os.Remove(path))
	b.press("1")
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm(), "what was in the way went meanwhile: the paper is as private as its job")
	require.NoError(t, os.Remove(path))
	require.NoError(t, os.Symlink(filepath.Join(t.TempDir(), "elsewhere"), path))
	b.do(b.ask(desk.PrintSheet))
	assert.True(t, b.shows("is there already."), "a link is not followed unasked")
}

// What can't be printed says why, and what to do.
func TestWhyThereIsNoPaper(t *testing.T) {
	b, _ := demoOpened(t)
	job := b.desk.State.Job
	job.Cut = nil
	b.do(b.apply(desk.Change{Job: &job}))
	b.do(b.ask(desk.PrintTemplate))
	assert.True(t, b.shows("No template: the cut has no place yet"))

	o := options(t)
	o.Path = ""
	b = started(t, o)
	b.do(b.ask(desk.PrintSheet))
	assert.True(t, b.shows("Save the job first"))

	b, o = demoOpened(t)
	require.NoError(t, os.Chmod(filepath.Dir(o.Path), 0o555))
	t.Cleanup(func() { _ = os.Chmod(filepath.Dir(o.Path), 0o755) })
	if os.Geteuid() != 0 { // nothing is closed to root
		b.do(b.ask(desk.PrintSheet))
		assert.True(t, b.shows("No sheet: "))
	}
}
