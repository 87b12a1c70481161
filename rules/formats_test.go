package rules

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// earlier are job files as earlier versions of the program had them, with the verdict that they come to. None of them is ever changed:
// what they hold is what lies on other people's disks.
var earlier = map[string]Verdict{
	"1-the-first.toml": Foul, "2-the-first-everything.toml": Foul, "3-the-first-muffler.toml": Foul, "4-matching-points.toml": Foul,
	"5-holes-and-swages.toml": Foul, "6-looked-round-runs.toml": Foul, "7-a-library-van.toml": Clear, "8-runs-in-full.toml": Foul, "9-sizes.toml": Foul,
	"10-where-it-goes.toml": Foul, "11-as-taped.toml": Foul, "12-built-and-done.toml": Foul, "13-sides-off-level.toml": Clear, "14-centre-moved.toml": Foul,
}

// A job of every earlier version is read, judged and saved, and no value in it is lost by that.
func TestAJobOfEveryEarlierVersionIsReadJudgedAndSaved(t *testing.T) {
	folder := filepath.Join("..", "testdata", "formats")
	files, err := filepath.Glob(filepath.Join(folder, "*.toml"))
	require.NoError(t, err)
	require.Len(t, files, len(earlier))
	for _, file := range files {
		name := filepath.Base(file)
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		job, err := vehicles.ParseJob(text, name, Builtin())
		require.NoError(t, err, name)
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults, name)
		assert.Equal(t, earlier[name], result.Verdict, name)
		saved := filepath.Join(t.TempDir(), name)
		_, _, err = vehicles.SaveAs(saved, job, Builtin())
		require.NoError(t, err, name)
		again, err := vehicles.Load(saved, Builtin())
		require.NoError(t, err, name)
		assert.Equal(t, job, again.Job, name)
		kept, err := os.ReadFile(saved)
		require.NoError(t, err)
		var before, after map[string]any
		require.NoError(t, toml.Unmarshal(text, &before))
		require.NoError(t, toml.Unmarshal(kept, &after))
		assert.Empty(t, lost(before, after, ""), name)
	}
}

// unsaid are keys with what holds without them, and is not written.
var unsaid = map[string]bool{"measured": true, "use": true, "shielded": false}

// lost are the paths of what stands in one file and not, or otherwise, in another.
func lost(before, after any, path string) (paths []string) {
	switch was := before.(type) {
	case map[string]any:
		is, _ := after.(map[string]any)
		for key, value := range was {
			if now, there := is[key]; there {
				paths = append(paths, lost(value, now, path+"."+key)...)
			} else if usual, has := unsaid[key]; !has || value != usual {
				paths = append(paths, path+"."+key)
			}
		}
		return paths
	case []map[string]any:
		is, _ := after.([]map[string]any)
		if len(is) != len(was) {
			return []string{path}
		}
		for i := range was {
			paths = append(paths, lost(was[i], is[i], fmt.Sprintf("%s[%d]", path, i))...)
		}
		return paths
	case []any:
		is, _ := after.([]any)
		if len(is) != len(was) {
			return []string{path}
		}
		for i := range was {
			paths = append(paths, lost(was[i], is[i], fmt.Sprintf("%s[%d]", path, i))...)
		}
		return paths
	}
	if fmt.Sprint(before) != fmt.Sprint(after) {
		return []string{path}
	}
	return nil
}
