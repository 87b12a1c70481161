//go:build !windows

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A pilot hole that its readings do not explain, in a real terminal of the least size: what rests on it is held back, two tapes
// straight from it are typed, and it is confirmed.
func TestFromAnUnexplainedPilotToAConfirmedOne(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile(filepath.Join(cases, "31-unexplained-pilot.toml"))
	require.NoError(t, err)
	job := strings.Replace(string(text), "direct = [", "# direct = [", 1)
	file := filepath.Join(t.TempDir(), "job.toml")
	require.NoError(t, os.WriteFile(file, []byte(job), 0o600))
	h := readHome(t)
	s := h.start(t, 60, 20, file)
	s.wait(t, "[Under]")
	s.keys(t, "4")
	s.wait(t, "body, bolts: held back.")
	s.wait(t, "d tape straight from the hole")
	s.keys(t, "d")
	s.wait(t, "▸ chassis rail, left  not taped")
	s.keys(t, "3", "6", "1", "\r")
	s.wait(t, "chassis rail, left 361: 1 mm over the survey's 360: clear")
	s.keys(t, "5", "7", "9", "\r")
	s.wait(t, "0.8 mm under the survey's 579.8: clear")
	s.wait(t, "Two agree across one another")
	s.keys(t, "\x1b")
	s.wait(t, ", direct tapes confirm it")
	s.keys(t, "\x1a", "\x1a")
	s.wait(t, "body, bolts: held back.")
	assert.Zero(t, s.quit(t), "all taken back, nothing is unsaved")
}
