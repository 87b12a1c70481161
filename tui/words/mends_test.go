package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Where the runs alone are foul nobody is told to move the cut, and where both are, both have to be mended.
func TestWhatMendsIsWhatIsFoul(t *testing.T) {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	assert.Equal(t, "Move the cut (4), lay the runs otherwise (5, J finds them), or measure again.", Mends(&result))
	var kept []rules.Finding
	for _, f := range result.Findings {
		if !f.Rule.AtCut || f.Verdict != rules.Foul {
			kept = append(kept, f)
		}
	}
	result.Findings = kept
	assert.Equal(t, "Lay the runs otherwise (5, J finds them), or measure again.", Mends(&result), "a doubt at the cut is not what is foul")
}
