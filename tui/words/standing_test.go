package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
)

// How far one looks is said for tapes of either kind: these lists stand on paper, which knows no setting of a screen.
func TestHowFarIsLookedIsSaidInMMAndInches(t *testing.T) {
	var titles []string
	for _, l := range NotKnown(&rules.Result{
		NotLookedFor: []string{"brake pipe"}, LookedElsewhere: []string{"tank"}, NotLookedAtRuns: []string{"swage"}, OpeningsNotLookedFor: []string{"door"},
	}) {
		titles = append(titles, l.Title)
	}
	assert.Equal(t, []string{
		"Neither entered nor looked for within 300 mm (12 in) of the cut",
		"Looked for round another place than the cut's",
		"Neither entered nor looked for within 300 mm (12 in) of the runs where they are",
		"Openings neither entered nor looked for within 2000 mm (79 in) of outlet, muffler and drains",
	}, titles)
}
