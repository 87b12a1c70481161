package rules

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
)

// Where a finding's margin and why it is foul would say the same, one of them is enough: "12 mm short", "12 mm too close". What counts
// or turns says more than its margin.
func TestOnlyAMarginInMMStandsForWhyAFindingIsFoul(t *testing.T) {
	only, more := 0, 0
	files, err := filepath.Glob("../testdata/rules/*/fail-*.toml")
	require.NoError(t, err)
	for _, file := range files {
		result, _ := Judge(readCase(t, file), Builtin())
		for _, f := range result.Findings {
			short := ""
			if f.Margin.Set {
				short = survey.InMM(-f.Margin.Value) + " "
			}
			says := f.Verdict == Foul && short != "" && strings.HasPrefix(f.Why, short)
			assert.Equal(t, says, f.OnlyMargin(), "%s: %s", f.About(), f.Why)
			if f.Verdict == Foul && f.OnlyMargin() {
				only++
			} else if f.Verdict == Foul {
				more++
			}
		}
	}
	assert.Positive(t, only)
	assert.Positive(t, more)
}
