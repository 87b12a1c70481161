package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/vehicles"
)

func TestSizingAnswersPeopleAndPrograms(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	demo := string(vehicles.Demo().Format())
	code, out, complaint := call(demo, "sizing", "-")
	require.Zero(t, code, complaint)
	assert.Contains(t, out, "TL-07: sizes. No verdict rests on them.\n")
	assert.Contains(t, out, "electrics\tcable's area\t4 mm²\tThe larger of the two")
	assert.Contains(t, out, "fuel\tpriming\t157 strokes\t")
	for line := range strings.SplitSeq(strings.TrimSpace(out), "\n") {
		assert.True(t, strings.HasPrefix(line, "TL-07: ") || strings.Count(line, "\t") == 3, line)
	}

	code, out, complaint = call(demo, "sizing", "electrics", "-")
	require.Zero(t, code, complaint)
	assert.NotContains(t, out, "priming")
	assert.Contains(t, out, "fuse at the battery\t15 A")

	code, out, _ = call(demo, "sizing", "heat", "--json", "-")
	require.Zero(t, code)
	var said struct {
		Subjects []struct {
			Topic string
			Rows  []struct {
				ID    string
				Value *float64
			}
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	require.Len(t, said.Subjects, 1)
	assert.Equal(t, "heat", said.Subjects[0].Topic)
	assert.Equal(t, "surface walls", said.Subjects[0].Rows[0].ID)
	assert.InDelta(t, 312, *said.Subjects[0].Rows[0].Value, 1)
}

// A job that holds nothing of it says what is missing, subject by subject, and is no error.
func TestSizingOfABareJob(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call(bareJob, "sizing", "-")
	require.Zero(t, code, complaint)
	assert.Contains(t, out, "floor\tat the thickest\tnot known\tNobody has said: the floor's layers.")
	assert.Contains(t, out, "Nobody has said: the fuel line: lay it on Runs.")
}

func TestSizingSaysWhatIsWrong(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("van.toml", []byte(bareJob), 0o600))
	for _, c := range []struct {
		code int
		says string
		args []string
	}{
		{exitUsage, "sizing needs a job file", nil},
		{exitUsage, "sizing needs a job file behind fuel", []string{"fuel"}},
		{exitUsage, `"fule" is no subject: did you mean fuel?`, []string{"fule", "van.toml"}},
		{exitUsage, `"wall" is no subject: say floor, fuel, electrics, heat, duct or saw, or a job file`, []string{"wall", "van.toml"}},
		{exitUsage, "keep one of them", []string{"--json", "--csv", "van.toml"}},
		{exitFailed, "nowhere.toml", []string{"nowhere.toml"}},
		{exitFailed, filepath.Join("no", "where.toml"), []string{"duct", "no/where.toml"}},
	} {
		code, out, complaint := call("", append([]string{"sizing"}, c.args...)...)
		assert.Equal(t, c.code, code, c.args)
		assert.Empty(t, out)
		assert.Contains(t, complaint, c.says)
		assert.Equal(t, 1, strings.Count(complaint, "\n"), complaint)
	}
}

// Of several jobs there is one table with one head; a subject alone has only its own rows. What is reckoned is a number there, whole.
func TestSizingIsOneTable(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	job := filepath.Join(t.TempDir(), "demo.toml")
	require.NoError(t, os.WriteFile(job, vehicles.Demo().Format(), 0o600))
	code, out, complaint := call("", "sizing", "--csv", job, job)
	require.Zero(t, code, complaint)
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, sizing.Columns, rows[0])
	half := 1 + (len(rows)-1)/2
	assert.Equal(t, rows[1:half], rows[half:])
	assert.Contains(t, rows, []string{
		"TL-07", "floor", "collar needed", "36", "mm", "", "31 mm that it stands on at the thickest, and 5 mm below it (stack.turret, built in).",
		"common practice, no source", "", "", "", "yes",
	})
	code, out, complaint = call("", "sizing", "saw", "--csv", job)
	require.Zero(t, code, complaint)
	rows, err = csv.NewReader(strings.NewReader(out)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 3)
	assert.Equal(t, "67.672", rows[1][3][:6], "27000 mm a minute over pi times 127")
}
