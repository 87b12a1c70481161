package main

import (
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

// fullDisk is a standard output on a disk with no room.
type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, syscall.ENOSPC }

// Whatever the answer, help and version too: where it can't be written the program says so in one line and ends with 1, whatever it had to say of a job.
func TestAnAnswerThatCannotBeWrittenIsAFailure(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	for _, line := range []string{
		"--help", "-h", "help", "help check", "check --help", "new --help", "--version", "-v", "version", "version --json", "man", "completion bash", "rules", "rules --json",
		"check -", "check --json -", "marks -", "suggest -", "cutlist -", "work -", "sizing -", "parts -", "--plain", "new FILE",
	} {
		args := strings.Fields(strings.Replace(line, "FILE", filepath.Join(t.TempDir(), "new.toml"), 1))
		var complaint strings.Builder
		code := run(args, streams{in: strings.NewReader(string(vehicles.Demo().Format())), out: fullDisk{}, err: &complaint})
		assert.Equal(t, exitFailed, code, line)
		assert.Equal(t, 1, strings.Count(complaint.String(), "\n"), "%s: %q", line, complaint.String())
		assert.Contains(t, complaint.String(), "no space left", line)
	}
}
