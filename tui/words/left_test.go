package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

func TestWhatIsLeftToLookForIsCounted(t *testing.T) {
	open := map[vehicles.LookList][]string{}
	left := func() string { return Left(func(l vehicles.LookList) []string { return open[l] }) }
	assert.Empty(t, left())
	open[vehicles.AtCut] = vehicles.Kinds[:3]
	assert.Equal(t, "3 kinds", left(), "as before there were other lists")
	open[vehicles.AtOutlet] = vehicles.OpeningKinds[:2]
	assert.Equal(t, "3 at the cut, 2 openings", left())
	open[vehicles.AtCut] = nil
	assert.Equal(t, "2 openings", left())
	open[vehicles.AtRuns] = vehicles.Kinds[:1]
	assert.Equal(t, "1 at the runs, 2 openings", left())
}
