//go:build !windows

package main

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
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

// testLine is a line that runs tests as the documents show it: what is set before it, and its arguments.
var testLine = regexp.MustCompile("`((?:[A-Z_]+=\\S+ )*)go test ([^`]+)`")

// testsOf are the names of tests, benchmarks and fuzz targets of packages, and the text of their files.
func testsOf(t *testing.T, packages []string) (names []string, text string) {
	for _, p := range packages {
		folder, below := strings.CutSuffix(p, "/...")
		root := filepath.Join("..", "..", folder)
		require.NoError(t, filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case e.IsDir() && path != root && !below:
				return fs.SkipDir
			case strings.HasSuffix(path, ".go"):
				source, err := os.ReadFile(path)
				require.NoError(t, err)
				text += string(source)
			}
			return nil
		}), p)
	}
	for _, found := range regexp.MustCompile(`(?m)^func ((?:Test|Benchmark|Fuzz)\w+)\(`).FindAllStringSubmatch(text, -1) {
		names = append(names, found[1])
	}
	return names, text
}

// Every line of the documents that runs tests names packages that are there, tests that they have, and settings that those heed; a long round has no end that
// the tool sets it.
func TestEveryDocumentedTestLineRunsSomething(t *testing.T) {
	notRaced(t)
	var lines int
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		document, err := os.ReadFile(filepath.Join("..", "..", name))
		require.NoError(t, err)
		for _, found := range testLine.FindAllStringSubmatch(string(document), -1) {
			lines++
			line, flags, packages := found[0], map[string]string{}, []string(nil)
			words := regexp.MustCompile(`'[^']*'|\S+`).FindAllString(found[2], -1)
			for i, word := range words {
				switch {
				case strings.HasPrefix(word, "./"):
					packages = append(packages, word)
				case word[0] == '-' && i+1 < len(words):
					flags[word[1:]] = strings.Trim(words[i+1], "'")
				}
			}
			require.NotEmpty(t, packages, line)
			names, text := testsOf(t, packages)
			for _, flag := range []string{"run", "bench", "fuzz"} {
				for _, pattern := range strings.Split(flags[flag], "|") {
					named := func(name string) bool { return regexp.MustCompile(pattern).MatchString(name) }
					assert.True(t, pattern == "" || pattern == "^$" || slices.ContainsFunc(names, named), "%s: nothing is called %s", line, pattern)
				}
			}
			for _, setting := range strings.Fields(found[1]) {
				key, value, _ := strings.Cut(setting, "=")
				assert.Contains(t, text, strconv.Quote(key), "%s: nobody asks for it", line)
				if n, err := strconv.Atoi(value); err == nil && n > 1 {
					assert.Equal(t, "0", flags["timeout"], "%s: it would be ended after ten minutes", line)
				}
			}
		}
	}
	assert.Greater(t, lines, 10)
}

// What changed is told by version and day, newest first.
func TestWhatChangedHasVersionsAndDays(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	require.NoError(t, err)
	_, changes, _ := strings.Cut(string(text), "\n## What changed\n")
	var versions, days []string
	for _, found := range regexp.MustCompile(`(?m)^### (\d+\.\d+\.\d+), (\d{4}-\d{2}-\d{2})\n[^\n#]`).FindAllStringSubmatch(changes, -1) {
		versions, days = append(versions, found[1]), append(days, found[2])
	}
	require.Equal(t, strings.Count(changes, "### "), len(versions), "each heading is a version and a day, and says something")
	require.Greater(t, len(versions), 2)
	for _, list := range [][]string{versions, days} {
		slices.Reverse(list)
		assert.True(t, slices.IsSorted(list), "newest first: %v", list)
	}
}
