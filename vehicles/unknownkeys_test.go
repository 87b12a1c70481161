package vehicles

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What stands in a file and is not read is told, in whichever of a job's tables it stands: all that a job may hold are asked.
func TestNoTableTakesAKeyThatNobodyReads(t *testing.T) {
	_, err := ParseJob([]byte("nobodys = 1\n"+head), "job.toml")
	require.Error(t, err)
	m := regexp.MustCompile(`nobodys is an unknown key; known here: ([^\n]*)`).FindStringSubmatch(err.Error())
	require.NotNil(t, m, "%v", err)
	asked := 0
	for _, table := range strings.Split(m[1], ", ") {
		if strings.Contains(head, "["+table+"]") || strings.Contains("format extra rules", table) { // values, and what takes any key
			continue
		}
		told := ""
		for _, brackets := range []string{"[" + table + "]", "[[" + table + "]]"} {
			if _, err := ParseJob([]byte(head+brackets+"\nnobodys = 1\n"), "job.toml"); assert.Error(t, err, brackets) {
				told += err.Error()
			}
		}
		assert.Regexp(t, `nobodys`, told, table)
		asked++
	}
	assert.Greater(t, asked, 20)
}
