package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// What the screens say of a job the commands say in the same words.
func TestTheWordsAreThoseOfTheScreens(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	at := func(p float64) survey.Reading { return survey.FromNumber(p, false) }
	job := vehicles.Demo()
	cut := *job.Cut
	job = job.WithCut(cut).WithDrilled(&vehicles.Pair{at(cut.At[0] - 2), at(cut.At[1] - 3)})
	file := filepath.Join(t.TempDir(), "van.toml")
	require.NoError(t, os.WriteFile(file, job.Format(), 0o600))
	code, screens, complaint := call("", "--plain", file)
	require.Zero(t, code, complaint)
	_, marks, _ := call("", "marks", file)
	off := regexp.MustCompile(`Pilot off [0-9.]+ back, [0-9.]+ [a-z]+; the centre`).FindString(marks)
	require.NotEmpty(t, off, marks)
	assert.Contains(t, strings.Join(strings.Fields(screens), " "), off)

	bare := writeText(t, "bare.toml", bareJob+"[cut]\nat = [1000, 200]\nacross = 127\n")
	_, screens, _ = call("", "--plain", bare)
	_, check, _ := call("", "check", bare)
	for _, missing := range []string{"Not checked, not entered: ", "matching points", "collar"} {
		assert.Contains(t, screens, missing)
		assert.Contains(t, check, missing)
	}
	assert.NotContains(t, check, "turret")
}
