package vehicles

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The largest file that holds nothing but keys nobody knows is refused without words for each of them: in one table, and in many.
func TestAFileOfUnknownKeysIsRefusedInAMoment(t *testing.T) {
	if testing.Short() {
		t.Skip("the race detector has memory of its own")
	}
	const entries = 300_000
	var one, many strings.Builder
	one.WriteString(head)
	many.WriteString(head)
	for i := range entries {
		fmt.Fprintf(&one, "q_%d=1\n", i)
		if i%30 == 0 {
			many.WriteString("[[obstruction]]\n")
		}
		fmt.Fprintf(&many, "q_%d=1\n", i)
	}
	const tables = (entries + 29) / 30
	for text, all := range map[string]int{one.String(): entries, many.String(): entries + tables*3} { // an obstruction lacks kind, name and place, too
		require.Less(t, len(text), LargestFile)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := ParseJob([]byte(text), "a.toml")
		runtime.ReadMemStats(&after)
		var faults FileErrors
		require.ErrorAs(t, err, &faults)
		assert.LessOrEqual(t, len(faults), 2*mostFaults)
		told := strings.Split(err.Error(), "\n")
		require.Len(t, told, mostTold+1)
		assert.Regexp(t, `^a\.toml:\d+: .*(is an unknown key|is missing)`, told[0])
		assert.Equal(t, fmt.Sprintf("a.toml: and %d more faults: mend these first, then read it again", all-mostTold), told[mostTold])
		// What is read, and where it stands, takes some 0.6 kB a key; words for each took 3 to 9.
		assert.Less(t, (after.TotalAlloc-before.TotalAlloc)/entries, uint64(1500), "bytes for each key")
	}
}
