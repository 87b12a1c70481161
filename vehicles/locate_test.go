package vehicles

import (
	"regexp"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEveryKeyIsFoundOnItsLine(t *testing.T) {
	at := locate(`# [not.a.table]
format = 1
"quoted key" . 'and.another' = { a = 1, "b" = [1, [2, 3]] }

[[thing]]   # first
name = "[[thing]]"
path = [
  [1, 2], # [

  [3, "]"],
]
[[thing.part]]
size = 3
[[thing.part]]
size = 4
[[thing]]
name = '''
[[thing]]
'''
note = """ "" \""" # """
[thing.box.deep]
x = 1
[[thing.part]]
size = 5
[ last . "one" ]
when = 1979-05-27 07:32:00 # then
end = 'x'`)
	for path, line := range map[string]int{
		"format": 2, `"quoted key"."and.another"`: 3, `"quoted key"."and.another".b[1][0]`: 3,
		"thing": 5, "thing[0]": 5, "thing[0].name": 6, "thing[0].path": 7, "thing[0].path[0][1]": 8,
		"thing[0].path[1]": 10, "thing[0].path[1][1]": 10, "thing[0].part[0].size": 13, "thing[0].part[1]": 14,
		"thing[0].part[1].size": 15, "thing[1]": 16, "thing[1].name": 17, "thing[1].note": 20,
		"thing[1].box.deep.x": 22, "thing[1].part[0].size": 24, "last.one": 25, "last.one.when": 26, "last.one.end": 27,
		"thing[0].part[1].missing": 14, "thing[1].path[3][1]": 16, "nowhere": 1, "": 1, "last.one.gone[4].x": 25,
	} {
		assert.Equal(t, line, at.find(path), path)
	}
}

var indices = regexp.MustCompile(`\[\d+\]`)

// The TOML library names the keys of a text it accepts; each of them must have been found.
func FuzzEveryKeyTheLibraryKnowsIsFound(f *testing.F) {
	for _, b := range broken {
		f.Add(head + b.text)
	}
	for _, file := range sampleJobs(f) {
		f.Add(string(mustRead(f, file)))
	}
	f.Add("a.\"b c\".'d.e' = {x = [1, {y = 2}], \"\" = \"\"\"\n\\\"\"\"\"}\n[[a.q]]\n[a.q.r]\n")
	f.Fuzz(func(t *testing.T, text string) {
		at := locate(text)
		var values map[string]any
		if len(text) > 10000 || tooDeep([]byte(text)) > 0 {
			return
		}
		md, err := toml.Decode(text, &values)
		if err != nil {
			return
		}
		if len(at.newer) > 0 { // the library knows a later TOML: such a file is refused, with the line
			_, wrong := decode([]byte(text))
			require.NotNil(t, wrong, "%q", text)
			return
		}
		located := map[string]bool{}
		for path, line := range at.of {
			located[withoutIndices(path)] = true
			require.LessOrEqual(t, line, strings.Count(text, "\n")+1)
		}
		for _, key := range md.Keys() {
			path := ""
			for _, part := range key {
				path = joinKey(path, part)
			}
			require.True(t, located[path], "%q of %q", path, text)
		}
	})
}

// withoutIndices takes the list indices out of a path, but not what looks like one inside quotes.
func withoutIndices(path string) string {
	parts := pathParts().FindAllString(path, -1)
	kept := parts[:0]
	for _, part := range parts {
		if !indices.MatchString(part) || strings.HasPrefix(part, `"`) {
			kept = append(kept, part)
		}
	}
	return strings.Join(kept, ".")
}
