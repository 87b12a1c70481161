package main

import (
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/words"
)

func TestLayoutAnswersPeopleAndPrograms(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	job := filepath.Join(cases, "09-things-above.toml")
	code, out, complaint := call("", "layout", "--json", job)
	require.Contains(t, []int{0, exitFoul}, code, complaint)
	var said struct {
		Layouts []struct {
			At              []float64
			Yaw             float64
			Edge, Verdict   string
			Margin          *float64
			Exhaust, Intake struct{ Path [][]float64 }
			Breaks          []map[string]any
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	require.NotEmpty(t, said.Layouts)
	for _, l := range said.Layouts {
		assert.Len(t, l.At, 2)
		assert.NotEmpty(t, l.Exhaust.Path)
		assert.NotEmpty(t, l.Intake.Path)
		assert.Equal(t, l.Verdict == "foul", len(l.Breaks) > 0)
	}
	assert.Equal(t, said.Layouts[0].Verdict == "foul", code == exitFoul)
	again, people, _ := call("", "layout", job)
	assert.Equal(t, code, again)
	assert.Contains(t, people, "exhaust\t1\t")
	assert.Equal(t, len(said.Layouts), strings.Count(people, ", exhaust out "))
	assert.Equal(t, len(said.Layouts) < 3, strings.Contains(people, words.NoMoreLayouts))
}

func TestLayoutNeedsAHeater(t *testing.T) {
	code, out, complaint := call(bareJob, "layout", "-")
	assert.Equal(t, 1, code)
	assert.Empty(t, out)
	assert.Equal(t, "-:1: there is no [heater] to lay out: enter one\n", complaint)
}

// The layouts of a van that has no clear one are not surely those that break the rules by least: nobody is told that nothing comes nearer.
func TestLayoutsThatBreakRulesAreCalledNearMisses(t *testing.T) {
	job := filepath.Join(t.TempDir(), "van.toml")
	code, _, complaint := call("", "new", "--van", "short-van", job)
	require.Zero(t, code, complaint)
	code, out, _ := call("", "layout", job)
	require.Equal(t, exitFoul, code)
	head := strings.SplitN(out, "\n", 2)[0]
	assert.Contains(t, head, "none tried keeps every rule")
	assert.Contains(t, head, "near misses")
	assert.NotContains(t, head, "nearest")
	_, help, _ := call("", "layout", "--help")
	assert.NotContains(t, help, "nearest miss")
}
