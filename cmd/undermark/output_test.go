package main

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/adrg/xdg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// No command writes over one of its inputs, under whatever name it is given.
func TestAnAnswerIsNotWrittenOverWhatIsRead(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", filepath.Join(dir, "config"))
	xdg.Reload()
	t.Cleanup(xdg.Reload)
	job, other := filepath.Join(dir, "job.toml"), filepath.Join(dir, "other.toml")
	jobText := vehicles.Demo().Format()
	require.NoError(t, os.WriteFile(job, jobText, 0o600))
	require.NoError(t, os.WriteFile(other, jobText, 0o600))
	book := rules.WorkshopPath()
	require.NoError(t, os.MkdirAll(filepath.Dir(book), 0o700))
	bookText := "format = 1\n[[rule]]\nid = \"exhaust.length\"\nvalue = 1500\n"
	named := filepath.Join(dir, "book.toml")
	for _, file := range []string{book, named} {
		require.NoError(t, os.WriteFile(file, []byte(bookText), 0o600))
	}
	names := []string{job, filepath.Join(dir, ".", "config", "..", "job.toml")}
	if runtime.GOOS != "windows" {
		link, hard := filepath.Join(dir, "link.toml"), filepath.Join(dir, "hard.toml")
		require.NoError(t, os.Symlink(job, link))
		require.NoError(t, os.Link(job, hard))
		names = append(names, link, hard)
	}
	refused := func(args ...string) {
		t.Helper()
		code, out, complaint := call("", args...)
		assert.Equal(t, exitUsage, code, args)
		assert.Empty(t, out, args)
		assert.Equal(t, 1, strings.Count(complaint, "\n"), complaint)
		assert.Contains(t, complaint, "name another file with -o", args)
	}
	for _, command := range []string{"check", "marks", "suggest", "rules"} {
		for _, name := range names {
			refused(command, job, "-o", name)
			refused(command, name, "--json", "-o", job)
		}
		refused(command, job, "-o", book)
		refused(command, job, "--book", named, "-o", named)
	}
	refused("check", other, job, "-o", job)
	for _, command := range []string{"check", "marks", "suggest", "rules"} {
		in, err := os.Open(job)
		require.NoError(t, err)
		var out, complaint strings.Builder
		assert.Equal(t, exitUsage, run([]string{command, "-", "-o", job}, streams{in: in, out: &out, err: &complaint}), "on standard input: %s", command)
		assert.Contains(t, complaint.String(), "name another file with -o")
		require.NoError(t, in.Close())
	}
	refused("rules", "-o", book)
	for file, text := range map[string]string{job: string(jobText), other: string(jobText), book: bookText, named: bookText} {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, text, string(data), file)
	}

	code, _, complaint := call("", "marks", job, "-o", other)
	assert.Zero(t, code, complaint)
	data, err := os.ReadFile(other)
	require.NoError(t, err)
	assert.NotEqual(t, string(jobText), string(data), "any other file is written")
}

// A dash is standard output, as it is standard input for a job; a job that is started needs a file.
func TestADashIsStandardOutput(t *testing.T) {
	t.Chdir(t.TempDir())
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	job := string(vehicles.Demo().Format())
	for _, args := range [][]string{{"check", "-"}, {"marks", "--json", "-"}, {"rules"}} {
		code, out, _ := call(job, args...)
		again, same, complaint := call(job, append(args, "-o", "-")...)
		assert.Equal(t, code, again, complaint)
		assert.NotEmpty(t, out)
		assert.Equal(t, out, same)
	}
	code, _, complaint := call("", "new", "-")
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, complaint, "new needs the name of one job file")
	left, err := os.ReadDir(".")
	require.NoError(t, err)
	assert.Empty(t, left, "no file of that name")
}
