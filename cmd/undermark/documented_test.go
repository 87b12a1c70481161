//go:build !windows

package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// documented are the command lines of README and DEVELOPERS, each once: those in the text and those of the list, there with
// each other form of the answer that stands behind them.
func documented(t *testing.T) (lines []string) {
	quoted := regexp.MustCompile("`(undermark(?: [^`]+)?)`|(?m:^    (undermark .*)$)")
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile(filepath.Join("..", "..", name))
		require.NoError(t, err)
		for _, found := range quoted.FindAllStringSubmatch(string(text), -1) {
			line, behind, _ := strings.Cut(found[1]+found[2], "#")
			lines = append(lines, strings.TrimSpace(line))
			for _, form := range []string{"--json", "--csv"} {
				if strings.Contains(behind, form) {
					lines = append(lines, strings.TrimSpace(line)+" "+form)
				}
			}
		}
	}
	slices.Sort(lines)
	return slices.Compact(lines)
}

// opening are the command lines that open screens: what stands there once they are open.
var opening = map[string]string{
	"undermark":             "1 Underneath",
	"undermark my-van.toml": "There is no file my-van.toml",
}

// splitAsShell is the arguments of a command line as a shell gives them, and the file that the answer goes into, "" for none.
func splitAsShell(line string) (args []string, into string) {
	for _, word := range regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(line, -1)[1:] {
		args = append(args, strings.Trim(word, `"`))
	}
	if i := slices.Index(args, ">"); i >= 0 {
		into, args = args[i+1], args[:i]
	}
	return args, into
}

// Every command that the documents show is one, and answers about the sample van, or opens what it says.
func TestEveryDocumentedCommandRuns(t *testing.T) {
	t.Parallel()
	notRaced(t)
	lines := documented(t)
	require.Greater(t, len(lines), 25)
	var names []string
	for _, c := range newRoot(streams{out: &bytes.Buffer{}, err: &bytes.Buffer{}}).Commands() {
		names = append(names, c.Name())
	}
	for _, line := range lines {
		if seen, opens := opening[line]; opens {
			args, _ := splitAsShell(line)
			s := readHome(t).start(t, 100, 40, args...)
			s.wait(t, seen)
			continue
		}
		if before, after, any := strings.Cut(line, " COMMAND "); any {
			for _, name := range names {
				mustAnswer(t, before+" "+name+" "+after)
			}
			continue
		}
		mustAnswer(t, line)
	}
	for _, name := range names {
		shown := slices.ContainsFunc(lines, func(line string) bool { return strings.HasPrefix(line, "undermark "+name) })
		assert.True(t, shown || name == "help", "no document shows %s", name)
	}
}

// mustAnswer runs a command line in a folder with the sample van under the names that the documents give it.
func mustAnswer(t *testing.T, line string) {
	h := newHome(t)
	dir := t.TempDir()
	for _, name := range []string{"job.toml", "van.toml"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), vehicles.Demo().Format(), 0o600))
	}
	args, into := splitAsShell(line)
	c := exec.Command(program, args...)
	c.Dir, c.Env = dir, h.env()
	var out, complaint bytes.Buffer
	c.Stdout, c.Stderr = &out, &complaint
	_ = c.Run() // the code says it
	assert.Contains(t, []int{0, exitDoubtful, exitFoul}, c.ProcessState.ExitCode(), "%s: %s", line, complaint.String())
	written := out.Len()
	if i := slices.Index(args, "-o"); i >= 0 || strings.HasPrefix(line, "undermark new --van") {
		name := args[len(args)-1]
		if i >= 0 {
			name = args[i+1]
		}
		info, err := os.Stat(filepath.Join(dir, name))
		require.NoError(t, err, line)
		written = int(info.Size())
	}
	assert.Positive(t, written, "%s answers nothing %s", line, into)
}
