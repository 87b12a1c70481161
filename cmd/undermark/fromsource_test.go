//go:build !windows

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// The lines of README that run and install the program from its source do that.
func TestTheProgramRunsAndInstallsFromSourceAsDocumented(t *testing.T) {
	notRaced(t)
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	require.NoError(t, err)
	require.Contains(t, string(text), "    go run ./cmd/undermark ")
	require.Contains(t, string(text), "`CGO_ENABLED=0 go install ./cmd/undermark`")
	bin := t.TempDir()
	goes := func(args ...string) string {
		c := exec.Command("go", args...)
		c.Dir, c.Env = filepath.Join("..", ".."), append(os.Environ(), "CGO_ENABLED=0", "GOBIN="+bin)
		out, err := c.CombinedOutput()
		require.NoError(t, err, "go %v: %s", args, out)
		return string(out)
	}
	assert.Contains(t, goes("run", "./cmd/undermark", "version"), "undermark")
	goes("install", "./cmd/undermark")
	out, err := exec.Command(filepath.Join(bin, "undermark"), "version").CombinedOutput()
	require.NoError(t, err, string(out))
}

// What README shows of the program in lines is what it says of the sample van.
func TestTheLinesThatReadmeShowsAreSaid(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	require.NoError(t, err)
	_, part, found := strings.Cut(string(text), "## With a screen reader")
	require.True(t, found)
	part, _, _ = strings.Cut(part, "\n## ")
	shown := strings.Join(regexp.MustCompile(`(?m)^    .*$`).FindAllString(part, -1), " ")
	require.NotEmpty(t, shown)
	h, van := newHome(t), filepath.Join(t.TempDir(), "van.toml")
	require.NoError(t, os.WriteFile(van, vehicles.Demo().Format(), 0o600))
	c := exec.Command(program, "--plain", van)
	c.Env = h.env()
	said, err := c.Output()
	require.NoError(t, err)
	assert.Contains(t, strings.Join(strings.Fields(string(said)), " "), strings.Join(strings.Fields(shown), " "))
}
