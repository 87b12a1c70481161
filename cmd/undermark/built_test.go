package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// builtJob is the sample van whose cut came out elsewhere.
func builtJob() string {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At[0] += 60
	return string(job.WithBuilt(vehicles.Built{Cut: &cut}).Format())
}

// check --built sets both side by side: what it says of either is what check says of a job that is so.
func TestCheckBuiltSetsBothSideBySide(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	var job vehicles.Job
	job, err := vehicles.ParseJob([]byte(builtJob()), "a.toml")
	require.NoError(t, err)
	code, out, complaint := call(builtJob(), "check", "--built", "--json", "-")
	require.Empty(t, complaint)
	var said struct {
		Job            string
		Otherwise      []string
		Planned, Built json.RawMessage
		Deviations     json.RawMessage
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	assert.Equal(t, []string{"cut"}, said.Otherwise)
	planned, plain, _ := call(string(vehicles.Demo().Format()), "check", "--json", "-")
	assert.JSONEq(t, plain, string(said.Planned))
	built, asBuilt, _ := call(string(job.AsBuilt().Format()), "check", "--json", "-")
	assert.JSONEq(t, asBuilt, string(said.Built))
	assert.Equal(t, built, code, "the exit code is of what was built")
	assert.JSONEq(t, `[{"table": "cut", "what": "along", "unit": "mm", "planned": 1255, "built": 1315, "by": 60, "sigma": null, "unexplained": false, "verdict": "foul"}]`,
		string(said.Deviations), "typed without a reading")
	_, mixed, _ := call(builtJob(), "check", "--json", "-")
	assert.Equal(t, plain, mixed, "plain check says nothing of it")
	assert.Equal(t, exitFoul, planned)

	code, out, complaint = call(builtJob(), "check", "--built", "-")
	require.Empty(t, complaint)
	assert.Equal(t, built, code)
	assert.Contains(t, out, "TL-07 as built: ")
	assert.Contains(t, out, "Made otherwise: cut.\n")
	assert.Contains(t, out, "\nfoul\tcut along\t1255\t1315\t+60\t\n")
	assert.Contains(t, out, "\nfoul\tcan kill\tcut: brake pipe across\t-24.6\t-84.6\t", "60 mm farther from it")
	assert.Contains(t, out, "\ngone, planned clear\tnuisance\tclip's hold, exhaust: sill, left\t\t39.1\t\tnot there as built\n")
}

// A hole that was read stands with how uncertain that is, and by readings that no tape explains a line says so.
func TestCheckBuiltSaysByHowMuch(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	text := string(vehicles.Demo().Format()) + "[built.cut]\nat = [1306.42, 195]\nacross = 127\nsawn = { x = 1315, y = \"L 693\" }\n"
	_, out, complaint := call(text, "check", "--built", "-")
	require.Empty(t, complaint)
	assert.Contains(t, out, "\nfoul\tcut along\t1255\t1306.4\t+51.4\t± 1.6\nfoul\tcut across\t195\t195\t0\t± 1.4\n")
	assert.Contains(t, out, "\nThe hole is farther off than marks and tapes explain: read it again, unless it was sawn there on purpose.\n")
	near := strings.Replace(text, "1315", "1264", 1)
	_, out, complaint = call(near, "check", "--built", "-")
	require.Empty(t, complaint)
	assert.NotContains(t, out, "farther off")
}

// A job of which nothing is recorded as built is neither foul nor clear as built: one line says so.
func TestCheckBuiltOfWhatIsNotBuiltYet(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call(bareJob, "check", "--built", "-")
	assert.Equal(t, exitDoubtful, code)
	assert.Empty(t, complaint)
	assert.Contains(t, out, ": nothing is recorded as built yet; as planned: ")
	assert.Equal(t, 1, strings.Count(out, "\n"))
	code, _, _ = call(string(vehicles.Demo().Format()), "check", "--built", "-")
	assert.Equal(t, exitDoubtful, code, "the exit code is of what was built, and nothing was")
	code, out, _ = call(bareJob, "check", "--built", "--json", "-")
	assert.Equal(t, exitDoubtful, code)
	var answer struct {
		Otherwise []string
		Planned   json.RawMessage
		Built     json.RawMessage
	}
	require.NoError(t, json.Unmarshal([]byte(out), &answer))
	assert.Empty(t, answer.Otherwise)
	assert.JSONEq(t, string(answer.Planned), string(answer.Built))
}

func TestCheckBuiltSaysWhatIsWrong(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, _, complaint := call(bareJob, "check", "--built", "--next", "-")
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, complaint, "keep one of them")
}
