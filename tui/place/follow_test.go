package place

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// A hole is newly drilled where its measured place is another than before: the same one measured again to the same figures is none.
func TestNewlyDrilled(t *testing.T) {
	drilledAt := func(x float64) *vehicles.Cut {
		cut := *vehicles.Demo().Cut
		cut.Drilled = &vehicles.Pair{survey.FromNumber(x, false), survey.FromNumber(200, false)}
		return &cut
	}
	none, here, hereAgain, elsewhere := vehicles.Demo().Cut, drilledAt(1272), drilledAt(1272), drilledAt(1280)
	for _, c := range []struct {
		now, before *vehicles.Cut
		newly       bool
	}{{none, none, false}, {here, none, true}, {elsewhere, here, true}, {hereAgain, here, false}, {none, here, false}} {
		assert.Equal(t, c.newly, newlyDrilled(c.now, c.before))
	}
}
