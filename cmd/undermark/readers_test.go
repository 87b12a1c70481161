package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asked is what another program says of a text, which stands on its standard input.
func asked(t *testing.T, text, program string, args ...string) string {
	t.Helper()
	c := exec.Command(program, args...)
	c.Stdin = strings.NewReader(text)
	told, err := c.Output()
	require.NoError(t, err, "%s", told)
	return string(told)
}

// Tables for a spreadsheet are read by a reader that is not ours, strictly, cell by cell: also those of names that hold commas, quotes and signs.
func TestAnotherProgramReadsTheTables(t *testing.T) {
	needs(t, "python3")
	const strictly = "import csv, io, json, sys\nprint(json.dumps(list(csv.reader(io.StringIO(sys.stdin.buffer.read().decode('utf-8'), newline=''), strict=True))))"
	for _, job := range []string{demoFile(t), hostileFile(t)} {
		for _, command := range []string{"parts", "cutlist", "sizing"} {
			code, out, complaint := call("", command, "--csv", job)
			require.Zero(t, code, complaint)
			var theirs [][]string
			require.NoError(t, json.Unmarshal([]byte(asked(t, out, "python3", "-c", strictly)), &theirs))
			ours, err := csv.NewReader(strings.NewReader(out)).ReadAll()
			require.NoError(t, err)
			assert.Equal(t, ours, theirs, command)
			for _, row := range theirs {
				assert.Len(t, row, len(theirs[0]), "%s: each row has all columns", command)
			}
		}
	}
}

// What programs get is JSON by a reader that is not ours: UTF-8, no name twice in an object, no number that JSON has not.
func TestAnotherProgramReadsTheJSON(t *testing.T) {
	needs(t, "python3")
	const strictly = `import json, sys
def once(pairs):
    names = [name for name, _ in pairs]
    assert len(names) == len(set(names)), names
    return dict(pairs)
def none(word):
    raise ValueError(word)
for line in sys.stdin.buffer.read().decode('utf-8').splitlines():
    print(json.dumps(json.loads(line, object_pairs_hook=once, parse_constant=none)))`
	for _, job := range []string{demoFile(t), hostileFile(t)} {
		for _, command := range []string{"check", "marks", "parts", "cutlist", "sizing", "work"} {
			_, out, complaint := call("", command, "--json", job)
			require.NotEmpty(t, out, "%s: %s", command, complaint)
			theirs := asked(t, strings.ReplaceAll(strings.TrimSpace(out), "\n", " "), "python3", "-c", strictly)
			assert.JSONEq(t, out, theirs, command)
		}
	}
}

// Each view as a drawing is a document that others read: well-formed, drawn by a renderer that is not ours, its letters as letters.
func TestOthersReadEachView(t *testing.T) {
	notRaced(t)
	needs(t, "xmllint", "rsvg-convert")
	dir := t.TempDir()
	for _, job := range []string{demoFile(t), hostileFile(t)} {
		for _, view := range viewNames() {
			file := filepath.Join(dir, "view.svg")
			code, _, complaint := call("", "plan", job, "--from", view, "-o", file)
			if code != 0 {
				assert.Contains(t, complaint, "there is no", "%s of a job without it", view)
				continue
			}
			told, err := exec.Command("xmllint", "--noout", "--nonet", file).CombinedOutput()
			assert.NoError(t, err, "%s: %s", view, told)
			assert.Empty(t, string(told), view)
			told, err = exec.Command("rsvg-convert", "-w", "400", "-o", filepath.Join(dir, "view.png"), file).CombinedOutput()
			assert.NoError(t, err, "%s: %s", view, told)
			assert.Empty(t, string(told), view)
		}
	}
}

// Each PDF but the sheet, whose test says more, is one without a fault, all of its fonts within it.
func TestOthersReadEachPDF(t *testing.T) {
	needs(t, "qpdf", "pdffonts")
	job, dir := demoFile(t), t.TempDir()
	for name, args := range map[string][]string{
		"plan": {"plan", job}, "above": {"plan", job, "--from", "above"}, "template": {"template", job}, "letter": {"template", job, "--paper", "letter"},
		"customer": {"sheet", job, "--for", "customer"}, "hostile": {"sheet", hostileFile(t)}, "hostile template": {"template", hostileFile(t)},
	} {
		file := filepath.Join(dir, name+".pdf")
		code, _, complaint := call("", append(args, "-o", file)...)
		require.Zero(t, code, complaint)
		told, err := exec.Command("qpdf", "--check", file).CombinedOutput()
		assert.NoError(t, err, "%s: %s", name, told)
		assert.NotContains(t, string(told), "WARNING", name)
		told, err = exec.Command("pdffonts", file).CombinedOutput()
		require.NoError(t, err, "%s: %s", name, told)
		fonts := strings.Split(strings.TrimSpace(string(told)), "\n")[2:]
		assert.NotEmpty(t, fonts, name)
		for _, font := range fonts {
			assert.Regexp(t, `TrueType +Identity-H +yes \w+ +yes `, font, name)
		}
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.NotContains(t, string(data), "/URI", "%s: nothing in it leads elsewhere", name)
	}
}
