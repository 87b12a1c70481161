package main

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAMistypedCommandIsNamed(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"chek", "job.toml"}, `there is no command and no file "chek"; the nearest command is check`},
		{[]string{"chek", "--json", "job.toml"}, `there is no command and no file "chek"; the nearest command is check`},
		{[]string{"mraks"}, `there is no command and no file "mraks"; the nearest command is marks`},
		{[]string{"rule"}, `there is no command and no file "rule"; the nearest command is rules`},
		{[]string{"help", "suggets"}, `there is no command and no file "suggets"; the nearest command is suggest`},
		{[]string{"underneath"}, `there is no command and no file "underneath"`},
	} {
		code, out, complaint := call("", c.args...)
		assert.Equal(t, exitUsage, code, c.args)
		assert.Empty(t, out, c.args)
		assert.Equal(t, "undermark: "+c.want+"; see undermark --help\n", complaint, c.args)
	}
}

// A name with a dot or a slash is a file's, and so is that of a file.
func TestAFileIsNoMistypedCommand(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("chek", nil, 0o600))
	for _, file := range []string{"chek", "chek.toml", "./van"} {
		_, _, complaint := call("", file)
		assert.Contains(t, complaint, "the screens need a terminal", file)
		_, _, complaint = call("", file, "other.toml")
		assert.Contains(t, complaint, `the screens open one job at a time: leave "other.toml" out`, file)
	}
}

func TestWhatIsWrongWithAFlagIsToldInOurWords(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"check", "--foo", "x.toml"}, `there is no flag "--foo"; see undermark check --help`},
		{[]string{"check", "-x", "x.toml"}, `there is no flag "-x" in "-x"; see undermark check --help`},
		{[]string{"--json", "check", "x.toml"}, `there is no flag "--json"; see undermark --help`},
		{[]string{"check", "-o"}, `--output needs its FILE behind it; see undermark check --help`},
		{[]string{"check", "--json=maybe", "x.toml"}, `--json takes no value: leave "maybe" out; see undermark check --help`},
		{[]string{"check", "--=a", "x.toml"}, `"--=a" is no flag; see undermark check --help`},
		{[]string{"plan", "--around", "abc", "x.toml"}, `--around "abc": give its MM as a number; see undermark plan --help`},
		{[]string{"-"}, "the screens read no job from standard input: name its file; see undermark --help"},
		{[]string{"rules", "a", "b"}, `rules takes one job file: leave "b" out; see undermark rules --help`},
		{[]string{"man", "x"}, `man takes nothing behind it: leave "x" out; see undermark man --help`},
		{[]string{"new", "--from", "a", "--van", "b", "c.toml"}, `--from and --van both say which van: keep one of them; see undermark new --help`},
		{[]string{"completion", "foo"}, `completion needs one shell: bash, zsh, fish, powershell; see undermark completion --help`},
	} {
		code, out, complaint := call("", c.args...)
		assert.Equal(t, exitUsage, code, c.args)
		assert.Empty(t, out, c.args)
		assert.Equal(t, "undermark: "+c.want+"\n", complaint, c.args)
	}
}
