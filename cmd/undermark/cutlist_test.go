package main

import (
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules/cutlist"
)

// laidJob has an exhaust of one leg.
const laidJob = routeJob + "[heater]\n[exhaust]\nacross = 26\nbend = 60\npath = [[1000, 880, 150]]\nclips = [150, 400]\n"

func TestCutlistAnswersPeopleAndPrograms(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call(laidJob, "cutlist", "-")
	require.Zero(t, code, complaint)
	assert.Contains(t, out, "TL-07: what the runs are cut from and hung with. All in mm.\n")
	assert.Contains(t, out, "  exhaust pipe 26 across, stub to outlet: cut ")
	assert.Contains(t, out, "  exhaust clip: 2; the usual kit holds 4\n")
	assert.Contains(t, out, "  not counted: no intake is laid\n")
	assert.Contains(t, out, "common practice, no source")

	code, out, _ = call(laidJob, "cutlist", "--json", "-")
	require.Zero(t, code)
	var said struct {
		Pieces []struct{ Developed, Cut float64 }
		Absent []string
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	require.Len(t, said.Pieces, 1)
	assert.InDelta(t, said.Pieces[0].Developed+25+10, said.Pieces[0].Cut, 0.11)
	assert.Equal(t, []string{"the exhaust has no muffler", "no intake is laid", "no fuel line is laid"}, said.Absent)
}

// Of several jobs there is one table with one head.
func TestCutlistIsOneTable(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call("", "cutlist", "--csv", cases+"/18-muffler-and-clips.toml", cases+"/24-everything.toml")
	require.Zero(t, code, complaint)
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, cutlist.Columns, rows[0])
	heads := 0
	for _, row := range rows {
		if row[0] == "job" {
			heads++
		}
	}
	assert.Equal(t, 1, heads)
}

func TestCutlistSaysWhatIsWrong(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	for _, c := range []struct {
		code int
		says string
		args []string
	}{
		{exitUsage, "cutlist needs a job file", nil},
		{exitUsage, "keep one of them", []string{"--json", "--csv", "-"}},
		{exitFailed, "nowhere.toml", []string{"nowhere.toml"}},
	} {
		code, out, complaint := call(laidJob, append([]string{"cutlist"}, c.args...)...)
		assert.Equal(t, c.code, code, c.args)
		assert.Empty(t, out)
		assert.Contains(t, complaint, c.says)
		assert.Equal(t, 1, strings.Count(complaint, "\n"), complaint)
	}
	code, out, _ := call(bareJob, "cutlist", "-")
	assert.Zero(t, code)
	assert.Contains(t, out, "not counted: no exhaust is laid\n")
}
