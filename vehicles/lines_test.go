package vehicles

import (
	"fmt"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// scribe writes a text of TOML and notes on which line each of its keys stands: what locate has to find again.
type scribe struct {
	t     *rapid.T
	text  strings.Builder
	line  int
	of    map[string]int
	count map[string]int // of the items of each list of tables
}

func (s *scribe) write(text string) {
	s.text.WriteString(text)
	s.line += strings.Count(text, "\n")
}

func (s *scribe) note(path string) {
	if _, there := s.of[path]; !there {
		s.of[path] = s.line
	}
}

// gap writes what may stand between two things: nothing, an empty line, a comment full of what looks like one.
func (s *scribe) gap() {
	s.write(rapid.SampledFrom([]string{"", "", "\n", "# [a.b]\n", "  # x = 1 \"\n\t\n", "# '''\n"}).Draw(s.t, "gap"))
}

func (s *scribe) end() {
	s.write(rapid.SampledFrom([]string{"\n", "\n", " # c = [\n", "\t\n"}).Draw(s.t, "end"))
}

// key draws a key that was not in this table yet, as it is written and as a path has it.
func (s *scribe) key(n int) (written, plain string) {
	plain = fmt.Sprintf("%s%d", rapid.SampledFrom([]string{"k", "a b", "x.y", "é", "[q]", "#"}).Draw(s.t, "key"), n)
	if bareKey(plain) && rapid.Bool().Draw(s.t, "bare") {
		return plain, plain
	}
	if rapid.Bool().Draw(s.t, "literal") {
		return "'" + plain + "'", plain
	}
	return `"` + plain + `"`, plain
}

// value writes a value and notes the places of a list's items.
func (s *scribe) value(path string, depth int) {
	switch rapid.IntRange(0, 6).Draw(s.t, "value") {
	case 0:
		s.write("12")
	case 1:
		s.write(rapid.SampledFrom([]string{`"a [b] # \" \\"`, `'c:\ "'`, `""`, "2026-11-25", "true", "-1.5e3"}).Draw(s.t, "word"))
	case 2:
		s.write("\"\"\"\n[not.a.table]\nk = 1 \\\"\"\" # \\\\\n\"\"\"")
	case 3:
		s.write("'''\n[[nor]]\nthis\n'''")
	case 4:
		if depth == 0 {
			s.write("{ in = 1, 'side out' = [ 2, 3 ] }")
			return
		}
		s.write("0")
	default:
		s.list(path, depth)
	}
}

func (s *scribe) list(path string, depth int) {
	s.write("[")
	for i := range rapid.IntRange(0, 3).Draw(s.t, "items") {
		s.write(rapid.SampledFrom([]string{"", " ", "\n", " # ]\n  "}).Draw(s.t, "before"))
		at := joinIndex(path, i)
		s.note(at)
		if depth > 1 {
			s.write("7")
		} else {
			s.value(at, depth+1)
		}
		s.write(",")
	}
	s.write(rapid.SampledFrom([]string{"", "\n", "# [\n"}).Draw(s.t, "behind") + "]")
}

// table writes a header, at times of a list, and some keys.
func (s *scribe) table(n int) {
	s.gap()
	written, plain := s.key(n)
	path := joinKey("", plain)
	if n > 0 && rapid.Bool().Draw(s.t, "list") {
		path = "many"
		s.note(path)
		path = joinIndex(path, s.count["many"])
		s.count["many"]++
		s.note(path)
		s.write("[[ many ]]")
	} else {
		s.note(path)
		s.write("[" + written + "]")
	}
	s.end()
	for k := range rapid.IntRange(0, 4).Draw(s.t, "keys") {
		s.gap()
		written, plain := s.key(k)
		at := joinKey(path, plain)
		s.note(at)
		s.write(rapid.SampledFrom([]string{"", " ", "\t"}).Draw(s.t, "indent") + written + " = ")
		s.value(at, 0)
		s.end()
	}
}

func TestEveryKeyIsOnTheLineItWasWrittenOn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := scribe{t: t, line: 1, of: map[string]int{}, count: map[string]int{}}
		for n := range rapid.IntRange(1, 5).Draw(t, "tables") {
			s.table(n)
		}
		text := s.text.String()
		var values map[string]any
		_, err := toml.Decode(text, &values)
		require.NoError(t, err, "the scribe writes TOML:\n%s", text)
		for _, dress := range []string{text, "\ufeff" + text, strings.ReplaceAll(text, "\n", "\r\n")} {
			at := locate(dress)
			for path, line := range s.of {
				require.Equal(t, line, at.find(path), "%s of\n%s", path, text)
				require.Equal(t, line, at.find(path+".nothing.there"), "what is not there is looked for round what is")
			}
			require.Zero(t, at.open)
			require.Empty(t, at.newer)
		}
	})
}

// What is never closed is found where it starts, whatever stands before it.
func TestWhatIsNeverClosedIsFoundWhereItStarts(t *testing.T) {
	for _, quote := range []string{`"""`, "'''"} {
		for before := range 4 {
			text := strings.Repeat("a = \"x\" # '''\n", before) + "b = " + quote + "\nmore\nand more"
			assert.Equal(t, before+1, locate(text).open, text)
		}
		assert.Zero(t, locate("a = "+quote+"x"+quote+"\n").open)
		assert.Zero(t, locate("a = "+quote+"x"+quote+quote[:2]+"\n").open, "two more quotes belong to the text")
	}
	for _, text := range []string{"", "a", "a =", "a = [", "a = {", "[", "[[", "[a", "a = \"", "a = '", "a.", "\"", "= 1", "]", "}", "a = \"\\", "a = \"\"\"\\"} {
		assert.NotPanics(t, func() { locate(text).find("a") }, text)
	}
}
