package main

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
)

// cases are the sample jobs of the contract with their results, worked out by other programs (see their README).
const cases = "../../testdata/cases"

// call runs the program without a terminal.
func call(in string, args ...string) (code int, out, complaint string) {
	var o, e bytes.Buffer
	code = run(args, streams{in: strings.NewReader(in), out: &o, err: &e})
	return code, o.String(), e.String()
}

// sampleJobs are the files of the cases, none of them missing.
func sampleJobs(t *testing.T) []string {
	files, err := filepath.Glob(filepath.Join(cases, "*.toml"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 24)
	return files
}

// expected is what a case says of its job.
type expected struct {
	Exit  int
	Says  string
	Check *struct {
		Verdict  string
		Findings []struct{ ID string }
	}
}

func expectedOf(t *testing.T, file string) (want expected) {
	text, err := os.ReadFile(strings.TrimSuffix(file, ".toml") + ".expect.json")
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &want))
	return want
}

// checked is what check --json says.
type checked struct {
	Format   int
	Verdict  string
	Findings []struct{ ID, Verdict string }
}

// exitFor is the exit code for a verdict.
var exitFor = map[string]int{"clear": 0, "doubtful": exitDoubtful, "foul": exitFoul}

// only is the exit code of the findings of some rules.
func (c checked) only(ids map[string]bool) (code int) {
	for _, f := range c.Findings {
		if ids[f.ID] {
			code = max(code, exitFor[f.Verdict])
		}
	}
	return code
}

func TestExitCodesAreThoseOfTheCases(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	answered := 0
	ids := map[string]bool{} // of the rules that the cases were worked out for
	for _, file := range sampleJobs(t) {
		if want := expectedOf(t, file); want.Check != nil {
			for _, f := range want.Check.Findings {
				ids[f.ID] = true
			}
		}
	}
	for _, file := range sampleJobs(t) {
		want := expectedOf(t, file)
		if want.Check == nil {
			continue
		}
		answered++
		code, out, complaint := call("", "check", "--json", file)
		assert.Empty(t, complaint, file)
		assert.Equal(t, 1, strings.Count(out, "\n"), "%s: one object, one line", file)
		var got checked
		require.NoError(t, json.Unmarshal([]byte(out), &got))
		assert.Equal(t, 1, got.Format)
		assert.Equal(t, exitFor[got.Verdict], code, file)
		assert.Equal(t, want.Exit, got.only(ids), file)
		code, out, complaint = call("", "marks", "--json", file)
		assert.Zero(t, code, file)
		assert.Empty(t, complaint, file)
		assert.True(t, json.Valid([]byte(out)), file)
	}
	assert.GreaterOrEqual(t, answered, 23)
}

func TestAJobThatContradictsItselfIsRefusedOnOneLine(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	refused := 0
	for _, file := range sampleJobs(t) {
		want := expectedOf(t, file)
		if want.Check != nil {
			continue
		}
		refused++
		for _, command := range []string{"check", "marks"} {
			code, out, complaint := call("", command, "--json", file)
			assert.Equal(t, exitFailed, code, file)
			assert.Empty(t, out, file)
			assert.Contains(t, complaint, want.Says, file)
			assert.Regexp(t, `^`+regexp.QuoteMeta(file)+`:\d+: [^\n]+\n$`, complaint, file)
		}
	}
	assert.Positive(t, refused)
}

func TestSeveralJobsGiveALineEachAndTheWorstCode(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	files := sampleJobs(t)
	var good []string
	worst := 0
	for _, f := range files {
		if code, _, _ := call("", "check", f); code != exitFailed {
			good, worst = append(good, f), max(worst, code)
		}
	}
	code, out, _ := call("", append([]string{"check", "--json"}, good...)...)
	assert.Equal(t, worst, code)
	assert.Equal(t, len(good), strings.Count(out, "\n"))

	code, out, complaint := call("", "check", "--json", good[0], "nowhere.toml", good[1])
	assert.Equal(t, exitFailed, code)
	assert.Equal(t, 2, strings.Count(out, "\n"), "the others are answered")
	assert.Regexp(t, `^nowhere.toml: [^\n]+\n$`, complaint)
}

func TestStandardInputIsAJob(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	file := sampleJobs(t)[0]
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	code, want, _ := call("", "check", "--json", file)
	codeIn, got, _ := call(string(text), "check", "--json", "-")
	assert.Equal(t, code, codeIn)
	assert.Equal(t, want, got)
	code, _, complaint := call("format = 1\n[job]\n", "check", "-")
	assert.Equal(t, exitFailed, code)
	assert.Regexp(t, `^-:\d+: `, complaint)
}

func TestTheCommandLineIsChecked(t *testing.T) {
	for _, args := range [][]string{
		{"check"}, {"marks", "--json"}, {"check", "--jsn", "x.toml"}, {"a.toml", "b.toml"}, {"--nothing"},
		{"rules", "a", "b"}, {"check", "-o"},
	} {
		code, out, complaint := call("", args...)
		assert.Equal(t, exitUsage, code, "%v", args)
		assert.Empty(t, out)
		assert.Regexp(t, `^undermark: [^\n]+--help\n$`, complaint, "%v", args)
	}
}

func TestAnswersGoToAFileAllAtOnce(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	file, to := sampleJobs(t)[0], filepath.Join(t.TempDir(), "out.json")
	_, want, _ := call("", "marks", "--json", file)
	code, out, complaint := call("", "marks", "--json", "-o", to, file)
	assert.Zero(t, code)
	assert.Empty(t, out+complaint)
	got, err := os.ReadFile(to)
	require.NoError(t, err)
	assert.Equal(t, want, string(got))
	code, _, complaint = call("", "marks", "-o", filepath.Join(to, "below a file"), file)
	assert.Equal(t, exitFailed, code)
	assert.Equal(t, 1, strings.Count(complaint, "\n"))
	code, _, complaint = call("", "marks", "-o", filepath.Join(to, "below a file"), file, "nowhere.toml")
	assert.Equal(t, exitFailed, code)
	assert.Equal(t, 2, strings.Count(complaint, "\n"), "both are told")
}

func TestRulesAreListedWithAnotherBook(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	book := filepath.Join(t.TempDir(), "book.toml")
	text := "format = 1\n[[rule]]\nid = \"exhaust.length\"\nvalue = 1234\nsource = \"our heater's sheet\"\n"
	require.NoError(t, os.WriteFile(book, []byte(text), 0o644))
	type listing struct {
		Rules []struct {
			ID, Kind, Unit, Sense, Title, Source, Book string
			Value                                      *float64
		}
	}
	var usual, own listing
	code, out, complaint := call("", "rules", "--json")
	require.Zero(t, code, complaint)
	require.NoError(t, json.Unmarshal([]byte(out), &usual))
	code, out, complaint = call("", "rules", "--json", "--book", book)
	require.Zero(t, code, complaint)
	require.NoError(t, json.Unmarshal([]byte(out), &own))
	require.Len(t, own.Rules, len(usual.Rules))
	changed := 0
	for i, r := range own.Rules {
		assert.Contains(t, []string{"least", "most"}, r.Sense, r.ID)
		assert.NotEmpty(t, r.Source, r.ID)
		if r != usual.Rules[i] && (r.Value == nil || usual.Rules[i].Value == nil || *r.Value != *usual.Rules[i].Value) {
			changed++
			assert.Equal(t, "exhaust.length", r.ID)
			assert.Equal(t, 1234.0, *r.Value)
			assert.Equal(t, "our heater's sheet", r.Source)
		}
	}
	assert.Equal(t, 1, changed)
	code, _, complaint = call("", "rules", "--book", "nowhere.toml")
	assert.Equal(t, exitFailed, code)
	assert.Regexp(t, `^nowhere.toml: [^\n]+\n$`, complaint)
}

func TestPeopleAreAnsweredInWords(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	file := sampleJobs(t)[0]
	_, out, _ := call("", "check", file)
	assert.Contains(t, out, "Neither entered nor looked for")
	assert.NotContains(t, out, "sigma")
	_, out, _ = call("", "marks", file)
	assert.Contains(t, out, "cut centre")
	_, out, _ = call("", "rules")
	assert.Contains(t, out, "exhaust.length")
}

// Rules stand by group, each with what a fault can do; for programs every one has its weight.
func TestRulesHaveTheirWeight(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	_, out, _ := call("", "rules")
	var groups []string
	for line := range strings.Lines(out) {
		cells := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		require.Len(t, cells, 7, line)
		groups = append(groups, cells[6])
	}
	var want []string
	for i := range rules.Groups {
		want = append(want, rules.Groups[i].Name)
	}
	assert.Equal(t, want, slices.Compact(groups))
	assert.Regexp(t, `(?m)^exhaust\.outlet\tat least \d+ mm\tcan kill\t`, out)
	assert.Regexp(t, `(?m)^cut\.clearance\tat least \d+ mm\tdamage\t`, out)
	assert.Regexp(t, `(?m)^cut\.clearance\.brake line\tat least \d+ mm\tcan kill\t`, out)
	_, text, _ := call("", "rules", "--json")
	var listed struct {
		Rules []struct {
			ID, Kind string
			Weight   int
		}
	}
	require.NoError(t, json.Unmarshal([]byte(text), &listed))
	assert.Equal(t, len(listed.Rules), strings.Count(out, "\tbuilt in\t"), "all of them for people too")
	for _, r := range listed.Rules {
		assert.Contains(t, []int{1, 2, 3}, r.Weight, r.ID)
		if r.Kind == "fuel tank.diesel" {
			assert.Equal(t, 3, r.Weight, r.ID)
		}
	}
}

// What to measure next is one array more in the same object, and a list for people.
func TestNextIsAddedToTheAnswer(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	advised := 0
	for _, file := range sampleJobs(t) {
		if expectedOf(t, file).Check == nil {
			continue
		}
		code, plain, _ := call("", "check", "--json", file)
		codeNext, with, complaint := call("", "check", "--json", "--next", file)
		assert.Equal(t, code, codeNext, file)
		assert.Empty(t, complaint, file)
		var got struct {
			Next *[]struct {
				Text, Field          string
				Obstruction, Decides *int
				Gain                 *float64
			}
		}
		require.NoError(t, json.Unmarshal([]byte(with), &got), file)
		require.NotNil(t, got.Next, "%s: an empty list is a list", file)
		before, _, _ := strings.Cut(with, `,"next":`)
		assert.Equal(t, strings.TrimSuffix(plain, "}\n"), before, "%s: the rest is as it was", file)
		_, text, _ := call("", "check", "--next", file)
		last := 1 << 30
		for _, a := range *got.Next {
			advised++
			assert.Contains(t, text, "  "+a.Text+"\n", file)
			require.NotNil(t, a.Obstruction)
			require.NotNil(t, a.Decides)
			require.NotNil(t, a.Gain)
			assert.LessOrEqual(t, *a.Decides, last, "%s: the best first", file)
			last = *a.Decides
		}
		if len(*got.Next) == 0 {
			assert.Regexp(t, "Measure next: (no reading would decide|[^:]*: measure [a-z]+ again|no reading is in doubt; (1 kind was|\\d+ kinds were) not looked for|nothing more; no verdict)", text)
		}
	}
	assert.Greater(t, advised, 10)
}

func TestMarksListTheDiagonals(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	_, out, _ := call("", "marks", filepath.Join(cases, "24-everything.toml"))
	assert.Regexp(t, `diagonal: plate 1 to plate 3\t[0-9.]+\n`, out)
	assert.Regexp(t, `diagonal: left pin to floor, front right\t[0-9.]+\n`, out)
}

func TestCompletionForEveryShell(t *testing.T) {
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		code, out, complaint := call("", "completion", shell)
		assert.Zero(t, code, complaint)
		assert.Contains(t, out, "undermark")
		assert.Greater(t, strings.Count(out, "\n"), 50)
	}
}

// A shell that reads the completion finds commands, then what they are about, then job files. What the script asks for words of the line and for files is of the shell's
// completion package, for which two functions stand here.
func TestAShellCompletesALine(t *testing.T) {
	notRaced(t)
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("bash reads its completion; it is not here")
	}
	const script = `_get_comp_words_by_ref() { words=("${COMP_WORDS[@]}"); cword=$COMP_CWORD; cur=${words[cword]}; prev=${words[cword-1]}; }
_filedir() { COMPREPLY=("files:$1"); }
source <("$1" completion bash); complete -p undermark
COMP_WORDS=("$@"); COMP_CWORD=$(($#-1)); COMP_LINE="$*"; COMP_POINT=${#COMP_LINE}
__start_undermark 2>/dev/null; echo "${COMPREPLY[*]}"`
	for line, found := range map[string]string{
		"che": "check", "su": "suggest", "check ": "files:toml|", "check a.toml ": "files:toml|", "route ": "exhaust intake fuel both", "route intake ": "files:toml|",
	} {
		words := append([]string{"--norc", "--noprofile", "-c", script, "-", program}, strings.Split(line, " ")...)
		out, err := exec.Command(bash, words...).CombinedOutput()
		require.NoError(t, err, "%s", out)
		registered, said, _ := strings.Cut(string(out), "\n")
		assert.Contains(t, registered, "-o default -F __start_undermark undermark", "where nothing is found the shell looks for files")
		assert.Equal(t, found, strings.TrimSpace(said), "%q", line)
	}
	for line, directive := range map[string]string{"my-v": ":0\n", "a.toml ": ":4\n"} { // any file; no further one
		_, out, _ := call("", append([]string{"__complete"}, strings.Split(line, " ")...)...)
		assert.Equal(t, directive, out, "%q", line)
	}
}

// The macros are those of man(7), from memory.
func TestTheManualPage(t *testing.T) {
	code, page, complaint := call("", "man")
	require.Zero(t, code, complaint)
	for _, part := range []string{
		".TH UNDERMARK 1", ".SH NAME", ".SH SYNOPSIS", ".SS check", ".SS marks", ".SS rules", `\-\-json`, `\-\-book FILE`,
		`\-\-help`, `\-\-version`, ".SH EXIT STATUS",
	} {
		assert.Contains(t, page, part)
	}
	for _, line := range strings.Split(page, "\n") {
		if strings.HasPrefix(line, ".") {
			assert.Regexp(t, `^\.(TH|SH|SS|PP|TP|B|br|EX|EE)( |$)`, line)
		}
	}
	assert.Equal(t, `\&.x\e\-`, escaped(`.x\-`))
}

// A person waits for the shell's completion at every Tab: 10 ms goes unnoticed.
func BenchmarkHelp(b *testing.B) {
	for b.Loop() {
		require.NoError(b, exec.Command(program, "--help").Run())
	}
}

// What is there and nobody has said how is told to people beside what is missing, and to programs in a list of its own.
func TestCheckTellsWhatNobodyHasSaid(t *testing.T) {
	const job = "../../testdata/rules/muffler.drain/pass-nobody-has-looked.toml"
	_, out, _ := call("", "check", job)
	for _, item := range []string{"deck: steel or timber", "wood, foam or lining on the deck", "where the heater's air comes from", "muffler drain"} {
		assert.Contains(t, out, "\nNot checked, nobody has said: "+item+"\n")
	}
	_, out, _ = call("", "check", "--json", job)
	assert.Contains(t, out, `"unanswered":["muffler drain"`)
	_, out, _ = call("", "check", "--json", "../../testdata/rules/muffler.drain/pass-points-down.toml")
	assert.NotContains(t, out, "muffler drain")
}
