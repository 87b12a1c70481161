package main

import (
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules/parts"
	"bench.example/undermark/vehicles"
)

func TestPartsAnswersPeopleAndPrograms(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	demo := string(vehicles.Demo().Format())
	code, out, complaint := call(demo, "parts", "-")
	require.Zero(t, code, complaint)
	assert.Contains(t, out, "\nheater\tcollar\t45 mm deep\t1\t1\t0\tpieces\tcomes with the heater\n")
	assert.Contains(t, out, "\nintake\tintake clip\t\t4\t2\t2\tpieces\t(common practice, no source)\n")
	assert.Contains(t, out, "\nheater\tsealant\tcartridges of 310 ml\t1\t\t1\tpieces\ttwo beads")
	assert.Contains(t, out, "  not counted: the fuel line has no filter")

	code, out, _ = call(demo, "parts", "--json", "-")
	require.Zero(t, code)
	var said struct {
		Parts []struct {
			Of    string
			Count *float64
		}
		Absent []string
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	assert.Equal(t, "heater", said.Parts[0].Of)
	assert.NotEmpty(t, said.Absent)
}

// Of several jobs there is one table with one head.
func TestPartsAreOneTable(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call("", "parts", "--csv", cases+"/18-muffler-and-clips.toml", cases+"/24-everything.toml")
	require.Zero(t, code, complaint)
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, parts.Columns, rows[0])
	jobs := map[string]int{}
	for _, row := range rows {
		jobs[row[0]]++
	}
	assert.Equal(t, 1, jobs["job"])
	assert.Greater(t, jobs["TL-18"], 10)
	assert.Greater(t, jobs["TL-24"], 10)
}

func TestPartsSayWhatIsWrong(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	for _, c := range []struct {
		code int
		says string
		args []string
	}{
		{exitUsage, "parts needs a job file", nil},
		{exitUsage, "keep one of them", []string{"--json", "--csv", "-"}},
		{exitFailed, "nowhere.toml", []string{"nowhere.toml"}},
	} {
		code, out, complaint := call(bareJob, append([]string{"parts"}, c.args...)...)
		assert.Equal(t, c.code, code, c.args)
		assert.Empty(t, out)
		assert.Contains(t, complaint, c.says)
		assert.Equal(t, 1, strings.Count(complaint, "\n"), complaint)
	}
	code, out, _ := call(bareJob, "parts", "-")
	assert.Zero(t, code)
	assert.Contains(t, out, "  not counted: no heater is chosen\n")
}
