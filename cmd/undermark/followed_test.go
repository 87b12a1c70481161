//go:build linux

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// Whatever the texts of a job name, the program asks its system for no such file: not to open it, not whether it is there.
func TestNothingThatAJobNamesIsLookedFor(t *testing.T) {
	_ = tracer(t, os.DevNull)
	t.Parallel()
	dir, h := t.TempDir(), newHome(t)
	const bait = "bait-of-a-job"
	for _, name := range []string{bait, bait + ".jpg", bait + ".toml"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte("secret"), 0o600))
	}
	there := filepath.Join(dir, bait)
	job := screentest.Full(t)
	job.Ref, job.Vehicle, job.Fitter, job.Notes = there, "../"+bait, "file://"+there, there+".toml"
	job = job.Renaming(job.Obstructions[0].Name, there)
	first := job.Obstructions[0]
	first.Name = there
	job.Obstructions = job.Obstructions.With(0, first)
	job = job.WithDone(vehicles.Done{Step: "battery-off", Note: there, Photos: vehicles.List[string]{bait + ".jpg", bait}})
	require.NoError(t, os.WriteFile(filepath.Join(dir, "van.toml"), job.Format(), 0o600))
	for _, line := range []string{
		"--plain van.toml", "check van.toml", "marks van.toml", "work van.toml", "sheet van.toml -o sheet.pdf", "plan van.toml -o plan.svg", "template van.toml -o template.pdf", "parts van.toml", "new --from van.toml other.toml",
	} {
		log := filepath.Join(t.TempDir(), "calls")
		c := exec.Command("strace", append([]string{"-f", "-o", log, "-e", "trace=file", "-s", "4096", program}, strings.Fields(line)...)...)
		c.Dir, c.Env = dir, h.env()
		out, _ := c.CombinedOutput() // its code is that of the verdict
		assert.NotEqual(t, exitFailed, c.ProcessState.ExitCode(), "%s: %s", line, out)
		calls, err := os.ReadFile(log)
		require.NoError(t, err)
		assert.Contains(t, string(calls), "van.toml", line)
		assert.NotContains(t, string(calls), bait, line)
		assert.NotContains(t, string(out), "secret", line)
	}
}
