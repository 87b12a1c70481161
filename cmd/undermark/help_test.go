package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
)

// theLibrarys are words that the library of the command line would say of its own.
var theLibrarys = []string{"Usage:", "Available Commands", "Global Flags", "help for", "version for", "for more information", "Help about", "autocompletion", "(default", "Flags:\n\n"}

func TestHelpIsInOurWords(t *testing.T) {
	root := newRoot(streams{in: strings.NewReader(""), out: &bytes.Buffer{}, err: &bytes.Buffer{}})
	for _, c := range append(shown(root), root) {
		args := append(strings.Fields(c.CommandPath())[1:], "--help")
		code, out, complaint := call("", args...)
		require.Zero(t, code, complaint)
		assert.Empty(t, complaint, args)
		assert.True(t, strings.HasPrefix(out, "undermark"), out)
		assert.Contains(t, out, c.Short+".\n", args)
		assert.Contains(t, out, "\n  -h, --help ", args)
		assert.Contains(t, out, "--book FILE", args)
		for _, words := range theLibrarys {
			assert.NotContains(t, out, words, args)
		}
		_, same, _ := call("", append([]string{"help"}, args[:len(args)-1]...)...)
		assert.Equal(t, out, same, args)
		for _, width := range []int{40, aloud.UsualWidth, widestHelp} {
			for line := range strings.SplitSeq(helpText(c, width), "\n") {
				assert.LessOrEqual(t, desk.Width(line), width, "%v: %q", args, line)
				assert.Equal(t, strings.TrimRight(line, " "), line)
			}
		}
	}
}

// Every command and every flag has its line.
func TestHelpNamesEveryCommand(t *testing.T) {
	_, out, _ := call("", "--help")
	for _, name := range []string{"check", "completion", "cutlist", "layout", "man", "marks", "new", "parts", "plan", "route", "rules", "suggest", "work"} {
		assert.Regexp(t, `(?m)^  `+name+` +[A-Z]`, out)
	}
	_, out, _ = call("", "help", "help")
	assert.True(t, strings.HasPrefix(out, "undermark help [COMMAND]\n"), out)
	_, out, _ = call("", "plan", "--help")
	for _, flag := range []string{"--around MM", "--from WHERE", "-o, --output FILE"} {
		assert.Regexp(t, `(?m)^  `+flag+` +[a-z]`, out)
	}
}
