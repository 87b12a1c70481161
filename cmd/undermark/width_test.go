//go:build !windows

package main

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// answers are commands that answer people with lists and tables, and some that refuse.
var answers = [][]string{
	{"check", "--next", filepath.Join(cases, "24-everything.toml")},
	{"marks", filepath.Join(cases, "24-everything.toml")},
	{"suggest", filepath.Join(cases, "24-everything.toml")},
	{"route", "exhaust", "--edge", "left", filepath.Join(cases, "01-wide-floor.toml")},
	{"rules"},
	{"--help"},
	{"layout", filepath.Join(cases, "01-wide-floor.toml")},
	{"cutlist", filepath.Join(cases, "24-everything.toml")},
	{"check", "nowhere/van.toml"},
	{"check", filepath.Join(cases, "01-wide-floor.toml"), "--book", "nowhere.toml"},
	{"suggest", filepath.Join(cases, "01-wide-floor.toml"), "--near", "1000"},
	{"chekc", filepath.Join(cases, "01-wide-floor.toml")},
}

// shownAt is what a command writes on a terminal so wide.
func shownAt(t *testing.T, width int, args ...string) string {
	s := newHome(t).start(t, width, 24, args...)
	<-s.done
	_ = s.cmd.Wait() // the exit code is of no matter here
	return strings.ReplaceAll(s.output(), "\r\n", "\n")
}

// left is what stays of an output: how far the program is is written over, and fits the terminal, too.
func left(t *testing.T, out string, width int) string {
	lines := strings.Split(out, "\n")
	for i, line := range lines {
		over := strings.LastIndexAny(line, "\r\b")
		for _, part := range strings.FieldsFunc(line[:over+1], func(r rune) bool { return r == '\r' || r == '\b' }) {
			assert.LessOrEqual(t, ansi.StringWidth(part), width, "%q", part)
		}
		lines[i] = line[over+1:]
	}
	return strings.Join(lines, "\n")
}

// wordsOf are the words of a text, each once, whatever lines they stand in.
func wordsOf(text string) map[string]bool {
	all := map[string]bool{}
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" \n\t,;:.()", r) }) {
		all[word] = true
	}
	return all
}

// No line is wider than the terminal, and every word and figure that a pipe gets stands on it.
func TestAnswersFitTheTerminal(t *testing.T) {
	notRaced(t)
	for _, args := range answers {
		cmd := exec.Command(program, args...)
		cmd.Env = newHome(t).env()
		piped, _ := cmd.CombinedOutput() // as above
		require.NotEmpty(t, piped, args)
		for _, width := range []int{50, 80, 130} {
			out := left(t, shownAt(t, width, args...), width)
			for line := range strings.SplitSeq(out, "\n") {
				assert.LessOrEqual(t, ansi.StringWidth(line), width, "%v: %q", args, line)
				assert.Equal(t, strings.TrimRight(line, " "), line, args)
			}
			there := wordsOf(strings.ToLower(strings.ReplaceAll(out, "-\n", "-")))
			joined := strings.ToLower(strings.Join(strings.Fields(out), ""))
			for word := range wordsOf(string(piped)) {
				word = strings.ToLower(word)
				if word == "verdict" || word == "danger" || word == "mark" {
					continue // what stands for itself at the start of a record has no name before it
				}
				assert.True(t, there[word] || strings.Contains(joined, word), "%v at %d: %q", args, width, word)
			}
		}
	}
}

// Into a pipe goes a line for each thing, its cells parted by tabs, as grep and cut take them.
func TestAnswersIntoAPipeAreLines(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	_, out, _ := call("", "check", filepath.Join(cases, "24-everything.toml"))
	assert.Contains(t, out, "\nverdict\tdanger\tof\tfound\t± 95 %\tasked for\tmargin\twhy\n")
	assert.Contains(t, out, "\nfoul\tcan kill\tcollar through the floor\t-5 mm\t\tat least 2 mm\t7 mm short\tcollar 7 mm too short\n")
	assert.Contains(t, out, "\nNeither entered nor looked for within 300 mm (12 in) of the cut: spare wheel\n")
	_, out, _ = call("", answers[1]...)
	assert.Contains(t, out, "\nclip 1\t1371.1\t851.6\t878.4\n")
	_, out, _ = call("", answers[4]...)
	for line := range strings.Lines(out) {
		assert.Equal(t, 6, strings.Count(line, "\t"), line)
	}
}

func TestATableThatIsTooWideHasARecordARow(t *testing.T) {
	g := grid{[]string{"of", "found", "± 95 %", "why"}, [][]string{
		{"brake pipe", "-24.6 mm", "± 3 mm", "too close to call: measure again or move"},
		{"stub", "90°", "", ""},
	}, 1, 3}
	for width, want := range map[int]string{
		60: "of          found     ± 95 %  why\n" +
			"brake pipe  -24.6 mm  ± 3 mm  too close to call: measure\n" +
			"                              again or move\n" +
			"stub         90°\n",
		40: "brake pipe\n" +
			"    found -24.6 mm, ± 3 mm (95 %)\n" +
			"    why: too close to call: measure\n" +
			"    again or move\n" +
			"stub\n" +
			"    found 90°\n",
		22: "brake pipe\n" +
			"    found -24.6 mm,\n" +
			"    ± 3 mm (95 %)\n" +
			"    why: too close to\n" +
			"    call: measure\n" +
			"    again or move\n" +
			"stub\n" +
			"    found 90°\n",
		0: "of\tfound\t± 95 %\twhy\nbrake pipe\t-24.6 mm\t± 3 mm\ttoo close to call: measure again or move\nstub\t90°\t\t\n",
	} {
		p := paper{width: width}
		p.grid(g)
		assert.Equal(t, want, p.String(), width)
	}
}

// A unit stays with its figure, where a row is a record too; without a figure there is none.
func TestAUnitStaysWithItsFigure(t *testing.T) {
	g := grid{[]string{"part", "wanted", "buy", "", "note"}, [][]string{{"cable", "8.4", "8.4", "m", "plus"}, {"tape", "", "", "m", ""}}, 1, 3}
	p := paper{width: 20}
	p.records(g)
	assert.Equal(t, "cable\n    wanted 8.4,\n    buy 8.4 m\n    note: plus\ntape\n", p.String())
}
