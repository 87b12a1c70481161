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
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	assert.Equal(t, []string{"cut"}, said.Otherwise)
	planned, plain, _ := call(string(vehicles.Demo().Format()), "check", "--json", "-")
	assert.JSONEq(t, plain, string(said.Planned))
	built, asBuilt, _ := call(string(job.AsBuilt().Format()), "check", "--json", "-")
	assert.JSONEq(t, asBuilt, string(said.Built))
	assert.Equal(t, built, code, "the exit code is of what was built")
	_, mixed, _ := call(builtJob(), "check", "--json", "-")
	assert.Equal(t, plain, mixed, "plain check says nothing of it")
	assert.Equal(t, exitFoul, planned)

	code, out, complaint = call(builtJob(), "check", "--built", "-")
	require.Empty(t, complaint)
	assert.Equal(t, built, code)
	assert.Contains(t, out, "TL-07 as built: ")
	assert.Contains(t, out, "Made otherwise: cut.\n")
	assert.Contains(t, out, "\nfoul\tcan kill\tcut: brake pipe across\t-24.6\t-84.6\t", "60 mm farther from it")
	assert.Contains(t, out, "\ngone, planned clear\tnuisance\tclip's hold, exhaust: sill, left\t\t39.1\t\tnot there as built\n")
}

func TestCheckBuiltSaysWhatIsWrong(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call(bareJob, "check", "--built", "-")
	assert.Equal(t, exitFailed, code)
	assert.Empty(t, out)
	assert.Contains(t, complaint, "nothing stands under [built], so all is as planned")
	assert.Equal(t, 1, strings.Count(complaint, "\n"))
	code, _, complaint = call(bareJob, "check", "--built", "--next", "-")
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, complaint, "keep one of them")
}
