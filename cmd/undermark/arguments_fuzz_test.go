package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles/harmless"
)

// within says whether arguments can name only what lies in the folder that they are run in.
func within(args []string) bool {
	for _, arg := range args {
		outside := strings.Contains(arg, "/") && (strings.HasPrefix(arg, "-") || !filepath.IsLocal(arg))
		if outside || strings.Contains(arg, "..") || strings.ContainsRune(arg, 0) {
			return false
		}
	}
	return true
}

// Whatever stands on the command line, it is answered with a code of the contract, complains in one line that steers no terminal, and changes
// neither the job nor the book that it reads, nor anything outside the folder that it was run in.
func FuzzArguments(f *testing.F) {
	for _, line := range []string{
		"", "check\nvan.toml", "check\n--json\n--next\nvan.toml", "check\n--built\nvan.toml", "marks\nvan.toml\n-o\nmarks.txt", "new\n--van\nlong-van\nother.toml", "new\n--from\nvan.toml\nvan.toml",
		"suggest\n--near\n1210,240\nvan.toml", "route\nexhaust\nvan.toml\n--to\n1370,870,187", "route\nboth\nvan.toml", "cutlist\n--csv\nvan.toml", "sizing\nfuel\n--csv\nvan.toml", "work\n--json\nvan.toml", "parts\nvan.toml",
		"sizing\nvan.toml", "plan\nvan.toml\n-o\nvan.svg\n--around\n300", "plan\nvan.toml\n-o\nvan.toml", "template\nvan.toml\n-o\nt.pdf", "sheet\nvan.toml\n-o\ns.pdf", "rules\n--book\nbook.toml",
		"check\nvan.toml\n-o\nvan.toml", "check\nvan.toml\n--book\nbook.toml\n-obook.toml", "--plain\nvan.toml", "version\n--json", "man", "completion\nbash", "__complete\ncheck\n", "help\ncheck", "chek\nvan.toml",
		"check\n-", "check\nfolder", "check\nnone.toml", "--\nvan.toml", "check\n--\n--json", "\x1b[31m", "check\n--json=maybe\nvan.toml", "plan\nvan.toml\n--from\nbelow\n--around\n1e308\n-o\na.png",
	} {
		f.Add(line)
	}
	job, err := os.ReadFile(filepath.Join(cases, "21-fuel-and-pump.toml"))
	require.NoError(f, err)
	book := []byte("format = 1\n[[rule]]\nid = \"exhaust.length\"\nvalue = 900\n")
	f.Fuzz(func(t *testing.T, line string) {
		args := strings.Split(line, "\n")
		if len(line) > 300 || len(args) > 8 || !within(args) {
			return
		}
		outer := t.TempDir()
		inner := filepath.Join(outer, "inner")
		require.NoError(t, os.MkdirAll(filepath.Join(inner, "folder"), 0o700))
		t.Chdir(inner)
		require.NoError(t, os.WriteFile("van.toml", job, 0o600))
		require.NoError(t, os.WriteFile("book.toml", book, 0o600))
		code, out, complaint := call(string(job), args...)
		require.True(t, slices.Contains([]int{0, exitFailed, exitUsage, exitDoubtful, exitFoul}, code), "%q: %d", args, code)
		require.Equal(t, harmless.Lines(out+complaint), out+complaint, "%q", args)
		if code == exitUsage {
			require.Equal(t, 1, strings.Count(complaint, "\n"), "%q: %q", args, complaint)
		}
		if code == exitFailed {
			require.NotEmpty(t, complaint, "%q", args)
		}
		for name, was := range map[string][]byte{"van.toml": job, "book.toml": book} {
			now, err := os.ReadFile(name)
			require.NoError(t, err)
			require.Equal(t, string(was), string(now), "%q wrote over what it reads", args)
		}
		beside, err := os.ReadDir(outer)
		require.NoError(t, err)
		require.Len(t, beside, 1, "%q", args)
	})
}
