package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

// Openings are looked for within 2 m of where gas comes out: beyond what the built-in book asks any kind of them to be away.
func TestOpeningsAreLookedForBeyondWhatIsAsked(t *testing.T) {
	assert.EqualValues(t, 2000, vehicles.LookOut)
	seen := 0
	for _, l := range Builtin().Limits() {
		if l.ID == "exhaust.outlet" || l.ID == "exhaust.drain-gas" {
			seen++
			assert.Less(t, l.Value.Or(0), 2000., "%s %s", l.ID, l.Kind)
		}
	}
	assert.Greater(t, seen, 2)
}
