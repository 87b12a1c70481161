package looks

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// With sixteen colours, too, no face says two things, none is the paper's but the bare floor's, and there is more to see of much room than of none.
func TestNoFaceOfSixteenColoursHasTwoMeanings(t *testing.T) {
	for l := range Count {
		if !Look(l).FacesOfSixteen() {
			continue
		}
		table, says := Look(l).Table(), map[uint8]string{}
		for _, m := range meanings {
			for _, f := range m.faces {
				n := table.Sixteen[f]
				other, there := says[n]
				assert.True(t, !there || other == m.says, "%s: %d says %s and %s", Look(l), n, other, m.says)
				assert.NotEqual(t, table.Paper.Of, n, "%s: %s", Look(l), m.says)
				says[n] = m.says
			}
		}
		assert.Equal(t, table.Paper.Of, table.Sixteen[FloorFace])
	}
}

func TestEachOfSixteenColoursIsNearestToItself(t *testing.T) {
	for n := range uint8(16) {
		assert.Equal(t, n, NearestOfSixteen(OfSixteen(n)))
	}
}
