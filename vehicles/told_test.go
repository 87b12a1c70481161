package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What has come to hang elsewhere is called as it is in the list: with its number where a run may have several.
func TestWhatHasComeToHangElsewhereIsNamed(t *testing.T) {
	for _, k := range HangingKinds {
		shift := Rehung{Kind: k, Index: 2}
		want := k.Name
		if k.Many() {
			want += " 3"
		}
		assert.Equal(t, want, shift.Name())
	}
}

// What others keep differs by its values, however deep they lie: in tables, in lists, and in tables of lists.
func TestDifferencesOfWhatOthersKeep(t *testing.T) {
	kept := func(text string) Job {
		job, err := ParseJob([]byte(head+"[extra]\n"+text+"\n"), "a.toml")
		require.NoError(t, err)
		return job
	}
	for _, c := range []struct{ one, other, where, says, others string }{
		{"a = { b = { c = 1 } }", "a = { b = { c = 2 } }", "extra: a: b: c", "1", "2"},
		{"a = [1, [2, 3]]", "a = [1, [2, 4]]", "extra: a", "[1, [2, 3]]", "[1, [2, 4]]"},
		{"a = 1", "a = 1.5", "extra: a", "1", "1.5"},
		{`a = "x"`, `a = "y\n"`, "extra: a", `"x"`, `"y\n"`},
		{"a = true", "b = 1\na = true", "extra: b", "", "1"},
	} {
		assert.Equal(t, [][3]string{{c.where, c.says, c.others}}, told(Differences(kept(c.one), kept(c.other))), c.one)
	}
}
