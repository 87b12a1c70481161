package main

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

const module = "module m\n\ngo 1.26\n"

// a package with a table beside it.
const code = `package m

import "strings"

func words(a, b string, n int) string {
	both := a + b
	n = n + 7
	return strings.Repeat(both, n)
}
`

const table = `# 12 in a remark
format = 1

[[rule]]
id = "a.rule" # 13
value = 20
[rule.kinds]
"2 kW" = 7.5
list = [30, 40]
`

func planted(t *testing.T) (dir string, all []fault) {
	t.Helper()
	dir = t.TempDir()
	for name, text := range map[string]string{"go.mod": module, "m.go": code, "m.toml": table} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	all, err := faultsOf(dir, "m")
	if err != nil {
		t.Fatal(err)
	}
	return dir, all
}

// Numbers of a table are made other, by the rule or the table they are of; those of texts and remarks are none.
func TestFaultsOfATable(t *testing.T) {
	_, all := planted(t)
	var got []string
	for _, f := range all {
		if f.table {
			got = append(got, fmt.Sprintf("%d %s %s=>%s", f.position.Line, f.function, f.source[f.position.Offset:f.end], f.with))
		}
	}
	want := []string{
		"2 - 1=>2", "6 a.rule 20=>200000", "6 a.rule 20=>24", "6 a.rule 20=>16", "8 a.rule 7.5=>75000", "8 a.rule 7.5=>9", "8 a.rule 7.5=>6",
		"9 a.rule 30=>300000", "9 a.rule 30=>36", "9 a.rule 30=>24", "9 a.rule 40=>400000", "9 a.rule 40=>48", "9 a.rule 40=>32",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	last := all[len(all)-1]
	if text := string(last.planted()); text != strings.Replace(table, "40", "32", 1) {
		t.Error(text)
	}
}

// A named constant is made ten times as large and a tenth, one that is worked out of another as well; texts and kinds are not.
func TestFaultsOfANamedConstant(t *testing.T) {
	const text = `package m

const one, word = 1.5, "x"
const (
	some kind = iota
	more
)
const other kind = 7
const none = -1
const fewer = one - 1

type kind int
`
	dir := t.TempDir()
	for name, text := range map[string]string{"go.mod": module, "m.go": text} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	all, err := faultsOf(dir, "m")
	if err != nil {
		t.Fatal(err)
	}
	check, err := newChecker(dir, ".")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, f := range all {
		if strings.HasPrefix(f.with, "(") {
			got = append(got, f.with)
			if !check.builds(f) {
				t.Errorf("%s does not build", f.key())
			}
		}
	}
	if want := []string{"(1.5) * 10", "(1.5) / 10", "(one - 1) * 10", "(one - 1) / 10"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A plus of texts turned to minus does not build, nor does a variable that nobody uses any more; a plus of numbers does.
func TestFaultsThatDoNotBuildAreNone(t *testing.T) {
	dir, all := planted(t)
	check, err := newChecker(dir, ".")
	if err != nil {
		t.Fatal(err)
	}
	builds := map[string]bool{}
	for _, f := range all {
		if !f.table {
			builds[strings.TrimPrefix(f.key(), "m/m.go words: ")] = check.builds(f)
		}
	}
	for key, want := range map[string]bool{
		"+ => - in: both := a + b": false, "+ => - in: n = n + 7": true, "7 => 9 in: n = n + 7": true, "n = n + 7 => nothing in: n = n + 7": true,
	} {
		if got, there := builds[key]; !there || got != want {
			t.Errorf("%s: %v, %v", key, got, there)
		}
	}
}

// Whoever changes code that a fault is explained of looks at it anew, before the next round stops at it.
func TestWhatIsExplainedIsAFault(t *testing.T) {
	dirs := map[string]bool{}
	p := planter{root: filepath.Join("..", "..", ".."), known: explainedFaults()}
	for key := range p.known {
		file, _, _ := strings.Cut(key, " ")
		dirs[path.Dir(file)] = true
	}
	if len(dirs) == 0 {
		t.Fatal("nothing is explained")
	}
	for p.dir = range dirs {
		all, err := faultsOf(filepath.Join(p.root, p.dir), p.dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range p.stale(all) {
			t.Errorf("no such fault any more: %s", key)
		}
	}
}

// A fault is caught by a test that fails by itself, too, or takes all its time; one that fails among others alone, as on a busy machine, says nothing.
func TestWhatCatchesAFault(t *testing.T) {
	const key = "m/m.go words: 7 => 9 in: n = n + 7"
	dir, all := planted(t)
	i := slices.IndexFunc(all, func(f fault) bool { return f.key() == key })
	if i < 0 {
		t.Fatal("no such fault")
	}
	for _, c := range []struct {
		tests, name, body string
		became            outcome
		by                string
	}{
		{"that look away", "TestNothing", `_ = flag.Arg`, survived, ""},
		{"that know", "TestLength", `if words("a", "b", -6) != "ab" { t.Fatal() }`, caught, " by TestLength"},
		{"that wait", "TestWait", `for words("a", "b", -7) != "" { time.Sleep(1) }`, caught, " by the time that TestWait took"},
		{"that crash", "TestCrash", `go func() { panic(words("a", "b", -6)) }(); select {}`, caught, " by a run that broke down"},
		{"in want of luck", "TestLuck", `if flag.Lookup("test.run").Value.String() == "" { t.Fatal() }`, survived, ", not by TestLuck, which failed among others alone"},
	} {
		text := "package m\nimport (\"flag\"; \"testing\"; \"time\")\nvar _, _ = flag.Arg, time.Now\nfunc " + c.name + "(t *testing.T) {\n" + c.body + "\n}\n"
		if err := os.WriteFile(filepath.Join(dir, "m_test.go"), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		p := planter{root: dir, dir: "."}
		if became, by := p.try(all[i], []round{{limit: 3 * time.Second}}); became != c.became || by != c.by {
			t.Errorf("tests %s: %v%s, want %v%s", c.tests, became, by, c.became, c.by)
		}
	}
}
