package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// bareJob is a job file with nothing but a floor, nine lines long.
const bareJob = `format = 1
[job]
ref = "TL-07"
[floor]
from = 40
length = 3200
width = 1780
thickness = 31
ground = 460
`

// spread is a job that is right by itself, and not when a workshop's book spreads whatever a chain misses: its far edge
// then comes before its near one. The fault's line is its 12th.
const spread = bareJob + `[[obstruction]]
name = "rib"
x = [652, "+20"]
kind = "floor rib"
y = [-850, 850]
total = { x = 600 }
`

func TestAFaultThatOnlyTheBookBringsHasItsLine(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	book := writeText(t, "book.toml", "format = 1\n[[rule]]\nid = \"chain.closure\"\nvalue = 1e8\n")
	job := writeText(t, "van.toml", spread)
	code, _, complaint := call("", "check", job)
	require.NotEqual(t, exitFailed, code, complaint)
	for _, command := range []string{"check", "marks", "suggest"} {
		code, out, complaint := call(spread, command, "--book", book, "-", job)
		assert.Equal(t, exitFailed, code)
		assert.Empty(t, out)
		assert.Regexp(t, `^-:12: [^\n]+\n`+job+`:12: [^\n]+\n$`, complaint)
	}
}

// A job that lacks what a command needs says so like any other fault, and the others are answered.
func TestAJobThatCantBeAnsweredHasItsLineAndTheOthersAreAnswered(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	without := writeText(t, "van.toml", spread)
	code, out, complaint := call("", "suggest", "--yaw", "--json", without, cases+"/01-wide-floor.toml")
	assert.Equal(t, exitFailed, code)
	assert.Equal(t, 1, strings.Count(out, "\n"))
	assert.Contains(t, out, `"yaw"`)
	assert.Regexp(t, `^`+without+`:1: there is no \[heater\] to turn[^\n]+\n$`, complaint)
}

func TestTwentyFaultsOfEachFileAreTold(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	text := spread
	for i := range 500 {
		text += fmt.Sprintf("key%d = 1\n", i)
	}
	one, other := writeText(t, "one.toml", text), writeText(t, "other.toml", text)
	for _, args := range [][]string{{"check", one, other}, {"rules", one}, {"new", "--from", one, t.TempDir() + "/new.toml"}} {
		code, _, complaint := call("", args...)
		assert.Equal(t, exitFailed, code)
		files := strings.Count(strings.Join(args, " "), "/one.toml") + strings.Count(strings.Join(args, " "), "/other.toml")
		lines := strings.Split(strings.TrimSuffix(complaint, "\n"), "\n")
		require.Len(t, lines, 21*files, "%v", args)
		assert.Equal(t, one+":16: ", lines[0][:len(one+":16: ")])
		assert.Regexp(t, `^`+one+`: and 480 more faults`, lines[20])
	}
}

// What settings or a workshop's book lie in the usual places are told of with their lines.
func TestTheUsualBookIsToldOfWithItsLine(t *testing.T) {
	dir := writeText(t, "book.toml", "format = 1\n\n[[rule]]\nid = \"exhaust.length\"\nvalue = \"1500\"\n")
	code, _, complaint := call("", "check", "--book", dir, cases+"/01-wide-floor.toml")
	assert.Equal(t, exitFailed, code)
	assert.Equal(t, dir+":5: value must be a number\n", complaint)
}

// Harmless on the way to people, never in the job.
func TestHostileTextIsKeptToTheLetter(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	from := writeText(t, "van.toml", hostileJob(t))
	to := t.TempDir() + "/new.toml"
	code, out, complaint := call("", "new", "--from", from, to)
	require.Zero(t, code, complaint)
	mustBeHarmless(t, out)
	text, err := os.ReadFile(to)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(text, to)
	require.NoError(t, err)
	assert.Equal(t, "member"+unseen, job.Obstructions[0].Name)
	old, err := vehicles.Load(from)
	require.NoError(t, err)
	again, err := vehicles.ParseJob(old.Job.Format(), "again")
	require.NoError(t, err)
	assert.Equal(t, evil, again.Refused()[0].Text)
	assert.Equal(t, old.Job, again)
}

// A job that only a workshop's book finds no contradiction in is answered and carried over by that book.
func TestAJobThatTheBookFindsRightIsAnswered(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	book := writeText(t, "book.toml", "format = 1\n[[rule]]\nid = \"chain.closure\"\nvalue = 0.1\n")
	text := strings.NewReplacer(`"+20"`, `"+0.5"`, "x = 600", "x = 650").Replace(spread)
	job := writeText(t, "van.toml", text)
	code, _, complaint := call("", "check", job)
	require.Equal(t, exitFailed, code)
	assert.Contains(t, complaint, "x runs from")
	for _, args := range [][]string{{"check", job}, {"marks", job}, {"rules", job}, {"new", "--from", job, t.TempDir() + "/new.toml"}} {
		code, _, complaint = call("", append([]string{"--book", book}, args...)...)
		assert.NotEqual(t, exitFailed, code, "%v: %s", args, complaint)
	}
	code, _, complaint = call("", "check", writeText(t, "own.toml", text+"[rules]\n\"chain.closure\" = 0.1\n"))
	assert.Equal(t, exitDoubtful, code, complaint)
}
