package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles/harmless"
)

// evil steers a terminal, feigns a line, hides, turns the reading direction and breaks columns. unseen is what of it a
// text of one line in a job may hold.
const (
	evil   = "\x1b[31m\x1b]0;owned\a\nFAKE\r\t\u009b1m\u202e\u2066\u200b\ufeff\u2028\U000e0041\u00ad"
	unseen = "\u202e\u2066\u200b\ufeff\u2028\U000e0041\u00ad\ue000"
)

// hostileJob is a job with such texts in every place that takes a text.
func hostileJob(t *testing.T) string {
	quoted := func(s string) string {
		data, err := json.Marshal(s)
		require.NoError(t, err)
		return strings.NewReplacer(`\u003c`, "<", "\x7f", `\u007f`, "\u009b", `\u009b`).Replace(string(data))
	}
	return fmt.Sprintf(`format = 1
[job]
ref = "ref%[1]s"
vehicle = "van%[1]s"
fitter = "fitter%[1]s"
notes = "notes%[1]s"
[floor]
from = 40
length = 3200
width = 1780
thickness = 31
ground = 460
[[obstruction]]
name = "member%[1]s"
kind = "crossmember"
x = [652, "+84"]
y = [-850, 850]
drop = [0, 95]
[[obstruction]]
name = "pipe%[1]s"
kind = "brake line"
path = [[300, "R 410"], [1500, "R 410"]]
across = 8
[[opening]]
name = "door%[1]s"
kind = "door"
path = [[1900, -890], [3000, -890]]
drop = [-1500, -22]
[[fitting]]
name = "box%[1]s"
x = [1900, 2300]
y = [300, 840]
rise = [0, 400]
[[tie]]
name = "bolt%[1]s"
below = [700, "L 100"]
above = [700, "L 100"]
[[tie]]
name = "eye%[1]s"
below = [2700, "R 100"]
above = [2700, "R 109"]
[heater]
class = "2 kW"
[cut]
at = [1210, 240]
across = 127
[exhaust]
across = 26
bend = 60
path = [[1210, 240, 100], [1210, 500, 140]]
[extra]
"key%[1]s" = 1
[[extra.refused]]
of = "obstruction pipe%[1]s"
name = %[2]s
field = "low"
label = %[2]s
text = %[2]s
why = %[2]s
[["extra"."unfinished obstruction"]]
name = %[2]s
x0 = %[2]s
`, unseen, quoted(evil))
}

// mustBeHarmless holds that a text shows nothing of what was meant to harm, and that there are stand-ins for it.
func mustBeHarmless(t *testing.T, text string, about ...any) {
	t.Helper()
	assert.Equal(t, harmless.Lines(text), text, about...)
	assert.NotContains(t, text, "\x1b", about...)
	for _, line := range strings.Split(text, "\n") {
		assert.False(t, strings.HasPrefix(line, "FAKE"), "a feigned line: %q", line)
	}
}

func writeText(t *testing.T, name, text string) string {
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	return path
}

func TestHostileTextOfAJobIsToldHarmless(t *testing.T) {
	notRaced(t)
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	file := writeText(t, "van.toml", hostileJob(t))
	for _, args := range [][]string{{"check"}, {"check", "--next"}, {"marks"}, {"suggest"}, {"suggest", "--yaw"}, {"layout"}, {"route", "exhaust", "--edge", "left"}, {"rules"}} {
		to := filepath.Join(t.TempDir(), "out.txt")
		code, out, complaint := call("", append(args, file)...)
		assert.NotEqual(t, exitFailed, code, "%v: %s", args, complaint)
		mustBeHarmless(t, out+complaint, args)
		_, _, _ = call("", append(args, "-o", to, file)...)
		kept, err := os.ReadFile(to)
		require.NoError(t, err)
		assert.Equal(t, out, string(kept), "a file that people read")
	}
	_, out, _ := call("", "check", file)
	assert.Contains(t, out, "ref▯▯▯▯▯▯▯▯: ")
	assert.Contains(t, out, ": pipe▯▯▯▯▯▯▯▯\t")
	assert.Contains(t, out, "␛[31m␛]0;owned␇␊FAKE␍␉▯1m▯", "what was refused, in its line")
}

// Programs get what the job says, to the letter; what would harm is spelled so that no terminal takes it.
func TestJSONSaysExactlyWhatTheJobSays(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	file := writeText(t, "van.toml", hostileJob(t))
	code, out, complaint := call("", "check", "--json", file)
	assert.NotEqual(t, exitFailed, code, complaint)
	mustBeHarmless(t, out)
	assert.NotContains(t, out, "▯")
	var got struct {
		Job      string
		Findings []struct{ Against *string }
	}
	require.NoError(t, json.Unmarshal([]byte(out), &got))
	assert.Equal(t, "ref"+unseen, got.Job)
	there := false
	for _, f := range got.Findings {
		there = there || f.Against != nil && *f.Against == "pipe"+unseen
	}
	assert.True(t, there)
	assert.Equal(t, 1, strings.Count(out, "\n"))
}

// Whatever a command writes and forgot to make harmless becomes so on its way out.
func TestNothingIsWrittenPastTheGuard(t *testing.T) {
	var out, complaint strings.Builder
	s := streams{out: &out, err: &complaint}.guarded()
	for to, of := range map[*strings.Builder]io.Writer{&out: s.out, &complaint: s.err} {
		n, err := io.WriteString(of, "before\t"+evil+"behind\n")
		require.NoError(t, err)
		assert.Equal(t, len("before\t"+evil+"behind\n"), n)
		mustBeHarmless(t, strings.ReplaceAll(to.String(), "\nFAKE", "")) // line ends are a command's own
		assert.Contains(t, to.String(), "behind")
	}
}

func TestHostileArgumentsAreToldHarmless(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	file := sampleJobs(t)[0]
	for _, args := range [][]string{
		{"--" + evil}, {"check", "--" + evil, file}, {"check", "-" + evil}, {evil, evil}, {"check", evil}, {"check", "\xff\xfe" + evil},
		{"new", evil + "/van.toml"}, {"new", "--van", evil, filepath.Join(dir, "a.toml")}, {"new", "--from", evil, filepath.Join(dir, "b.toml")},
		{"new", "--from", evil, "--van", evil, "c.toml"}, {"suggest", "--near", evil, file}, {"route", evil, file}, {"route", "exhaust", "--to", evil, file}, {"route", "exhaust", "--edge", evil, file}, {"rules", "--book", evil}, {"rules", evil},
		{"check", "-o", evil + "/x", file}, {"help", evil}, {"completion", evil}, {"--book", evil, "check", file}, {"man", evil},
		{"new", filepath.Join(dir, "van"+evil[:5]+"\n.toml")}, {"__complete", "--" + evil, ""}, {"check", "--json=" + evil, file},
	} {
		_, out, complaint := call("", args...)
		mustBeHarmless(t, out+complaint, "%q", args)
		assert.LessOrEqual(t, strings.Count(complaint, "\n"), 1, "%q: one line: %q", args, complaint)
	}
}

func TestHostileBooksAreToldHarmless(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	hostile := strings.NewReplacer("\x1b", `\u001b`, "\a", `\u0007`, "\n", `\n`, "\r", `\r`, "\t", `\t`, "\u009b", `\u009b`).Replace(evil)
	good := writeText(t, "book"+unseen+".toml", "format = 1\n[[rule]]\nid = \"exhaust.length\"\nvalue = 1\nsource = \""+hostile+"\"\n")
	code, out, complaint := call("", "rules", "--book", good)
	assert.Zero(t, code, complaint)
	mustBeHarmless(t, out)
	assert.Contains(t, out, "␊FAKE␍␉")
	code, out, _ = call("", "rules", "--json", "--book", good)
	assert.Zero(t, code)
	mustBeHarmless(t, out)
	var listed struct{ Rules []struct{ ID, Source string } }
	require.NoError(t, json.Unmarshal([]byte(out), &listed))
	there := false
	for _, r := range listed.Rules {
		there = there || r.Source == evil
	}
	assert.True(t, there, "exact data")
	for _, text := range []string{
		"\"" + hostile + "\" = 1\n", "format = 1\n[[rule]]\nid = \"" + hostile + "\"\n",
		"format = 1\n[[rule]]\nid = \"exhaust.length\"\nsense = \"" + hostile + "\"\n",
		"format = 1\n[[rule]]\nid = \"cut.clearance\"\nkinds = { \"" + hostile + "\" = 1 }\n",
		evil, "format = " + evil, "format = 1\n\xff\xfe",
	} {
		bad := writeText(t, "book"+unseen+".toml", text)
		code, out, complaint := call("", "rules", "--book", bad)
		assert.Equal(t, exitFailed, code)
		assert.Empty(t, out)
		mustBeHarmless(t, complaint)
		assert.Regexp(t, `^[^\n]+book▯+\.toml:\d+: [^\n]+\n$`, complaint, "%q", text)
	}
}

func TestHostileJobFilesAreRefusedHarmless(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	for _, text := range []string{
		evil, "format = 1\n\"" + unseen + "\" = 1\n", "format = 1\n[job]\nref = \"" + unseen + "\nx", "format = 1\n[job]\nref = 'a" + unseen + "'\nref = 1\n",
		"format = \"" + unseen + "\"\n", "format = 1\n[job]\nref = \"\\u001b[31m\"\n[floor]\n", "[[" + unseen + "]]\n", "\xff",
		"format = 1\n[job]\nref = \"x\"\n[floor]\nfrom = \"" + unseen + "\"\n[[obstruction]]\nname = \"n" + unseen + "\"\nkind = \"k" + unseen + "\"\n",
	} {
		code, _, complaint := call(text, "check", "-")
		assert.Equal(t, exitFailed, code)
		mustBeHarmless(t, complaint)
		for _, line := range strings.Split(strings.TrimSuffix(complaint, "\n"), "\n") {
			assert.Regexp(t, `^-:\d+: `, line, "%q", text)
		}
	}
}
