package vehicles

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// texted are all places of a job file that hold a text of any words.
var texted = []string{
	head + "[[obstruction]]\nname = \"%s\"\nkind = \"crossmember\"\nx = [1, 2]\ny = [1, 2]\ndrop = [0, 1]\n",
	head + "[[opening]]\nname = \"%s\"\nkind = \"door\"\nx = [1, 2]\ny = [1, 2]\ndrop = [0, 1]\n",
	head + "[[done]]\nstep = \"battery-off\"\nnote = \"%s\"\n",
	head + "[[done]]\nstep = \"battery-off\"\nphotos = [\"a\", \"%s\"]\n",
	head + "[datum]\nname = \"%s\"\n",
	head + "[wiring]\ncontrol = \"%s\"\n",
}

// A text of a job may be as long as LongestText, and no longer: a line says which and where. Characters count, not bytes.
func TestHowLongATextMayBe(t *testing.T) {
	for _, form := range texted {
		for _, letter := range []string{"x", "ß"} {
			fits, over := strings.Repeat(letter, LongestText), strings.Repeat(letter, LongestText+1)
			job, err := ParseJob(fmt.Appendf(nil, form, fits), "a.toml")
			require.NoError(t, err, form)
			again, err := ParseJob(job.Format(), "a.toml")
			require.NoError(t, err, form)
			assert.Equal(t, string(job.Format()), string(again.Format()))
			_, err = ParseJob(fmt.Appendf(nil, form, over), "a.toml")
			require.Error(t, err, form)
			all := err.(FileErrors)
			assert.Contains(t, all[0].Text, "is a text of 20001 characters, at most 20000 are taken: shorten it", form)
			assert.Equal(t, 1+strings.Count(form[:strings.Index(form, "%s")], "\n"), all[0].Line, form)
			assert.Less(t, len(all[0].Error()), 300, "the line does not repeat it")
		}
	}
	_, err := ParseJob([]byte(head+"[extra]\nours = \""+strings.Repeat("x", 3*LongestText)+"\"\n"), "a.toml")
	require.NoError(t, err, "what is others' is kept, whatever it is")
}

// A name that is made of a long one still fits.
func TestANameMadeOfTheLongestFits(t *testing.T) {
	job := Job{Obstructions: List[Obstruction]{{Name: strings.Repeat("ß", LongestText)}}}
	name := job.UniqueName(job.Obstructions[0].Name)
	assert.LessOrEqual(t, len([]rune(name)), LongestText)
	assert.NotEqual(t, job.Obstructions[0].Name, name)
	assert.True(t, strings.HasSuffix(name, " 2"))
}
