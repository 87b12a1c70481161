package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Nobody knows how much the tape sloped to the first thing; what runs on from it, along either axis, is no surer, nor is
// what runs on from that.
func TestAnUnknownSlopeGoesAlongTheWholeChain(t *testing.T) {
	const head = "format = 1\n[job]\nref = \"T\"\n[floor]\nfrom = 0\nlength = 3000\nwidth = 1700\nthickness = 30\nground = 400\n" +
		"[datum]\nhook_below = 120\n"
	job, err := ParseJob([]byte(head+`
[[obstruction]]
name = "height unknown"
kind = "other"
x = [1600, 1700]
y = [300, 400]
[[obstruction]]
name = "on from it across only"
kind = "other"
x = [1800, 1900]
y = ["+50", "+40"]
drop = [0, 40]
[[obstruction]]
name = "on from that along only"
kind = "other"
x = ["+100", "+100"]
y = [-200, -100]
drop = [0, 40]
[[obstruction]]
name = "by itself"
kind = "other"
x = [2500, "+100"]
y = [-200, "+50"]
drop = [0, 40]
`), "chain.toml")
	require.NoError(t, err)
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	var loose []bool
	for _, p := range plan.Obstructions {
		loose = append(loose, p.Loose)
	}
	assert.Equal(t, []bool{true, true, true, false}, loose)
}
