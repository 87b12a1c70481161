package rules

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Whatever a workshop's book holds, each thing wrong with it has a line that says where, and a book that is taken judges a job: its
// findings are told to other programs, which no number without bounds can be.
func FuzzBook(f *testing.F) {
	for _, text := range []string{
		"", "format = 1\n", "format = 2\n", "rule = 1\n", "[[rule]]\n", "format = 1\n[[rule]]\nid = \"cut.clearance\"\nvalue = 25\nkinds = { \"brake line\" = 70 }\n",
		"format = 1\n[[rule]]\nid = \"exhaust.length\"\nvalue = 1e308\nsource = \"\\u001b[31m\"\n[[rule]]\nid = \"exhaust.fall\"\nvalue = -1e308\n",
		"format = 1\n[[rule]]\nid = \"cut.clearance\"\nvalue = 0x7fffffffffffffff\nsense = \"most\"\n",
		"format = 1\n[[rule]]\nid = \"exhaust.clearance\"\nkinds = { wiring = nan }\nsources = { wiring = \"\" }\n",
	} {
		f.Add([]byte(text))
	}
	job := vehicles.Demo()
	path := filepath.Join(f.TempDir(), "book.toml")
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 20000 {
			return
		}
		require.NoError(t, os.WriteFile(path, data, 0o600))
		book, err := LoadBook(path)
		if err != nil {
			for line := range strings.SplitSeq(err.Error(), "\n") {
				require.True(t, strings.HasPrefix(line, path+":"), "%q", line)
			}
			return
		}
		over := book.Over(Builtin())
		result, faults := Judge(job, over)
		if len(faults) > 0 {
			return // a book may hold less of a chain's closure than the sample's readings have
		}
		_, err = json.Marshal(result)
		require.NoError(t, err)
		_, err = json.Marshal(over)
		require.NoError(t, err)
	})
}
